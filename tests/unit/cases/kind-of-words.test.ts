import { describe, expect, it } from 'vitest';
import { wasteKinds, wasteList } from '../../../src/reference/waste-list-tables';
import { kindFromWords, viewFromWords } from '../../cases/kind-of-words';

describe('the kind out of words', () => {
  it.each([
    ['Leach liquor', 'leach-liquor'],
    ['barren liquor after cementation', 'barren-liquor'],
    ['Spent filter papers', 'spent-filters'],
    ['filter papers wet with leach liquor', 'spent-filters'],
    ['wipes soaked with leach liquor', 'soiled-ppe'],
    ['filter cake of hydroxide sludge', 'hydroxide-sludge'],
    ['ceramic residue, washed, shown not hazardous', 'ceramic-residue'],
    ['left-over chloride-test acid', 'surplus-hydrochloric-acid'],
    ['waste of the chloride test', 'chloride-test-waste'],
    ['spot-test waste', 'chloride-test-waste'],
    ['ammonia test waste', 'ammonia-test-waste'],
    ['sludge from liming the barren liquor', 'hydroxide-sludge'],
    ['residue wet with barren liquor', 'ceramic-residue'],
    ['dried copper nitrate', 'dry-nitrate-salts'],
    ['Ca(OH)2, surplus', 'surplus-lime'],
    ['surplus lime', 'surplus-lime'],
    ['lime sludge', 'hydroxide-sludge'],
    ['empty acid bottles', 'empty-bottles'],
    ['capacitors before leaching', 'capacitors'],
    ['ceramic capacitors, not yet leached', 'capacitors'],
    ['leached ceramic chips', 'ceramic-residue'],
    ['out-of-date reagents', 'old-reagents'],
    ['wash water', 'wash-water'],
    ['dry nitrate salts', 'dry-nitrate-salts'],
    ['copper nitrate solution', 'metal-nitrate-solution'],
    ['unleached ceramic capacitors', 'capacitors'],
    ['unleached ceramic from making ceramics', 'ceramics-never-leached'],
    ['liquor taken to an off-site treatment plant', 'leach-liquor'],
    ['aqueous waste for off-site treatment', 'aqueous-waste'],
    ['barren liquor (copper nitrate, nitric acid)', 'barren-liquor'],
    ['copper/nickel hydroxide filter cake from liming with caustic soda', 'hydroxide-sludge'],
    ['spot test waste (hydrochloric acid)', 'chloride-test-waste'],
    ['filtrate after liming, calcium nitrate', 'filtrate'],
    ['spent leach acid with copper', 'leach-liquor'],
    ['acid from a home workshop', 'surplus-nitric-acid'],
    ['copper and nickel nitrate salts', 'metal-nitrate-solution'],
    ['dried copper nitrate salts', 'dry-nitrate-salts'],
    ['plastic bottles with acid residues', 'empty-bottles'],
    ['scrap iron', null],
  ] as const)('%s: %s', (words, kind) => {
    expect(kindFromWords(words)).toBe(kind);
  });

  it.each([
    ['chemical surface treatment of metals', 'surface-treatment'],
    ['copper hydrometallurgy', 'copper-hydrometallurgy'],
    ['at a waste treatment facility', 'waste-facility'],
    ['recovery of silver, cementation on copper', null],
    ['recovery of silver, not surface treatment, no plating', null],
  ] as const)('the work, out of words: %s: %s', (words, view) => {
    expect(viewFromWords(words)).toBe(view);
  });

  it('every kind is found by the name it has', () => {
    for (const kind of wasteKinds) expect(kindFromWords(wasteList.kinds[kind].name), kind).toBe(kind);
  });
});
