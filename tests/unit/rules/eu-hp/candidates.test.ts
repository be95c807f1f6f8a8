import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type SubstanceId, substanceIds, substances } from '../../../../src/reference/substances-tables';
import type { Candidate } from '../../../../src/rules/candidate';
import { euHpCandidates } from '../../../../src/rules/eu-hp/candidates';
import type { Amount } from '../../../cases/amount';
import { mixtureOf } from '../../../cases/mixture-input';

type Shares = Partial<Record<SubstanceId, Amount | null>>;

const found = (
  massPercent: Shares,
  besides: Partial<Parameters<typeof mixtureOf>[0]> = {},
): readonly Candidate[] => euHpCandidates(mixtureOf({ state: 'liquid', massPercent, ...besides }));
const codes = (all: readonly Candidate[], standing: Candidate['standing']): readonly string[] =>
  all.filter((c) => c.standing === standing).map(({ code }) => code);
const firing = (massPercent: Shares): readonly string[] => codes(found(massPercent), 'fires');
const only = (all: readonly Candidate[], code: string): Candidate | undefined =>
  all.find((c) => c.code === code);

describe('hazardous properties by calculation', () => {
  it('take the high end of a range, and say from which numbers', () => {
    const hp7 = only(found({ 'Ni(NO3)2': ['0.02', '0.1'] }), 'HP 7');
    expect(hp7?.standing).toBe('fires');
    expect(hp7?.grounds.map(({ figure, limit }) => [figure.high.toFixed(), limit.value.toFixed()])).toEqual([
      ['0.1', '0.1'],
    ]);
    expect(hp7?.citation).toMatchObject({
      status: 'verified',
      readIn: expect.stringContaining('regulation'),
    });
    expect(found({ 'Ni(NO3)2': ['0.02', '0.099'] }).filter(({ standing }) => standing === 'fires')).toEqual(
      [],
    );
  });

  it('count what only at its high end reaches the share from which it counts', () => {
    expect(firing({ NaOH: ['0.4', '1'] })).toEqual(['HP 4']);
  });

  it('show a sum with what stands in it', () => {
    const [ground] = only(found({ 'Cu(NO3)2': '0.2', 'Ni(NO3)2': '0.1' }), 'HP 14')?.grounds ?? [];
    expect(ground?.figure.value.toFixed()).toBe('30');
    expect(ground?.figure.inputs.map(({ sentence }) => sentence)).toEqual([
      expect.stringContaining('Cu(NO3)2'),
      expect.stringContaining('Ni(NO3)2'),
    ]);
    expect(ground?.limit.sources).toHaveLength(1);
  });

  it('take no multiplying factor: silver nitrate counts a hundred times, not ten thousand', () => {
    expect(firing({ AgNO3: '0.249' })).toEqual([]);
    expect(firing({ AgNO3: '0.25' })).toEqual(['HP 14']);
  });

  it('take no limit of the substance: nickel nitrate irritates from 0.01 %, but sensitises here from 10 %', () => {
    expect(firing({ 'Ni(NO3)2': '9.99' })).not.toContain('HP 13');
    expect(firing({ 'Ni(NO3)2': '10' })).toContain('HP 13');
    expect(firing({ 'Ni(NO3)2': '0.99' })).not.toContain('HP 5');
    expect(firing({ 'Ni(NO3)2': '1' })).toEqual(expect.arrayContaining(['HP 5', 'HP 11']));
  });

  it('take lead and barium as the metal', () => {
    const of = (id: SubstanceId, metal: number) => ({
      [id]: `${Number(substances[id].metal?.factor) * metal}`,
    });
    expect(firing(of('Pb(NO3)2', 0.3))).toContain('HP 10');
    expect(firing({ 'Pb(NO3)2': '0.4' })).not.toContain('HP 10');
    expect(firing(of('Ba(NO3)2', 25))).toEqual(['HP 6']);
    expect(firing({ 'Ba(NO3)2': '42' })).toEqual([]);
  });

  it('count a substance that irritates skin and eyes once', () => {
    expect(firing({ 'Fe(NO3)3': '19' })).toEqual([]);
    expect(firing({ 'Fe(NO3)3': '10', 'Zn(NO3)2': '10' })).toContain('HP 4');
  });

  it('come close from half of the limit on', () => {
    expect(codes(found({ HNO3: '1.75' }), 'close')).toContain('HP 6');
    expect(codes(found({ HNO3: '1.74' }), 'close')).not.toContain('HP 6');
  });
});

