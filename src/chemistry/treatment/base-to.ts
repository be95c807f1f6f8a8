/**
 * Base to bring a load to a pH, by the equilibrium model with fresh solids: low, likely, high as sold, or the pH at which the
 * base ends. The slopes against acid and metals are those of the model, so the range follows from what is known of each.
 */
import Decimal from 'decimal.js';
import { times } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import { equilibrium } from '../../reference/equilibrium-tables';
import { type BaseId, bases, type Metal } from '../../reference/tables';
import { asSold, type BaseNeeded, overTheModel, type StatedPurity } from '../base-needed';
import { sourceOf } from '../constants';
import { componentOfMetal } from '../equilibrium/reaction';
import type { Equilibrium, NoEquilibrium } from '../equilibrium/solve';
import { dissolved } from '../equilibrium/told';
import { type Load, openMetals } from '../load';
import { doseTo } from './dose-to';
import { modelOff } from './model-off';
import {
  type Amounts,
  chargeOfPot,
  likely,
  likelyTurn,
  metalOf,
  type TreatedPot,
  treatedPot,
  turnsOf,
} from './treated-pot';

export type BaseTo =
  | {
      readonly ok: true;
      readonly needed: BaseNeeded;
      readonly pH: number;
      /** The pot at the target, at what is likely; mol of hydroxide put in by then, and of carbon dioxide that left. */
      readonly at: Equilibrium;
      readonly dose: number;
      readonly gone: number;
    }
  | {
      readonly ok: false;
      readonly why: /** The base ends at this pH, however much goes in. */
        | {
            readonly code: 'stalls';
            readonly pH: number;
            /** Where it ends once stirring and air have taken its carbon dioxide. */
            readonly aired?: number;
          }
        | { readonly code: 'acid-open' }
        | { readonly code: 'model-failed'; readonly failure: NoEquilibrium };
    };

/** A metal counts as left when more than this part of it is still dissolved at the target. */
const left = 0.5;

/** Name of the model in a formula. */
const model = 'the equilibrium model';

/**
 * @param pH target, 2 to 12.5
 * @param stated purity of the base in the workshop
 */
export function baseTo(base: BaseId, load: Load, pH: number, stated?: StatedPurity): BaseTo {
  const pot = treatedPot(load, base);
  if (!pot) return { ok: false, why: { code: 'acid-open' } };
  const amounts = likely(pot);
  const dose = doseTo(pot, amounts, pH);
  if (dose.found === 'stall')
    return { ok: false, why: { code: 'stalls', pH: dose.pH, ...airedEnd(pot, amounts) } };
  if (dose.found === 'failure') return { ok: false, why: { code: 'model-failed', failure: dose.failure } };
  const hydroxide = workedOut({
    sentence: `Base to pH ${pH}`,
    unit: 'mol',
    formula: times(
      readOff(pot, amounts, pH, dose.base),
      modelOff(pot, pH, 'How far the model may be off, and which way it may go', turnsOf(pot)),
    ),
  });
  const openIn = [...new Set([...load.freeAcid.openIn, ...openMetals(load)])];
  const leaves = metalsLeft(pot, dose.at);
  return {
    ok: true,
    pH,
    at: dose.at,
    dose: dose.base,
    gone: dose.gone,
    needed: { base, hydroxide, mass: asSold(base, hydroxide, overTheModel(base), stated), leaves, openIn },
  };
}

/** A pH that no base reaches: asked for to see where it ends. */
const beyondAll = 14;

function airedEnd(pot: TreatedPot, amounts: Amounts): { readonly aired?: number } {
  if (!turnsOf(pot).some(({ gas }) => gas === 'stirred-out')) return {};
  const end = doseTo(pot, amounts, beyondAll, { ...likelyTurn, gas: 'stirred-out' });
  return end.found === 'stall' ? { aired: end.pH } : {};
}

/** The dose as a reading of the model at the parts of the pot, with its slope against each. */
function readOff(pot: TreatedPot, amounts: Amounts, pH: number, value: number): Figure<'mol'> {
  const step = 0.005 * Math.max(chargeOfPot(amounts), 1e-6);
  const at = pot.parts.map(({ of, amount }) => {
    const more = doseTo(pot, new Map([...amounts, [of, (amounts.get(of) ?? 0) + step]]), pH);
    const slope = more.found === 'dose' ? (more.base - value) / step : 1;
    return { of: { op: 'figure' as const, figure: amount }, slope: new Decimal(slope) };
  });
  return workedOut({
    sentence: `Base to pH ${pH}, by ${model}`,
    unit: 'mol',
    formula: { op: 'reading', table: model, at, value: new Decimal(value), unit: 'mol' },
    sources: [modelSource],
    note: `${bases[pot.base].name}, fresh solids, 25 °C, in ${pot.waterKilograms.toPrecision(3)} kg of water.`,
  });
}

const modelSource = sourceOf(equilibrium.model);

function metalsLeft(pot: TreatedPot, at: Equilibrium): readonly Metal[] {
  return pot.parts.flatMap(({ of, amount }) => {
    const metal = metalOf(of);
    const all = amount.value.toNumber();
    return metal && all > 0 && dissolved(at, componentOfMetal(metal)) > left * all ? [metal] : [];
  });
}
