import { describe, expect, test } from 'vitest';
import { type Block, type PaperDocument, type Text, table } from '../../../src/paperwork/document';
import { renderPdf } from '../../../src/paperwork/pdf/render';
import { paperFonts } from '../../support/paper-fonts';
import { readPdf, textOf } from '../../support/read-pdf';
import { sampleLabel, samplePaper } from './sample-paper';

const paperOf = (parts: readonly Block[], more: Partial<PaperDocument> = {}): PaperDocument => ({
  title: 'List of containers',
  language: 'en',
  subject: 'Containers',
  author: 'Weir Yard shed',
  createdAt: '2026-05-14T09:58:00Z',
  paper: 'A4',
  runningHead: 'List of containers, Weir Yard shed',
  footLines: ['Record entry 12'],
  pageWords: 'page {page} of {pages}',
  parts,
  ...more,
});

const paragraph = (text: Text): Block => ({ kind: 'paragraph', text });
const read = async (paper: PaperDocument) => readPdf(await renderPdf(paper, paperFonts));
const times = (text: string, count: number) => Array.from({ length: count }, () => text).join(' ');

/** `count` rows, each with a number at the first and the last of its lines. */
const longTable = (count: number) =>
  table(
    [
      { key: 'code', head: 'Code of the row', share: 1 },
      { key: 'what', head: 'Content', share: 2 },
      { key: 'volume', head: 'Volume', share: 1, align: 'right' },
    ],
    Array.from({ length: count }, (_, row) => ({
      kind: 'cells' as const,
      cells: {
        code: `begin${row}`,
        what: `${times('copper nitrate', 1 + (row % 12))} end${row}`,
        volume: { text: (row * 7.3).toFixed(2), unit: row % 3 === 0 ? 'mL' : 'L' },
      },
    })),
  );

describe('a table longer than a page', () => {
  test('has its header on every page, and every row once', async () => {
    const { pages } = await read(paperOf([longTable(130)]));
    expect(pages.length).toBeGreaterThan(3);
    for (const page of pages) expect(page.text.match(/Code of the row/g)).toHaveLength(1);
    const all = pages.map((page) => page.text).join('\n');
    const begun = [...all.matchAll(/begin(\d+)/g)].map((match) => Number(match[1]));
    expect(begun).toEqual(Array.from({ length: 130 }, (_, row) => row));
    expect(all.match(/end\d+/g)).toHaveLength(130);
  });

  test('splits no row', async () => {
    const { pages } = await read(paperOf([longTable(130)]));
    for (const page of pages)
      expect(
        page.text
          .match(/begin\d+/g)
          ?.map((row) => row.slice(5))
          .sort(),
      ).toEqual(
        page.text
          .match(/end\d+/g)
          ?.map((row) => row.slice(3))
          .sort(),
      );
  });

  test('shows a row higher than a page in full, on several', async () => {
    const words = Array.from({ length: 1500 }, (_, index) => `word${index}`);
    const rows = [
      { kind: 'cells' as const, cells: { name: 'before', says: 'short' } },
      { kind: 'cells' as const, cells: { name: 'tall', says: words.join(' ') } },
    ];
    const columns = [
      { key: 'name' as const, head: 'Name', share: 1 },
      { key: 'says' as const, head: 'Says', share: 1 },
    ];
    const { pages } = await read(paperOf([table(columns, rows)]));
    const found = pages.flatMap((page) => page.text.match(/word\d+/g) ?? []);
    expect(found).toEqual(words);
  });
});

test('figures of a right column end at one edge and their units begin at another', async () => {
  const { pages } = await read(paperOf([longTable(9)]));
  const runs = pages[0]?.runs ?? [];
  const ends = runs.filter((run) => /^\d+\.\d\d$/.test(run.text)).map((run) => run.right);
  const units = runs.filter((run) => /^\s*m?L$/.test(run.text)).map((run) => run.x);
  expect(ends).toHaveLength(9);
  expect(Math.max(...ends) - Math.min(...ends)).toBeLessThan(0.05);
  expect(units.length).toBeGreaterThan(0);
  expect(Math.max(...units) - Math.min(...units)).toBeLessThan(0.05);
});

test('every page says which it is and of how many, and all but the first carry the running head', async () => {
  const { pages } = await read({ ...samplePaper, paper: 'Letter' });
  expect(pages.length).toBeGreaterThan(3);
  pages.forEach((page, index) => {
    expect(page.text).toContain(`page ${index + 1} of ${pages.length}`);
    expect(page.text.includes(samplePaper.runningHead)).toBe(index > 0);
    expect(page.text).toContain('Record entry 1 214');
  });
});

