import { describe, expect, test } from 'vitest';
import { benchEstimate } from '../../../src/ledger/bench-estimate';
import type { PlainBody } from '../../../src/ledger/entries/body';
import { mostAtOnce, outlookOf } from '../../../src/ledger/run-outlook';
import { planFor } from '../../../src/ledger/treatment-plan';
import type { Figure } from '../../../src/quantities/figure';
import type { BaseId } from '../../../src/reference/tables';
import { begun, can, dose, id, litres, potRead, pour, Scribe, wash } from './scribe';

const treatment = id('7e', 1);
const lime = { kind: 'treatment-begun', agent: 'hydrated-lime' } as const;

const liquor = (acid: string | null): PlainBody => ({
  ...wash(1, '4.00', 'leach-liquor'),
  liquid: {
    volume: litres('4.00'),
    findings: [{ by: 'photometer', metal: 'Cu', concentration: { value: '10.0', unit: 'g/L' } }],
    freeAcid: acid === null ? [] : [{ by: 'titration', result: { value: acid, unit: 'mol/L' } }],
  },
});

type Stages = Extract<PlainBody, { kind: 'treatment-begun' }>['stages'];

/** 4 L with 40 g of copper and 2 mol of acid in a 20 L can. By hand: 0.63 mol × 2 + 2 mol = 3.26 mol, about 121 g of pure lime. */
function pot(
  stages: Stages = [{ agent: lime.agent, targetPh: { value: '9', unit: '1' } }],
  acid: string | null = '0.50',
  capacity = '20',
) {
  const scribe = new Scribe();
  for (const body of [liquor(acid), can(1, capacity), pour(1, 1, '4.00')]) scribe.write(body, 0);
  const { targetPh: _, ...start } = begun(1, 1);
  scribe.write({ ...start, stages }, 0);
  const outlook = () => {
    const found = scribe.state.treatments.get(treatment);
    if (!found) throw new Error('no treatment');
    return outlookOf(scribe.state, found);
  };
  const known = () => {
    const found = outlook();
    if (!found.ok) throw new Error(JSON.stringify(found.why));
    return found.value;
  };
  const whyNot = () => {
    const found = outlook();
    return found.ok ? null : found.why;
  };
  return { scribe, known, whyNot };
}

const limestone = (mass: string) => ({ ...dose(1, mass), agent: 'limestone' as const });
const twoStages: Stages = [
  { agent: 'limestone', targetPh: { value: '5', unit: '1' } },
  { agent: 'hydrated-lime', targetPh: { value: '9', unit: '1' } },
];

