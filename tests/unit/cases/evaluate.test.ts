import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { evaluateFolder, failedIn, passedIn } from '../../cases/evaluate';

const folder = mkdtempSync(join(tmpdir(), 'leesbook-cases-'));
afterAll(() => rmSync(folder, { recursive: true }));

const published = (name: string): string =>
  readFileSync(fileURLToPath(new URL(`../../published/equilibrium-cases/${name}`, import.meta.url)), 'utf8');

/** What one file of this text comes to. */
function evaluated(text: string) {
  const file = join(folder, 'case.json');
  writeFileSync(file, text);
  const all = evaluateFolder(folder);
  rmSync(file);
  return all;
}

const lines = (all: ReturnType<typeof evaluateFolder>): string[] =>
  all.flatMap(({ outcome }) => outcome.checks.filter(({ ok }) => !ok).map(({ line }) => line));

describe('a case made wrong on purpose fails, and only where it is wrong', () => {
  const wrong = evaluateFolder(fileURLToPath(new URL('../../cases/wrong-on-purpose', import.meta.url)));
  const of = (id: string) =>
    wrong.find((one) => one.id === id)?.outcome ?? { checks: [], computed: null, notes: [] };

  it('a pH, a dissolved amount and a base of a titration', () => {
    expect([passedIn(of('W1')), failedIn(of('W1'))]).toEqual([2, 3]);
  });

  it('a solubility', () => {
    expect([passedIn(of('W2')), failedIn(of('W2'))]).toEqual([3, 1]);
  });

  it('an activity coefficient', () => {
    expect([passedIn(of('W3')), failedIn(of('W3'))]).toEqual([0, 1]);
  });
});

describe('a case of what must not meet', () => {
  const wrong = evaluateFolder(fileURLToPath(new URL('../../cases/wrong-on-purpose', import.meta.url)));
  it('made wrong on purpose fails in its cells, its codes, a rule, and the leave to mix', () => {
    const outcome = wrong.find(({ id }) => id === 'W4')?.outcome;
    expect(outcome?.checks.map(({ ok }) => ok)).toEqual([true, false, false, false, false, false]);
  });
});

describe('what a case of groups alone may mean', () => {
  const mixing = (a: unknown, b: unknown, expected: object) =>
    evaluated(
      JSON.stringify([{ id: 'G', kind: 'compatibility', input: { a, b }, expected }]),
    )[0]?.outcome.checks.map(({ ok }) => ok);

  it('an acid that no list says holds water is an acid of this shelf', () => {
    expect(mixing([2], [1], { specificRules: ['HNO3-HCL'], allowPlannedMixing: false })).toEqual([
      true,
      true,
    ]);
    expect(mixing([2, 24], [10, 106], { specificRules: ['AG-NH3'] })).toEqual([true]);
  });

  it('lime without water is no ammonia: liming may be planned', () => {
    expect(mixing([2, 24, 106], [10], { allowPlannedMixing: true })).toEqual([true]);
  });

  it('fire in a cell forbids mixing also where nothing with a name stands for the group', () => {
    expect(mixing([2], [16], { codes: ['H', 'F'], allowPlannedMixing: false })).toEqual([true, true]);
    expect(mixing([104], [105], { allowPlannedMixing: false })).toEqual([true]);
  });

  it('a gap is blank, or what it is taken for; cells and groups may be written otherwise', () => {
    expect(mixing([104], [105], { cells: { '104-105': [] }, codes: [] })).toEqual([true, true, true]);
    expect(
      mixing(['105'], ['104'], { cells: { '105-104': ['H', 'F', 'E'] }, codes: ['H', 'F', 'E'] }),
    ).toEqual([true, true, true]);
    expect(mixing([104], [105], { cells: { '104-105': ['H'] } })).toEqual([true, false]);
    expect(mixing({ groups: [2] }, { groups: [106] }, { codes: ['H'] })).toEqual([true]);
    expect(mixing([107], [106], { cells: { '106-107': [] }, allowPlannedMixing: false })).toEqual([
      true,
      true,
      true,
    ]);
  });
});

