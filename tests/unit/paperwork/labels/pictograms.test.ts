import { describe, expect, test } from 'vitest';
import type { Drawing } from '../../../../src/paperwork/document';
import { pictogram, pictogramIds } from '../../../../src/paperwork/labels/pictograms';
import { drawFigure } from '../../../../src/paperwork/pdf/drawing';
import { pdfFile } from '../../../../src/paperwork/pdf/file';
import { drawPage } from '../../../support/draw-pdf';
import { paperFonts } from '../../../support/paper-fonts';

const about = { title: 'x', language: 'en', subject: 'x', author: 'x', createdAt: '2026-05-14T09:58:00Z' };

/** Drawn 100 dots wide; rows of grey. */
async function dots(drawing: Drawing): Promise<(x: number, y: number) => number> {
  const file = await pdfFile(about, paperFonts, [], (pen) => {
    pen.document.addPage({ size: [100, 100], margin: 0 });
    pen.aside(() => drawFigure(pen, drawing, 0, 0, 100));
  });
  const { grey, width } = await drawPage(file, 72);
  return (x, y) => grey[y * width + x] ?? 255;
}

/** How far a dot lies from the middle, counted along the sides: 50 is the edge of the square on its point. */
const ring = (x: number, y: number): number => Math.abs(x + 0.5 - 50) + Math.abs(y + 0.5 - 50);

describe.each(pictogramIds)('the pictogram %s', (id) => {
  test('is a black symbol that keeps clear of its frame, on white, in a frame with nothing around it', async () => {
    const at = await dots(pictogram(id, id));
    let inked = 0;
    for (let y = 0; y < 100; y += 1)
      for (let x = 0; x < 100; x += 1) {
        const r = ring(x, y);
        if (r > 51.5) expect(at(x, y), `outside, ${x} ${y}`).toBeGreaterThan(250);
        // Between the frame and the symbol a line of white stays.
        if (r > 39.8 && r < 40.8) expect(at(x, y), `between, ${x} ${y}`).toBeGreaterThan(200);
        if (r < 39 && at(x, y) < 60) inked += 1;
      }
    expect(inked, 'a symbol that is seen from a step away').toBeGreaterThan(250);
    expect(inked).toBeLessThan(2200);
  });

  test('has a frame that a grey printer prints dark, and a black one for a printer without red', async () => {
    const red = await dots(pictogram(id, id));
    const black = await dots(pictogram(id, id, 'black'));
    for (const [x, y] of [
      [50, 3],
      [3, 50],
      [96, 50],
      [50, 96],
    ] as const) {
      expect(red(x, y)).toBeGreaterThan(40);
      expect(red(x, y)).toBeLessThan(128);
      expect(black(x, y)).toBeLessThan(20);
    }
  });
});

test('no two pictograms have the same symbol', () => {
  const drawn = pictogramIds.map((id) => JSON.stringify(pictogram(id, '').shapes));
  expect(new Set(drawn).size).toBe(pictogramIds.length);
});
