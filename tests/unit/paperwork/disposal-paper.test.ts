import { describe, expect, test } from 'vitest';
import { attachmentOf, disposalPaper, fileName } from '../../../src/paperwork/disposal/disposal-paper';
import { disposalData } from '../../../src/paperwork/disposal/gather';
import { renderPdf } from '../../../src/paperwork/pdf/render';
import { neverFor } from '../../../src/safety/never-rules';
import { paperVessel } from '../../../src/screens/papers/paper-vessel';
import { paperFonts } from '../../support/paper-fonts';
import { readPdf } from '../../support/read-pdf';
import { disposalState } from './disposal-state';

type Made = Awaited<ReturnType<typeof disposalState>>;
type Options = { readonly demo?: boolean; readonly working?: boolean; readonly paper?: 'A4' | 'Letter' };

async function made(memory: Made, ids: readonly string[], options: Options = {}) {
  const { demo = false, working = true, paper = 'A4' } = options;
  const state = memory.state.value;
  const data = disposalData(ids, {
    state,
    now: memory.now.value,
    zone: 'Europe/Paris',
    madeBy: 'Maren',
    sign: '.',
    demo,
    appAddress: 'https://book.example/',
  });
  const drawings = new Map([...state.containers].map(([id, c]) => [id, paperVessel(state, c, '.')]));
  const document = disposalPaper(data, { paper, working, drawings });
  const pdf = await readPdf(await renderPdf(document, paperFonts, { attachments: [attachmentOf(data)] }));
  const text = pdf.pages
    .map((page) => page.text)
    .join('\n')
    .replace(/[\s\u2009]+/g, ' ');
  return { data, pdf, text };
}

type Container = Awaited<ReturnType<typeof made>>['data']['containers'][number];
const byMassOf = (container: Container | undefined, symbol: string): string | undefined => {
  const share = container?.substances.find((one) => one.symbol === symbol)?.byMass;
  return typeof share === 'object' ? share.value : undefined;
};

const forbidden = /\b(safe|safely|compliant|compliance)\b/i;

