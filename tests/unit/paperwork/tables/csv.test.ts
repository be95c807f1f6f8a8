import { spawnSync } from 'node:child_process';
import { parse } from 'csv-parse/sync';
import Decimal from 'decimal.js';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type CsvForm,
  csvBytes,
  csvText,
  forPrograms,
  forSheets,
} from '../../../../src/paperwork/tables/csv';
import { filled, type Table } from '../../../../src/paperwork/tables/table';

const forms = [
  ['for programs', forPrograms],
  ['for a spreadsheet with a decimal point', forSheets('.')],
  ['for a spreadsheet with a decimal comma', forSheets(',')],
] as const;

type Row = { readonly note: string; readonly mass: string };

const table = (rows: readonly Row[]): Table =>
  filled(
    {
      name: 'notes',
      says: 'Notes.',
      columns: [
        { name: 'note', says: 'A note.', kind: 'text', of: ({ note }) => note },
        { name: 'mass', says: 'A mass.', kind: 'number', unit: { is: 'g' }, of: ({ mass }) => mass },
      ],
    },
    rows,
  );

/** As a parser that is not the writer's reads it, without its heads. */
const readBack = (bytes: Uint8Array, { separator }: CsvForm): string[][] =>
  parse(Buffer.from(bytes), { bom: true, delimiter: separator, record_delimiter: '\r\n' }).slice(1);

/** What the READ-ME says to do. */
const undone = (cell: string): string => (cell.startsWith("'") ? cell.slice(1) : cell);

const tricky = fc.string({
  unit: fc.constantFrom(...'=+-@\'",;.:/|%\t\r\n 0123456789eE＝＋－＠−\u200b\u202e\u2066\ufeff\u00a0é鉛🧪'),
  minLength: 1,
  maxLength: 12,
});
const anyText = fc.oneof(tricky, fc.string({ unit: 'binary', minLength: 1 }));
const anyNumber = fc
  .tuple(
    fc.boolean(),
    fc.bigInt({ min: 0n, max: 10n ** 20n }),
    fc.option(fc.string({ unit: fc.constantFrom(...'0123456789'), minLength: 1, maxLength: 20 })),
  )
  .map(([minus, whole, part]) => `${minus ? '-' : ''}${whole}${part === null ? '' : `.${part}`}`);
const anyRows = fc.array(fc.record({ note: anyText, mass: anyNumber }), { maxLength: 6 });

describe.each(forms)('a table %s', (_, form) => {
  test('gives back every text but for the apostrophe, and every number to its last digit', () => {
    fc.assert(
      fc.property(anyRows, (rows) => {
        const read = readBack(csvBytes(table(rows), form), form);
        expect(read.map(([note = '']) => undone(note))).toEqual(rows.map(({ note }) => note));
        read.forEach(([, mass = ''], at) => {
          expect(mass).not.toContain(form.sign === ',' ? '.' : ',');
          expect(new Decimal(mass.replace(',', '.')).eq(rows[at]?.mass ?? '')).toBe(true);
        });
      }),
    );
  });

  test('has no cell that begins with a formula sign, unless it is a number', () => {
    fc.assert(
      fc.property(anyRows, (rows) => {
        for (const cell of readBack(csvBytes(table(rows), form), form).flat()) {
          const seen = cell.normalize('NFKC').replace(/^[\s\p{Z}\p{C}]+/u, '');
          if (/^[=+@−-]/.test(seen)) expect(cell).toMatch(/^-?\d+([.,]\d+)?$/);
          expect(cell).not.toMatch(/^[\t\r\n]/);
        }
      }),
    );
  });

  test('keeps negative numbers numbers, and writes very large and small ones out', () => {
    const masses = ['-0.5', '-12', '0', '0.00000000001', '123456789012345678901234567890'];
    const read = readBack(csvBytes(table(masses.map((mass) => ({ note: 'n', mass }))), form), form);
    expect(read.map(([, mass]) => mass)).toEqual(masses.map((mass) => mass.replace('.', form.sign)));
  });

  test('says that a number is not determined in its own place', () => {
    const text = csvText(table([{ note: 'n', mass: 'not determined' }]), form);
    expect(text).toContain(`n${form.separator}not determined\r\n`);
  });

  test('reads the same in Python, which has a reader of its own', () => {
    const notes = [
      'a "word"',
      'two\r\nlines',
      'one;two,three',
      '=1+1',
      '🧪 \u202eright',
      ' space ',
      'x'.repeat(2000),
    ];
    const rows = notes.map((note, at) => ({ note, mass: `-${at}.50` }));
    const code = [
      'import csv, io, json, sys, decimal',
      `rows = list(csv.reader(io.StringIO(sys.stdin.buffer.read().decode('utf-8-sig'), newline=''), delimiter='${form.separator}', strict=True))[1:]`,
      "print(json.dumps([[n, str(decimal.Decimal(m.replace(',', '.')))] for n, m in rows]))",
    ].join('\n');
    const { stdout, stderr } = spawnSync('python3', ['-c', code], { input: csvBytes(table(rows), form) });
    expect(stderr.toString()).toBe('');
    const read: string[][] = JSON.parse(stdout.toString());
    expect(read.map(([note = '', mass]) => [undone(note), mass])).toEqual(
      rows.map(({ note, mass }) => [note, mass]),
    );
  });
});

