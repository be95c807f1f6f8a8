/** Nothing may be diluted away: what mixing as planned would make disappear. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { comingOutOf } from '../../../src/ledger/dilution';
import type { PlainBody } from '../../../src/ledger/entries/body';
import type { Law } from '../../../src/ledger/entries/local-rules';
import { flags } from '../../../src/ledger/flags';
import { can, grams, id, litres, pour, Scribe, tip } from './scribe';

type Findings = NonNullable<Extract<PlainBody, { kind: 'stream-logged' }>['liquid']>['findings'];

const metals = ['Cu', 'Ni', 'Ag', 'Zn', 'Ba', 'Pb', 'Fe', 'Pd'] as const;

/** Every metal told, so that nothing but the silver, the copper and the acid is open. */
const told = (of: Partial<Record<(typeof metals)[number], string>>): Findings =>
  metals.map((metal) => ({
    by: 'assay',
    metal,
    concentration: { value: of[metal] ?? '0', unit: 'mg/L' },
    spread: { plusMinus: { value: '0', unit: '%' }, as: 'k2' },
  }));

const water = (n: number, volume: string, findings: Findings, acid: string): PlainBody => ({
  kind: 'stream-logged',
  v: 1,
  streamId: id('50', n),
  batchId: null,
  stepId: null,
  stream: 'wash-water',
  liquid: {
    volume: litres(volume),
    findings,
    freeAcid: [{ by: 'titration', result: { value: acid, unit: 'mol/L' } }],
  },
});

const laws = (...value: Law[]): PlainBody => ({
  kind: 'local-rule-stated',
  v: 1,
  stated: { rule: 'laws', value },
  saidBy: 'Authority',
  saidOn: '2026-01-10',
});

/** What planning to put the second waste into the container with the first comes to. */
function plan(first: PlainBody, second: PlainBody, law: Law, volume: string) {
  const scribe = new Scribe();
  for (const body of [laws(law), first, second, can(1, '60')]) scribe.write(body);
  const held = first.kind === 'stream-logged' ? (first.liquid?.volume.value ?? '0') : '0';
  scribe.write(pour(1, 1, held));
  return scribe.tries({
    do: 'place-stream',
    streamId: id('50', 2),
    containerId: id('c0', 1),
    amount: litres(volume),
  });
}

const refusedFor = (result: ReturnType<typeof plan>) =>
  !result.ok && result.refusal.code === 'would-dilute' ? result.refusal.details.codes : null;

describe('a waste with silver', () => {
  const silver = water(1, '10', told({ Ag: '12' }), '0.1');
  const plain = water(2, '40', told({}), '0.1');

  it('is not thinned with another until its code is gone', () => {
    // 12 mg/L in 10 L with 30 L of none: 3 mg/L, under the 5 mg/L of D011.
    expect(refusedFor(plan(silver, plain, 'us-federal', '30'))).toEqual(['D011']);
    // With 5 L of none: 8 mg/L, still D011.
    expect(plan(silver, plain, 'us-federal', '5').ok).toBe(true);
  });

  it('is not thinned the other way round either: put into much of another', () => {
    const much = water(1, '40', told({}), '0.1');
    const little = water(2, '5', told({ Ag: '12' }), '0.1');
    expect(refusedFor(plan(much, little, 'us-federal', '5'))).toEqual(['D011']);
  });

  it('is not mixed with what nobody tested, where its own silver alone would fall below the limit', () => {
    const unknown = water(2, '40', [], '0.1');
    expect(refusedFor(plan(silver, unknown, 'us-federal', '30'))).toEqual(['D011']);
    // With 5 L: 8 mg/L by what is known, still D011.
    expect(plan(silver, unknown, 'us-federal', '5').ok).toBe(true);
  });

  it('keeps a code that rests on a pH which nobody can tell before it is mixed', () => {
    const acid = water(1, '10', told({}), '0.5');
    const unknown: PlainBody = {
      ...(water(2, '40', told({}), '0.1') as Extract<PlainBody, { kind: 'stream-logged' }>),
      liquid: { volume: litres('40'), findings: told({}), freeAcid: [] },
    };
    expect(plan(acid, unknown, 'us-federal', '30').ok).toBe(true);
  });

  it('names the text of each law that forbids it', () => {
    const result = plan(silver, plain, 'us-california', '30');
    expect(!result.ok && result.refusal.code === 'would-dilute' && result.refusal.details.laws).toEqual([
      'us-california',
    ]);
  });
});

