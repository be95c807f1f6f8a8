import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type SubstanceId, substanceIds } from '../../../../src/reference/substances-tables';
import { transport } from '../../../../src/reference/transport-tables';
import { type Transport, transportCandidates } from '../../../../src/rules/transport/candidates';
import type { Consignment } from '../../../../src/rules/transport/consignment';
import { consignment, stated } from '../../../support/consignment';

const codes = ({ candidates }: Transport): string[] =>
  candidates.filter(({ standing }) => standing !== 'close').map(({ code }) => code);
const carried = (told: Parameters<typeof consignment>[0]) => transportCandidates(consignment(told));
const first = (told: Parameters<typeof consignment>[0]) => carried(told).candidates[0];

describe('liquor and acid', () => {
  const barren = { pH: '0.1', shares: { HNO3: '10', 'Cu(NO3)2': '6', 'Ni(NO3)2': '0.5' } } as const;

  it('liquor full of metals goes by the n.o.s. entry; nitric acid by name is shown behind it, and not taken', () => {
    expect(first(barren)).toMatchObject({ code: 'UN 3264', packingGroup: 'II', standing: 'fires' });
    expect(carried(barren).candidates.find(({ code }) => code === 'UN 2031')?.standing).toBe('judgement');
  });

  it('names the acid and the salt that add most, not the trace of silver that weighs most in water', () => {
    const liquor = { HNO3: '14.5', 'Cu(NO3)2': '5.4', 'Ni(NO3)2': '1.4', AgNO3: '0.21' } as const;
    expect(first({ pH: '0', shares: liquor })).toMatchObject({
      technicalNames: ['nitric acid', 'copper nitrate'],
      environmentallyHazardous: 'yes',
    });
  });

  it.each([
    ['71', 'more than 70 %', 'I', ['5.1']],
    ['70', 'at least 65 %', 'II', ['5.1']],
    ['65', 'at least 65 %', 'II', ['5.1']],
    ['64.9', 'less than 65 %', 'II', []],
    ['10', 'less than 65 %', 'II', []],
  ] as const)(
    'nitric acid of %s %% with no metal goes by its own name',
    (share, words, group, subsidiary) => {
      const found = first({ pH: '-0.5', shares: { HNO3: share } });
      expect(found).toMatchObject({ code: 'UN 2031', packingGroup: group, entry: { subsidiary } });
      expect(found?.entry.name).toContain(words);
      expect(found?.technicalNames).toEqual([]);
    },
  );

  it('wash water with a seventh as much metal as acid is no acid with traces', () => {
    const water = { pH: '0.5', shares: { HNO3: '2', 'Cu(NO3)2': '0.3' } } as const;
    expect(first(water)).toMatchObject({ code: 'UN 3264', standing: 'judgement', packingGroup: 'II' });
  });

  it('a metal that nobody determined takes the acid its own name, and leaves the mark open', () => {
    const found = first({ pH: '0', shares: { HNO3: '10' }, open: ['Cu(NO3)2'] });
    expect(found).toMatchObject({ code: 'UN 3264', environmentallyHazardous: 'not determined' });
    expect(found?.lacks).toEqual(['Cu(NO3)2']);
  });

  it('liquor of which nothing is known is taken for corrosive, and says what is lacking', () => {
    const found = first({ kind: 'leach-liquor' });
    expect(found).toMatchObject({ code: 'UN 3264', standing: 'open', packingGroup: 'II' });
    expect(found?.lacks).toEqual(expect.arrayContaining(['pH', 'names of the constituents']));
    expect(found?.described.adrByKnowledge).toMatch(/, 8, II, WASTE IN ACCORDANCE WITH 2\.1\.3\.5\.5$/);
  });

  it('an oxidiser by test that is corrosive brings both entries', () => {
    const found = carried({ ...barren, tested: { oxidising: 'of no known group' } });
    expect(codes(found).slice(0, 2)).toEqual(['UN 3093', 'UN 3098']);
    expect(codes(carried({ ...barren, tested: { oxidising: 'none' } }))).not.toContain('UN 3093');
  });

  it('corrosive and neither acid nor base: no narrower entry fits', () => {
    expect(first({ pH: '5.5', shares: { AgNO3: '10' } })?.code).toBe('UN 1760');
  });
});

