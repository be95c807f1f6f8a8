import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { doseTo } from '../../../../src/chemistry/treatment/dose-to';
import { likely, treatedPot } from '../../../../src/chemistry/treatment/treated-pot';
import { loadWith } from './treated-load';

it('lime that is in already is lime that is no more needed, mole for mole: more base never leaves more base needed', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.05, max: 2, noNaN: true }),
      fc.double({ min: 0.1, max: 20, noNaN: true }),
      fc.double({ min: 0.02, max: 0.8, noNaN: true }),
      fc.constantFrom(5, 7, 9, 10.5),
      (acid, Cu, share, pH) => {
        const pot = treatedPot(loadWith(5, acid, { Cu, Ni: Cu / 4 }), 'hydrated-lime');
        if (!pot) throw new Error('no pot');
        const whole = doseTo(pot, likely(pot), pH);
        if (whole.found !== 'dose') throw new Error(whole.found);
        const limed = new Map(likely(pot)).set('hydrated-lime before', share * whole.base);
        const rest = doseTo(pot, limed, pH);
        if (rest.found !== 'dose') throw new Error(rest.found);
        // Water that the first lime made of the acid is not counted into the pot that it leaves: the pot is that much stronger.
        expect(Math.abs(rest.base / whole.base - (1 - share))).toBeLessThan(0.001);
      },
    ),
    { numRuns: 10 },
  );
});
