import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Figure } from '../../../src/quantities/figure';
import { airChanges, airflowNeeded, mixingFromEfficiency } from '../../../src/safety/ventilation/airflow';
import {
  type Aired,
  buildsUpTo,
  closedIn,
  closedReaches,
  purgeTime,
  settlesAt,
  timeToReach,
} from '../../../src/safety/ventilation/purge';
import { expectWithin } from '../../support/close';
import { figure } from './ventilation-told';

function found<V>(result: { ok: true; value: V } | { ok: false; failure: { code: string } }): V {
  if (!result.ok) throw new Error(result.failure.code);
  return result.value;
}
const code = (result: { ok: true } | { ok: false; failure: { code: string } }) =>
  result.ok ? 'worked out' : result.failure.code;

const amount = fc.integer({ min: 1, max: 100_000 }).map((n) => n / 100);
const factor = fc.integer({ min: 10, max: 100 }).map((n) => n / 10);
const aired = (volume: number, airflow: number, mixing = 1): Aired => ({
  volume: figure(volume, 'm³'),
  airflow: figure(airflow, 'm³/h'),
  mixing: figure(mixing, '1'),
});
const rooms = fc.tuple(amount, amount, factor).map((told) => aired(...told));
const rate = (n: number): Figure<'L/min'> => figure(n, 'L/min');
const ppm = (n: number): Figure<'ppm'> => figure(n, 'ppm');

describe('room air that would be needed', () => {
  const needed = (litres: number, limit: number, mixing: number) =>
    airflowNeeded({ of: 'mean', rate: rate(litres), limit: ppm(limit), mixing: figure(mixing, '1') });

  it('thins the gas to the limit in the end, however the room mixes', () => {
    fc.assert(
      fc.property(amount, amount, factor, (litres, limit, mixing) => {
        const airflow = found(needed(litres, limit, mixing));
        const room: Aired = { volume: figure(40, 'm³'), airflow, mixing: figure(mixing, '1') };
        expectWithin(found(settlesAt(room, rate(litres), 'mean')).value, limit, 1e-9);
      }),
    );
  });

  it('is more for more gas, a lower limit, worse mixing', () => {
    fc.assert(
      fc.property(amount, amount, fc.integer({ min: 10, max: 50 }), (litres, limit, tenths) => {
        const usual = found(needed(litres, limit, tenths / 10)).value;
        expect(
          found(needed(litres * 2, limit, tenths / 10))
            .value.div(usual)
            .toNumber(),
        ).toBeCloseTo(2, 9);
        expect(
          found(needed(litres, limit / 2, tenths / 10))
            .value.div(usual)
            .toNumber(),
        ).toBeCloseTo(2, 9);
        expect(
          found(needed(litres, limit, tenths / 5))
            .value.div(usual)
            .toNumber(),
        ).toBeCloseTo(2, 9);
      }),
    );
  });

  it.each([
    ['no-limit', 0, 3],
    ['mixing-outside', 1, 0.99],
    ['mixing-outside', 1, 10.1],
    ['mixing-outside', 1, 0.2],
    ['worked out', 1, 1],
    ['worked out', 1, 10],
  ] as const)('%s at %d ppm with a factor of %d', (why, limit, mixing) => {
    expect(code(needed(1, limit, mixing))).toBe(why);
  });
});

describe('an efficiency of mixing', () => {
  it('is the factor upside down, so that there and back again is where it was', () => {
    fc.assert(
      fc.property(factor, (mixing) => {
        const back = found(mixingFromEfficiency(figure(1 / mixing, '1')));
        expectWithin(back.value, mixing, 1e-12);
      }),
    );
  });

  it.each([[0], [0.05], [1.01], [5]])('is not %d', (efficiency) => {
    expect(code(mixingFromEfficiency(figure(efficiency, '1')))).toBe('mixing-outside');
  });
});

