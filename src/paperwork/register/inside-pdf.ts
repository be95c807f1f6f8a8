/**
 * Files inside a PDF as our own writer puts them there (ISO 32000-1, 7.11.4): streams of type EmbeddedFile, deflated or plain. A
 * PDF that another program saved anew may hide them in other ways; then nothing is found.
 */
import { strFromU8, unzlibSync } from 'fflate';

const embedded = /\d+ 0 obj\s*<<((?:(?!endobj)[\s\S]){0,2000}?)>>\s*stream\r?\n/g;

/** The last line of a PDF, after which a mail program may have put a little more. */
const ending = '%%EOF';
const farthest = 1024;

/** @throws where it is not whole, or a stream cannot be unpacked */
export async function insidePdf(pdf: Uint8Array): Promise<Readonly<Record<string, Uint8Array>>> {
  const text = strFromU8(pdf, true);
  if (!text.slice(-farthest).includes(ending)) throw new Error('the PDF has no end');
  const files: Record<string, Uint8Array> = {};
  for (const match of text.matchAll(embedded)) {
    const [whole, dictionary = ''] = match;
    if (!/\/Type\s*\/EmbeddedFile\b/.test(dictionary)) continue;
    const length = Number(/\/Length\s+(\d+)(?!\s+\d+\s+R)/.exec(dictionary)?.[1] ?? Number.NaN);
    const start = match.index + whole.length;
    if (!(start + length <= pdf.length)) throw new Error('the PDF ends before the file inside it does');
    const bytes = pdf.subarray(start, start + length);
    const content = dictionary.includes('/FlateDecode') ? unzlibSync(bytes) : bytes;
    files[`file ${Object.keys(files).length + 1}`] = content;
  }
  return files;
}
