import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { againstPh, baseAt, reachOf } from '../../../../src/chemistry/treatment/against-ph';
import { doseTo } from '../../../../src/chemistry/treatment/dose-to';
import { shapes } from '../../../../src/chemistry/treatment/model-off';
import { likely, sizeOf, treatedPot } from '../../../../src/chemistry/treatment/treated-pot';
import type { BaseId } from '../../../../src/reference/tables';
import { loadWith } from './treated-load';

const ending: readonly BaseId[] = ['hydrated-lime', 'quicklime', 'limestone', 'magnesium-hydroxide'];
const running: readonly BaseId[] = ['soda-ash', 'sodium-bicarbonate'];

const anyPot = (bases: readonly BaseId[]) =>
  fc
    .record({
      base: fc.constantFrom(...bases),
      acid: fc.double({ min: 0.05, max: 1.5, noNaN: true }),
      Cu: fc.double({ min: 0.1, max: 60, noNaN: true }),
      Ni: fc.double({ min: 0.1, max: 10, noNaN: true }),
      way: fc.constantFrom(0, 1),
    })
    .map(({ base, acid, Cu, Ni, way }) => {
      const pot = treatedPot(loadWith(10, acid, { Cu, Ni }), base);
      const turn = pot && shapes(pot)[way];
      const curve = pot && turn && againstPh(pot, turn);
      if (!pot || !curve?.ok) throw new Error('no curve');
      return { pot, turn, curve: curve.value };
    });

describe('the base that a pot takes up to each pH', () => {
  it('ends where the plan does, whichever base and however much copper', () => {
    fc.assert(
      fc.property(anyPot([...ending, ...running]), ({ pot, turn, curve }) => {
        const end = doseTo(pot, likely(pot), 14, turn);
        expect(end.found === 'stall' && Math.abs(end.pH - reachOf(curve))).toBeLessThan(0.05);
      }),
      { numRuns: 30 },
    );
  });

  it('is that of the plan to just below its end, within 1 % of all that the pot takes', () => {
    fc.assert(
      fc.property(anyPot(ending), ({ pot, turn, curve }) => {
        const pH = reachOf(curve) - 0.02;
        const dose = doseTo(pot, likely(pot), pH, turn);
        if (dose.found !== 'dose') throw new Error(dose.found);
        const off = Math.abs(baseAt(curve, curve.amounts, pH) - dose.base);
        expect(off / sizeOf(pot, likely(pot))).toBeLessThan(0.01);
      }),
      { numRuns: 30 },
    );
  });
});
