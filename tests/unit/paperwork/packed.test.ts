/** A file packed for the mail says the same to two readers that share no code with the writer, in far fewer bytes. */
import { expect, test } from 'vitest';
import { renderPdf } from '../../../src/paperwork/pdf/render';
import { paperFonts } from '../../support/paper-fonts';
import { readWithPoppler } from '../../support/poppler';
import { readPdf } from '../../support/read-pdf';
import { samplePaper } from './sample-paper';

const data = {
  name: 'data.json',
  bytes: new TextEncoder().encode('{"a":1}'),
  mime: 'application/json',
  description: 'The same as data',
};

const long = { ...samplePaper, parts: Array.from({ length: 12 }, () => samplePaper.parts).flat() };

test('has no object of its own but for streams, and is whole to both readers', async () => {
  const bytes = await renderPdf(long, paperFonts, { attachments: [data] });
  const text = new TextDecoder('latin1').decode(bytes);
  expect(text.slice(0, 9)).toBe('%PDF-1.7\n');
  const objects = text.match(/\d+ 0 obj\n/g)?.length;
  expect(text.match(/\nendstream\nendobj\n/g)).toHaveLength(objects ?? 0);
  const [mine, other] = [readWithPoppler(bytes), await readPdf(bytes)];
  expect(mine.info.Pages).toBe(String(other.pages.length));
  expect(mine.info.Tagged).toBe('yes');
  expect(mine.info.Title).toBe(long.title);
  expect(mine.metadata).toContain('pdfaid:part');
  expect(mine.attachments['data.json']).toEqual(data.bytes);
  expect(other.attachments['data.json']).toEqual(data.bytes);
});

test('is the same file for the same paper', async () => {
  expect(await renderPdf(samplePaper, paperFonts)).toEqual(await renderPdf(samplePaper, paperFonts));
});
