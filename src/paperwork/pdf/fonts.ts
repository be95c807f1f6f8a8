import sans from '../fonts/DejaVuSansCondensed.ttf?url';
import bold from '../fonts/DejaVuSansCondensed-Bold.ttf?url';
import serif from '../fonts/DejaVuSerifCondensed-Bold.ttf?url';
import type { Fonts } from './pen';

async function bytesAt(url: string): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`a font of the papers is not there: ${response.status}`);
  return new Uint8Array(await response.arrayBuffer());
}

let fonts: Promise<Fonts> | undefined;

async function fetched(): Promise<Fonts> {
  const [sansBytes, boldBytes, serifBytes] = await Promise.all([
    bytesAt(sans),
    bytesAt(bold),
    bytesAt(serif),
  ]);
  return { sans: sansBytes, bold: boldBytes, serif: serifBytes };
}

/** The fonts of the papers, fetched once when the first paper is made; a failed attempt is not remembered. */
export function loadFonts(): Promise<Fonts> {
  fonts ??= fetched().catch((cause: unknown) => {
    fonts = undefined;
    throw new Error('the fonts of the papers could not be loaded', { cause });
  });
  return fonts;
}
