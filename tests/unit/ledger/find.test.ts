import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayAtStart } from '../../../src/ledger/asked-days';
import { found, indexPart, newestFirst } from '../../../src/ledger/find';
import { FoundRow, foundRows } from '../../../src/ledger/found-rows';
import { anyRecord } from './any-record';
import { grams, id, litres, Scribe } from './scribe';

const names: Readonly<Record<string, string>> = { Cu: 'copper', Ag: 'silver', 'wash-water': 'Wash water' };

const row = (n: number, told: Partial<FoundRow>): FoundRow => ({
  is: 'container',
  id: id('c0', n),
  code: `C-${String(n).padStart(2, '0')}`,
  from: `2026-03-${String(n).padStart(2, '0')}T08:00:00.000Z`,
  to: `2026-03-${String(n).padStart(2, '0')}T09:00:00.000Z`,
  metals: [],
  words: [],
  ...told,
});

const dayOf = (at: string) => Number(at.slice(0, 10).replaceAll('-', ''));
const indexing = { say: (word: string) => names[word], dayOf, today: 20_261_130 };

/** In parts of two, as a long record has several. */
function index(...rows: readonly FoundRow[]) {
  const sorted = newestFirst(rows);
  return Array.from({ length: Math.ceil(sorted.length / 2) }, (_, i) =>
    indexPart(sorted.slice(2 * i, 2 * i + 2), indexing),
  );
}

const codes = (rows: readonly FoundRow[], typed: string) =>
  found(index(...rows), typed).map(({ code }) => code);

describe('a code', () => {
  const rows = [1, 2, 3, 4, 14, 24].map((n) => row(n, {})).concat(row(5, { code: 'C-104', words: ['C-04'] }));

  test.each(['C-04', 'c04', 'c 04', 'C‑04', ' c-04 '])(
    'typed as “%s” comes first, and what names it behind',
    (typed) => {
      expect(codes(rows, typed)).toEqual(['C-04', 'C-104']);
    },
  );

  test('is found by its beginning, the newest first', () => {
    expect(codes(rows, 'c')).toEqual(['C-24', 'C-14', 'C-104', 'C-04', 'C-03', 'C-02', 'C-01']);
    expect(codes(rows, 'c-2')).toEqual(['C-24']);
  });

  test('typed whole comes before newer ones that begin with it', () => {
    const longer = [row(1, { code: 'C-1' }), row(9, { code: 'C-12' }), row(8, { code: 'C-11' })];
    expect(codes(longer, 'c-1')).toEqual(['C-1', 'C-12', 'C-11']);
  });

  test('that nobody gave is found by nothing', () => {
    expect(codes([row(1, { code: '', words: ['tub'] })], 'jerrican')).toEqual([]);
  });
});

describe('words', () => {
  const rows = [
    row(1, { words: ['wash-water', 'Jürgen', 'tray A'], metals: ['Cu'] }),
    row(2, { words: ['wash-water', 'Maren'], metals: ['Ag'] }),
    row(3, { words: ['leach-liquor', 'Maren'], metals: ['Cu', 'Ag'] }),
  ];

  test.each([
    ['maren', ['C-03', 'C-02']],
    ['maren silver', ['C-03', 'C-02']],
    ['maren Ag leach', ['C-03']],
    ['jurgen', ['C-01']],
    ['JÜRGEN copper', ['C-01']],
    ['wash', ['C-02', 'C-01']],
    ['wash water copper', ['C-01']],
    ['cu', ['C-03', 'C-01']],
    ['aren', []],
    ['maren jürgen', []],
    ['', []],
    ['  - ', []],
  ])('“%s” finds %j', (typed, wanted) => {
    expect(codes(rows, typed)).toEqual(wanted);
  });
});

