import { parse } from 'csv-parse/sync';
import Decimal from 'decimal.js';
import { describe, expect, test } from 'vitest';
import type { DisposalData, PaperFigure } from '../../../../src/paperwork/disposal/disposal-data';
import { disposalData } from '../../../../src/paperwork/disposal/gather';
import { plainNumber, plainText } from '../../../../src/paperwork/tables/plain';
import { tablesOf } from '../../../../src/paperwork/tables/tables-of';
import { disposalState } from '../disposal-state';

type Row = Readonly<Record<string, string>>;

async function made(sign: '.' | ',', more: Partial<Parameters<typeof disposalData>[1]> = {}) {
  const { state, now, barren, wash } = await disposalState();
  const asked = { state: state.value, now: now.value, zone: 'Europe/Paris', madeBy: 'Maren', demo: false };
  const data = disposalData([barren, wash], { ...asked, sign, ...more });
  return { data, files: tablesOf(data, sign) };
}

const rowsOf = (files: ReturnType<typeof tablesOf>, folder: string, name: string, delimiter = ','): Row[] => {
  const file = files.find((each) => each.folder === folder && each.name === `${name}.csv`);
  return parse(Buffer.from(file?.bytes ?? []), { bom: true, delimiter, columns: true });
};

const figuresIn = (value: unknown): PaperFigure[] => {
  if (typeof value !== 'object' || value === null) return [];
  return 'lowValue' in value ? [value as PaperFigure] : Object.values(value).flatMap(figuresIn);
};

describe('a number as printed', () => {
  test.each([
    ['17,6', '17.6'],
    ['17.6', '17.6'],
    ['−0,30', '-0.30'],
    ['12\u202f345,6', '12345.6'],
    ['1\u202f234\u202f567', '1234567'],
  ])('%s is %s to a program', (printed, plain) => {
    expect(plainNumber(printed)).toBe(plain);
  });

  test.each(['17.6 g', '17,6,1', '1 000', 'none', ''])(
    'is refused where it is more than that: "%s"',
    (printed) => {
      expect(() => plainNumber(printed)).toThrow('is more than a number');
    },
  );

  test.each(['.', ','] as const)('is one wherever the data has one, with "%s"', async (sign) => {
    const figures = figuresIn((await made(sign)).data);
    expect(figures.length).toBeGreaterThan(200);
    for (const { likely, low, high, lowValue, highValue } of figures) {
      const [l, m, h] = [low, likely, high].map((text) => new Decimal(plainNumber(text)));
      expect(l?.lte(new Decimal(lowValue).plus(1e-9)) && h?.gte(new Decimal(highValue).minus(1e-9))).toBe(
        true,
      );
      expect(m?.isFinite()).toBe(true);
    }
  });
});