describe('what is not determined', () => {
  it('leaves open every property that it could bring, by the name of the record', () => {
    const open = found({ HNO3: '0.2', 'Ni(NO3)2': null, 'Pb(NO3)2': null }).filter(
      (c) => c.standing === 'open',
    );
    expect(Object.fromEntries(open.map(({ code, lacks }) => [code, lacks.join(' ')]))).toMatchObject({
      'HP 4': 'Ni',
      'HP 7': 'Ni',
      'HP 10': 'Ni Pb',
      'HP 13': 'Ni',
    });
  });

  it('does not hold up what fires already', () => {
    const hp14 = only(found({ 'Cu(NO3)2': '1', AgNO3: null }), 'HP 14');
    expect([hp14?.standing, hp14?.lacks]).toEqual(['fires', ['Ag']]);
  });
});

describe('what a test or a person decides', () => {
  it('nitrate calls for HP 2, in any strength, and names what calls', () => {
    const hp2 = only(found({ 'Cu(NO3)2': '0.001' }), 'HP 2');
    expect([hp2?.standing, hp2?.grounds]).toEqual(['judgement', []]);
    expect(hp2?.citation.rule).toContain('copper(II) nitrate');
    expect(only(found({ 'Cu(NO3)2': '0' }), 'HP 2')).toBeUndefined();
    expect(only(found({ 'Cu(OH)2': '5' }), 'HP 2')).toBeUndefined();
    expect(only(found({ AgNO3: null }), 'HP 2')?.standing).toBe('open');
  });

  it.each([
    ['2', 'low', 'acid reserve'],
    ['11.5', undefined, 'alkali reserve'],
  ])('pH %s points to HP 8 without settling it', (pH, end, lacks) => {
    const hp8 = only(found({ HNO3: '0.1' }, { pH }), 'HP 8');
    expect([hp8?.standing, hp8?.grounds[0]?.end, hp8?.lacks]).toEqual(['judgement', end, [lacks]]);
  });

  it('pH between them, and HP 8 by calculation, need no such pointing', () => {
    expect(only(found({ HNO3: '0.1' }, { pH: ['2.1', '11.4'] }), 'HP 8')).toBeUndefined();
    expect(only(found({ HNO3: '5' }, { pH: '0' }), 'HP 8')?.standing).toBe('fires');
  });

  it('silver in ammonia calls for HP 1 and HP 15, not in acid', () => {
    const spot: Shares = { AgNO3: '0.1', NH3aq: '1' };
    expect(codes(found(spot, { pH: '10' }), 'judgement')).toEqual(expect.arrayContaining(['HP 1', 'HP 15']));
    expect(codes(found(spot), 'judgement')).toEqual(expect.arrayContaining(['HP 1', 'HP 15']));
    expect(codes(found(spot, { pH: '2.5' }), 'judgement')).toEqual(['HP 2']);
    const either = codes(found(spot, { pH: ['6.5', '7.5'] }), 'judgement');
    expect(either).toEqual(expect.arrayContaining(['HP 1', 'HP 15']));
    expect(only(found({ AgNO3: null, NH3aq: '1' }), 'HP 1')).toMatchObject({
      standing: 'open',
      lacks: ['Ag'],
    });
  });

  it('a class that an entry has only from its own limit on is for a person: ammonia and the airways', () => {
    expect(only(found({ NH3aq: '20' }), 'HP 5')?.standing).toBe('judgement');
    expect(only(found({ NH3aq: '19.9' }), 'HP 5')).toBeUndefined();
  });
});

describe('any waste', () => {
  const someShares = fc.dictionary(
    fc.constantFrom(...substanceIds),
    fc.integer({ min: 0, max: 3000 }).map((n) => `${n / 100}`),
    { maxKeys: 8 },
  ) as fc.Arbitrary<Shares>;

  it('with more of a substance keeps what fired, but that HP 8 takes the place of HP 4', () => {
    fc.assert(
      fc.property(
        someShares,
        fc.constantFrom(...substanceIds),
        fc.integer({ min: 1, max: 50 }),
        (shares, id, more) => {
          const before = firing(shares);
          const after = firing({ ...shares, [id]: `${Number(shares[id] ?? 0) + more}` });
          const kept = after.includes('HP 8') ? [...after, 'HP 4'] : after;
          expect(kept).toEqual(expect.arrayContaining([...before]));
        },
      ),
    );
  });

  it('has each property at most once, in the order of the law', () => {
    fc.assert(
      fc.property(someShares, fc.option(fc.integer({ min: 0, max: 14 })), (shares, pH) => {
        const numbers = found(shares, { pH: pH === null ? null : `${pH}` }).map(({ code }) =>
          Number(code.slice(3)),
        );
        expect(numbers).toEqual([...new Set(numbers)].sort((a, b) => a - b));
      }),
    );
  });

  it('fires nothing less when one share is a range with the same high end', () => {
    fc.assert(
      fc.property(someShares, fc.constantFrom(...substanceIds), (shares, id) => {
        const high = `${shares[id] ?? '4'}`;
        expect(firing({ ...shares, [id]: ['0', high] })).toEqual(firing({ ...shares, [id]: high }));
      }),
    );
  });
});