describe('days', () => {
  const rows = [
    row(1, { from: '2025-11-03T08:00:00.000Z', to: '2026-05-20T08:00:00.000Z' }),
    row(2, { from: '2026-03-14T08:00:00.000Z', to: '2026-03-14T08:00:00.000Z' }),
    row(3, { from: '2026-04-14T08:00:00.000Z', to: null }),
  ];

  // What began or ended then comes before what only lasted over it.
  test.each([
    ['2026-03', ['C-02', 'C-01']],
    ['2026-03-14', ['C-02', 'C-01']],
    ['2026-03-15', ['C-01']],
    ['March 2026', ['C-02', 'C-01']],
    ['mar 2026', ['C-02', 'C-01']],
    ['14 March', ['C-02', 'C-01']],
    ['14th of March 2026', ['C-02', 'C-01']],
    ['March 14, 2026', ['C-02', 'C-01']],
    ['14.3.2026', ['C-02', 'C-01']],
    ['14.03.', ['C-02', 'C-01']],
    ['14/3/2026', ['C-02', 'C-01']],
    ['3/14/2026', ['C-02', 'C-01']],
    ['november 2025', ['C-01']],
    ['2025', ['C-01']],
    ['2024', []],
    ['2026-11-30', ['C-03']],
    ['2026-12', []],
    ['14.4.26', ['C-03', 'C-01']],
    ['14 Smarch', []],
  ])('“%s” finds %j', (typed, wanted) => {
    expect(codes(rows, typed)).toEqual(wanted);
  });

  test('on which something ended come before what only lasted over them, however new that is', () => {
    const ended = row(1, { from: '2026-01-02T08:00:00.000Z', to: '2026-03-14T08:00:00.000Z' });
    const lasted = row(2, { from: '2026-02-02T08:00:00.000Z', to: '2026-05-14T08:00:00.000Z' });
    expect(codes([ended, lasted], '14 march 2026')).toEqual(['C-01', 'C-02']);
  });

  describe('typed in digits', () => {
    const load = (n: number, code: string, from: string) =>
      row(n, { is: 'hand-over', code, from, to: from, words: ['C-03', 'C-14'] });
    const rows = [
      row(1, { code: 'C-368', from: '2025-03-14T08:00:00.000Z', to: '2025-03-14T08:00:00.000Z' }),
      row(2, { code: 'C-320', from: '2025-02-01T08:00:00.000Z', to: '2025-05-20T08:00:00.000Z' }),
      load(3, 'FW-2025-08-14', '2025-08-14T08:00:00.000Z'),
      load(4, '2025-0314-7', '2025-09-20T08:00:00.000Z'),
    ];

    test.each(['2025-03', '2025-03-14', '14.3.2025', '14/3/2025', '3/14/2025'])(
      '“%s” comes before codes with the same digits in them, newer as they are',
      (typed) => {
        expect(codes(rows, typed).slice(0, 2)).toEqual(['C-368', 'C-320']);
      },
    );

    test('is a code all the same where one is the same as a whole', () => {
      expect(codes([...rows, load(5, '2025-03', '2025-09-20T08:00:00.000Z')], '2025-03')[0]).toBe('2025-03');
    });

    test('finds what began then before all that did not, whatever the codes are', () => {
      const at = fc.integer({ min: 1, max: 28 }).map((day) => String(day).padStart(2, '0'));
      const month = fc.integer({ min: 1, max: 12 }).map((one) => String(one).padStart(2, '0'));
      const moment = fc.tuple(month, at).map(([m, d]) => `2025-${m}-${d}`);
      fc.assert(
        fc.property(fc.array(fc.tuple(moment, moment), { maxLength: 12 }), moment, (told, day) => {
          const some = told.map(([from, named], n) =>
            row(n, { code: `FW-${named}`, from: `${from}T08:00:00.000Z`, to: `${from}T08:00:00.000Z` }),
          );
          const then = found(index(...some), day.slice(0, 7)).map(({ from }) => from.slice(0, 7));
          const first = then.filter((one) => one === day.slice(0, 7)).length;
          expect(then.slice(0, first)).toEqual(Array.from({ length: first }, () => day.slice(0, 7)));
          expect(first).toBe(told.filter(([from]) => from.startsWith(day.slice(0, 7))).length);
        }),
      );
    });
  });

  test('stand beside words', () => {
    const named = [row(1, { words: ['Maren'] }), row(2, { words: ['Maren'] }), row(3, { words: ['Ilse'] })];
    expect(codes(named, 'maren 2 march 2026')).toEqual(['C-02']);
    expect(codes(named, '2026-03 maren')).toEqual(['C-02', 'C-01']);
  });

  test('are words, too: a May who works here, a year in a number', () => {
    const named = [row(1, { words: ['May Lind'] }), row(2, { words: ['GB 2019 7'] })];
    expect(codes(named, 'may')).toEqual(['C-01']);
    expect(codes(named, '2019')).toEqual(['C-02']);
  });

  test('half typed never find less than they will', () => {
    for (const typed of ['14 march 2026', '14.3.2026', '2026-03-14', '14/3/2026'])
      for (let end = 4; end <= typed.length; end += 1)
        expect([typed.slice(0, end), codes(rows, typed.slice(0, end)).includes('C-02')]).toEqual([
          typed.slice(0, end),
          true,
        ]);
  });

  test.each(['32.3.2026', '2026-13', '14/13/2026', 'xyz'])('“%s” is no day', (typed) => {
    expect(dayAtStart(typed)).toBeNull();
  });
});

