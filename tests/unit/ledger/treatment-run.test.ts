import Decimal from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nextPortion } from '../../../src/ledger/next-portion';
import {
  allowedRise,
  isAtEnd,
  measuredSince,
  minutesSince,
  minutesTo,
  nextLook,
  stageOf,
  warmedOf,
} from '../../../src/ledger/treatment-run';
import { between, given } from '../../../src/quantities/figure';
import { at, begun, can, dose, id, potRead, pour, Scribe, treatmentEnd, wash } from './scribe';

const treatment = id('7e', 1);

/** A can of 4 L with a treatment begun in it: limestone to pH 5, then hydrated lime to 9. */
function pot() {
  const scribe = new Scribe();
  for (const body of [wash(1, '4'), can(1), pour(1, 1, '4'), begun(1, 1)]) scribe.write(body, 0);
  const state = () => {
    const found = scribe.state.treatments.get(treatment);
    if (!found) throw new Error('no treatment');
    return found;
  };
  return { scribe, state };
}

const limestone = (mass: string) => ({ ...dose(1, mass), agent: 'limestone' as const });
const warm = (ph: string, celsius: string) => potRead(1, ph, { temperature: { value: celsius, unit: '°C' } });

describe('the stage that a treatment is in', () => {
  test('is the first until its pH was read', () => {
    const { scribe, state } = pot();
    scribe.write(limestone('40'), 1);
    scribe.write(potRead(1, '4.9'), 50);
    expect(stageOf(state())).toMatchObject({ index: 0, agent: 'limestone', targetPh: '5', isLast: false });
    scribe.write(potRead(1, '5.0'), 60);
    expect(stageOf(state())).toMatchObject({
      index: 1,
      agent: 'hydrated-lime',
      targetPh: '9.0',
      isLast: true,
    });
  });

  test('is the next with a dose of its agent, whatever was read', () => {
    const { scribe, state } = pot();
    scribe.write(limestone('40'), 1);
    scribe.write(dose(1, '10'), 50);
    const { index, grams: inIt, foreign } = stageOf(state());
    expect([index, inIt.toNumber(), foreign]).toEqual([1, 10, false]);
  });

  test('knows that something else went in', () => {
    const { scribe, state } = pot();
    scribe.write(dose(1, '10'), 1);
    scribe.write(limestone('5'), 30);
    expect(stageOf(state()).foreign).toBe(true);
  });

  test('counts to each reading what was in by then, of one minute in the order of writing', () => {
    const { scribe, state } = pot();
    scribe.write(potRead(1, '0.5'), 1);
    scribe.write(limestone('40'), 1);
    scribe.write(potRead(1, '1.0'), 60);
    scribe.write({ ...limestone('0.02'), mass: { value: '0.02', unit: 'kg' } }, 60);
    scribe.write(potRead(1, '1.4'), 120);
    expect(stageOf(state()).points.map(({ grams }) => grams.toNumber())).toEqual([0, 40, 60]);
  });
});

describe('the next look', () => {
  test('comes after the wait of the base that went in, from the hour of the dose', () => {
    const { scribe, state } = pot();
    expect(nextLook(state())).toBeNull();
    scribe.write(dose(1, '10'), 30, 12);
    expect(nextLook(state())).toMatchObject({ due: at(32), early: false });
    scribe.write(limestone('10'), 40);
    expect(nextLook(state())?.due).toBe(at(85));
  });

  test('is over once the pH was read after the least wait, not before', () => {
    const { scribe, state } = pot();
    scribe.write(dose(1, '10'), 10);
    scribe.write(potRead(1, '1'), 24);
    expect(nextLook(state())?.early).toBe(true);
    expect(stageOf(state()).points.map(({ early }) => early)).toEqual([true]);
    scribe.write({ ...potRead(1, '1'), ph: undefined, colour: 'blue' }, 26);
    expect(nextLook(state())).not.toBeNull();
    scribe.write(potRead(1, '1'), 25);
    expect(nextLook(state())).toBeNull();
  });

  test('is not asked for after iron, nor after the end', () => {
    const { scribe, state } = pot();
    scribe.write(dose(1, '10', 'iron'), 1);
    expect(nextLook(state())).toBeNull();
    scribe.write(dose(1, '10'), 2);
    expect(nextLook(state())).not.toBeNull();
    scribe.write(treatmentEnd(1, 'stopped'), 3);
    expect(nextLook(state())).toBeNull();
  });
});

describe('the end of the plan', () => {
  test('is the pH of the last stage, read since the last dose', () => {
    const { scribe, state } = pot();
    scribe.write(dose(1, '10'), 1);
    scribe.write(potRead(1, '8.9'), 30);
    expect(isAtEnd(state())).toBe(false);
    scribe.write(potRead(1, '9.0'), 40);
    expect(isAtEnd(state())).toBe(true);
    scribe.write(dose(1, '1'), 40);
    expect(isAtEnd(state())).toBe(false);
  });
});

