import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Fonts } from '../../src/paperwork/pdf/pen';

const folder = join(import.meta.dirname, '../../src/paperwork/fonts');
const font = (name: string): Uint8Array => new Uint8Array(readFileSync(join(folder, `${name}.ttf`)));

/** The fonts of the papers from disk, as a test without a browser needs them. */
export const paperFonts: Fonts = {
  sans: font('DejaVuSansCondensed'),
  bold: font('DejaVuSansCondensed-Bold'),
  serif: font('DejaVuSerifCondensed-Bold'),
};
