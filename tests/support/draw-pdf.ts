/** Draws a page of a PDF as a printer does, with a reader that shares no code with the writer. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** Grey from 0, black, to 255, row by row from the upper left corner. */
export interface Drawn {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8ClampedArray;
}

interface Canvas {
  readonly canvas: { readonly width: number; readonly height: number };
  readonly context: CanvasRenderingContext2D;
}

/** @param dpi dots an inch, as printers count: 203 is usual for labels on a roll */
export async function drawPage(bytes: Uint8Array, dpi: number, number = 1): Promise<Drawn> {
  const task = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 });
  const pdf = await task.promise;
  const page = await pdf.getPage(number);
  const viewport = page.getViewport({ scale: dpi / 72 });
  const factory = pdf.canvasFactory as { create: (width: number, height: number) => Canvas };
  const { canvas, context } = factory.create(Math.round(viewport.width), Math.round(viewport.height));
  await page.render({ canvas: null, canvasContext: context, viewport }).promise;
  const { width, height } = canvas;
  const { data } = context.getImageData(0, 0, width, height);
  const grey = new Uint8ClampedArray(width * height);
  for (let at = 0; at < grey.length; at += 1)
    grey[at] =
      0.299 * (data[4 * at] ?? 0) + 0.587 * (data[4 * at + 1] ?? 0) + 0.114 * (data[4 * at + 2] ?? 0);
  await task.destroy();
  return { width, height, grey };
}

/** A head that only burns or does not: every dot is black or white. */
export const onThermalPaper = ({ grey, ...size }: Drawn): Drawn => ({
  ...size,
  grey: grey.map((level) => (level < 128 ? 0 : 255)),
});