describe('what is left to add', () => {
  test('is before the first dose what the load takes, as sold', () => {
    const { left, planned, next, contradictions } = pot().known();
    expect(left?.value.toNumber()).toBeGreaterThan(121);
    expect(left?.value.toNumber()).toBeLessThan(121 * 1.25);
    expect(left?.value.div(planned.needed.value).toNumber()).toBeCloseTo(1, 1);
    expect(next?.kind).toBe('full');
    expect(contradictions).toEqual([]);
  });

  test('is less by what went in, also before it was read', () => {
    const p = pot();
    const before = p.known().left?.value.toNumber() ?? 0;
    p.scribe.write(dose(1, '60'), 10);
    expect(p.known().left?.value.toNumber()).toBeCloseTo(before - 60, 6);
    expect(p.known().curve?.read).toEqual([]);
  });

  test('narrows with a reading that came late enough, and with no other', () => {
    const p = pot();
    p.scribe.write(dose(1, '90'), 10);
    const wide = p.known().left;
    p.scribe.write(potRead(1, '4.6'), 15);
    expect(p.known().left?.high.eq(wide?.high ?? 0)).toBe(true);
    p.scribe.write(potRead(1, '4.9'), 40);
    const close = p.known().left;
    expect(close && wide && close.high.minus(close.low).lt(wide.high.minus(wide.low))).toBe(true);
    expect(p.known().curve?.read).toEqual([[90, 4.9]]);
  });

  test('lets a pH be expected after the next portion, within its range', () => {
    const p = pot();
    const { next } = p.known();
    const { low = 0, likely = 0, high = 0 } = next?.expected ?? {};
    expect(low).toBeLessThanOrEqual(likely);
    expect(likely).toBeLessThanOrEqual(high);
    expect(high).toBeLessThan(14);
  });

  test('is nothing to plan once the pH was read', () => {
    const p = pot();
    p.scribe.write(dose(1, '140'), 10);
    p.scribe.write(potRead(1, '9.3'), 40);
    expect(p.known().next).toBeNull();
  });

  test('takes the purity of the sack that the last dose named', () => {
    const p = pot();
    const usual = p.known().planned.needed.value;
    p.scribe.write({ ...dose(1, '10'), purity: { value: '70', unit: '%' } }, 10);
    expect(p.known().planned.needed.value.div(usual).toNumber()).toBeGreaterThan(1.2);
  });

  test('goes on from where limestone ended, with a curve of its own, and learns from its readings', () => {
    const p = pot(twoStages);
    p.scribe.write(limestone('150'), 10);
    p.scribe.write(potRead(1, '5.0'), 60);
    const { stage, left, curve, planned } = p.known();
    expect([stage.index, planned.base]).toEqual([1, 'hydrated-lime']);
    expect(curve?.line[0]?.[1]).toBeGreaterThan(4);
    expect(left?.value.gt(0)).toBe(true);
    p.scribe.write(dose(1, '8'), 70);
    p.scribe.write(potRead(1, '6.5'), 110);
    const after = p.known();
    expect(after.contradictions).toEqual([]);
    expect(after.curve?.read).toEqual([[8, 6.5]]);
    const widthOf = (figure: typeof left) => figure?.high.minus(figure.low).toNumber() ?? Number.NaN;
    expect(widthOf(after.left)).toBeLessThan(widthOf(left));
  });
});

describe('the free space over the liquor', () => {
  const choice = (stages: Stages) => ({
    stages: stages.map(({ agent, targetPh }) => ({ base: agent as BaseId, pH: Number(targetPh?.value) })),
  });

  test('holds the portions of a run down as it does those of its plan, also once some went in', () => {
    const p = pot(twoStages);
    const planned = planFor(p.scribe.state, id('c0', 1), choice(twoStages));
    const byFoam = planned?.ok ? planned.value.stages[0]?.byFoam : undefined;
    expect(byFoam?.value.gt(0)).toBe(true);
    const ends = ({ low, value, high }: Figure) => [low, value, high].map((end) => end.toFixed(9));
    const before = p.known().planned.byFoam;
    expect(before && ends(before)).toEqual(byFoam && ends(byFoam));
    p.scribe.write(limestone('50'), 10);
    const after = p.known().planned.byFoam;
    expect(after && ends(after)).toEqual(byFoam && ends(byFoam));
  });

  test('is asked for where there may be none', () => {
    const p = pot(twoStages, '0.50', '4.00');
    expect(p.whyNot()).toEqual({ code: 'no-plan', why: { code: 'headspace-open' } });
  });
});