test('any text that may be typed is answered, and one more word never finds more', () => {
  const rows = [1, 2, 3, 4, 5].map((n) => row(n, { words: ['wash-water', 'Maren'], metals: ['Cu'] }));
  fc.assert(
    fc.property(
      fc.string({ unit: 'grapheme', maxLength: 12 }),
      fc.string({ maxLength: 4 }),
      (typed, more) => {
        const before = codes(rows, `${typed} maren`);
        expect(before.length).toBeLessThanOrEqual(rows.length);
        expect(new Set(before).size).toBe(before.length);
        expect(codes(rows, more).length).toBeLessThanOrEqual(rows.length);
      },
    ),
  );
});

describe('rows of a record', () => {
  test('fit their schema and name each thing once, whatever the record', () => {
    fc.assert(
      fc.property(anyRecord, (entries) => {
        const scribe = new Scribe();
        scribe.entries.push(...entries);
        const rows = [...foundRows(scribe.state)];
        for (const one of rows) {
          expect(FoundRow.safeParse(one.row).success).toBe(true);
          expect(one.of).toBe(rows.length);
        }
        expect(new Set(rows.map((one) => `${one.row.is} ${one.row.id}`)).size).toBe(rows.length);
      }),
    );
  });

  test('a container is found by what was in it, its batch and metals, also after it has left', () => {
    const scribe = new Scribe('a', id('90', 1));
    scribe.write({ kind: 'person-added', v: 1, personId: id('90', 1), name: 'Maren' });
    scribe.write({
      kind: 'batch-opened',
      v: 1,
      batchId: id('b0', 1),
      code: 'B-19',
      feed: { capacitors: 'mixed', era: 'unknown', mass: grams('500') },
    });
    scribe.write({
      kind: 'stream-logged',
      v: 1,
      streamId: id('50', 1),
      batchId: id('b0', 1),
      stepId: null,
      stream: 'wash-water',
      liquid: {
        volume: litres('2'),
        findings: [{ by: 'photometer', metal: 'Ag', concentration: { value: '1', unit: 'g/L' } }],
        freeAcid: [],
      },
    });
    scribe.write({
      kind: 'container-opened',
      v: 1,
      containerId: id('c0', 7),
      code: 'C-07',
      vessel: 'jerrican',
      capacity: litres('10'),
      material: 'HDPE',
      cap: 'vented',
      place: 'Lean-to',
      openedOn: '2026-03-02',
    });
    scribe.write({
      kind: 'stream-placed',
      v: 1,
      streamId: id('50', 1),
      containerId: id('c0', 7),
      amount: litres('2'),
    });
    scribe.write({
      kind: 'contents-moved',
      v: 1,
      fromContainerId: id('c0', 7),
      toContainerId: null,
      amount: litres('2'),
      purpose: 'spill',
    });
    scribe.write({
      kind: 'handed-over',
      v: 1,
      handOverId: id('a0', 1),
      collector: { name: 'Fenwater Collection' },
      document: 'FW-77',
      containers: [{ containerId: id('c0', 7) }],
      signatures: {},
    });
    const rows = [...foundRows(scribe.state)].map((one) => one.row);
    for (const typed of [
      'C-07',
      'silver lean',
      'b-19 maren',
      'wash jerrican',
      'fenwater',
      'FW-77',
      '2 march 2026',
    ])
      expect([typed, codes(rows, typed).includes('C-07')]).toEqual([typed, true]);
    expect(codes(rows, 'fw-77')[0]).toBe('FW-77');
  });
});
