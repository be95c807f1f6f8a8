import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import {
  attachmentOf,
  disposalPaper,
  fileName,
  labelsAnchor,
} from '../../../src/paperwork/disposal/disposal-paper';
import { disposalData } from '../../../src/paperwork/disposal/gather';
import type { Block } from '../../../src/paperwork/document';
import { labelsData } from '../../../src/paperwork/labels/gather';
import { labelPages } from '../../../src/paperwork/labels/label-pdf';
import { labelSheetFor } from '../../../src/paperwork/labels/label-sizes';
import { renderPdf } from '../../../src/paperwork/pdf/render';
import { labelsKnown } from '../../../src/screens/labels/known';
import { paperFonts } from '../../support/paper-fonts';
import { bare, type PopplerRead, readWithPoppler } from '../../support/poppler';
import { readPdf } from '../../support/read-pdf';
import { disposalState } from './disposal-state';

const signature = {
  name: 'Ines Halvard',
  signedAt: '2026-05-17T10:01:00.000Z',
  width: 400,
  height: 150,
  strokes: [
    [20, 80, 60, 30, 120, 110, 200, 40],
    [310, 90],
  ],
};

async function setOf(paper: 'A4' | 'Letter', demo: boolean) {
  const memory = await disposalState();
  await memory.does({ do: 'add-person', name: 'Joost', phone: '01632 960 134' });
  const state = memory.state.value;
  const ids = [memory.barren, memory.wash];
  const asked = {
    state,
    now: memory.now.value,
    zone: 'Europe/Paris',
    madeBy: 'Maren',
    sign: '.',
    demo,
    appAddress: 'https://book.example/',
  } as const;
  const data = disposalData(ids, { ...asked, signature });
  const labels = labelsData(ids, asked, labelsKnown(state, ids));
  const wanted = { sheet: labelSheetFor[paper], frame: 'red', firstPlace: 0 } as const;
  const bytes = await renderPdf(
    disposalPaper(data, { paper, working: false, drawings: new Map(), labels: true }),
    paperFonts,
    {
      attachments: [attachmentOf(data)],
      after: { anchor: labelsAnchor, pages: (pen) => labelPages(labels, wanted, pen) },
    },
  );
  return { data, bytes, read: readWithPoppler(bytes) };
}

type Set = Awaited<ReturnType<typeof setOf>>;

/** Texts of the data that are for people; names of members, identifiers and digits for programs are not printed. */
function textsIn(value: unknown, member = ''): string[] {
  if (typeof value === 'string') return [value];
  if (Array.isArray(value)) return value.flatMap((one) => textsIn(one, member));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, one]) => textsIn(one, name));
}

describe.each(['A4', 'Letter'] as const)('a set on %s, read by poppler', (paper) => {
  let set: Set;
  let read: PopplerRead;
  beforeAll(async () => {
    set = await setOf(paper, true);
    ({ read } = set);
  });

  test('has the size of its sheet on every page, a title, its language, tags, and says that it is PDF/A-3', async () => {
    const size = paper === 'A4' ? /^595\.\d+ x 841\.\d+$/ : /^612 x 792$/;
    expect(read.sizes).toHaveLength(Number(read.info.Pages));
    for (const one of read.sizes) expect(one).toMatch(size);
    expect(read.info).toMatchObject({ Title: 'Disposal papers', Tagged: 'yes' });
    expect(read.metadata).toMatch(/pdfaid:part>3</);
    expect((await readPdf(set.bytes)).language).toBe('en');
  });

  test('has every font inside, as a subset, with the letters that its marks stand for', () => {
    expect(read.fonts.length).toBeGreaterThanOrEqual(3);
    for (const font of read.fonts)
      expect(font).toMatchObject({ embedded: true, subset: true, unicode: true });
  });

  test('has the same data inside', () => {
    const inside = read.attachments[fileName(set.data, 'json')];
    expect(JSON.parse(new TextDecoder().decode(inside))).toEqual(set.data);
  });

  test('is marked as invented on every page, those of the labels with them', async () => {
    // Poppler lays text that stands aslant out letter by letter: this takes the other reader.
    const { pages } = await readPdf(set.bytes);
    expect(pages).toHaveLength(Number(read.info.Pages));
    for (const { text } of pages) expect(text).toContain('invented demo');
  });

  test('numbers its pages with the sheets of labels counted, and says where they begin', () => {
    const of = Number(read.info.Pages);
    const pages = read.text.split('\f').map((page) => page.replace(/\s+/g, ' '));
    const labels = pages.findIndex((page, at) => at > 3 && page.includes('must leave by')) + 1;
    expect(labels).toBeGreaterThan(1);
    expect(pages[1]).toContain(`page 2 of ${of}`);
    expect(pages[0]).toContain(`Labels, in their real size ${labels}`);
  });
});

