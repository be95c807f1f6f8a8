/** A file packed for the mail says the same to two readers that share no code with the writer, in far fewer bytes. */
import { expect, test } from 'vitest';
import { packed } from '../../../src/paperwork/pdf/packed';
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

test('takes as many objects as a long paper has', () => {
  const objects = Array.from({ length: 200_000 }, (_, i) => `${i + 1} 0 obj\n<< >>\nendobj\n`);
  const head = '%PDF-1.7\n';
  let at = head.length;
  const places = objects.map((object) => {
    const place = `${String(at).padStart(10, '0')} 00000 n `;
    at += object.length;
    return place;
  });
  const size = objects.length + 1;
  const table = ['xref', `0 ${size}`, '0000000000 65535 f ', ...places].join('\n');
  const trailer = `trailer\n<<\n/Size ${size}\n/Root 1 0 R\n/Info 2 0 R\n/ID [<aa> <aa>]\n>>`;
  const file = `${head}${objects.join('')}${table}\n${trailer}\nstartxref\n${at}\n%%EOF\n`;
  const small = packed(new TextEncoder().encode(file));
  expect(small.length).toBeLessThan(file.length / 5);
  expect(new TextDecoder('latin1').decode(small)).toContain(`/Size ${size + 1001}`);
});

test('is the same file for the same paper', async () => {
  expect(await renderPdf(samplePaper, paperFonts)).toEqual(await renderPdf(samplePaper, paperFonts));
});
