import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plotFigures, thinned, valueAt } from '../../../../src/ui/plot/plot-figures';
import { plotGeometry } from '../../../../src/ui/plot/plot-geometry';
import { linearScale, logScale } from '../../../../src/ui/plot/scale';
import { plotOfLines, samplePlot } from './sample-plot';

const size = { width: 328, text: 16 };

/** Corners of all straight lines of a path. */
const corners = (path: string): readonly (readonly [number, number])[] =>
  [...path.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);

const pathsOf = (spec: typeof samplePlot, look: string) =>
  plotGeometry(spec, size).paths.filter((path) => path.look === look);

describe('curves and hatching', () => {
  it('stay between the axes, wherever the data lie', () => {
    const value = fc.double({ min: -1e4, max: 1e4, noNaN: true });
    const points = fc.array(fc.tuple(value, value), { minLength: 2, maxLength: 12 });
    fc.assert(
      fc.property(points, points, fc.constantFrom('linear' as const, 'log' as const), (low, high, scale) => {
        const { frame, paths } = plotGeometry(
          {
            ...samplePlot,
            x: { label: 'x', from: -100, to: 100 },
            y: { label: 'y', scale, from: 0.1, to: 100 },
            layers: [
              { kind: 'line', name: 'line', points: low },
              { kind: 'band', name: 'band', low, high },
            ],
          },
          size,
        );
        for (const { look, path } of paths) {
          if (look !== 'main' && look !== 'hatch') continue;
          for (const [x, y] of corners(path)) {
            expect(x).toBeGreaterThanOrEqual(frame.left - 0.02);
            expect(x).toBeLessThanOrEqual(frame.right + 0.02);
            expect(y).toBeGreaterThanOrEqual(frame.top - 0.02);
            expect(y).toBeLessThanOrEqual(frame.bottom + 0.02);
          }
        }
      }),
    );
  });

  it('are told apart by their dashes', () => {
    const lines = Array.from({ length: 8 }, (_, at) => [100 * at, 90 * at]);
    const dashes = plotGeometry(plotOfLines(lines, 'linear'), size)
      .paths.filter(({ look }) => look === 'curve')
      .map(({ dash }) => dash?.join(' ') ?? 'none');
    expect(new Set(dashes).size).toBe(8);
  });

  it('carry an arrow once where they go below the floor', () => {
    const [arrows] = pathsOf(plotOfLines([[100, 1, 0.001, 0, 0.001, 5]], 'log'), 'arrow');
    expect(arrows?.path.match(/M/g)).toHaveLength(1);
    expect(pathsOf(plotOfLines([[100, 1, 0.02]], 'log'), 'arrow')).toEqual([]);
  });
});

describe('dots', () => {
  const dots = (are: 'read' | 'expected', y: number) => ({
    ...plotOfLines([], 'log'),
    layers: [{ kind: 'dots' as const, name: 'dots', are, points: [{ x: 5, y }] }],
  });

  it('that were read are filled, those expected are hollow', () => {
    expect(pathsOf(dots('read', 1), 'read')).toHaveLength(1);
    expect(pathsOf(dots('read', 1), 'expected')).toHaveLength(0);
    expect(pathsOf(dots('expected', 1), 'expected')).toHaveLength(1);
  });

  it.each([0, 0.01, 2000])('at %d stand at the end of the scale, with an arrow', (y) => {
    expect(pathsOf(dots('read', y), 'arrow')).toHaveLength(1);
    expect(pathsOf(dots('read', 1), 'arrow')).toHaveLength(0);
  });
});

describe('what a plot says', () => {
  it('is the summary and the ends of both axes, in the decimal sign of the reader', () => {
    const { says } = plotGeometry({ ...plotOfLines([[1, 2]], 'log'), sign: ',' }, size);
    expect(says).toBe('Lines. Across: x, from 0 to 10. Upwards: left, mg/L, from 0,01 to 1000, in decades.');
  });

  it('as a table has at most twenty rows, with the first and the last', () => {
    const values = Array.from({ length: 101 }, (_, at) => at);
    const { lines } = plotFigures(plotOfLines([values], 'linear'));
    expect(lines?.head).toEqual(['x', 'Fe']);
    expect(lines?.rows).toHaveLength(20);
    expect(lines?.rows[0]).toEqual(['0', '0']);
    expect(lines?.rows.at(-1)).toEqual(['10', '100']);
    expect(thinned([1, 2, 3], 20)).toEqual([1, 2, 3]);
  });

  it('says no more below the floor than the plot shows', () => {
    const { lines } = plotFigures(plotOfLines([[1, 1e-9]], 'log'));
    expect(lines?.rows.at(-1)).toEqual(['10', '0.01 or less']);
  });

  it('has every dot, limit, aim, portion and step in words', () => {
    const { dots, marks } = plotFigures(samplePlot);
    expect(dots?.rows).toContainEqual(['100', '1', 'read', 'yesterday']);
    expect(dots?.rows).toContainEqual(['250', '5.2', 'expected', 'none here']);
    expect(marks).toEqual([
      'aim 9.0 to 9.5: pH 9 to 9.5',
      'stop here: dose 340\u202fg to 360\u202fg',
      'bag is empty: dose 380\u202fg',
      'no higher: pH 11',
      'Cu: dose 220\u202fg; pH 5.05',
      'next 60 g: dose 190\u202fg to 250\u202fg',
    ]);
  });

  it('says a value once where the word on the plot has it already', () => {
    const layers = [
      { kind: 'limit', axis: 'y', at: 9, word: 'aim: pH 9.0' },
      { kind: 'window', axis: 'y', from: 9, to: 9.5, word: 'aim: pH 9.0 to 9.5' },
    ] as const;
    expect(plotFigures({ ...samplePlot, layers }).marks).toEqual(['aim: pH 9.0', 'aim: pH 9.0 to 9.5']);
  });

  it('between two points is read straight on the scale, and beyond them not at all', () => {
    const points = [
      [0, 1],
      [2, 100],
    ] as const;
    expect(valueAt(points, 1, linearScale(0, 100))).toBeCloseTo(50.5, 9);
    expect(valueAt(points, 1, logScale(0.1, 1000))).toBeCloseTo(10, 9);
    expect(valueAt(points, 2, linearScale(0, 100))).toBe(100);
    expect(valueAt(points, 3, linearScale(0, 100))).toBeUndefined();
    expect(valueAt(points, -1, linearScale(0, 100))).toBeUndefined();
  });
});