describe('other liquids', () => {
  it.each([
    [{ pH: '13.2', shares: { NaOH: '1' } }, 'UN 1824', 'III'],
    [{ pH: '14', shares: { NaOH: '10' } }, 'UN 1824', 'II'],
    [{ pH: '12.4', shares: { 'Ca(OH)2': '4' } }, 'UN 3266', 'II'],
    [{ pH: '12.5', shares: { NH3aq: '25' } }, 'UN 2672', 'III'],
    [{ pH: '12', shares: { NH3aq: '8' } }, 'UN 3266', 'III'],
    [{ pH: '-0.5', shares: { HCl: '10' } }, 'UN 1789', 'III'],
    [{ pH: '-1', shares: { HCl: '32' } }, 'UN 1789', 'II'],
    [{ pH: '6', shares: { 'Cu(NO3)2': '3' } }, 'UN 3082', 'III'],
    [{ pH: '6.5', shares: { 'Ba(NO3)2': '8' } }, 'UN 1564', 'III'],
  ] as const)('%j: %s, group %s', (told, code, group) => {
    expect(first(told)).toMatchObject({ code, packingGroup: group });
  });

  it('soluble lead is asked for its toxicity beside class 9', () => {
    expect(codes(carried({ pH: '4.5', shares: { 'Pb(NO3)2': '10' } }))).toEqual(
      expect.arrayContaining(['UN 3082', 'UN 2291']),
    );
  });

  it('an acid between pH 2 and 5 may eat metal: a test is asked for, and class 9 stays first', () => {
    const found = carried({ pH: '3', shares: { 'Cu(NO3)2': '3' } });
    expect(codes(found)[0]).toBe('UN 3082');
    expect(found.candidates.find(({ code }) => code === 'UN 3264')).toMatchObject({
      standing: 'judgement',
      packingGroup: 'III',
    });
  });

  it('nothing found is said with its reason, and is no leave', () => {
    const found = carried({ pH: '7', shares: { 'Ca(NO3)2': '1' } });
    expect(found.none?.rule).toContain('no leave');
    expect(found.candidates.every(({ standing }) => standing === 'judgement')).toBe(true);
  });
});