describe('a disposal paper', () => {
  test('prints every figure of the composition on its sheet, and of the bases behind', async () => {
    const memory = await disposalState();
    const { data, pdf } = await made(memory, [memory.barren]);
    const pages = pdf.pages.map(({ text }) => text);
    const sheet = pages.find((page) => page.includes('Characterisation sheet C')) ?? '';
    const lines = sheet.split('\n');
    const [container] = data.containers;
    for (const { name, aLitre, inAll, byMass } of container?.substances ?? []) {
      if (aLitre === 'not determined' || inAll === 'not determined' || byMass === 'not determined') continue;
      const line = lines.find((one) => one.startsWith(name)) ?? '';
      const printed = [aLitre.low, aLitre.likely, aLitre.high, inAll.likely, byMass.low, byMass.high];
      for (const one of printed) expect(line).toContain(one);
    }
    const behind = pages.find((page) => page.includes('base needed, for planning only'))?.split('\n') ?? [];
    for (const { base, mass } of container?.bases ?? []) {
      if (mass === 'not determined') throw new Error('no base');
      const line = behind.find((one) => one.startsWith(base)) ?? '';
      for (const printed of [mass.low, mass.likely, mass.high]) expect(line).toContain(printed);
    }
    expect(sheet).toMatch(/Copper\s+15\.8\s+17\.6\s+19\.4/);
    // 17.6 g/L in liquor of 1.08 kg/L is 1.6 % by mass.
    expect(Number(byMassOf(container, 'Cu'))).toBeCloseTo(1.6, 1);
  });

  test('has its sheet on one page of A4, with all that is not determined, and its label’s code and pattern', async () => {
    const memory = await disposalState();
    const { pdf } = await made(memory, [memory.barren], { working: false });
    const at = pdf.pages.findIndex(({ text }) => text.includes('Characterisation sheet C'));
    const [sheet, next] = [pdf.pages[at], pdf.pages[at + 1]];
    expect(sheet?.text).toMatch(/Not determined[\s\S]*How much zinc/);
    expect(sheet?.text).toContain('C‑07');
    expect(sheet?.roles).toContain('Figure');
    expect(next?.text).toContain('Emergency information');
  });

  test('begins with a cover that says whose it is, how much, and how to check its hash', async () => {
    const memory = await disposalState();
    const { pdf, data } = await made(memory, [memory.barren, memory.wash], { working: false });
    const cover = (pdf.pages[0]?.text ?? '').replace(/\s+/g, ' ');
    expect(cover).toContain(data.contentHash.match(/.{8}/g)?.slice(0, 4).join(' '));
    for (const said of ['2 containers', 'canonical form (RFC 8785)', 'Generator number not determined'])
      expect(cover).toContain(said);
    expect(cover).toContain('Confirm with your authority or collector before anything moves.');
    expect(cover).toContain('How much copper, nickel or free acid: C‑02.');
  });

  test('says "not determined" for class, code, transport and all that nobody told, and gives no base', async () => {
    const memory = await disposalState();
    const { text } = await made(memory, [memory.wash]);
    for (const what of [
      'Copper',
      'Nickel',
      'Free nitric acid',
      'Nitrate',
      'Any base',
      'Class',
      'Code',
      'Transport',
    ])
      expect(text).toContain(`${what} not determined`);
    expect(text).toContain('Not worked out: the free acid is not determined.');
    expect(text).toContain('Generator number not determined');
  });

  test('prints every rule of what it must not meet, with what happens', async () => {
    const memory = await disposalState();
    const { text } = await made(memory, [memory.barren], { working: false });
    const rules = neverFor(['barren-liquor']);
    expect(rules.length).toBeGreaterThan(5);
    const beginning = (said: string) => said.split(' ').slice(0, 3).join(' ');
    for (const { never, happens } of rules) {
      expect(text).toContain(beginning(never));
      expect(text).toContain(beginning(happens));
    }
    expect(text).toMatch(/Never: add ammonia waste/);
  });

  test('gives the careful day first, the other reading beside it on the sheet', async () => {
    const memory = await disposalState();
    await memory.does({
      do: 'state-local-rule',
      stated: { rule: 'storage-days', value: { value: '180', unit: 'days' } },
      saidBy: 'County office',
      saidOn: '2026-03-03',
    });
    const [alone, both] = [
      await made(memory, [memory.barren], { working: false }),
      await made(memory, [memory.barren, memory.wash], { working: false }),
    ];
    // 17 May and 180 days is 13 November.
    const days = '12 Nov 2026; by the longer count 13 Nov 2026';
    expect(alone.text).toContain(
      `Must leave by: ${days} (180 days from 17 May 2026: County office, 3 Mar 2026).`,
    );
    const list = both.pdf.pages
      .map(({ text }) => text.replace(/\s+/g, ' '))
      .find((page) => page.startsWith('Disposal papers') && page.includes('Container list Likely'));
    expect(list?.match(/12 Nov 2026/g)).toHaveLength(3);
    expect(list).not.toContain('13 Nov 2026');
  });

  test('never says that anything is safe or compliant', async () => {
    const memory = await disposalState();
    const { text, data } = await made(memory, [memory.barren, memory.wash]);
    expect(text).not.toMatch(forbidden);
    expect(JSON.stringify(data)).not.toMatch(forbidden);
  });

  test('carries the same data inside, and the whole hashes at its end', async () => {
    const memory = await disposalState();
    const { pdf, data, text } = await made(memory, [memory.barren]);
    const inside = pdf.attachments[fileName(data, 'json')];
    expect(JSON.parse(new TextDecoder().decode(inside))).toEqual(data);
    expect(text).toContain(data.contentHash);
    expect(text).toContain(data.lastEntry.hash);
  });

  test('prints every line of the working, or none when it is left out', async () => {
    const memory = await disposalState();
    const whole = await made(memory, [memory.barren]);
    for (const { id, kind } of whole.data.working)
      if (kind === 'worked-out') expect(whole.text).toMatch(new RegExp(`\\b${id}\\b`));
    const short = await made(memory, [memory.barren], { working: false });
    expect(short.text).not.toContain('With the numbers put in');
    expect(short.text).toContain('is in the data inside this file');
    expect(short.data.working).toEqual(whole.data.working);
    expect(short.pdf.pages.length).toBeLessThan(whole.pdf.pages.length);
  });

  test('of an invented workshop is marked on every page, in its data and in its name; a real one is not', async () => {
    const memory = await disposalState();
    const demo = await made(memory, [memory.barren, memory.wash], { demo: true, working: false });
    for (const { text } of demo.pdf.pages) expect(text).toContain('invented demo');
    expect(demo.data.demo).toBe(true);
    expect(fileName(demo.data, 'pdf')).toMatch(/^invented-/);
    const real = await made(memory, [memory.barren], { working: false });
    expect(real.text).not.toContain('invented demo');
    expect(fileName(real.data, 'pdf')).toBe('disposal-C-07-2026-05-17.pdf');
  });

  test('has its parts in order, and tells on its first page where each begins', async () => {
    const memory = await disposalState();
    const { pdf } = await made(memory, [memory.wash, memory.barren], { working: false });
    const pages = pdf.pages.map(({ text }) => text.replace(/\s+/g, ' '));
    const begins = (said: string): number => pages.findIndex((page, at) => at > 0 && page.includes(said)) + 1;
    const parts = [
      ['Container list', 'Container list Likely'],
      ['Generator’s statement', 'Generator’s statement By'],
      ['C‑02, characterisation sheet', 'Characterisation sheet C‑02'],
      ['C‑07, characterisation sheet', 'Characterisation sheet C‑07'],
      ['Emergency information', 'Emergency information For'],
      ['Transport and manifest data', 'Transport and manifest data Data'],
      ['Hand-over receipt', 'Hand-over receipt To fill in'],
      ['The workshop and its local rules', 'The workshop Name'],
    ] as const;
    const at = parts.map(([, said]) => begins(said));
    expect(at.every((page) => page > 1)).toBe(true);
    expect(at.toSorted((a, b) => a - b)).toEqual(at);
    parts.forEach(([title], n) => {
      expect(pages[0]).toContain(`${title} ${at[n]}`);
    });
  });

  test('stands on Letter as well', async () => {
    const memory = await disposalState();
    const { pdf } = await made(memory, [memory.barren], { paper: 'Letter', working: false });
    expect(pdf.pages[0]).toMatchObject({ width: 612, height: 792 });
  });

  test('shows what is wrong: too full, a tight cap, contents in doubt', async () => {
    const memory = await disposalState();
    const id = await memory.opens('C-09', '5', 'tight');
    const washed = { volume: { value: '4.9', unit: 'L' }, findings: [], freeAcid: [] } as const;
    const logged = await memory.does({
      do: 'log-stream',
      batchId: memory.batch,
      stepId: null,
      stream: 'wash-water',
      liquid: { ...washed, findings: [], freeAcid: [] },
    });
    const streamId = logged.body.kind === 'stream-logged' ? logged.body.streamId : '';
    await memory.does({ do: 'log-placement-happened', streamId, containerId: id, amount: washed.volume });
    await memory.does({
      do: 'mark-container',
      containerId: id,
      mark: 'contents-doubtful',
      note: 'Label gone.',
    });
    const { text } = await made(memory, [id], { working: false });
    expect(text).toContain('Too full: 4.90 L, limit 4.50 L (90 %).');
    expect(text).toContain('Tight cap');
    expect(text).toContain('Contents doubtful since');
  });
});