describe('the tables of a disposal paper', () => {
  test('say what is in the barren liquor as the paper does, and once with every digit', async () => {
    const { files } = await made('.');
    const row = rowsOf(files, 'programs', 'composition').find(
      ({ container, symbol }) => container === 'C-07' && symbol === 'Cu',
    );
    expect(row).toMatchObject({
      substance: 'Copper',
      'a litre low': '15.8',
      'a litre likely': '17.6',
      'a litre high': '19.4',
      'a litre unit': 'g/L',
      'in all low': '104',
      'in all likely': '118',
      'in all high': '132',
      'in all unit': 'g',
      'in all unrounded': '117.92',
      'how known': 'photometer, 11 May 2026',
      'evidence from': '2026-05-11',
      'evidence to': '2026-05-11',
    });
  });

  test('say from when to when something was determined, whatever the order of its evidence', async () => {
    const { data } = await made('.');
    const evidence = [
      { how: 'strip', on: ['2026-05-13'] },
      { how: 'photometer', on: ['2026-05-11', '2026-05-12'] },
    ];
    const containers = data.containers.map((c) => ({
      ...c,
      substances: c.substances.map((s) => (s.symbol === 'Ni' ? { ...s, evidence } : s)),
    }));
    const rows = rowsOf(tablesOf({ ...data, containers }, '.'), 'programs', 'composition');
    const days = rows.flatMap(({ container, symbol, ...row }) =>
      symbol === 'Ni' ? [[container, row['evidence from'], row['evidence to']]] : [],
    );
    expect(days).toEqual([
      ['C-07', '2026-05-11', '2026-05-13'],
      ['C-02', 'not determined', 'not determined'],
    ]);
  });

  test('have decimal commas and semicolons where the person writes a comma, and the same for programs', async () => {
    const [point, comma] = [await made('.'), await made(',')];
    const ours = rowsOf(comma.files, 'spreadsheet', 'composition', ';');
    const same = rowsOf(point.files, 'programs', 'composition');
    expect(ours).toHaveLength(same.length);
    ours.forEach((row, at) => {
      for (const [name, cell] of Object.entries(row))
        if (/(low|likely|high|unrounded)$/.test(name)) {
          expect(cell).toMatch(/^(not determined|-?\d+(,\d+)?)$/);
          expect(cell.replace(',', '.')).toBe(same[at]?.[name]);
        }
    });
    expect(ours.find(({ symbol }) => symbol === 'Cu')?.['a litre likely']).toBe('17,6');
  });

  test('say "not determined" in the place of every number that nobody knows: never empty, never zero', async () => {
    const { files } = await made('.');
    const ofWash = rowsOf(files, 'programs', 'composition').filter(({ container }) => container === 'C-02');
    expect(ofWash.length).toBeGreaterThan(5);
    for (const row of ofWash)
      for (const name of ['low', 'likely', 'high', 'unit', 'unrounded'])
        expect([row[`a litre ${name}`], row[`in all ${name}`]]).toEqual(['not determined', 'not determined']);
    for (const { bytes, name } of files)
      for (const row of parse(Buffer.from(bytes), { bom: true }) as string[][])
        expect(
          row.filter((cell) => cell.trim() === ''),
          name,
        ).toEqual([]);
  });

  test('say "not determined" of a container that no rule can be put to', async () => {
    const { data } = await made('.');
    const containers = data.containers.map(({ laws: _, ...c }) => c);
    const open = rowsOf(tablesOf({ ...data, containers }, '.'), 'programs', 'not-determined');
    expect(open.map(({ container, what, decides }) => [container, what, decides])).toEqual([
      ['C-07', 'not determined', 'not determined'],
      ['C-02', 'not determined', 'not determined'],
    ]);
  });

  test('leave no container, substance, candidate, number, rule, entry, flag or line of the working out', async () => {
    const { data, files } = await made(',');
    const count = (of: (c: DisposalData['containers'][number]) => number): number =>
      data.containers.reduce((sum, c) => sum + of(c), 0);
    const wanted: Readonly<Record<string, number>> = {
      containers: 2,
      composition: count((c) => c.substances.length),
      'wet-solids': count((c) => c.residues.length),
      bases: count((c) => c.bases.length * 6),
      'must-not-meet': count((c) => c.mustNotMeet.length),
      candidates: count((c) => c.laws?.candidates.length ?? 0),
      'numbers-behind-candidates': count(
        (c) => c.laws?.candidates.flatMap(({ numbers }) => numbers).length ?? 0,
      ),
      'codes-given': count((c) => c.laws?.given.length ?? 0),
      'not-determined': count((c) => c.laws?.lacking.length ?? 1),
      dilution: count((c) => c.laws?.dilution.length ?? 0),
      flags: count((c) => c.flags.length),
      'entries-behind': count((c) => c.entries.length),
      'local-rules': data.localRules.length,
      working: data.working.length,
    };
    for (const [name, rows] of Object.entries(wanted)) {
      expect(rowsOf(files, 'programs', name), name).toHaveLength(rows);
      expect(rowsOf(files, 'spreadsheet', name, ';'), name).toHaveLength(rows);
    }
    expect(wanted.candidates).toBeGreaterThan(5);
    expect(wanted['numbers-behind-candidates']).toBeGreaterThan(5);
  });

  test('name the container in each row by the code and the id of the record', async () => {
    const { data, files } = await made('.');
    const known = data.containers.map(({ code, containerId }) => `${plainText(code)} ${containerId}`);
    expect(known[0]).toMatch(/^C-07 /);
    for (const name of [
      'composition',
      'bases',
      'candidates',
      'must-not-meet',
      'flags',
      'entries-behind',
      'working',
    ])
      for (const row of rowsOf(files, 'programs', name))
        expect(known).toContain(`${row.container} ${row['container id']}`);
  });

  test('point to lines that are in the working', async () => {
    const { files } = await made('.');
    const lines = rowsOf(files, 'programs', 'working').map(({ line }) => line);
    const pointed = ['composition', 'bases', 'numbers-behind-candidates'].flatMap((name) =>
      rowsOf(files, 'programs', name).flatMap((row) =>
        Object.entries(row).flatMap(([head, cell]) => (/(^| )line$/.test(head) ? [cell] : [])),
      ),
    );
    expect(pointed.length).toBeGreaterThan(40);
    expect(
      pointed.filter((line) => line !== 'not determined' && line !== 'none' && !lines.includes(line)),
    ).toEqual([]);
  });

  test('explain every column of every table, with its kind and unit', async () => {
    const { files } = await made('.');
    const told = rowsOf(files, 'programs', 'columns');
    const programs = files.filter(({ folder }) => folder === 'programs');
    const heads = programs.flatMap(({ name, bytes }) =>
      (parse(Buffer.from(bytes), { to_line: 1 }) as string[][]).flat().map((head) => `${name} ${head}`),
    );
    expect(told.map(({ table, column }) => `${table}.csv ${column}`)).toEqual(heads);
    for (const { table, column, kind, unit, meaning } of told) {
      expect(meaning).toMatch(/^[A-Z].+\.$/);
      const [, named] = /^in the column "(.+)"$/.exec(unit ?? '') ?? [];
      if (named !== undefined) expect(heads).toContain(`${table}.csv ${named}`);
      if (kind !== 'number') expect(unit, column).toBe('none');
    }
  });

  test('carry the cautions, the hash and who made them', async () => {
    const { data, files } = await made('.');
    const said = rowsOf(files, 'programs', 'paper').map(({ what, says }) => `${what}: ${says}`);
    for (const caution of data.cautions) expect(said).toContain(`caution: ${caution}`);
    expect(said).toContain(`content hash (SHA-256): ${data.contentHash}`);
    expect(said).toContain('made by: Maren');
  });

  test('are named as invented where they are', async () => {
    const { files } = await made('.', { demo: true });
    expect(files.filter(({ name }) => !name.startsWith('invented-'))).toEqual([]);
  });

  test('do not begin with "ID", which some spreadsheets take for another format', async () => {
    for (const { bytes, name } of (await made(',')).files)
      expect(new TextDecoder().decode(bytes).slice(0, 2), name).not.toBe('ID');
  });

  test('are the same for programs whatever the decimal sign, but for the words of the paper', async () => {
    const { data } = await made('.');
    const [point, comma] = [tablesOf(data, '.'), tablesOf(data, ',')];
    const programs = (files: typeof point) => files.filter(({ folder }) => folder === 'programs');
    expect(programs(point)).toEqual(programs(comma));
  });
});
