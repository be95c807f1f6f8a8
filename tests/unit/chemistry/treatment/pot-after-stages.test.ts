import { beforeAll, describe, expect, it } from 'vitest';
import { weighed } from '../../../../src/chemistry/evidence';
import { potAfterStages, type StageDone } from '../../../../src/chemistry/treatment/pot-after-stages';
import { closingIn, type Learnt, learnt } from '../../../../src/chemistry/treatment/pot-learning';
import { width } from '../../../../src/quantities/figure';
import { limestoneTo, load, simulatedStages, target } from './simulated-pot';

const runs = 6;

const after = (done: readonly StageDone[]) =>
  potAfterStages({ load, base: 'hydrated-lime', pH: target }, done);
const potOf = (done: readonly StageDone[]) => {
  const before = after(done);
  if (!before.ok) throw new Error(JSON.stringify(before.why));
  return before.pot;
};
const agreeing = (one: Learnt | undefined) => {
  if (!one?.agrees) throw new Error(JSON.stringify(one?.contradictions));
  return one;
};
const rangeOf = (one: Learnt | undefined): number => width(agreeing(one).total).toNumber();
const median = (all: readonly number[]): number =>
  [...all].sort((a, b) => a - b)[Math.floor(all.length / 2)] ?? Number.NaN;

describe('6 pots, limestone to about 5, then lime, any share of its carbonate driven out', () => {
  let honest: readonly { readonly truly: number; readonly told: readonly Learnt[] }[] = [];
  const agreed = () => honest.filter(({ told }) => told.every(({ agrees }) => agrees));
  beforeAll(() => {
    honest = Array.from({ length: runs }, (_, seed) => {
      const { done, readings, truly } = simulatedStages(seed + 1);
      return { truly, told: closingIn(potOf([done]), readings) };
    });
  }, 240_000);

  it('contradict nothing, but for one at most', () => {
    expect(agreed().length).toBeGreaterThanOrEqual(runs - 1);
  });

  it('hold the true dose of lime within the range in at least 85 % of all readings', () => {
    const all = agreed().flatMap(({ truly, told }) =>
      told.map((one) => agreeing(one).total.low.lte(truly) && agreeing(one).total.high.gte(truly)),
    );
    expect(all.filter((inside) => inside).length).toBeGreaterThanOrEqual(0.85 * all.length);
  });

  it('close in: half of them to a third of the first range at the end of the second stage', () => {
    expect(median(agreed().map(({ told }) => rangeOf(told.at(-1)) / rangeOf(told[0])))).toBeLessThan(1 / 3);
  });
});

describe('what the first stage taught', () => {
  const { done } = simulatedStages(3);

  it('narrows the second', () => {
    const untold = learnt(potOf([{ ...done, readings: [] }]), []);
    expect(rangeOf(learnt(potOf([done]), []))).toBeLessThan(0.8 * rangeOf(untold));
  });

  it('is that more limestone leaves less for lime', () => {
    const doubled = { value: done.dose.value.times(1.2).toFixed(0), unit: 'g' } as const;
    const more = { ...done, readings: [], dose: weighed(doubled, 'limestone', 'Limestone so far') };
    const left = (one: StageDone) => agreeing(learnt(potOf([one]), [])).total.value.toNumber();
    expect(left(more)).toBeLessThan(left({ ...done, readings: [] }));
  });

  it('is nothing where its readings contradict the plan: they are told', () => {
    const [first] = done.readings;
    if (!first) throw new Error('no reading');
    const wrong = after([{ ...done, readings: [{ ...first, pH: { value: '11.0', unit: '1' } }] }]);
    expect(wrong).toMatchObject({
      ok: false,
      why: { code: 'stage-contradicted', stage: 0, contradictions: [{ code: 'above-reach' }] },
    });
  });

  it('begins the second at about the pH at which the first ended', () => {
    const [first] = learnt(potOf([done]), []).curve.line;
    expect(Math.abs((first?.[1] ?? 0) - limestoneTo)).toBeLessThan(1);
  });
});
