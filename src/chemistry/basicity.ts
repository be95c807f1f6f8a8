/**
 * Lime in the terms of ASTM C400: its basicity factor, grams of calcium oxide that a gram as sold is worth in acid. Both ways
 * between factor and purity, and the base for so much hydroxide: n(OH) × M(CaO)/2 ÷ factor.
 */
import { over, times } from '../quantities/expression';
import { type Figure, read, within, workedOut } from '../quantities/figure';
import type { Written } from '../quantities/written';
import { basicity } from '../reference/basicity-tables';
import { type BaseId, bases } from '../reference/tables';
import { constant, sourceOf } from './constants';
import { molarMass } from './formula';

/** A factor as the person gives it: g/kg as the standard states it, or a plain number. */
export type StatedBasicity = { readonly factor: Written<'g/kg' | '1'>; readonly origin: string };

/** Calcium oxide for one mole of hydroxide, g/mol. */
const perHydroxide = (): Figure<'g/mol'> =>
  workedOut({
    sentence: 'Calcium oxide for one mole of base',
    unit: 'g/mol',
    formula: over(molarMass('CaO'), 2),
  });

/** As stated, to 1 % of it or half of its last digit. */
export const basicityStated = ({ factor, origin }: StatedBasicity): Figure<'1'> =>
  read({
    origin,
    sentence: 'Basicity factor as stated',
    written: factor,
    unit: '1',
    how: 'stated',
    spread: (value) => within(value.div(100)),
    sources: [sourceOf(basicity.basis)],
  });

/** Of the pure base, by stoichiometry: hydroxides × M(CaO)/2 ÷ M. */
export const basicityOfPure = (base: BaseId): Figure<'1'> =>
  workedOut({
    sentence: `Basicity factor of pure ${bases[base].name.toLowerCase()}`,
    unit: '1',
    formula: over(times(Number(bases[base].hydroxidePerMol), perHydroxide()), molarMass(bases[base].formula)),
    sources: [sourceOf(basicity.basis)],
  });

/** Factor of a base of so much purity. */
export const basicityFrom = (base: BaseId, purity: Figure<'%'>): Figure<'1'> =>
  workedOut({
    sentence: `Basicity factor of ${bases[base].name.toLowerCase()} as sold`,
    unit: '1',
    formula: times(basicityOfPure(base), purity),
  });

/** Purity that a factor stands for, were all of the lime this base. */
export const purityFrom = (base: BaseId, factor: Figure<'1'>): Figure<'%'> =>
  workedOut({
    sentence: `Purity of ${bases[base].name.toLowerCase()}, by its basicity factor`,
    unit: '%',
    formula: over(factor, basicityOfPure(base)),
  });

/** Base as sold for so much hydroxide, g. What grit holds back counts in a factor that was measured, so none is added. */
export const asSoldByBasicity = (hydroxide: Figure<'mol'>, factor: Figure<'1'>): Figure<'g'> =>
  workedOut({
    sentence: 'Base as sold, by its basicity factor',
    unit: 'g',
    formula: over(times(hydroxide, perHydroxide()), factor),
    sources: [sourceOf(basicity.basis)],
  });

/** What handbooks say of the base as sold, to be shown beside; undefined where none is known. No dose uses it. */
export function handbookBasicity(base: BaseId): Figure<'1'> | undefined {
  const told = basicity.bases[base].handbook;
  return told && constant(`basicity/${base}`, 'Basicity factor in handbooks', told, '1');
}
