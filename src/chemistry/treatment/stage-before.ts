/**
 * What a stage leaves to the one after it: the hydroxide that it put in, and carbonate that has stayed in the pot, dissolved and in
 * its solids. Carbonate takes base as well, unless stirring drives it out and the solids stay as they are: from nothing to
 * what the model says.
 */
import Decimal from 'decimal.js';
import { between, type Figure, given } from '../../quantities/figure';
import { equilibrium } from '../../reference/equilibrium-tables';
import type { BaseId } from '../../reference/tables';
import { sourceOf } from '../constants';
import type { Equilibrium } from '../equilibrium/solve';
import { dissolved, inSolids } from '../equilibrium/told';
import type { Load } from '../load';
import { type DoseTo, doseTo } from './dose-to';
import { type Amounts, type PutBefore, type TreatedPot, type Turn, treatedPot } from './treated-pot';

export type StageAsked = { readonly base: BaseId; readonly pH: number };

/** mol, dissolved and in solids; what stands over the liquor as gas is not in it. */
export const carbonateIn = (at: Equilibrium): number =>
  at.system.components.includes('CO3-2') ? dissolved(at, 'CO3-2') + inSolids(at, 'CO3-2') : 0;

/** The same amounts with what a stage put in, mol of hydroxide, and left of carbonate. */
export function withStage(amounts: Amounts, base: BaseId, put: number, carbonate: number): Amounts {
  const key: PutBefore = `${base} before`;
  const after = new Map([...amounts, [key, (amounts.get(key) ?? 0) + put] as const]);
  after.delete('carbonate');
  return carbonate > 0 ? after.set('carbonate', carbonate) : after;
}

export type AmountsAfter =
  | { readonly found: 'amounts'; readonly amounts: Amounts }
  | Exclude<DoseTo, { readonly found: 'dose' }>;

/** A load brought up by stages, each to its pH. @param amounts of the bare liquor */
export function amountsAfter(
  load: Load,
  stages: readonly StageAsked[],
  amounts: (pot: TreatedPot) => Amounts,
  turn?: Turn,
): AmountsAfter {
  let now: Amounts | undefined;
  for (const { base, pH } of stages) {
    const pot = treatedPot(load, base);
    if (!pot) break;
    now ??= amounts(pot);
    const dose = doseTo(pot, now, pH, turn);
    if (dose.found !== 'dose') return dose;
    now = withStage(now, base, dose.base, carbonateIn(dose.at));
  }
  return { found: 'amounts', amounts: now ?? new Map() };
}

/**
 * Something that carbonate from a stage before makes, mol: from nothing to what the model says.
 * @param likely what is taken for likely
 */
export const forCarbonate = (
  stage: StageAsked,
  sentence: string,
  most: number,
  likely: number = most,
): Figure<'mol'> =>
  given({
    origin: `carbonate-left/${stage.base}/${stage.pH}/${sentence}/${most}`,
    sentence,
    value: likely,
    unit: 'mol',
    how: 'worked-out',
    spread: between(0, new Decimal(likely), most),
    decimals: 3,
    sources: [sourceOf(equilibrium.model)],
    note: 'Nothing where stirring drives it all out.',
  });
