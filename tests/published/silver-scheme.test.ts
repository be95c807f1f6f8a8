/**
 * The published scheme for mercury(I), lead and silver as a laboratory course teaches it (The Third Millennium Online, group 1:
 * chloride, hot water, ammonia, then nitric acid until litmus is red), with what its known solutions show.
 */
import { describe, expect, it } from 'vitest';
import { due, silverVerdict } from '../../src/safety/silver-check';

const at = '2026-05-12T08:00:00.000Z';
const clean = { before: 'clear', blank: 'clear', known: 'curd', light: 'not-tried' };
const acidified = { alkaline: 'alkaline', strip: 'acid' };

const unknowns: readonly (readonly [
  told: string,
  sights: Readonly<Record<string, string>>,
  outcome: string,
])[] = [
  [
    'silver alone: hot water leaves it, ammonia takes it, acid brings a white precipitate back',
    { chloride: 'white-curd', 'hot-water': 'stays', ammonia: 'gone', colour: 'none', acid: 'curd' },
    'silver',
  ],
  [
    'silver alone, little of it: a cloudiness in the acidified extract confirms it as well',
    { chloride: 'white-curd', 'hot-water': 'stays', ammonia: 'gone', colour: 'none', acid: 'cloud' },
    'silver',
  ],
  ['lead alone: hot water takes all of it', { chloride: 'crystals', 'hot-water': 'gone' }, 'not-silver'],
  [
    'mercury(I): the residue in ammonia is black or grey',
    { chloride: 'white-curd', 'hot-water': 'stays', ammonia: 'black', colour: 'none', acid: 'none' },
    'not-conclusive',
  ],
  [
    'lead and silver in one well, not parted: part goes with hot water',
    { chloride: 'white-curd', 'hot-water': 'in-part', ammonia: 'in-part', colour: 'none', acid: 'curd' },
    'not-conclusive',
  ],
  ['no metal of the group: no precipitate with chloride', { chloride: 'none' }, 'not-silver'],
];

describe('the published scheme', () => {
  it.each(unknowns)('%s', (_, sights, outcome) => {
    const looks = Object.entries({ ...clean, ...acidified, ...sights }).map(([look, seen]) => ({
      look,
      seen,
      at,
    }));
    // Where the scheme ends early, nothing more is looked at.
    const made = looks.filter(({ look }) => due(looks).some((one) => one.look === look));
    expect(silverVerdict(made).outcome).toBe(outcome);
  });
});
