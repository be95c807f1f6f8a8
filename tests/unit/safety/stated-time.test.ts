import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { dayField, happenedAt, hourField, nextAt, statedWhen } from '../../../src/safety/stated-time';
import { stepped } from '../../../src/safety/stepped-reading';

/** Noon on the wall of wherever the test runs. */
const noon = new Date(2026, 4, 12, 12, 0).toISOString();
const wall = (iso: string | null) => (iso === null ? null : `${dayField(iso)}T${hourField(iso)}`);

describe('an hour that somebody states', () => {
  it.each([
    ['13:15', '2026-05-12T13:15'],
    ['12:01', '2026-05-12T12:01'],
    ['12:00', '2026-05-13T12:00'],
    ['01:30', '2026-05-13T01:30'],
    ['', null],
    ['25:00', null],
    ['noon', null],
  ])('%s, said at noon, is %s', (hour, expected) => {
    expect(wall(nextAt(hour, noon))).toBe(expected);
  });

  describe('in the night when the clocks go back', () => {
    // Central European Time: on 25 October 2026 at 03:00 it is 02:00 again (Directive 2000/84/EC: 01:00 UTC).
    beforeAll(() => void vi.stubEnv('TZ', 'Europe/Berlin'));
    afterAll(() => void vi.unstubAllEnvs());

    it.each([
      ['before', '2026-10-25T00:10:00.000Z', '02:30', '2026-10-25T00:30:00.000Z'],
      ['in the hour that comes again', '2026-10-25T01:10:00.000Z', '02:30', '2026-10-25T01:30:00.000Z'],
      ['once that is over', '2026-10-25T01:40:00.000Z', '02:30', '2026-10-26T01:30:00.000Z'],
      ['across it', '2026-10-24T21:00:00.000Z', '04:00', '2026-10-25T03:00:00.000Z'],
    ])('%s, it is the next time that the clock shows it', (_, now, hour, expected) => {
      expect(hourField('2026-10-25T00:30:00.000Z')).toBe('02:30');
      expect(nextAt(hour, now)).toBe(expected);
    });
  });

  it('of what has happened is not ahead', () => {
    expect(wall(happenedAt('2026-05-12', '11:59', noon))).toBe('2026-05-12T11:59');
    expect(wall(happenedAt('2026-05-12', '12:00', noon))).toBe('2026-05-12T12:00');
    expect(happenedAt('2026-05-12', '12:01', noon)).toBeNull();
    expect(happenedAt('', '11:00', noon)).toBeNull();
  });
});

describe('a reading that is stepped', () => {
  it.each([
    ['0.34', 1, '0.35'],
    ['0.30', -1, '0.29'],
    ['9', 1, '10'],
    ['0', -1, '-1'],
    ['-1', 1, '0'],
    ['1,5', 1, '1,6'],
    ['', 1, '1'],
    ['x', 1, 'x'],
  ] as const)('from %s by %i is %s', (typed, direction, expected) => {
    expect(stepped(typed, direction)).toBe(expected);
  });
});

describe('one field for day and hour, empty for now', () => {
  it.each([
    ['', 'now', null],
    ['2026-05-12T12:00', 'earlier', '2026-05-12T12:00'],
    ['2026-05-12T11:59:30', 'earlier', '2026-05-12T11:59'],
    ['2026-05-12T12:01', 'wrong', null],
    ['2026-05-12', 'wrong', null],
    ['half', 'wrong', null],
  ])('“%s” at noon of 12 May is %s', (typed, state, at) => {
    const stated = statedWhen(typed, noon);
    expect(stated.state).toBe(state);
    expect(wall(stated.state === 'earlier' ? stated.at : null)).toBe(at);
  });
});
