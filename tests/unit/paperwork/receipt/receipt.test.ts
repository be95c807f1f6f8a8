import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020';
import { describe, expect, test } from 'vitest';
import { hashOf } from '../../../../src/ledger/seal';
import { renderPdf } from '../../../../src/paperwork/pdf/render';
import { receiptData } from '../../../../src/paperwork/receipt/gather-receipt';
import { ReceiptData } from '../../../../src/paperwork/receipt/receipt-data';
import {
  receiptAttachment,
  receiptFileName,
  receiptPaper,
} from '../../../../src/paperwork/receipt/receipt-paper';
import { paperFonts } from '../../../support/paper-fonts';
import { readPdf } from '../../../support/read-pdf';
import { receiptSchema } from '../../../support/receipt-schema';
import { disposalState } from '../disposal-state';

type Memory = Awaited<ReturnType<typeof disposalState>>;

const drawn = (name: string) => ({
  name,
  signedAt: '2026-05-17T10:01:00.000Z',
  width: 400,
  height: 150,
  strokes: [[20, 80, 60, 30, 120, 110]],
});

/** Both cans have left: of the one the collector has as much as the record, of the other less. */
async function gone() {
  const memory = await disposalState();
  const { body } = await memory.does({
    do: 'log-hand-over',
    collector: { name: 'Fen Carriers', licence: 'FC-1' },
    vehicle: 'FEN 204',
    containers: [
      { containerId: memory.barren, agreed: { value: '6.70', unit: 'L' } },
      { containerId: memory.wash, agreed: { value: '12.6', unit: 'L' }, note: 'Read on his dip stick.' },
    ],
    signatures: { generator: drawn('Maren'), collector: drawn('Rufus') },
  });
  if (body.kind !== 'handed-over') throw new Error('nothing was handed over');
  return { memory, id: body.handOverId };
}

const receipt = (memory: Memory, id: string, demo = false): ReceiptData =>
  receiptData(id, {
    state: memory.state.value,
    now: memory.now.value,
    zone: 'Europe/Paris',
    madeBy: 'Maren',
    sign: '.',
    demo,
  });

async function printed(data: ReceiptData) {
  const bytes = await renderPdf(receiptPaper(data, { paper: 'A4' }), paperFonts, {
    attachments: [receiptAttachment(data)],
  });
  const pdf = await readPdf(bytes);
  return {
    pdf,
    text: pdf.pages
      .map(({ text }) => text)
      .join(' ')
      .replace(/[\s\u2009]+/g, ' '),
  };
}

const published = JSON.parse(
  readFileSync(new URL('../../../../public/hand-over-receipt-1.schema.json', import.meta.url), 'utf8'),
);
/** Its formats come with patterns of their own, which are held. */
const validate = new Ajv2020({ strict: true, validateFormats: false, allErrors: true }).compile(published);

describe('the receipt of a hand-over', () => {
  test('says of each container what the record has, what the collector has, and how far they differ', async () => {
    const { memory, id } = await gone();
    const [barren, wash] = receipt(memory, id).containers;
    expect(barren).toMatchObject({
      code: 'C\u201107',
      what: 'Barren liquor',
      recorded: '6.70\u2009L',
      agreed: '6.70\u2009L',
      comparison: 'as the record says',
    });
    // 12.6 L of 14.0 L is a tenth less.
    expect(wash).toMatchObject({ recorded: '14.00\u2009L', agreed: '12.6\u2009L', comparison: 'differs' });
    expect(wash?.difference).toMatch(/^−10(\.0+)?\u2009%/);
  });

  test('prints both names, what was not told, and what still has to come', async () => {
    const { memory, id } = await gone();
    const { pdf, text } = await printed(receipt(memory, id));
    for (const said of ['For the generator: Maren', 'For the collector: Rufus', 'Fen Carriers', 'FEN 204'])
      expect(text).toContain(said);
    expect(text).toMatch(/Driver not determined/);
    expect(text).toContain('No proof is filed yet of C\u201107 and C\u201102.');
    expect(pdf.pages.flatMap(({ roles }) => roles).filter((role) => role === 'Figure')).toHaveLength(2);
    expect(text).not.toMatch(/\b(safe|safely|compliant|compliance)\b/i);
  });

  test('tells what came back, and of what a proof was filed', async () => {
    const { memory, id } = await gone();
    await memory.does({
      do: 'log-rejected-load',
      handOverId: id,
      containerIds: [memory.wash],
      why: 'No room in the tank.',
    });
    await memory.does({
      do: 'file-proof',
      handOverId: id,
      containerIds: [memory.barren],
      document: 'P-9',
      treatedHow: 'D9',
    });
    const data = receipt(memory, id);
    expect(data.containers.map(({ since }) => since)).toEqual([
      'proof filed 17\u00a0May\u00a02026',
      'came back 17\u00a0May\u00a02026',
    ]);
    expect(data.awaited).toEqual([]);
    const { text } = await printed(data);
    expect(text).toContain('Why: No room in the tank.');
    expect(text).toContain('Done with it: D9. Paper: P-9, dated not determined.');
    expect(text).toContain('No proof is awaited.');
  });

  test('has its data inside, with a hash over everything else', async () => {
    const { memory, id } = await gone();
    const data = receipt(memory, id);
    const { pdf, text } = await printed(data);
    const inside = JSON.parse(new TextDecoder().decode(pdf.attachments[receiptFileName(data, 'json')]));
    expect(inside).toEqual(data);
    const { contentHash, ...rest } = inside;
    expect(hashOf(rest)).toBe(contentHash);
    expect(text).toContain(contentHash);
  });

  test('of an invented workshop is marked on its page and in its name', async () => {
    const { memory, id } = await gone();
    const data = receipt(memory, id, true);
    expect(receiptFileName(data, 'pdf')).toBe('invented-receipt-2026-05-17-C-07_C-02.pdf');
    const { pdf } = await printed(data);
    for (const { text } of pdf.pages) expect(text).toContain('invented demo');
  });

  test('is refused for a hand-over that is not in the record', async () => {
    const { memory } = await gone();
    expect(() => receipt(memory, '00000000-0000-7000-8000-00000000ffff')).toThrow('hand-over of the record');
  });
});

describe('the published schema of a receipt', () => {
  test('is as the code has it; npm run paper-schema writes it anew', async () => {
    await expect(receiptSchema()).toMatchFileSnapshot('../../../../public/hand-over-receipt-1.schema.json');
  });

  test('finds real data in order, and refuses what the code refuses', async () => {
    const { memory, id } = await gone();
    const data = JSON.parse(JSON.stringify(receipt(memory, id)));
    expect(validate(data), JSON.stringify(validate.errors)).toBe(true);
    const wrongs = [
      { ...data, v: 2 },
      { ...data, more: 1 },
      { ...data, driver: '' },
      { ...data, containers: [] },
      { ...data, signatures: { generator: null, collector: 'not signed' } },
    ];
    for (const wrong of wrongs) {
      expect(validate(wrong)).toBe(false);
      expect(ReceiptData.safeParse(wrong).success).toBe(false);
    }
  });
});
