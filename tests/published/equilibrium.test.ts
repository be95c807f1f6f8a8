/**
 * The equilibrium model against another solver with the same constants (USGS PHREEQC 3.8.9): see equilibrium-cases/README.md.
 * Tolerances stand beside each kind of case in tests/cases: base to a pH 0.5 %, pH 0.05, dissolved 5 %, solids 0.5 %.
 */
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { evaluateFolder } from '../cases/evaluate';

const all = evaluateFolder(fileURLToPath(new URL('./equilibrium-cases', import.meta.url)));

describe('the equilibrium model and the reference solver agree', () => {
  it('on sixteen titrations, two tables of solubility and one of activity coefficients', () => {
    const kinds = all.map(({ kind }) => kind);
    expect(kinds.filter((k) => k === 'titration')).toHaveLength(16);
    expect(kinds.filter((k) => k === 'solubility_vs_pH')).toHaveLength(2);
    expect(kinds.filter((k) => k === 'activity_coefficients')).toHaveLength(1);
  });

  it.each(all)('in every row of $id', ({ outcome }) => {
    expect(outcome.checks.length).toBeGreaterThan(10);
    expect(outcome.checks.filter(({ ok }) => !ok).map(({ line }) => line)).toEqual([]);
  });
});
