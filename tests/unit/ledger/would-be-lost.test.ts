import { describe, expect, test } from 'vitest';
import { type SinceBackup, wouldBeLost } from '../../../src/ledger/would-be-lost';

const monday = '2026-03-02T08:00:00.000Z';
const daysLater = (days: number): string => new Date(Date.parse(monday) + days * 86_400_000).toISOString();
const since = (change: Partial<SinceBackup>): SinceBackup => ({
  lastAt: null,
  entries: 1,
  files: 0,
  oldest: monday,
  ...change,
});

describe('what would be lost with the phone', () => {
  test.each([
    [
      'nothing, when all of it is in a backup, however old',
      since({ entries: 0, oldest: null }),
      400,
      'nothing',
    ],
    ['little, and it is quiet', since({}), 0, 'quiet'],
    ['little of six days', since({}), 6, 'quiet'],
    ['little of a week is due', since({}), 7, 'due'],
    ['19 entries of today', since({ entries: 19 }), 0, 'quiet'],
    ['20 entries of today are due', since({ entries: 20 }), 0, 'due'],
    ['5 photos are due', since({ files: 5 }), 0, 'due'],
    ['149 entries', since({ entries: 149, files: null }), 0, 'due'],
    ['150 entries press', since({ entries: 150, files: null }), 0, 'pressing'],
    ['40 photos press', since({ entries: 60, files: 40 }), 0, 'pressing'],
    ['one entry of 29 days', since({}), 29, 'due'],
    ['one entry of a month presses', since({}), 30, 'pressing'],
  ] as const)('%s', (_, lost, days, presses) => {
    expect(wouldBeLost(lost, daysLater(days))).toMatchObject({ presses });
  });

  test('is of no day when the clock was set back', () => {
    expect(wouldBeLost(since({}), daysLater(-30))).toMatchObject({ days: 0, presses: 'quiet' });
  });
});
