/** How what is left to add closes in, on one simulated run: the picture of the treatment's README, as SVG text. */
import { closingIn } from '../../src/chemistry/treatment/pot-learning';
import type { PlotGeometry, PlotLook } from '../../src/ui/plot/plot-geometry';
import { plotGeometry } from '../../src/ui/plot/plot-geometry';
import type { PlotPoint, PlotSpec } from '../../src/ui/plot/plot-spec';
import { potWith, simulatedRun, tenths } from '../unit/chemistry/treatment/simulated-pot';

function specOf(): PlotSpec {
  const before = potWith('hydrated-lime');
  const { truly, readings } = simulatedRun(before, tenths(10), 2);
  const after = closingIn(before, readings);
  const rows = after.flatMap((one, i) => {
    if (!one.agrees) return [];
    const grams = i === 0 ? 0 : Number(one.curve.read.at(-1)?.[0]);
    const [low, value, high] = [one.remaining.low, one.remaining.value, one.remaining.high].map(Number);
    return [{ grams, low: low ?? 0, value: value ?? 0, high: high ?? 0 }];
  });
  const line = (pick: (row: (typeof rows)[number]) => number): readonly PlotPoint[] =>
    rows.map((row) => [row.grams, pick(row)]);
  const [first, last] = [rows[0], rows.at(-1)];
  const said = (row: typeof first): string => `${row?.low.toFixed(0)} to ${row?.high.toFixed(0)} g`;
  return {
    title: 'Lime left to add to pH 9.5, after each reading',
    summary: `A simulated pot, every amount 30 % off, pH noise 0.1: ${said(first)} before any reading, ${said(last)} after the last.`,
    x: { label: 'lime in the pot', unit: 'g', from: 0 },
    y: { label: 'left to add', unit: 'g', from: 0 },
    layers: [
      { kind: 'band', name: 'range', low: line(({ low }) => low), high: line(({ high }) => high) },
      {
        kind: 'line',
        name: 'truly left',
        word: 'truly',
        points: [
          [0, truly],
          [truly, 0],
        ],
      },
      {
        kind: 'dots',
        name: 'left by the readings',
        are: 'read',
        points: rows.map(({ grams, value }) => ({ x: grams, y: value })),
      },
    ],
  };
}

const ink = '#10201c';
const paper = '#fdfdfb';
const filled: readonly PlotLook[] = ['block', 'read', 'arrow'];
const widths: Partial<Record<PlotLook, number>> = { main: 2, curve: 2, hatch: 0.6, tick: 0.6, leader: 0.6 };

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

function svgOf({ width, height, title, says, paths, texts }: PlotGeometry): string {
  const lines = paths.map(({ look, path, dash }) => {
    const fill = filled.includes(look) ? ink : look === 'ring' ? paper : 'none';
    const stroke = filled.includes(look) || look === 'ring' ? 'none' : ink;
    const dashes = dash ? ` stroke-dasharray="${dash.join(' ')}"` : '';
    return `<path d="${path}" fill="${fill}" stroke="${stroke}" stroke-width="${widths[look] ?? 1}"${dashes}/>`;
  });
  const words = texts.map(
    ({ x, y, text, size, anchor }) =>
      `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}" font-size="${size}" text-anchor="${anchor}" fill="${ink}" stroke="${paper}" stroke-width="3" paint-order="stroke">${escaped(text)}</text>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" font-family="sans-serif">`,
    `<title>${escaped(title)}</title><desc>${escaped(says)}</desc>`,
    `<rect width="${width}" height="${height}" fill="${paper}"/>`,
    ...lines,
    ...words,
    '</svg>',
    '',
  ].join('\n');
}

export const closingInPicture = (): string => svgOf(plotGeometry(specOf(), { width: 560, text: 15 }));