describe('solids and sludge', () => {
  it('papers or residue wet with liquor, no free liquid', () => {
    const wet = { state: 'solid', pH: '0.6', shares: { HNO3: '4', 'Cu(NO3)2': '2' } } as const;
    expect(first(wet)).toMatchObject({ code: 'UN 3244', packingGroup: 'II' });
    expect(first(wet)?.lacks).toContain('that no liquid is seen when the package is closed');
  });

  it('a residue washed to pH 5 is not wet with corrosive liquid', () => {
    const washed = { state: 'solid', kind: 'ceramic-residue', pH: '5', shares: { BaTiO3: '80' } } as const;
    expect(codes(carried(washed))).toEqual([]);
    expect(first({ state: 'solid', kind: 'ceramic-residue' })?.code).toBe('UN 3244');
  });

  it('dry nitrates are taken for oxidisers until a test says otherwise; with acid they are corrosive too', () => {
    const salts = { state: 'solid', shares: { 'Cu(NO3)2': '70', 'Ni(NO3)2': '20' } } as const;
    expect(codes(carried(salts)).slice(0, 2)).toEqual(['UN 1477', 'UN 1479']);
    const crust = { state: 'solid', shares: { 'Cu(NO3)2': '70', HNO3: '5' } } as const;
    expect(first(crust)).toMatchObject({ code: 'UN 3085', entry: { subsidiary: ['8'] } });
    expect(codes(carried({ ...salts, tested: { oxidising: 'none' } }))).toEqual(['UN 3077']);
  });

  it.each([
    ['AgNO3', 'UN 1493', 'II', []],
    ['Ni(NO3)2', 'UN 2725', 'III', []],
    ['Zn(NO3)2', 'UN 1514', 'II', []],
    ['Ba(NO3)2', 'UN 1446', 'II', ['6.1']],
    ['Pb(NO3)2', 'UN 1469', 'II', ['6.1']],
    ['Ca(NO3)2', 'UN 1454', 'III', []],
    ['Fe(NO3)3', 'UN 1466', 'III', []],
  ] as const)('%s alone and dry goes by its own name', (id, code, group, subsidiary) => {
    const found = first({ state: 'solid', shares: { [id]: '97' } });
    expect(found).toMatchObject({ code, packingGroup: group, entry: { subsidiary } });
  });

  it('hydroxide sludge that is not corrosive is class 9; the row of the USA needs a waste number', () => {
    const sludge = { state: 'solid', shares: { 'Cu(OH)2': '30', 'Ni(OH)2': '4' } } as const;
    expect(codes(carried(sludge))).toEqual(['UN 3077']);
    const found = carried({ ...sludge, rcraCodes: ['D011'] });
    expect(codes(found)).toEqual(['UN 3077', 'NA3077']);
    expect(found.candidates[1]?.entry.usaOnly).toBe(true);
  });

  it('the toxicity of its dust came close, and fires as a judgement once it is mostly copper hydroxide', () => {
    const dust = (share: string) =>
      carried({ state: 'solid', shares: { 'Cu(OH)2': share } }).candidates.find((c) => c.code === 'UN 3288');
    expect(dust('30')?.standing).toBe('close');
    expect(dust('50')).toMatchObject({ standing: 'judgement', packingGroup: 'III' });
    expect(dust('95')).toMatchObject({ standing: 'judgement', packingGroup: 'II' });
    expect(dust('10')).toBeUndefined();
  });

  it('alkaline sludge found at pH 12 is taken for corrosive before class 9', () => {
    const found = carried({ state: 'sludge', pH: '12', shares: { 'Ca(OH)2': '10', 'Cu(OH)2': '5' } });
    expect(codes(found).slice(0, 2)).toEqual(['UN 3262', 'UN 3077']);
  });
});

describe('before anything is carried', () => {
  const heeds = (told: Parameters<typeof consignment>[0]) => carried(told).heed.map(({ rule }) => rule);

  it('silver in ammonia is destroyed first', () => {
    const rule = expect.stringContaining('explodes at a touch');
    expect(heeds({ kind: 'ammonia-test-waste' })).toEqual([rule]);
    expect(heeds({ shares: { NH3aq: '3', AgNO3: '0.2' } })).toEqual([rule]);
    expect(heeds({ shares: { NH3aq: '3' }, open: ['AgCl'] })).toEqual([rule]);
    expect(heeds({ shares: { NH3aq: '3' } })).toEqual([]);
  });

  it('nitrate does not dry on paper', () => {
    const papers = { state: 'solid', kind: 'spent-filters' } as const;
    expect(heeds(papers)).toEqual([expect.stringContaining('burn fiercely')]);
    expect(heeds({ ...papers, shares: { 'Cu(OH)2': '5' } })).toEqual([]);
  });
});

describe('a sludge on which liquid may stand', () => {
  it('alkaline: the entry for liquids is shown behind the one for solids, unless it is dry', () => {
    const sludge = { state: 'sludge', pH: '12.6', shares: { 'Ca(OH)2': '10' } } as const;
    expect(codes(carried(sludge))).toEqual(['UN 3262', 'UN 3266']);
    expect(codes(carried({ ...sludge, wetness: 'dry' }))).toEqual(['UN 3262']);
  });
});