describe('a case of a mixture by CLP', () => {
  const mixture = (input: object, expected: object) =>
    evaluated(JSON.stringify([{ id: 'M', kind: 'clp-mixture', input, expected }]))[0]?.outcome;

  it('made wrong on purpose fails in all but what is right', () => {
    const wrong = evaluateFolder(fileURLToPath(new URL('../../cases/wrong-on-purpose', import.meta.url)));
    const outcome = wrong.find(({ id }) => id === 'W-CLP')?.outcome;
    expect(outcome?.checks.map(({ ok }) => ok)).toEqual([...Array(6).fill(false), true, false, false]);
  });

  it('may name a class of the calculation again beside the pH, and write a way in otherwise', () => {
    const input = { state: 'liquid', pH: '1', massPercent: { HNO3: '4', 'Cu(OH)2': '30' } };
    const outcome = mixture(input, {
      phRule: ['Skin Corr. 1 H314', 'Eye Dam. 1 H318'],
      calculated: [
        'Skin Irrit. 2 H315',
        'Eye Dam. 1 H318',
        'Acute Tox. 4 oral H302',
        'Acute Tox. 4 (inhalation dust or mist) H332',
        'Aquatic Acute 1 H400',
        'Aquatic Chronic 1 H410',
      ],
    });
    expect(outcome?.checks.map(({ ok }) => ok)).toEqual([true, true]);
  });

  it('a value is compared as closely as it is printed', () => {
    const input = { state: 'liquid', massPercent: { 'HNO3-conc': '90' } };
    const check = (ateVapour_mg_L: string) => mixture(input, { ateVapour_mg_L })?.checks[0]?.ok;
    expect(['0.06', '0.05556', '0.0600', '0.05'].map(check)).toEqual([true, true, false, false]);
  });

  it('the oxidiser in strong acid is one flag however it is named, and no signal word may be a word', () => {
    const acid = { state: 'liquid', massPercent: { HNO3: '68' } };
    const flags = (flag: string) =>
      mixture(acid, { byTestFlags: ['Met. Corr. 1 H290', flag] })?.checks[0]?.ok;
    expect(['Ox. Liq. 3 H272', 'Ox. Liq. 3 (C >= 65 %) H272', 'Ox. test: contains HNO3'].map(flags)).toEqual([
      true,
      true,
      true,
    ]);
    expect(flags('Ox. test: contains AgNO3')).toBe(false);
    const tin = mixture({ state: 'powder', massPercent: { SnO2: '9' } }, { signalWord: 'none' });
    expect(tin?.checks[0]?.ok).toBe(true);
  });

  it('a class of acute toxicity may leave its route to its statement', () => {
    const input = { state: 'solid', massPercent: { 'Cu(OH)2': '30' } };
    const classes = (...acute: string[]) =>
      mixture(input, {
        calculated: [...acute, 'Eye Dam. 1 H318', 'Aquatic Acute 1 H400', 'Aquatic Chronic 1 H410'],
      })?.checks[0]?.ok;
    expect(classes('Acute Tox. 4 H302', 'Acute Tox. 4 inhal. dustMist H332')).toBe(true);
    expect(classes('Acute Tox. 4 H302', 'Acute Tox. 4 (inhalation vapour) H332')).toBe(false);
    expect(classes('Acute Tox. 4 H302')).toBe(false);
  });
});

