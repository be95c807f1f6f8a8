import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type SubstanceId, substanceIds } from '../../../../src/reference/substances-tables';
import type { Candidate } from '../../../../src/rules/candidate';
import { classify } from '../../../../src/rules/clp/classify';
import { coversHazard, hazardText } from '../../../../src/rules/clp/hazard';
import type { Mixture } from '../../../../src/rules/mixture';
import { mixtureOf } from '../../../cases/mixture-input';

type Given = Partial<Parameters<typeof mixtureOf>[0]>;

/** A liquor of pH 5, so that the pH adds nothing, unless it is said otherwise. */
const liquor = (massPercent: Given['massPercent'], more: Given = {}): Mixture =>
  mixtureOf({ state: 'liquid', pH: '5', massPercent, ...more });

const calculated = (mixture: Mixture): string[] => classify(mixture).calculated.map(hazardText);
const candidate = (mixture: Mixture, code: string): Candidate | undefined =>
  classify(mixture).candidates.find((c) => c.code === code);

describe('a limit is reached at the limit, not just under it', () => {
  const edges: readonly (readonly [hazard: string, id: SubstanceId, at: string, under: string])[] = [
    ['Skin Irrit. 2 H315', 'HNO3', '1', '0.99'],
    ['Eye Irrit. 2 H319', 'HNO3', '1', '0.99'],
    ['Eye Dam. 1 H318', 'HNO3', '3', '2.99'],
    ['Skin Corr. 1B H314', 'HNO3', '5', '4.99'],
    ['Skin Corr. 1A H314', 'HNO3', '20', '19.9'],
    ['Acute Tox. 4 (inhalation vapour) H332', 'HNO3', '13.25', '13.2'],
    ['Acute Tox. 3 (inhalation vapour) H331', 'HNO3', '26.5', '26.4'],
    ['Acute Tox. 1 (inhalation vapour) H330', 'HNO3', '70.1', '70'],
    ['Acute Tox. 2 (inhalation vapour) H330', 'HNO3-conc', '2.5', '2.49'],
    ['Skin Irrit. 2 H315', 'NaOH', '0.5', '0.49'],
    ['Skin Corr. 1B H314', 'NaOH', '2', '1.99'],
    ['Skin Corr. 1A H314', 'NaOH', '5', '4.99'],
    ['Skin Irrit. 2 H315', 'HCl', '10', '9.99'],
    ['Eye Irrit. 2 H319', 'HCl', '10', '9.99'],
    ['STOT SE 3 H335', 'HCl', '10', '9.99'],
    ['Eye Dam. 1 H318', 'HCl', '25', '24.9'],
    ['Skin Corr. 1B H314', 'HCl', '25', '24.9'],
    ['STOT SE 3 H335', 'NH3aq', '5', '4.99'],
    ['STOT SE 3 H335', 'Ca(OH)2', '20', '19.9'],
    ['Acute Tox. 4 (oral) H302', 'Cu(NO3)2', '25', '24.9'],
    ['Acute Tox. 4 (inhalation dust/mist) H332', 'Cu(OH)2', '9.4', '9.3'],
    ['Acute Tox. 3 (inhalation dust/mist) H331', 'Cu(OH)2', '47', '46.9'],
    ['Skin Irrit. 2 H315', 'Cu(NO3)2', '10', '9.99'],
    ['Eye Dam. 1 H318', 'Cu(NO3)2', '3', '2.99'],
    ['Eye Irrit. 2 H319', 'Fe(NO3)3', '10', '9.99'],
    ['Skin Sens. 1 H317', 'Ni(NO3)2', '0.01', '0.009'],
    ['Carc. 1A H350i', 'Ni(NO3)2', '0.1', '0.099'],
    ['STOT RE 2 H373', 'Ni(NO3)2', '0.1', '0.099'],
    ['Repr. 1B H360D', 'Ni(NO3)2', '0.3', '0.299'],
    ['Resp. Sens. 1 H334', 'Ni(NO3)2', '1', '0.99'],
    ['Muta. 2 H341', 'Ni(NO3)2', '1', '0.99'],
    ['STOT RE 1 H372', 'Ni(NO3)2', '1', '0.99'],
    ['Skin Irrit. 2 H315', 'Ni(NO3)2', '20', '19.9'],
    ['Skin Sens. 1 H317', 'Ni(OH)2', '1', '0.99'],
    ['STOT RE 2 H373', 'Ni(OH)2', '1', '0.99'],
    ['STOT RE 1 H372', 'Ni(OH)2', '10', '9.99'],
    ['Repr. 2 H361f', 'Ag-powder', '3', '2.99'],
    ['STOT RE 2 H373', 'Ag-powder', '10', '9.99'],
    ['Repr. 1A H360D', 'Pb-powder', '0.03', '0.029'],
    ['Repr. 1A H360FD', 'Pb-powder', '0.3', '0.299'],
    ['Lact. H362', 'Pb-powder', '0.3', '0.299'],
    ['Aquatic Acute 1 H400', 'Cu(NO3)2', '2.5', '2.49'],
    ['Aquatic Chronic 3 H412', 'Cu(NO3)2', '0.25', '0.249'],
    ['Aquatic Chronic 2 H411', 'Cu(NO3)2', '2.5', '2.49'],
    ['Aquatic Chronic 1 H410', 'Cu(NO3)2', '25', '24.9'],
    ['Aquatic Acute 1 H400', 'AgNO3', '0.025', '0.024'],
    ['Aquatic Chronic 1 H410', 'AgCl', '0.25', '0.249'],
  ];
  it.each(edges)('%s by %s at %s %, not at %s %', (hazard, id, at, under) => {
    expect(calculated(liquor({ [id]: at }))).toContain(hazard);
    expect(calculated(liquor({ [id]: under }))).not.toContain(hazard);
  });

  it('what is below 1 % adds nothing to an estimate, to skin or to eye', () => {
    const { estimates, skin, eye } = classify(liquor({ HNO3: '0.99', 'Cu(NO3)2': '0.99' }));
    expect([estimates.oral, estimates.vapour, skin['1B'], skin['2'], eye['1'], eye['2']]).toEqual(
      Array(6).fill(null),
    );
    const at = classify(liquor({ HNO3: '1', 'Cu(NO3)2': '1' }));
    expect(at.estimates.oral?.value.toNumber()).toBeCloseTo(50_000, 6);
    expect(at.estimates.vapour?.value.toNumber()).toBeCloseTo(265, 9);
  });

  it('three shares of 1 % reach the 3 % of eye damage', () => {
    expect(calculated(liquor({ HNO3: '1', 'Cu(NO3)2': '1', 'Ni(NO3)2': '1' }))).toContain('Eye Dam. 1 H318');
  });

  it('the high end of a range reaches it, though likely it is less', () => {
    expect(calculated(liquor({ HNO3: ['3', '5'] }))).toContain('Skin Corr. 1B H314');
    expect(calculated(liquor({ HNO3: ['3', '4.9'] }))).not.toContain('Skin Corr. 1B H314');
  });
});