describe('how warm it became', () => {
  test('is against the last reading before the portion, and against the first of all', () => {
    const { scribe, state } = pot();
    scribe.write(warm('0.3', '18'), 1);
    scribe.write(dose(1, '10'), 2);
    scribe.write(warm('0.5', '25'), 30);
    scribe.write(dose(1, '10'), 31);
    scribe.write(warm('0.8', '35'), 60);
    const { byPortion, inAll, over } = warmedOf(state(), allowedRise());
    expect([byPortion?.value.toNumber(), inAll?.value.toNumber(), over]).toEqual([10, 17, false]);
    // Two thermometer readings to half a degree each.
    expect(byPortion?.high.minus(10).toNumber()).toBeCloseTo(Math.SQRT1_2, 6);
  });

  test('is too warm above what one portion may, usual or stated', () => {
    const { scribe, state } = pot();
    scribe.write(warm('0.3', '18'), 1);
    scribe.write(dose(1, '10'), 2);
    scribe.write(warm('0.5', '28.1'), 30);
    expect(warmedOf(state(), allowedRise()).over).toBe(true);
    expect(warmedOf(state(), allowedRise({ value: '12', unit: 'K' })).over).toBe(false);
  });

  test('is not told without a reading before and after', () => {
    const { scribe, state } = pot();
    scribe.write(dose(1, '10'), 2);
    scribe.write(warm('0.5', '40'), 30);
    expect(warmedOf(state(), allowedRise())).toMatchObject({ over: false });
    expect(warmedOf(state(), allowedRise()).byPortion).toBeUndefined();
  });
});

test('metals measured since the last dose are named once each', () => {
  const { scribe, state } = pot();
  const strip = (metal: 'Cu' | 'Ni') =>
    ({ by: 'strip', metal, concentration: { value: '5', unit: 'mg/L' } }) as const;
  scribe.write(potRead(1, '8', { findings: [strip('Ni')] }), 1);
  scribe.write(dose(1, '10'), 2);
  scribe.write(potRead(1, '9', { findings: [strip('Cu')] }), 30);
  scribe.write(potRead(1, '9', { findings: [strip('Cu')] }), 31);
  expect(measuredSince(state())).toEqual(['Cu']);
});

test('minutes to come are never shown as none, minutes gone never as more', () => {
  expect(minutesTo(at(20), at(0))).toBe(20);
  expect(minutesTo('2026-03-02T08:00:10.000Z', at(0))).toBe(1);
  expect(minutesSince(at(0), '2026-03-02T08:02:59.000Z')).toBe(2);
  expect(minutesSince(at(1), at(0))).toBe(0);
});

describe('the next portion', () => {
  const left = (low: number, high: number) =>
    given({
      origin: 'left',
      sentence: 'Left',
      value: (low + high) / 2,
      unit: 'g',
      how: 'stated',
      spread: between(low, (low + high) / 2, high),
    });

  test('cuts what is left at least into equal ones that heat and foam allow', () => {
    expect(nextPortion(left(242, 325), new Decimal(145))).toEqual({ grams: new Decimal(120), kind: 'full' });
    expect(nextPortion(left(5, 40), new Decimal(145))).toEqual({ grams: new Decimal(5), kind: 'full' });
  });

  test('goes by quarters of what is open once the low end is in', () => {
    expect(nextPortion(left(0, 40), new Decimal(145))).toEqual({ grams: new Decimal(10), kind: 'last' });
    expect(nextPortion(left(0, 800), new Decimal(145))).toEqual({ grams: new Decimal(140), kind: 'last' });
    expect(nextPortion(left(0, 0), new Decimal(145))).toBeNull();
  });

  test('is never more than allowed, nor a full one more than is left at least', () => {
    const amount = fc.double({ min: 0, max: 5000, noNaN: true });
    fc.assert(
      fc.property(amount, amount, fc.double({ min: 1, max: 500, noNaN: true }), (a, b, most) => {
        const range = left(Math.min(a, b), Math.max(a, b));
        const next = nextPortion(range, new Decimal(most));
        if (!next) return;
        expect(next.grams.gt(0)).toBe(true);
        expect(next.grams.lte(most)).toBe(true);
        if (next.kind === 'full') expect(next.grams.lte(range.low)).toBe(true);
        else expect(next.grams.lte(range.high)).toBe(true);
      }),
    );
  });
});

test('grams are read in the unit in which they were weighed', () => {
  const { scribe, state } = pot();
  scribe.write({ ...limestone('1'), mass: { value: '1', unit: 'lb' } }, 1);
  expect(stageOf(state()).grams.toNumber()).toBeCloseTo(453.59237, 5);
});