describe('the bytes', () => {
  const rows = [{ note: 'aaa, "b"\r\nbb; ccc', mass: '17.6' }];

  test('are those of RFC 4180 for programs: comma, CRLF, doubled quotes, no mark in front', () => {
    expect(csvText(table(rows), forPrograms)).toBe('note,mass\r\n"aaa, ""b""\r\nbb; ccc",17.6\r\n');
  });

  test('have semicolon, decimal comma and the mark of UTF-8 where the sign is a comma', () => {
    const bytes = csvBytes(table(rows), forSheets(','));
    expect([...bytes.slice(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
    expect(new TextDecoder().decode(bytes)).toBe('note;mass\r\n"aaa, ""b""\r\nbb; ccc";17,6\r\n');
  });

  test('are a line of heads where there is no row', () => {
    expect(csvText(table([]), forPrograms)).toBe('note,mass\r\n');
  });
});

test('text that looks like a number or a day stays text in a spreadsheet, and is as it was for programs', () => {
  const notes = ['007', '3-4', '17.6', 'Mar-1', 'C-07'];
  const read = (form: CsvForm) =>
    readBack(csvBytes(table(notes.map((note) => ({ note, mass: '1' }))), form), form).map(([note]) => note);
  expect(read(forPrograms)).toEqual(notes);
  for (const sign of ['.', ','] as const)
    expect(read(forSheets(sign))).toEqual(["'007", "'3-4", "'17.6", "'Mar-1", 'C-07']);
});

describe('a note longer than a cell of a spreadsheet', () => {
  // 32,767 characters: Microsoft, "Excel specifications and limits".
  const note = (length: number): string => `=${length % 2 === 0 ? 'x' : ''}${'🧪'.repeat((length - 1) / 2)}`;
  const cellOf = (length: number, form: CsvForm): string =>
    readBack(csvBytes(table([{ note: note(length), mass: '1' }]), form), form)[0]?.[0] ?? '';

  test('is cut for the spreadsheet, says so, and leaves no half character', () => {
    for (const length of [32_767, 32_768, 40_001]) {
      const cell = cellOf(length, forSheets('.'));
      expect(cell.length).toBeLessThanOrEqual(32_767);
      expect(cell.slice(-60)).toMatch(/\[cut: the whole text is in the file for programs\]$/);
      expect(cell.includes('\ufffd')).toBe(false);
    }
  });

  // Not toBe on the texts: a difference would print them.
  test('is whole for programs', () => {
    expect(undone(cellOf(60_001, forPrograms)) === note(60_001)).toBe(true);
  });

  test('is not cut where it fits with its apostrophe', () => {
    expect(cellOf(32_766, forSheets('.')) === `'${note(32_766)}`).toBe(true);
  });
});

describe('a table that is defined wrongly', () => {
  test.each(['118 g', '1,5', '+1', '1e3', '−1', '1\u202f000', ''])('is refused: "%s" as a number', (mass) => {
    expect(() => table([{ note: 'n', mass }])).toThrow(`"${mass}" is no number for "mass"`);
  });

  test('is refused: an empty text', () => {
    expect(() => table([{ note: '', mass: '1' }])).toThrow('"" is no text for "note" of the table "notes"');
  });

  test('is refused: two columns of one name', () => {
    const column = { name: 'note', says: 'A note.', kind: 'text', of: () => 'n' } as const;
    expect(() => filled({ name: 'notes', says: 'Notes.', columns: [column, column] }, [])).toThrow(
      /one name/,
    );
  });
});
