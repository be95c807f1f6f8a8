import { describe, expect, it } from 'vitest';
import { clearanceUntil } from '../../../src/safety/clearance';
import { minutesLeft } from '../../../src/safety/time-left';
import { listNamed } from './build-run';

const completedAt = '2026-05-12T10:26:37.000Z';

describe('a clearance', () => {
  it('ends on the whole minute that stands on its tag', () => {
    expect(clearanceUntil(listNamed('filtration'), completedAt)).toBe('2026-05-12T12:26:00.000Z');
  });
  it('has whole minutes left, and never less than none', () => {
    expect(minutesLeft('2026-05-12T12:26:00.000Z', '2026-05-12T12:24:00.001Z')).toBe(1);
    expect(minutesLeft('2026-05-12T12:26:00.000Z', '2026-05-12T12:27:00.000Z')).toBe(0);
  });
});

describe('leaving a leach', () => {
  const list = listNamed('leach-check');
  it('is cleared to the stated return, never over twelve hours, and four when one stays', () => {
    expect(clearanceUntil(list, completedAt)).toBe('2026-05-12T14:26:00.000Z');
    expect(clearanceUntil(list, completedAt, '2026-05-12T18:00:00.000Z')).toBe('2026-05-12T18:00:00.000Z');
    expect(clearanceUntil(list, completedAt, '2026-05-13T08:00:00.000Z')).toBe('2026-05-12T22:26:00.000Z');
  });
  it('lengthens no other list', () => {
    expect(clearanceUntil(listNamed('filtration'), completedAt, '2026-05-13T08:00:00.000Z')).toBe(
      '2026-05-12T12:26:00.000Z',
    );
  });
});
