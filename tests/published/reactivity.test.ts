/**
 * A thinned copy of the compatibility chart of US EPA, "A Method for Determining the Compatibility of Hazardous Wastes",
 * EPA-600/2-80-076 (April 1980), copied by hand from a public copy of the chart; columns 1 and 2 were compared with a
 * university rendering. The explicit rules and their effects: letters in Chemical & Engineering News (8 January 1996)
 * and the Journal of Chemical Education (Haight), and a German accident-insurer sheet on nitric acid.
 */
import { describe, expect, it } from 'vitest';
import { cellsBetween, chartCell, isRefused } from '../../src/safety/must-not-meet/chart';
import { meetings } from '../../src/safety/must-not-meet/meetings';
import { compatibility } from '../cases/compatibility-case';

/** Groups across; one row a group. "." is a blank cell, "x" the group itself. */
const across = [1, 2, 10, 11, 22, 23, 24, 33, 101, 104, 105, 106];
const printed = `
1   x       .       H  GT,GF   H,F,GF H,F,GF S GT,GF  H,G    H,GT   H,GF   H
2   .       x       H  GT,GF   H,F,GF H,F,GF S H,F,GF H,F,GT .      H,F,GT H
10  H       H       x  .       H,GF   .      S .      .      .      .      .
11  GT,GF   GT,GF   .  x       .      .      . .      .      H,GT,E H,GT   .
22  H,F,GF  H,F,GF  H,GF .     x      .      . .      .      H,F,E  .      H,GF
23  H,F,GF  H,F,GF  .  .       .      x      . .      .      H,F    .      .
24  S       S       S  .       .      .      x .      .      .      .      S
33  GT,GF   H,F,GF  .  .       .      .      . x      .      H,F,GT .      GT,GF
101 H,G     H,F,GT  .  .       .      .      . .      x      H,F,G  H,GF   .
104 H,GT    .       .  H,GT,E  H,F,E  H,F    . H,F,GT H,F,G  x      .      .
105 H,GF    H,F,GT  .  H,GT    .      .      . .      H,GF   .      x      .
106 H       H       .  .       H,GF   .      S GT,GF  .      .      .      x
`
  .trim()
  .split('\n')
  .map((line) => line.trim().split(/\s+/))
  .map(([group, ...cells]) => ({ group: Number(group), cells }));

describe('the chart of EPA-600/2-80-076', () => {
  const pairs = printed.flatMap(({ group, cells }) =>
    cells.flatMap((codes, i) => (codes === 'x' ? [] : [{ a: group, b: across[i] ?? 0, codes }])),
  );

  it.each(pairs)('cell $a with $b says $codes', ({ a, b, codes }) => {
    const [cell = ''] = cellsBetween([a], [b]);
    const found = chartCell(cell);
    const said = found && !found.suspected ? [...found.codes].sort().join() : '.';
    expect(said).toBe(codes.split(',').sort().join());
  });

  it('has 131 cells that say something, and a group 107 that must meet nothing', () => {
    const groups = Array.from({ length: 107 }, (_, i) => i + 1);
    const cells = cellsBetween(groups, groups).filter((cell) => chartCell(cell)?.suspected === false);
    expect(cells.filter((cell) => !cell.endsWith('-107'))).toHaveLength(131);
    expect(cellsBetween([107], [3, 24, 106]).map((cell) => chartCell(cell)?.codes)).toEqual([
      ['U'],
      ['U'],
      ['U'],
    ]);
  });

  it('is silent on nitric with hydrochloric acid and with hypochlorite, where a rule speaks', () => {
    expect([chartCell('1-2'), chartCell('2-104')]).toEqual([undefined, undefined]);
    const by = (a: string, b: string) => meetings([{ thing: a }], [{ thing: b }])[0]?.by;
    expect(by('nitric-acid', 'hydrochloric-acid')).toBe('HNO3-HCL');
    expect(by('nitric-acid', 'hypochlorite')).toBe('ACID-HYPO');
  });

  it('is taken for dangerous where the copy has a gap, and the gap stays told', () => {
    for (const cell of ['104-105', '105-106', '102-104', '102-105']) {
      const found = chartCell(cell);
      expect([found?.suspected, isRefused(found?.codes ?? [])], cell).toEqual([true, true]);
    }
  });
});

describe('worked pairs of groups', () => {
  it('ammonia-test waste into the liquor drum: cells, codes, and the rules on silver, ammonia and lime', () => {
    const found = compatibility({ a: [10, 24, 106], b: [2, 24, 106] });
    expect(found.cells).toEqual({
      '2-10': ['H'],
      '10-24': ['S'],
      '10-106': [],
      '2-24': ['S'],
      '24-106': ['S'],
      '2-106': ['H'],
    });
    expect(found.codes).toEqual(['H', 'S']);
    expect(found.specificRules).toEqual(expect.arrayContaining(['AG-NH3', 'NH3-BASE']));
    expect(found.allowPlannedMixing).toBe(false);
  });

  it.each([
    { a: [1, 106], b: [2, 24, 106], rule: 'HNO3-HCL' },
    { a: [104], b: [2, 24, 106], rule: 'ACID-HYPO' },
    { a: [23], b: [2, 24, 106], rule: 'ACID-METAL' },
    { a: [101], b: [2, 24, 106], rule: 'NO3-ORG' },
    { a: [101], b: [104], rule: 'NO3-ORG' },
    { a: [10], b: [10, 24, 106], rule: 'NH3-BASE' },
    { a: [33], b: [2, 24, 106], rule: 'ACID-SULF' },
    { a: [11], b: [1, 106], rule: 'ACID-CN' },
    { a: [102], b: [2, 24, 106], rule: 'AZIDE-ACET' },
    { a: [4], b: [2, 24, 106], rule: 'AG-ETOH' },
  ])('$rule forbids groups $a with $b', ({ a, b, rule }) => {
    const found = compatibility({ a, b });
    expect(found.specificRules).toContain(rule);
    expect(found.allowPlannedMixing).toBe(false);
  });

  it.each([
    { a: [10], b: [2, 24, 106], rule: 'ACID-CARB' },
    { a: [106], b: [2, 106], rule: 'WATER-ACID' },
  ])('$rule is to be minded, and may be planned', ({ a, b, rule }) => {
    const found = compatibility({ a, b });
    expect(found.specificRules).toContain(rule);
    expect(found.allowPlannedMixing).toBe(true);
  });
});