test.each(['A4', 'Letter', 'A6', '4x6in'] as const)(
  'nothing leaves the %s page, however long',
  async (paper) => {
    const word = 'x'.repeat(400);
    // What cannot be cut at the end of a page: titles, heads of columns, labels.
    const name = 'x'.repeat(90);
    const { pages } = await read(
      paperOf(
        [
          { kind: 'heading', level: 1, text: `Heading ${name}` },
          paragraph(times('a paragraph of many words', 300)),
          paragraph([{ text: word, strong: true }, { text: word }]),
          { kind: 'facts', facts: [{ term: word, says: word }] },
          { kind: 'list', items: [word] },
          { kind: 'caution', text: word },
          { kind: 'mark', mark: 'wrong', text: word },
          { kind: 'signatures', lines: [{ label: name }, { label: name }, { label: name }] },
          {
            kind: 'working',
            lines: [{ sentence: word, formula: word, result: { text: word, unit: 'mol' }, source: word }],
          },
          table(
            [
              { key: 'a', head: name, share: 1 },
              { key: 'b', head: 'b', share: 1, align: 'right' },
            ],
            [{ kind: 'cells', cells: { a: word, b: { text: word, unit: 'g/L' } } }],
          ),
          { kind: 'columns', left: [paragraph(word)], right: [paragraph(times('right', 900))] },
        ],
        { paper, masthead: { line: name, code: name }, title: `Title ${name}`, footLines: [name] },
      ),
    );
    for (const { runs, width, height } of pages)
      for (const run of runs) {
        expect(run.x, run.text).toBeGreaterThan(16);
        expect(run.right, run.text).toBeLessThan(width - 16);
        expect(run.y, run.text).toBeGreaterThan(16);
        expect(run.y + run.size * 0.7, run.text).toBeLessThan(height - 16);
      }
  },
);

test('a heading is not the last line of a page', async () => {
  for (let lines = 46; lines < 62; lines += 1) {
    const filler = Array.from({ length: lines }, () => 'line').join('\n');
    const { pages } = await read(
      paperOf([paragraph(filler), { kind: 'heading', level: 1, text: 'Must not meet' }, longTable(3)]),
    );
    const page = pages.find(({ text }) => text.includes('Must not meet'));
    expect(page?.text).toContain('begin0');
  }
});

test('parts that belong together go to the next page together', async () => {
  const filler = Array.from({ length: 50 }, () => 'line').join('\n');
  const together: Block = {
    kind: 'together',
    parts: Array.from({ length: 20 }, (_, index) => paragraph(`member${index}`)),
  };
  const { pages } = await read(paperOf([paragraph(filler), together]));
  expect(pages.map((page) => page.text.match(/member\d+/g)?.length ?? 0)).toEqual([0, 20]);
});

test('groups side by side go on in their own columns on the next page', async () => {
  const words = (name: string, count: number) =>
    paragraph(Array.from({ length: count }, (_, index) => `${name}${index}`).join('\n'));
  const { pages } = await read(
    paperOf([
      { kind: 'columns', left: [words('left', 80)], right: [words('right', 10)] },
      paragraph('after'),
    ]),
  );
  expect(pages).toHaveLength(2);
  const runs = pages.flatMap((page) => page.runs);
  expect(runs.filter((run) => run.text.startsWith('left'))).toHaveLength(80);
  expect(runs.filter((run) => run.text.startsWith('right'))).toHaveLength(10);
  const [first, second] = pages;
  expect(first?.runs.find((run) => run.text === 'left0')?.y).toBe(
    first?.runs.find((run) => run.text === 'right0')?.y,
  );
  expect(second?.text).toContain('after');
});

test('signs of chemistry and other scripts come out as they were written', async () => {
  const words =
    'H₂SO₄ SO₄²⁻ [Cu(NH₃)₄]²⁺ CuSO₄·5H₂O 2→3 A⇌B ≥≤±×÷−√≈ µg Ω αβΔ 10⁻³ 20\u00a0°C 1\u202f214 6.70\u2009L C\u201107 Привет Łódź Ångström ß € “so”';
  const text = await textOf(await renderPdf(paperOf([paragraph(words)]), paperFonts));
  // The reader shows every kind of space as a plain one.
  for (const word of words.split(' ')) expect(text).toContain(word.replace(/\s/g, ' '));
});

test('letters that the fonts do not have leave a mark each, and no gap', async () => {
  const text = await textOf(await renderPdf(paperOf([paragraph('(Yard 🧪) (سارة) (Ωж)')]), paperFonts));
  expect(text.replace(/\s+/g, ' ')).toContain('(Yard \ufffd) (\ufffd\ufffd\ufffd\ufffd) (Ωж)');
});