describe('airing a room', () => {
  it('takes as long for each halving', () => {
    fc.assert(
      fc.property(rooms, amount, fc.integer({ min: 1, max: 10 }), (room, from, halvings) => {
        const once = found(purgeTime(room, ppm(from), ppm(from / 2))).value;
        const all = found(purgeTime(room, ppm(from), ppm(from / 2 ** halvings))).value;
        expectWithin(all, once.times(halvings).toNumber(), 1e-9);
      }),
    );
  });

  it('halves in ln 2 of the time in which its air changes once, times the mixing factor', () => {
    fc.assert(
      fc.property(rooms, amount, (room, from) => {
        const changes = found(airChanges(room.volume, room.airflow)).value;
        const half = found(purgeTime(room, ppm(from), ppm(from / 2))).value;
        expectWithin(half.times(changes).div(60), Math.LN2 * room.mixing.value.toNumber(), 1e-9);
      }),
    );
  });

  it('in two steps takes as long as in one', () => {
    fc.assert(
      fc.property(rooms, amount, (room, from) => {
        const step = (a: number, b: number) => found(purgeTime(room, ppm(a), ppm(b))).value;
        expectWithin(
          step(from, from / 3).plus(step(from / 3, from / 7)),
          step(from, from / 7).toNumber(),
          1e-9,
        );
      }),
    );
  });

  it('from 192 to 1 ppm at 600 m³/h in 40 m³ takes 21 min, and 63 where it mixes as a garage does', () => {
    // Our own sum: 40 ÷ 600 × 60 × ln 192.4.
    expect(found(purgeTime(aired(40, 600), ppm(192.4), ppm(1))).value.toFixed(1)).toBe('21.0');
    expect(found(purgeTime(aired(40, 600, 3), ppm(192.4), ppm(1))).value.toFixed(1)).toBe('63.1');
  });

  it.each([
    ['nothing-to-purge', aired(40, 600), 1, 1],
    ['nothing-to-purge', aired(40, 600), 1, 2],
    ['no-limit', aired(40, 600), 1, 0],
    ['no-airflow', aired(40, 0), 2, 1],
    ['no-room', aired(0, 600), 2, 1],
    ['mixing-outside', aired(40, 600, 0.5), 2, 1],
  ] as const)('refuses: %s', (why, room, from, to) => {
    expect(code(purgeTime(room, ppm(from), ppm(to)))).toBe(why);
  });
});

describe('a room that fills', () => {
  /** So long that the air changes between a thirtieth and three times. */
  const moments = fc
    .tuple(rooms, amount, fc.integer({ min: 1, max: 90 }))
    .map(([room, litres, thirtieths]) => ({
      room,
      litres,
      minutes: room.volume.value
        .div(room.airflow.value)
        .times(room.mixing.value)
        .times(2)
        .times(thirtieths)
        .toNumber(),
    }));

  it('comes to a concentration in the time that it takes to come to it', () => {
    fc.assert(
      fc.property(moments, ({ room, litres, minutes }) => {
        const there = found(buildsUpTo(room, rate(litres), figure(minutes, 'min'))).value;
        const time = found(timeToReach(room, rate(litres), ppm(there.toNumber()))).value;
        expectWithin(time, minutes, 1e-6);
      }),
    );
  });

  it('is never above what it settles at, nor above what a shut room would hold', () => {
    fc.assert(
      fc.property(moments, ({ room, litres, minutes }) => {
        const there = found(buildsUpTo(room, rate(litres), figure(minutes, 'min'))).value;
        expect(there.lt(found(settlesAt(room, rate(litres), 'mean')).value)).toBe(true);
        expect(there.lt(found(closedIn(room.volume, figure(litres * minutes, 'L'))).value)).toBe(true);
      }),
    );
  });

  it('is nowhere later than one that is shut', () => {
    fc.assert(
      fc.property(moments, ({ room, litres, minutes }) => {
        const there = ppm(found(buildsUpTo(room, rate(litres), figure(minutes, 'min'))).value.toNumber());
        const shut = found(closedReaches(room.volume, rate(litres), there)).value;
        expect(shut.lt(minutes)).toBe(true);
      }),
    );
  });

  it.each([
    ['never-reached', aired(40, 60), 1, 1001],
    ['never-reached', aired(40, 60), 1, 1000],
    ['worked out', aired(40, 60), 1, 999],
    ['no-gas', aired(40, 60), 0, 1],
    ['no-limit', aired(40, 60), 1, 0],
    ['no-airflow', aired(40, 0), 1, 1],
  ] as const)('%s', (why, room, litres, to) => {
    expect(code(timeToReach(room, rate(litres), ppm(to)))).toBe(why);
  });
});