describe('hazardous properties of the European Union', () => {
  it('are not mixed away: copper enough for HP 14 stays so', () => {
    const blue = water(1, '10', told({ Cu: '1200' }), '0.05');
    const clear = water(2, '40', told({ Cu: '10' }), '0.05');
    expect(refusedFor(plan(blue, clear, 'eu', '30'))).toContain('HP 14');
    expect(plan(blue, clear, 'eu', '1').ok).toBe(true);
  });
});

it('of what is moved over as litres and grams at once, both are mixed', () => {
  const scribe = new Scribe();
  const residue: PlainBody = {
    kind: 'stream-logged',
    v: 1,
    streamId: id('50', 2),
    batchId: null,
    stepId: null,
    stream: 'ceramic-residue',
    solid: {
      wetMass: grams('300'),
      moisture: { by: 'not-determined' },
      holds: { liquor: 'not-determined' },
    },
  };
  for (const body of [water(1, '10', told({ Ag: '12' }), '0.1'), residue, can(1, '60'), pour(1, 1, '10')])
    scribe.write(body);
  scribe.write({ ...pour(2, 1, '1'), amount: grams('300') });
  const both = comingOutOf(scribe.state, id('c0', 1), [litres('10'), grams('300')]);
  expect(both?.contents.liquid?.volume.value.toNumber()).toBe(10);
  expect(both?.contents.residues).toHaveLength(1);
  expect(comingOutOf(scribe.state, id('c0', 1), [litres('10')])?.contents.residues).toEqual([]);
});

describe('what has happened', () => {
  it('is written down, however much it diluted', () => {
    const scribe = new Scribe();
    for (const body of [
      laws('us-federal'),
      water(1, '10', told({ Ag: '12' }), '0.1'),
      water(2, '40', told({}), '0.1'),
      can(1, '60'),
      pour(1, 1, '10'),
    ])
      scribe.write(body);
    const happened = scribe.tries({
      do: 'log-placement-happened',
      streamId: id('50', 2),
      containerId: id('c0', 1),
      amount: litres('30'),
    });
    expect(happened.ok).toBe(true);
  });

  it('is flagged with the codes that are gone, until the container is empty again', () => {
    const scribe = new Scribe();
    for (const body of [
      laws('us-federal'),
      water(1, '10', told({ Ag: '12' }), '0.1'),
      water(2, '40', told({}), '0.1'),
      can(1, '60'),
      pour(1, 1, '10'),
    ])
      scribe.write(body);
    scribe.does({
      do: 'log-placement-happened',
      streamId: id('50', 2),
      containerId: id('c0', 1),
      amount: litres('30'),
    });
    const flagged = () => flags(scribe.state).filter(({ code }) => code === 'was-diluted');
    expect(flagged()).toMatchObject([{ codes: ['D011'], laws: ['us-federal'] }]);
    scribe.write(tip(1, null, '40'));
    expect(flagged()).toEqual([]);
  });

  it('is flagged where they were mixed, and not on what was poured in out of another', () => {
    const scribe = new Scribe();
    for (const body of [
      laws('us-federal'),
      water(1, '10', told({ Ag: '12' }), '0.1'),
      water(2, '40', told({}), '0.1'),
      can(1, '60'),
      can(2, '60'),
      pour(1, 1, '10'),
      pour(2, 2, '40'),
    ])
      scribe.write(body);
    scribe.does({
      do: 'log-move-happened',
      fromContainerId: id('c0', 2),
      toContainerId: id('c0', 1),
      amount: litres('30'),
      purpose: 'transfer',
    });
    const flagged = flags(scribe.state).filter(({ code }) => code === 'was-diluted');
    expect(flagged.map(({ about }) => about.containerId)).toEqual([id('c0', 1)]);
  });
});

