import { describe, expect, it } from 'vitest';
import { baseTo } from '../../../../src/chemistry/treatment/base-to';
import { potBefore } from '../../../../src/chemistry/treatment/pot-knowledge';
import { closingIn, type Learnt, learnt } from '../../../../src/chemistry/treatment/pot-learning';
import type { PotReading } from '../../../../src/chemistry/treatment/pot-readings';
import { width } from '../../../../src/quantities/figure';
import { formulaText } from '../../../../src/quantities/formula-text';
import { load, potWith, simulatedRun, target, tenths, type Wrong } from './simulated-pot';

const runs = 40;
const before = potWith('hydrated-lime');
const honest = Array.from({ length: runs }, (_, seed) => {
  const run = simulatedRun(before, tenths(10), seed + 1);
  return { ...run, after: closingIn(before, run.readings) };
});

const agreeing = (one: Learnt | undefined) => {
  if (!one?.agrees) throw new Error(JSON.stringify(one?.contradictions));
  return one;
};
const rangeOf = (one: Learnt | undefined): number => width(agreeing(one).total).toNumber();
const agreed = honest.filter(({ after }) => after.every(({ agrees }) => agrees));
/** Range after so many readings as a share of that before any, in the run that is wider than nine of ten others. */
const widest = (count: number): number =>
  agreed.map(({ after }) => rangeOf(after[count]) / rangeOf(after[0])).sort((a, b) => a - b)[
    Math.floor(0.9 * agreed.length)
  ] ?? Number.NaN;
const inside = (count: number): number =>
  agreed.filter(({ truly, after }) => {
    const { low, high } = agreeing(after[count]).total;
    return low.lte(truly) && high.gte(truly);
  }).length;

describe('40 pots, every amount 30 % off, copper and nickel down any way, pH noise 0.1, read at each tenth of the true dose', () => {
  it('hold the true dose within the range in at least 85 % of them after any reading, 95 % from 80 % of the dose on', () => {
    for (let count = 1; count <= 10; count += 1)
      expect(inside(count), `after ${count}`).toBeGreaterThanOrEqual(
        (count < 8 ? 0.85 : 0.95) * agreed.length,
      );
  });

  it('close in, nine of ten: to 75 % of the first range by half of the dose, 60 % by 80 %, 55 % by 90 %, a quarter at the end', () => {
    expect(widest(5)).toBeLessThan(0.75);
    expect(widest(8)).toBeLessThan(0.6);
    expect(widest(9)).toBeLessThan(0.55);
    expect(widest(10)).toBeLessThan(1 / 4);
  });

  it('are never wider than before any reading but for a twentieth, and thirty-nine readings of forty widen none by a fifth', () => {
    const steps = agreed.flatMap(({ after }) =>
      after.slice(1).map((one, i) => rangeOf(one) / rangeOf(after[i])),
    );
    expect(steps.filter((step) => step > 1.2).length).toBeLessThan(steps.length / 40);
    for (const { after } of agreed)
      for (const one of after) expect(rangeOf(one) / rangeOf(after[0])).toBeLessThan(1.05);
  });

  it('contradict nothing, but for one at most', () => {
    expect(agreed.length).toBeGreaterThanOrEqual(runs - 1);
  });
});

describe('a pot with something wrong, dosed on to 1.3 times what should be enough', () => {
  const doses = [0.2, 0.4, 0.6, 0.8, 0.9, 1, 1.1, 1.2, 1.3];
  const codesOf = (wrong: Wrong, seed: number): readonly string[] => {
    const { readings } = simulatedRun(before, doses, seed, wrong);
    const last = learnt(before, readings);
    return last.agrees ? [] : last.contradictions.map(({ code }) => code);
  };
  const all = (wrong: Wrong) => Array.from({ length: 4 }, (_, seed) => codesOf(wrong, seed + 101));

  it.each<Wrong>(['limestone', 'filler'])('%s in the bag of lime contradicts the plan', (wrong) => {
    for (const codes of all(wrong)) expect(codes).not.toHaveLength(0);
  });

  it('ammonia, a fifth of all that takes base, is found, and called so in three of four at least', () => {
    const codes = all('ammonia');
    for (const one of codes) expect(one).not.toHaveLength(0);
    expect(codes.filter((one) => one.includes('ammonia')).length).toBeGreaterThanOrEqual(codes.length - 1);
  });

  it('an electrode that died contradicts it, and often says that it stands still', () => {
    const codes = all('dead electrode');
    for (const one of codes) expect(one).not.toHaveLength(0);
    expect(codes.some((one) => one.includes('no-rise'))).toBe(true);
  });

  it('shows no amount left to add, nor any other that it learnt', () => {
    const { readings } = simulatedRun(before, doses, 101, 'filler');
    const last = learnt(before, readings);
    expect(last.agrees).toBe(false);
    expect(last).not.toHaveProperty('remaining');
    expect(last).not.toHaveProperty('parts');
  });
});