describe('a case of hazardous properties, of characteristics, of land disposal, of California', () => {
  const wrong = evaluateFolder(fileURLToPath(new URL('../../cases/wrong-on-purpose', import.meta.url)));
  const right = (id: string) => wrong.find((one) => one.id === id)?.outcome.checks.map(({ ok }) => ok);
  it('made wrong on purpose fails, and only where it is wrong', () => {
    expect(right('W-HP')).toEqual([false, false, true]);
    expect(right('W-RCRA')).toEqual([false, false, false]);
    expect(right('W-LDR')).toEqual([false, false]);
    expect(right('W-CA')).toEqual([false, false, false]);
  });

  it('may name what is open under review, and must name what a person judges', () => {
    const input = { state: 'liquid', pH: null, nitrateBearing: true };
    const failed = (review: string[]) =>
      lines(evaluated(JSON.stringify({ id: 'X', kind: 'rcra-characteristic', input, expected: { review } })));
    expect([failed(['D001', 'D002']), failed(['D001'])]).toEqual([[], []]);
    expect([failed(['D002']).length, failed(['D001', 'D003']).length]).toEqual([1, 1]);
  });

  it('may say by any key that the generator is too small for the rules of land disposal', () => {
    const input = { originCodes: ['D011'], tclp_mg_L: { Ag: '3' } };
    const failed = (more: object, applies: boolean) =>
      lines(
        evaluated(
          JSON.stringify({ id: 'X', kind: 'rcra-ldr', input: { ...input, ...more }, expected: { applies } }),
        ),
      ).length;
    expect([failed({ generatorCategory: 'VSQG' }, false), failed({}, true)]).toEqual([0, 0]);
    expect([failed({ generatorCategory: 'SQG' }, false), failed({ category: 'VSQG' }, true)]).toEqual([1, 1]);
  });
});

describe('what cannot be evaluated counts as failed', () => {
  it('a file that is not JSON', () => {
    expect(lines(evaluated('{ "id": '))).toEqual([expect.stringContaining('cannot be read')]);
  });

  it('a kind that is not known', () => {
    expect(lines(evaluated('{ "id": "X", "kind": "toString" }'))).toEqual([
      expect.stringContaining('toString'),
    ]);
  });

  it('a case without id or kind', () => {
    expect(lines(evaluated('[{ "kind": "titration" }, 3]'))).toHaveLength(2);
  });

  it('a case whose result sets are all of others', () => {
    const c = JSON.parse(published('T05.json'));
    const { 'app-sit': own } = c.results;
    expect(lines(evaluated(JSON.stringify({ ...c, results: { other: own } })))).toEqual([
      expect.stringContaining('no result set'),
    ]);
  });

  it('a row at no step of the case', () => {
    const c = JSON.parse(published('T05.json'));
    c.results['app-sit'].rows = [{ ...c.results['app-sit'].rows[0], base_mol: 0.01234 }];
    c.results['app-sit'].base_mol_to_pH = {};
    c.results['app-davies'] = undefined;
    expect(lines(evaluated(JSON.stringify(c)))).toEqual([expect.stringContaining('no step')]);
  });

  it('a solid, a substance or a temperature that the model does not hold', () => {
    const c = JSON.parse(published('T05.json'));
    const changed = (input: object): string => JSON.stringify({ ...c, input: { ...c.input, ...input } });
    expect(lines(evaluated(changed({ solids_allowed: ['Unobtainium'] })))).toHaveLength(1);
    expect(lines(evaluated(changed({ temperature_C: 40 })))).toHaveLength(1);
    expect(lines(evaluated(changed({ composition_mol_per_kg_water: { HNO3: 1, KNO3: 1 } })))).toHaveLength(1);
  });

  it('two cases of one name', () => {
    const text = published('G1-activity.json');
    expect(lines(evaluated(`[${text},${text}]`))).toEqual([expect.stringContaining('second case')]);
  });
});

describe('what is computed has the shape of the case', () => {
  it('base to every pH asked for, and every step, in each of our sets', () => {
    const [one] = evaluated(published('T05.json'));
    const c = JSON.parse(published('T05.json'));
    const computed = one?.outcome.computed as Record<string, { base_mol_to_pH: object; rows: object[] }>;
    for (const set of ['app-sit', 'app-davies']) {
      expect(Object.keys(computed[set]?.base_mol_to_pH ?? {})).toEqual(
        Object.keys(c.results[set].base_mol_to_pH),
      );
      expect(computed[set]?.rows).toHaveLength(c.input.steps + 1);
      expect(Object.keys(computed[set]?.rows[0] ?? {})).toEqual(Object.keys(c.results[set].rows[0]));
    }
  });
});