describe('only the worst of a family, and what is below it not at all', () => {
  it('what is corrosive is not told to be irritant as well', () => {
    const told = classify(liquor({ HNO3: '10' })).candidates.map((c) => c.code);
    expect(told).toContain('Skin Corr. 1B H314');
    expect(told.filter((code) => code.startsWith('Skin Irrit.') || code.startsWith('Eye Irrit.'))).toEqual(
      [],
    );
  });

  it('what comes near a milder class is not told beside the worse one', () => {
    expect(candidate(liquor({ 'Ag-powder': '2' }), 'Repr. 2 H361f')?.standing).toBe('close');
    expect(candidate(liquor({ 'Ag-powder': '2', 'Ni(NO3)2': '1' }), 'Repr. 2 H361f')).toBeUndefined();
  });

  it('what comes near a worse class is told as close', () => {
    expect(candidate(liquor({ HNO3: '15' }), 'Skin Corr. 1A H314')?.standing).toBe('close');
    expect(candidate(liquor({ HNO3: '9' }), 'Skin Corr. 1A H314')).toBeUndefined();
  });

  it('no class twice: what stays open weighs more than what only comes near', () => {
    const mixture = liquor({ 'Cu(NO3)2': '15', 'Pb(NO3)2': '3' }, { open: ['Ba'] });
    const codes = classify(mixture).candidates.map((c) => c.code);
    expect(new Set(codes).size).toBe(codes.length);
    expect(candidate(liquor({ 'Cu(NO3)2': '15' }), 'Acute Tox. 4 (oral) H302')?.standing).toBe('close');
    expect(candidate(mixture, 'Acute Tox. 4 (oral) H302')?.standing).toBe('open');
  });
});

describe('lead and barium count by the metal (Note 1)', () => {
  // 0.3 % of lead is 0.47955 % of its nitrate by the factor of the table.
  it('the nitrate of 0.3 % lead may harm the unborn child; a little less does not', () => {
    expect(calculated(liquor({ 'Pb(NO3)2': '0.47955' }))).toContain('Repr. 1A H360Df');
    expect(calculated(liquor({ 'Pb(NO3)2': '0.479' }))).not.toContain('Repr. 1A H360Df');
  });

  it('the estimate of barium nitrate is that of its barium', () => {
    const { estimates } = classify(liquor({ 'Ba(NO3)2': '19.03' }));
    expect(estimates.oral?.value.toNumber()).toBeCloseTo(5000, 9);
    expect(estimates['dust or mist']?.value.toNumber()).toBeCloseTo(15, 9);
  });
});