test('the longest code stands whole at the head of a part, beside its title and its drawing', async () => {
  const corner = { width: 48, height: 48, says: 'Pattern', shapes: [] };
  const head = { kind: 'part-head', title: 'Characterisation sheet', line: 'Weir Yard', corner } as const;
  for (const code of ['BARREN\u2011LIQUOR\u2011KI', 'WWWWWWWWWWWWWWWW', 'C\u201101'])
    for (const paper of ['A4', 'Letter'] as const) {
      const { pages } = await read(paperOf([{ ...head, code, anchor: code }], { paper }));
      const line = pages[0]?.text ?? '';
      expect(line).toContain(code);
      expect(line).toContain('Characterisation sheet');
    }
});

test('a code with U+2011 and a figure with its unit are never parted', async () => {
  for (let width = 1; width < 40; width += 1) {
    const text = `${'i'.repeat(width)} C\u201107 6.70\u2009L B-17 `;
    const { pages } = await read(paperOf([paragraph(times(text, 12))], { paper: 'A6' }));
    for (const piece of ['C\u201107', '6.70 L', 'B-17']) expect(pages[0]?.text.split(piece).length).toBe(13);
  }
});

describe('the file', () => {
  test('has its title, language, paper size and only fonts of its own', async () => {
    const { title, language, pages } = await read(samplePaper);
    expect(title).toBe('Characterisation sheet');
    expect(language).toBe('en');
    for (const page of pages) {
      expect([page.width, page.height].map(Math.round)).toEqual([595, 842]);
      for (const font of page.fonts) expect(font).toMatch(/^[A-Z]{6}\+DejaVuS[a-zA-Z-]+$/);
    }
    const label = await read(sampleLabel);
    expect(label.pages.map(({ width, height }) => [width, height].map(Math.round))).toEqual([[298, 420]]);
  });

  test('tells a screen reader its headings, lists, tables and figures', async () => {
    const { pages } = await read(samplePaper);
    const roles = new Set(pages.flatMap((page) => page.roles));
    for (const role of [
      'Document',
      'H1',
      'H2',
      'P',
      'L',
      'LI',
      'Lbl',
      'LBody',
      'Table',
      'TR',
      'TH',
      'TD',
      'Figure',
    ])
      expect(roles).toContain(role);
  });

  test('says that it is PDF/A-3a and that its title is to be shown', async () => {
    const bytes = await renderPdf(samplePaper, paperFonts);
    const file = new TextDecoder('latin1').decode(bytes);
    expect(file).toContain('<pdfaid:part>3</pdfaid:part>');
    expect(file).toContain('<pdfaid:conformance>A</pdfaid:conformance>');
    const { titleShown, marked } = await readPdf(bytes);
    expect({ titleShown, marked }).toEqual({ titleShown: true, marked: true });
  });

  test('carries what is attached to it, byte for byte', async () => {
    const data = new TextEncoder().encode('{"container":"C-07","volume":"6.70"}');
    const attachment = {
      name: 'c-07.json',
      bytes: data,
      mime: 'application/json',
      description: 'The same data',
    };
    const bytes = await renderPdf(samplePaper, paperFonts, { attachments: [attachment] });
    const { attachments } = await readPdf(bytes);
    expect(Object.keys(attachments)).toEqual(['c-07.json']);
    expect([...(attachments['c-07.json'] ?? [])]).toEqual([...data]);
  });

  test('is the same for the same paper', async () => {
    const [first, second] = [
      await renderPdf(samplePaper, paperFonts),
      await renderPdf(samplePaper, paperFonts),
    ];
    expect(second).toEqual(first);
  });
});

test('a watermark stands on every page', async () => {
  const { pages } = await read({ ...samplePaper, watermark: 'draft' });
  for (const page of pages) expect(page.runs.some((run) => run.text === 'draft')).toBe(true);
});

describe('a paper that would say nothing is refused', () => {
  const columns = [{ key: 'a' as const, head: 'A', share: 1 }];
  test.each([
    ['a blank cell', table(columns, [{ kind: 'cells', cells: { a: ' ' } }])],
    ['a blank note', table(columns, [{ kind: 'note', text: '' }])],
    ['no rows', table(columns, [])],
    ['a blank fact', { kind: 'facts' as const, facts: [{ term: 'pH', says: ' ' }] }],
    [
      'a blank result',
      { kind: 'working' as const, lines: [{ sentence: 'Base needed', result: { text: '' } }] },
    ],
  ])('%s', async (_, block) => {
    await expect(renderPdf(paperOf([block]), paperFonts)).rejects.toThrow(/nothing|no rows/);
  });
});