describe('a set without a mark', () => {
  let set: Set;
  beforeAll(async () => {
    set = await setOf('A4', false);
  });

  test('prints every text of its statement, emergency information, carriage and sheets', () => {
    const printed = bare(set.read.text);
    const { statement, emergency, load, apart, containers, cautions } = set.data;
    const carriage = containers.map(({ carriage: of }) => [
      of.packages,
      of.wasteCodes.map(({ code, said }) => [code, said]),
      of.entries.slice(0, 1),
    ]);
    const sheets = containers.map((c) => [
      ...[c.code, c.name, c.colour, c.ph, c.state, c.place, c.tray, c.flags],
      c.substances.map(({ aLitre }) => (typeof aLitre === 'string' ? aLitre : [aLitre.low, aLitre.high])),
    ]);
    const { signature: _, ...said } = statement;
    const cards = emergency.cards.map(({ title, ...card }) => [title.toUpperCase(), textsIn(card)]);
    const all = [said, emergency.telephones, emergency.hazards, cards, cautions, carriage, sheets, apart];
    for (const text of textsIn([...all, load.withoutMass])) {
      // Numbers of members such as classes stand in a column of their own.
      const parts = bare(text);
      expect(
        printed.includes(parts) || parts.length < 3 || wordsOf(text).every((word) => printed.includes(word)),
        text,
      ).toBe(true);
    }
  });

  test('gives no number that nobody gave, but those of the emergency services', () => {
    const { telephones } = set.data.emergency;
    expect(telephones.map(({ number }) => number)).toEqual(expect.arrayContaining(['112']));
    expect(telephones.map(({ number }) => number)).toContain('01632 960 134');
    const record = JSON.stringify(set.data.workshop);
    for (const { number } of telephones)
      expect(['112', '911', 'not determined'].includes(number) || record.includes(number), number).toBe(true);
  });

  test('is small enough to mail', () => {
    expect(set.bytes.byteLength).toBeLessThan(500_000);
  });
});

/** Words as they can stand in the cells of a table, whose lines are read across. */
const wordsOf = (text: string): string[] => text.split(/[\s\u2009]+/).map(bare);

test('any letters of Latin, Greek, Cyrillic, and small figures above and below, can be read again', async () => {
  const letters = [...'abcxyzÀÉßøłőșğıĲŒſ', ...'αβγΔΩάώς', ...'БДЖЩыюяЁїґ', ...'²³⁴⁻⁺₀₂₃₄½°µ·×−–‑’“”'];
  const word = fc
    .array(fc.constantFrom(...letters), { minLength: 1, maxLength: 12 })
    .map((all) => all.join(''));
  const words = fc.sample(word, { numRuns: 200, seed: 7 });
  const parts = words.map((text): Block => ({ kind: 'paragraph', text: `(${text})` }));
  const paper = {
    title: 'Letters',
    language: 'en',
    subject: 'Letters',
    author: 'Letters',
    createdAt: '2026-05-14T09:58:00Z',
    paper: 'A4',
    runningHead: '',
    footLines: [],
    parts,
  } as const;
  const { text } = readWithPoppler(await renderPdf(paper, paperFonts));
  for (const one of words) expect(text).toContain(`(${one})`);
});