describe('an extreme pH', () => {
  const both = ['Skin Corr. 1 H314', 'Eye Dam. 1 H318'];
  const byPh = (pH: Given['pH'], shares: Given['massPercent'] = {}) =>
    classify(liquor(shares, { pH })).phRule.map(hazardText);

  it.each(['2', '-0.5', '11.5', '14'])('pH %s is corrosive', (pH) => expect(byPh(pH)).toEqual(both));
  it.each(['2.01', '7', '11.49'])('pH %s is not', (pH) => expect(byPh(pH)).toEqual([]));

  it('the end on the dangerous side decides', () => {
    expect(byPh(['1.9', '4'])).toEqual(both);
    expect(byPh(['10', '11.6'])).toEqual(both);
    expect(byPh(['2.1', '11.4'])).toEqual([]);
  });

  it('adds nothing to what is calculated already', () => {
    expect(byPh('0.1', { HNO3: '10' })).toEqual([]);
    expect(byPh('0.1', { HNO3: '4' })).toEqual(['Skin Corr. 1 H314']);
  });

  it('shows which end of its range it was held by', () => {
    const ground = (pH: Given['pH']) => candidate(liquor({}, { pH }), 'Skin Corr. 1 H314')?.grounds[0];
    expect(ground('1')).toMatchObject({ end: 'low' });
    expect(ground('1')?.limit.value.toNumber()).toBe(2);
    expect(ground('13')?.end).toBeUndefined();
    expect(ground('13')?.limit.value.toNumber()).toBe(11.5);
  });

  it('comes near within half a unit', () => {
    expect(candidate(liquor({}, { pH: '2.4' }), 'Skin Corr. 1 H314')?.standing).toBe('close');
    expect(candidate(liquor({}, { pH: '2.6' }), 'Skin Corr. 1 H314')).toBeUndefined();
  });

  it('that is not determined stays open and never becomes a no', () => {
    const open = candidate(liquor({ HNO3: '2' }, { pH: null }), 'Skin Corr. 1 H314');
    expect(open?.standing).toBe('open');
    expect(open?.lacks).toEqual(['pH']);
    expect(candidate(liquor({ HNO3: '5' }, { pH: null }), 'Skin Corr. 1 H314')).toBeUndefined();
  });
});

describe('what was not determined', () => {
  it('leaves open what it could bring, by the name of the record', () => {
    const mixture = liquor({ HNO3: '2' }, { open: ['Pb'] });
    expect(candidate(mixture, 'Repr. 1A H360Df')).toMatchObject({ standing: 'open', lacks: ['Pb'] });
    expect(candidate(mixture, 'Aquatic Acute 1 H400')).toMatchObject({ standing: 'open', lacks: ['Pb'] });
  });

  it('takes nothing from what fires without it', () => {
    const without = classify(liquor({ 'Ni(NO3)2': '2' }));
    const open = classify(liquor({ 'Ni(NO3)2': '2' }, { open: ['Cu', 'HNO3'] }));
    expect(open.calculated).toEqual(without.calculated);
    expect(candidate(liquor({ 'Cu(NO3)2': '30' }, { open: ['Ni'] }), 'Aquatic Acute 1 H400')?.standing).toBe(
      'fires',
    );
  });

  it.each(substanceIds)('%s: each of the classes that it could bring stays open', (id) => {
    const alone = classify(liquor({ [id]: id === 'HNO3' ? '70' : '100' }));
    const open = classify(liquor({}, { open: [id] })).candidates;
    for (const hazard of alone.calculated)
      expect(
        open.some((c) => c.code === hazardText(hazard) && c.standing === 'open'),
        hazardText(hazard),
      ).toBe(true);
  });
});

