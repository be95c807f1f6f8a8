import { describe, expect, it } from 'vitest';
import { moistureFrom, type WrittenMoisture } from '../../../src/chemistry/residue';

const ends = (found: WrittenMoisture, kind: string) => {
  const moisture = moistureFrom(found, 'm', kind);
  return moisture && [moisture.low, moisture.value, moisture.high].map(Number);
};

describe('moisture that nobody determined goes by the kind of waste', () => {
  it.each([
    ['ceramic-residue', [10, 25, 40]],
    ['spent-filters', [40, 60, 80]],
    // A cake drained through cloth is 10 to 20 % solids.
    ['hydroxide-sludge', [80, 85, 90]],
  ] as const)('%s', (kind, range) => {
    expect(ends({ by: 'not-determined' }, kind)).toEqual(range);
  });

  it.each(['soiled-ppe', 'spill-absorbent', 'leach-liquor'])(
    'of %s nothing is usual: it stays open',
    (kind) => {
      expect(moistureFrom({ by: 'not-determined' }, 'm', kind)).toBeUndefined();
    },
  );

  it('what was found counts, whatever the kind', () => {
    const stated: WrittenMoisture = { by: 'stated', percent: { value: '30', unit: '%' } };
    expect(ends(stated, 'soiled-ppe')).toEqual([28, 30, 32]);
    expect(ends(stated, 'hydroxide-sludge')).toEqual([28, 30, 32]);
  });
});

describe('moisture that contradicts itself is taken for not determined', () => {
  it.each<readonly [string, WrittenMoisture]>([
    [
      'nothing weighed',
      { by: 'dried-sample', wet: { value: '0', unit: 'g' }, dry: { value: '0', unit: 'g' } },
    ],
    [
      'drier and heavier',
      { by: 'dried-sample', wet: { value: '5', unit: 'g' }, dry: { value: '6', unit: 'g' } },
    ],
    ['more than all', { by: 'stated', percent: { value: '140', unit: '%' } }],
    ['ends crossed', { by: 'assumed', low: { value: '60', unit: '%' }, high: { value: '20', unit: '%' } }],
  ])('%s', (_, found) => {
    expect(ends(found, 'ceramic-residue')).toEqual([10, 25, 40]);
    expect(moistureFrom(found, 'm', 'soiled-ppe')).toBeUndefined();
  });
});
