import { describe, expect, it } from 'vitest';
import { molarMass } from '../../../src/chemistry/formula';
import { nitrateOf, substanceIds, substances } from '../../../src/reference/substances-tables';

describe('the substances of the trade', () => {
  const metals = substanceIds.flatMap((id) => {
    const { formula, metal } = substances[id];
    return metal ? [[id, formula, metal] as const] : [];
  });

  it.each(metals)('%s: grams for a gram of its metal, by molar mass', (_id, formula, { symbol, factor }) => {
    const byMass = molarMass(formula).value.div(molarMass(symbol).value);
    expect(Number(factor) / byMass.toNumber()).toBeCloseTo(1, 3);
  });

  it('each metal in liquor has one nitrate', () => {
    expect([...nitrateOf.keys()].sort()).toEqual(['Ag', 'Ba', 'Ca', 'Cu', 'Fe', 'Ni', 'Pb', 'Pd', 'Zn']);
  });

  it('a CAS number has its check digit', () => {
    for (const id of substanceIds) {
      const digits = substances[id].cas.replaceAll('-', '');
      const sum = [...digits.slice(0, -1)].reverse().reduce((all, d, i) => all + Number(d) * (i + 1), 0);
      expect(sum % 10, id).toBe(Number(digits.at(-1)));
    }
  });

  it('what Annex VI does not name has classes from memory only, or none', () => {
    for (const id of substanceIds)
      if (substances[id].index === null) expect(substances[id].status, id).not.toBe('verified');
  });
});