describe('no figure of what is left', () => {
  test('stands beside readings that contradict the plan', () => {
    const p = pot();
    p.scribe.write(dose(1, '200'), 10);
    p.scribe.write(potRead(1, '1.5'), 40);
    const { left, next, contradictions } = p.known();
    expect([left, next]).toEqual([undefined, null]);
    expect(contradictions[0]).toMatchObject({ code: 'outside-known' });
    expect(
      contradictions[0] && 'point' in contradictions[0] && contradictions[0].point?.grams.toNumber(),
    ).toBe(200);
  });

  test('stands where more of a later stage went in than the plan holds possible', () => {
    const p = pot(twoStages);
    p.scribe.write(limestone('150'), 10);
    p.scribe.write(potRead(1, '5.0'), 60);
    p.scribe.write(dose(1, '400'), 70);
    p.scribe.write(potRead(1, '7.0'), 120);
    expect(p.known()).toMatchObject({ contradictions: [{ code: 'outside-known' }], next: null });
    expect(p.known().left).toBeUndefined();
  });

  test.each<[string, Stages, string | null, PlainBody[], object]>([
    [
      'the acid is open',
      [{ agent: lime.agent, targetPh: { value: '9', unit: '1' } }],
      null,
      [],
      { code: 'no-base', why: 'acid-open' },
    ],
    ['iron goes in', [{ agent: 'iron' }], '0.50', [], { code: 'iron-in' }],
    ['iron went in', twoStages, '0.50', [dose(1, '20', 'iron')], { code: 'iron-in' }],
    [
      'something else went in',
      [{ agent: lime.agent, targetPh: { value: '9', unit: '1' } }],
      '0.50',
      [limestone('20')],
      { code: 'other-agent-in' },
    ],
    ['no pH is aimed at', [{ agent: lime.agent }], '0.50', [], { code: 'no-target' }],
    [
      'limestone cannot reach the pH',
      [{ agent: 'limestone', targetPh: { value: '10', unit: '1' } }],
      '0.50',
      [],
      { code: 'no-plan', why: { code: 'stalls' } },
    ],
  ])('stands where %s', (_, stages, acid, more, why) => {
    const p = pot(stages, acid);
    for (const body of more) p.scribe.write(body, 10);
    expect(p.whyNot()).toMatchObject(why);
  });
});

test('a dose is more than at once is planned above the largest portion, not at it', () => {
  const outlook = pot().known();
  const most = outlook.planned.byHeat.low;
  const grams = (value: string) => ({ value, unit: 'g' }) as const;
  expect(mostAtOnce(outlook, grams(most.floor().toFixed()))).toBeNull();
  expect(mostAtOnce(outlook, grams(most.ceil().plus(1).toFixed()))?.eq(most)).toBe(true);
});

describe('a trial on the bench', () => {
  const trial = (grams: string) => ({
    sampleVolume: { value: '100', unit: 'mL' } as const,
    agent: 'hydrated-lime' as const,
    mass: { value: grams, unit: 'g' } as const,
    endPh: { value: '9', unit: '1' } as const,
    instrument: 'meter' as const,
  });
  const told = (state: ReturnType<typeof pot>['scribe']['state'], grams: string, target?: number) =>
    benchEstimate(state, id('c0', 1), trial(grams), target);

  test('is scaled by the volumes, beside the model', () => {
    const { fromTest, toTarget, fromModel, disagree } = told(pot().scribe.state, '3.5');
    expect(fromTest?.value.toNumber()).toBeCloseTo(140, 6);
    expect(fromModel?.ok).toBe(true);
    expect([toTarget, disagree]).toEqual([undefined, false]);
  });

  test('is carried to another pH by the model', () => {
    const { fromTest, toTarget } = told(pot().scribe.state, '3.5', 7);
    expect(toTarget?.value.lt(fromTest?.value ?? 0)).toBe(true);
  });

  test('disagrees where the two lie further apart than their difference is uncertain', () => {
    expect(told(pot().scribe.state, '6.0').disagree).toBe(true);
    expect(told(pot().scribe.state, '1.0').disagree).toBe(true);
  });

  test('stands alone where nobody knows the acid', () => {
    const { fromTest, fromModel } = told(pot(undefined, null).scribe.state, '3.5');
    expect(fromTest?.value.toNumber()).toBeCloseTo(140, 6);
    expect(fromModel).toBeUndefined();
  });

  test('says nothing of a can with ammonia waste in it', () => {
    const { scribe } = pot();
    scribe.write({ ...wash(2, '0.1'), stream: 'ammonia-test-waste' }, 1);
    scribe.write(pour(2, 1, '0.1'), 1);
    expect(benchEstimate(scribe.state, id('c0', 1), trial('3.5'))).toEqual({
      disagree: false,
      none: 'ammonia',
    });
  });
});
