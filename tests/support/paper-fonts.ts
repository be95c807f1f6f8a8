import { readFileSync } from 'node:fs';
import type { Fonts } from '../../src/paperwork/pdf/pen';

const font = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(new URL(`../../src/paperwork/fonts/${name}.ttf`, import.meta.url)));

/** The fonts of the papers from disk, as a test without a page needs them. */
export const paperFonts: Fonts = {
  sans: font('DejaVuSansCondensed'),
  bold: font('DejaVuSansCondensed-Bold'),
  serif: font('DejaVuSerifCondensed-Bold'),
};