/** 40 CFR 261.24, table 1: 1.0 mg/L of cadmium. */
describe('a code that only a laboratory found', () => {
  const cadmium = (level: string, inWhat: 'filtered' | 'tclp' = 'tclp'): PlainBody => ({
    kind: 'lab-reported',
    v: 1,
    containerId: id('c0', 1),
    laboratory: 'Weir Laboratory',
    sampledOn: '2026-03-02',
    results: [{ element: 'Cd', in: inWhat, level: { value: level, unit: 'mg/L' } }],
  });
  const plain = (n: number) => water(n, '40', told({}), '0.1');
  const found = (level: string, volume: string, inWhat?: 'filtered' | 'tclp') => {
    const scribe = new Scribe();
    for (const body of [laws('us-federal'), water(1, '10', told({}), '0.1'), plain(2), can(1, '60')])
      scribe.write(body);
    scribe.write(pour(1, 1, '10'));
    scribe.write(cadmium(level, inWhat));
    return scribe.tries({
      do: 'place-stream',
      streamId: id('50', 2),
      containerId: id('c0', 1),
      amount: litres(volume),
    });
  };

  it('is not thinned away, in the extract or in what passes a filter', () => {
    // 4 mg/L in 10 L with 40 L: 0.8 mg/L. With 10 L: 2 mg/L.
    for (const inWhat of ['tclp', 'filtered'] as const) {
      expect(refusedFor(found('4', '40', inWhat)), inWhat).toEqual(['D006']);
      expect(found('4', '10', inWhat).ok, inWhat).toBe(true);
      expect(found('0.2', '40', inWhat).ok, inWhat).toBe(true);
    }
  });

  it('is flagged where it happened, also poured over out of its container', () => {
    const scribe = new Scribe();
    for (const body of [laws('us-federal'), water(1, '10', told({}), '0.1'), plain(2), can(1, '60')])
      scribe.write(body);
    for (const body of [can(2, '60'), pour(1, 1, '10'), pour(2, 2, '40'), cadmium('4')]) scribe.write(body);
    scribe.does({
      do: 'log-move-happened',
      fromContainerId: id('c0', 1),
      toContainerId: id('c0', 2),
      amount: litres('5'),
      purpose: 'transfer',
    });
    const flagged = flags(scribe.state).filter(({ code }) => code === 'was-diluted');
    expect(flagged).toMatchObject([{ about: { containerId: id('c0', 2) }, codes: ['D006'] }]);
  });
});

describe('mixing that is let through', () => {
  it('never takes silver from over the limit to under it', () => {
    const share = fc.integer({ min: 1, max: 400 });
    fc.assert(
      fc.property(share, share, fc.integer({ min: 1, max: 40 }), (a, b, volume) => {
        const [one, other] = [a / 10, b / 10];
        const mixed = (one * 10 + other * volume) / (10 + volume);
        const first = water(1, '10', told({ Ag: String(one) }), '0.1');
        const second = water(2, '40', told({ Ag: String(other) }), '0.1');
        const result = plan(first, second, 'us-federal', String(volume));
        const crosses = Math.max(one, other) >= 5 && mixed < 5;
        // Within the last digit of what is read off a vessel the range decides, not the value.
        fc.pre(Math.abs(mixed - 5) > 0.3 && Math.abs(Math.max(one, other) - 5) > 0.11);
        expect(refusedFor(result) !== null).toBe(crosses);
      }),
      { numRuns: 60 },
    );
  });
});