const read = (grams: string, pH: string, more: Partial<PotReading> = {}): PotReading => ({
  origin: `at/${grams}`,
  dose: { value: grams, unit: 'g' },
  pH: { value: pH, unit: '1' },
  instrument: 'meter',
  ...more,
});
const codes = (...readings: readonly PotReading[]): readonly string[] => {
  const last = learnt(before, readings);
  return last.agrees ? [] : last.contradictions.map(({ code }) => code);
};

describe('a reading that cannot be', () => {
  it('pH 13.9 is above what lime makes of any pot', () => {
    expect(codes(read('460', '13.90'))).toEqual(['above-reach']);
  });

  it('pH 7 in the bare liquor lies outside all that was known', () => {
    expect(codes(read('0', '7.00'))).toEqual(['outside-known']);
  });

  it('pH falls from 5.2 to 4.0 as lime goes in; by 0.2, a noise, it does not', () => {
    expect(codes(read('250', '5.20'), read('300', '4.00'))).toContain('falls');
    expect(codes(read('250', '5.20'), read('300', '5.00'))).toEqual([]);
  });

  it('a pot that warmed by 60 K, where 200 g of lime make 8, is too warm; by 8 K it is not', () => {
    const bare = read('0', '0.40', { temperature: { value: '20', unit: '°C' } });
    expect(codes(bare, read('200', '0.80', { temperature: { value: '80', unit: '°C' } }))).toEqual([
      'too-warm',
    ]);
    expect(codes(bare, read('200', '0.80', { temperature: { value: '28', unit: '°C' } }))).toEqual([]);
  });

  it('a pot that has not warmed at all is a doubt, and keeps its figure', () => {
    const bare = read('0', '0.40', { temperature: { value: '20', unit: '°C' } });
    const last = learnt(before, [bare, read('200', '0.90', { temperature: { value: '21', unit: '°C' } })]);
    expect(last.agrees).toBe(true);
    expect(last.doubts.map(({ code }) => code)).toEqual(['too-cool']);
  });
});

describe('what is left to add', () => {
  it('before any reading is what the model says of the load', () => {
    const model = baseTo('hydrated-lime', load, target);
    const none = agreeing(learnt(before, []));
    if (!model.ok) throw new Error(model.why.code);
    expect(none.remaining.value.div(model.needed.mass.value).minus(1).abs().lt(0.003)).toBe(true);
    expect(width(none.remaining).div(width(model.needed.mass)).minus(1).abs().lt(0.1)).toBe(true);
  });

  it('is the total less what went in, and names the readings it rests on', () => {
    const last = agreeing(learnt(before, [read('100', '0.60'), read('200', '0.90')]));
    expect(last.remaining.value.toNumber()).toBeCloseTo(last.total.value.toNumber() - 200, 6);
    expect(last.total.formula && formulaText(last.total.formula)).toContain(
      'the model refitted to 2 readings at',
    );
    expect(last.total.inputs.map(({ sentence }) => sentence)).toContain('pH read at 200 g of base');
  });

  it('is nothing where the readings say that it is past, with its range above nothing', () => {
    const last = agreeing(learnt(before, [read('500', '11.90')]));
    expect(last.remaining.value.isZero()).toBe(true);
    expect(last.remaining.low.isZero()).toBe(true);
  });

  it('is the same in kilograms', () => {
    const grams = agreeing(learnt(before, [read('200', '0.90')]));
    const kilograms = agreeing(
      learnt(before, [{ ...read('200', '0.90'), dose: { value: '0.200', unit: 'kg' } }]),
    );
    expect(kilograms.total.value.toFixed(6)).toBe(grams.total.value.toFixed(6));
  });

  it('follows pH paper less closely than a meter', () => {
    const [paper, meter] = (['paper', 'meter'] as const).map((instrument) =>
      rangeOf(
        learnt(before, [
          read('100', '0.60', { instrument }),
          read('150', '0.80', { instrument }),
          read('200', '1.20', { instrument }),
        ]),
      ),
    );
    expect(paper).toBeGreaterThan(meter ?? 0);
  });

  it('hardly moves for a reading below pH 1, and moves more for one above it', () => {
    const none = rangeOf(learnt(before, []));
    expect(rangeOf(learnt(before, [read('100', '0.50')])) / none).toBeGreaterThan(0.85);
    expect(rangeOf(learnt(before, [read('200', '1.50')])) / none).toBeLessThan(0.8);
  });

  it('with limestone to pH 9.5 is not said at all, but the pH at which it ends', () => {
    const stalls = potBefore({ load, base: 'limestone', pH: target });
    expect(stalls).toMatchObject({ ok: false, why: { code: 'stalls' } });
    expect(!stalls.ok && stalls.why.code === 'stalls' && stalls.why.pH).toBeCloseTo(5.4, 0);
  });
});