describe('what only a test decides', () => {
  it('is flagged and never calculated', () => {
    const { byTest, calculated: classes } = classify(liquor({ HNO3: '10', AgNO3: '0.2' }));
    expect(byTest).toEqual(['Met. Corr. 1 H290', 'Ox. test: contains AgNO3']);
    expect(classes.filter((h) => h.class.startsWith('Ox.') || h.class === 'Met. Corr.')).toEqual([]);
  });

  it('a liquid and a solid are tested for different classes', () => {
    expect(candidate(liquor({ 'Cu(NO3)2': '1' }), 'Ox. Liq. H272')?.standing).toBe('judgement');
    expect(candidate(liquor({ 'Cu(NO3)2': '1' }, { state: 'solid' }), 'Ox. Sol. H272')?.standing).toBe(
      'judgement',
    );
  });

  it('acid of 65 % has its class by the entry', () => {
    expect(candidate(liquor({ HNO3: '65' }), 'Ox. Liq. 3 H272')?.standing).toBe('fires');
    expect(candidate(liquor({ HNO3: '64' }), 'Ox. Liq. 3 H272')?.standing).toBe('close');
    expect(classify(liquor({ HNO3: '65' })).byTest).toContain('Ox. Liq. 3 H272');
    expect(classify(liquor({ HNO3: '64' })).byTest).toEqual(['Met. Corr. 1 H290']);
  });

  it('classes that suppliers notify besides the entry are for a person to judge', () => {
    const mixture = liquor({ 'Pb(NO3)2': '10' });
    expect(candidate(mixture, 'Eye Dam. 1 H318')?.standing).toBe('judgement');
    expect(candidate(mixture, 'Ox. Liq. H272')?.standing).toBe('judgement');
    expect(calculated(mixture)).not.toContain('Eye Dam. 1 H318');
    expect(candidate(liquor({ 'Cu(NO3)2': '5' }), 'Skin Corr. 1B H314')?.standing).toBe('judgement');
    expect(
      candidate(liquor({ BaTiO3: '70' }, { state: 'solid' }), 'Acute Tox. 4 (oral) H302')?.standing,
    ).toBe('judgement');
  });
});

describe('statements besides those of the classes', () => {
  const supplements = (shares: Given['massPercent']) => classify(liquor(shares)).supplements;

  it('a sensitiser is named from a tenth of its limit, until the mixture is classed for it', () => {
    expect(supplements({ 'Ni(NO3)2': '0.001' })).toEqual([{ code: 'EUH208', names: ['nickel dinitrate'] }]);
    expect(supplements({ 'Ni(NO3)2': '0.0009' })).toEqual([]);
    expect(supplements({ 'Ni(NO3)2': '0.01' })).toEqual([]);
    expect(classify(liquor({ 'Ni(NO3)2': '0.01' })).sensitisers).toEqual(['nickel dinitrate']);
  });

  it('nitric acid is corrosive to the airways where it is classed for inhalation', () => {
    expect(supplements({ HNO3: '13.25' })).toEqual([{ code: 'EUH071', names: [] }]);
    expect(supplements({ HNO3: '10' })).toEqual([]);
    expect(candidate(liquor({ HNO3: '10' }), 'EUH071')?.standing).toBe('judgement');
    expect(supplements({ HNO3: '10', 'Cu(OH)2': '20' })).toEqual([]);
    expect(candidate(liquor({ HNO3: '2' }), 'EUH071')).toBeUndefined();
  });
});

describe('any mixture', () => {
  /** Thousandths of a percent, so that limits are hit as often as missed. */
  const share = fc.integer({ min: 1, max: 40_000 }).map((n) => (n / 1000).toFixed(3));
  const shares = fc.dictionary(fc.constantFrom(...substanceIds), share, { minKeys: 1, maxKeys: 6 });

  it('loses no hazard as more of a substance comes in', () => {
    fc.assert(
      fc.property(shares, fc.constantFrom(...substanceIds), share, (before, id, more) => {
        const after = { ...before, [id]: String(Number(before[id] ?? 0) + Number(more)) };
        const [few, many] = [classify(liquor(before)).calculated, classify(liquor(after)).calculated];
        for (const hazard of few)
          expect(
            many.some((h) => coversHazard(h, hazard)),
            hazardText(hazard),
          ).toBe(true);
      }),
    );
  });

  it('is the same in whatever order it is told', () => {
    fc.assert(
      fc.property(shares, (told) => {
        const backwards = Object.fromEntries(Object.entries(told).reverse());
        const [a, b] = [classify(liquor(told)), classify(liquor(backwards))];
        expect(new Set(a.calculated.map(hazardText))).toEqual(new Set(b.calculated.map(hazardText)));
        expect(new Set(a.byTest)).toEqual(new Set(b.byTest));
        for (const route of ['oral', 'vapour', 'dust or mist'] as const)
          expect(a.estimates[route]?.value.toPrecision(15)).toBe(b.estimates[route]?.value.toPrecision(15));
        expect(a.aquatic.acute?.value.toPrecision(15)).toBe(b.aquatic.acute?.value.toPrecision(15));
      }),
    );
  });

  it('shows the rule, where it stands, and numbers that bear it out', () => {
    fc.assert(
      fc.property(shares, (told) => {
        for (const { standing, citation, grounds, code } of classify(liquor(told)).candidates) {
          expect(citation.rule.length, code).toBeGreaterThan(0);
          expect(citation.cite, code).toMatch(/^CLP /);
          if (standing !== 'fires' || code.startsWith('EUH071')) continue;
          expect(grounds.length, code).toBeGreaterThan(0);
          for (const { figure, limit } of grounds)
            expect(figure.high.toSignificantDigits(12).gte(limit.value), code).toBe(true);
        }
      }),
    );
  });
});