describe('whatever it is', () => {
  const share = fc.tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 200 }));
  const anything = fc
    .record(
      {
        state: fc.constantFrom('liquid', 'solid', 'sludge'),
        wetness: fc.constantFrom('dry', 'wet'),
        kind: fc.constantFrom('', ...Object.keys(transport.kinds.of)),
        pH: fc.integer({ min: -10, max: 145 }),
        parts: fc.dictionary(fc.constantFrom(...substanceIds), share, { maxKeys: 5 }),
        open: fc.uniqueArray(fc.constantFrom(...substanceIds), { maxLength: 2 }),
        codes: fc.uniqueArray(fc.constantFrom('D001', 'D002', 'D008', 'D011')),
        skin: fc.constantFrom('1A', '1B', '1C', 'none'),
        oxidising: fc.constantFrom('I', 'II', 'III', 'of no known group', 'none'),
        kg: fc.integer({ min: 1, max: 400 }),
      },
      { requiredKeys: ['state', 'parts'] },
    )
    .map((g) => ({
      consignment: consignment({
        state: g.state as 'liquid',
        ...(g.wetness ? { wetness: g.wetness as 'dry' } : {}),
        ...(g.kind ? { kind: g.kind } : {}),
        ...(g.pH === undefined ? {} : { pH: `${g.pH / 10}` }),
        shares: Object.fromEntries(
          Object.entries(g.parts).map(([id, [low, more]]) => [id, [`${low / 20}`, `${(low + more) / 20}`]]),
        ) as Partial<Record<SubstanceId, readonly [string, string]>>,
        open: g.open ?? [],
        rcraCodes: g.codes ?? [],
        tested: {
          ...(g.skin ? { skinCorrosion: g.skin as '1A' } : {}),
          ...(g.oxidising ? { oxidising: g.oxidising as 'I' } : {}),
        },
        ...(g.kg ? { packageMass: stated('package', `${g.kg}`, 'kg') } : {}),
      }),
    }));
  const always = (holds: (c: Consignment, found: Transport) => void) =>
    fc.assert(fc.property(anything, ({ consignment: c }) => holds(c, transportCandidates(c))));

  it('no description holds more than two technical names, or one twice, or a name that is not in it', () =>
    always((c, { candidates }) => {
      const within = [...c.mixture.shares.keys()].map((id) => transport.substances.of[id]?.name);
      for (const { technicalNames: names } of candidates) {
        expect(names.length).toBeLessThanOrEqual(2);
        expect(new Set(names).size).toBe(names.length);
        for (const name of names) expect(within).toContain(name);
      }
    }));

  it('each description says waste once', () =>
    always((_, { candidates }) => {
      for (const { described } of candidates)
        for (const text of Object.values(described)) expect(text.match(/\bwaste\b/gi), text).toHaveLength(1);
    }));

  it('each candidate has its reasons with their paragraphs, and a packing group that its entry has', () =>
    always((_, { candidates }) => {
      for (const { why, entry, packingGroup } of candidates) {
        expect(why.length).toBeGreaterThan(0);
        expect(why.every(({ rule, cite }) => rule !== '' && cite !== '')).toBe(true);
        expect(entry.groups).toContain(packingGroup);
      }
    }));

  it('there is a candidate that is taken, or the reason why there is none', () =>
    always((_, { candidates, none }) => {
      if (candidates.length === 0) expect(none).toBeDefined();
      if (none) expect(candidates.every(({ standing }) => standing !== 'fires')).toBe(true);
    }));

  it('the ranking does not follow the order in which constituents were written, and no number stands twice', () =>
    always((c, found) => {
      const turned = new Map([...c.mixture.shares].reverse());
      const again = transportCandidates({ ...c, mixture: { ...c.mixture, shares: turned } });
      const order = found.candidates.map(({ code }) => code);
      expect(again.candidates.map(({ code }) => code)).toEqual(order);
      expect(new Set(order).size).toBe(order.length);
    }));

  it('rows of the USA stand only for waste with a number, never before an entry that is taken', () =>
    always((c, { candidates }) => {
      const usa = candidates.filter(({ entry }) => entry.usaOnly);
      if (c.rcraCodes.length === 0) expect(usa).toEqual([]);
      if (usa.length > 0) expect(candidates[0]?.entry.class).toBe('9');
    }));

  it('what nobody determined never makes the mark of the environment fall away', () =>
    always((c, found) => {
      const open = [...c.mixture.open, 'Cu(NO3)2' as const];
      const more = transportCandidates({ ...c, mixture: { ...c.mixture, open } });
      const mark = found.candidates[0]?.environmentallyHazardous;
      if (mark === 'yes') expect(more.candidates[0]?.environmentallyHazardous).toBe('yes');
      for (const one of more.candidates) expect(one.environmentallyHazardous).not.toBe('no');
    }));
});
