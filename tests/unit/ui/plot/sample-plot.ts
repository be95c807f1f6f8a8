/** An invented plot with every kind of layer, and lines on which words can be tried. */
import type { PlotPoint, PlotSpec } from '../../../../src/ui/plot/plot-spec';

const doses: readonly PlotPoint[] = [
  [0, 0.2],
  [100, 0.9],
  [150, 2.9],
  [152, 4.8],
  [280, 5.3],
  [297, 6.9],
  [350, 7.7],
  [354, 11.5],
];

export const samplePlot: PlotSpec = {
  title: 'pH against dose',
  summary: 'pH rests near 5 and reaches the aim at 353 g.',
  x: { label: 'dose', unit: 'g', from: 0, to: 400 },
  y: { label: 'pH', from: 0, to: 12 },
  layers: [
    {
      kind: 'band',
      name: 'pH',
      low: doses.map(([x, y]) => [x * 1.05, y]),
      high: doses.map(([x, y]) => [x * 0.95, y]),
    },
    { kind: 'line', name: 'pH', word: 'pH likely', points: doses },
    { kind: 'window', axis: 'y', from: 9, to: 9.5, word: 'aim 9.0 to 9.5' },
    { kind: 'window', from: 340, to: 360, word: 'stop here' },
    { kind: 'limit', axis: 'x', at: 380, word: 'bag is empty' },
    { kind: 'limit', axis: 'y', at: 11, word: 'no higher' },
    { kind: 'step', x: 220, y: 5.05, word: 'Cu' },
    {
      kind: 'dots',
      name: 'readings',
      are: 'read',
      points: [
        { x: 0, y: 0.25 },
        { x: 100, y: 1, word: 'yesterday' },
      ],
    },
    { kind: 'dots', name: 'readings', are: 'expected', points: [{ x: 250, y: 5.2 }] },
    { kind: 'block', from: 190, to: 250, word: 'next 60 g' },
  ],
};

const names = ['Fe', 'Al', 'Cu', 'Pb', 'Zn', 'Ni', 'Ag', 'Mn'];

/** Up to eight lines on one plot, each with the values given at even steps of x from 0 to 10. */
export const plotOfLines = (lines: readonly (readonly number[])[], scale: 'linear' | 'log'): PlotSpec => ({
  title: 'Lines',
  summary: 'Lines.',
  x: { label: 'x', from: 0, to: 10 },
  y: { label: 'left', unit: 'mg/L', scale, from: scale === 'log' ? 0.01 : 0, to: 1000 },
  layers: lines.map((values, at) => ({
    kind: 'line' as const,
    name: names[at] ?? `${at}`,
    word: names[at] ?? `${at}`,
    points: values.map((value, step): PlotPoint => [(10 * step) / Math.max(1, values.length - 1), value]),
  })),
});
