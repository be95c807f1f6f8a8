import { expect, test } from 'vitest';
import { plotBlock, plotDrawing } from '../../../src/paperwork/pdf/plots';
import { renderPdf } from '../../../src/paperwork/pdf/render';
import { plotGeometry } from '../../../src/ui/plot/plot-geometry';
import { paperFonts } from '../../support/paper-fonts';
import { readPdf } from '../../support/read-pdf';
import { samplePlot } from '../ui/plot/sample-plot';
import { samplePaper } from './sample-paper';

const plot = plotGeometry(samplePlot, { width: 440, text: 9 });

const printed = async (paper: 'A4' | 'A6') =>
  readPdf(await renderPdf({ ...samplePaper, paper, parts: [plotBlock(plot)] }, paperFonts));

test('a plot on a paper has its ticks, its titles and its words as text, and its title under it', async () => {
  const { pages } = await printed('A4');
  const texts = pages.flatMap(({ runs }) => runs.map(({ text }) => text));
  for (const { text } of plot.texts) expect(texts).toContain(text);
  expect(pages[0]?.text).toContain(samplePlot.title);
});

test('no two texts of a plot lie on each other in the fonts of the papers, nor beyond the page', async () => {
  const { pages } = await printed('A4');
  const words = new Set(plot.texts.map(({ text }) => text));
  const runs = pages.flatMap((page) => page.runs).filter(({ text }) => words.has(text));
  expect(runs.length).toBeGreaterThanOrEqual(plot.texts.length);
  runs.forEach((a, at) => {
    expect(a.right).toBeLessThan(595 - 16);
    for (const b of runs.slice(at + 1))
      expect(
        a.x < b.right && b.x < a.right && Math.abs(a.y - b.y) < 0.7 * a.size,
        `${a.text} and ${b.text}`,
      ).toBe(false);
  });
});

test('a plot tells a screen reader what it shows', async () => {
  const bytes = await renderPdf({ ...samplePaper, parts: [plotBlock(plot)] }, paperFonts);
  expect(plotDrawing(plot).says).toBe(`${samplePlot.title}. ${plot.says}`);
  const { pages } = await readPdf(bytes);
  expect(pages.flatMap(({ roles }) => roles)).toContain('Figure');
});

test('a plot is printed in black and white, with no line under 0.6 pt', () => {
  for (const { fill, stroke, strokeWidth } of plotDrawing(plot).shapes) {
    if (fill !== undefined) expect(['#000000', '#ffffff']).toContain(fill);
    if (stroke === undefined) continue;
    expect(stroke).toBe('#000000');
    expect(strokeWidth).toBeGreaterThanOrEqual(0.6);
  }
});

test('a plot wider than its page is made smaller, and stays on it', async () => {
  const { pages } = await printed('A6');
  for (const { runs, width } of pages)
    for (const run of runs.filter(({ text }) => text.trim() !== ''))
      expect(run.right, run.text).toBeLessThan(width - 16);
});
