/**
 * Every way of knowing a metal, and how far off each may be. `metal-from.ts` makes the figure of a piece of evidence; the
 * narrowest is used and the others stay beside it.
 */
import Decimal from 'decimal.js';
import { over, plus, times } from '../quantities/expression';
import {
  between,
  type Figure,
  given,
  read,
  type Spread,
  width,
  within,
  workedOut,
} from '../quantities/figure';
import { converted, inUnit, type Quantity, quantity } from '../quantities/quantity';
import type { Unit } from '../quantities/unit';
import { halfLastDigit, type Written } from '../quantities/written';
import { cementation, type EvidenceId, evidence, type Metal, metals } from '../reference/tables';
import { sourceOf } from './constants';
import { molarMass, ratio } from './formula';

/** ± that a person or a laboratory stated. */
export type StatedSpread = { readonly plusMinus: Written<Unit>; readonly as: 'k2' | 'limits' };

export type PerLitre = Written<'g/L' | 'mg/L'>;
export type Mass = Written<'g' | 'kg' | 'mg' | 'lb'>;

/** The colour fields next to the one that was read, as printed on the strip. */
export type StripSteps = { readonly below?: PerLitre | undefined; readonly above?: PerLitre | undefined };

/** What a kind of feed usually gives, and which liquor it is asked of: that of the leach, or what copper left of it. */
export type FeedKnown = {
  readonly capacitors: 'precious-metal-electrode' | 'base-metal-electrode' | 'mixed' | 'unknown';
  readonly liquor: 'leach' | 'barren';
  readonly feed: Mass;
};

/** One metal in a liquid, known in one way. */
export type MetalEvidence =
  | {
      readonly by: 'assay' | 'photometer';
      readonly metal: Metal;
      readonly concentration: PerLitre;
      readonly spread?: StatedSpread | undefined;
    }
  | {
      readonly by: 'strip';
      readonly metal: Metal;
      readonly concentration: PerLitre;
      readonly spread?: StatedSpread | undefined;
      readonly steps?: StripSteps | undefined;
    }
  | {
      readonly by: 'weighing';
      readonly metal: Metal;
      readonly mass: Mass;
      readonly spread?: StatedSpread | undefined;
    }
  | { readonly by: 'copper-weighed'; readonly metal: 'Cu'; readonly before: Mass; readonly after: Mass }
  | { readonly by: 'metals-recovered'; readonly metal: 'Cu'; readonly silver: Mass; readonly palladium: Mass }
  | {
      readonly by: 'assumed';
      readonly metal: Metal;
      readonly low: PerLitre | Mass;
      readonly high: PerLitre | Mass;
    }
  | ({ readonly by: 'typical'; readonly metal: Metal } & FeedKnown)
  /** The residue dried: what is gone from the feed has dissolved. */
  | ({ readonly by: 'feed-minus-residue'; readonly metal: Metal; readonly residue: Mass } & FeedKnown)
  | { readonly by: 'not-determined'; readonly metal: Metal };

/** The same amount two ways: in all, and per litre. */
export type Known<All extends Unit, PerL extends Unit> = {
  /** There is at least this much: the evidence does not tell of all of it. */
  readonly atLeast?: true;
  readonly all: Figure<All>;
  readonly perLitre: Figure<PerL>;
};
export type KnownMetal = Known<'g', 'g/L'>;

/** Usual spread of a way of knowing. Source: reference/evidence.json, each row with its status. */
export function usualSpread(id: EvidenceId): (value: Decimal) => Spread {
  const { kind, value: size } = evidence[id];
  const of = new Decimal(size);
  if (kind === 'percent') return (value) => within(value.times(of).div(100));
  if (kind === 'plus-minus') return () => within(of);
  return (value) => between(value.div(of), value, value.times(of));
}

/** Limits are taken as a rectangular distribution: u = a/√3 (JCGM 100:2008, 4.3.7), twice that being the range. */
export const limits = new Decimal(2).div(Decimal.sqrt(3));

/** What was stated, else what is usual for this way of knowing. */
export function spreadFor<U extends Unit>(
  stated: StatedSpread | undefined,
  usual: EvidenceId,
  unit: U,
): (value: Quantity<U>) => Spread {
  if (!stated) return usualSpread(usual);
  const { plusMinus, as } = stated;
  return (value) => {
    const half =
      plusMinus.unit === '%'
        ? value.times(plusMinus.value).div(100)
        : converted(plusMinus.value, plusMinus.unit, unit);
    return within(as === 'limits' ? half.times(limits) : half);
  };
}

/** A mass put on a balance. */
export const weighed = (
  written: Mass,
  origin: string,
  sentence: string,
  stated?: StatedSpread,
): Figure<'g'> =>
  read({
    origin,
    sentence,
    written,
    unit: 'g',
    how: 'weighing',
    spread: spreadFor(stated, 'weighing', 'g'),
    sources: stated ? [] : [sourceOf(evidence.weighing)],
  });

/** Something thought to lie between two ends: the middle, with the ends as its range. */
export function assumedBetween<U extends Unit>(
  low: Written<Unit>,
  high: Written<Unit>,
  unit: U,
  origin: string,
  sentence: string,
): Figure<U> {
  const ends = [inUnit(low, unit), inUnit(high, unit)].sort((a, b) => a.cmp(b));
  const [a, b] = [ends[0] ?? quantity(0, unit), ends[1] ?? quantity(0, unit)];
  const middle = a.plus(b).div(2);
  return given({
    origin,
    sentence,
    value: middle,
    unit,
    how: 'assumed',
    // Two ends that are the same still hide half of their last digit.
    spread: a.eq(b) ? within(converted(halfLastDigit(low.value), low.unit, unit)) : between(a, middle, b),
    decimals: middle.decimalPlaces(),
    sources: [{ title: 'Assumed by the person who wrote it down', status: 'common practice' }],
  });
}

/** Copper that goes into solution as a metal comes out of it. Source: balanced reactions in reference. */
export const displacedBy = (metal: 'Ag' | 'Pd', mass: Figure<'g'>): Figure<'g'> =>
  workedOut({
    sentence: `Copper displaced by ${metals[metal].name}`,
    unit: 'g',
    formula: over(
      times(mass, ratio(cementation.reactions[metal], 'Cu', metal).toNumber(), molarMass('Cu')),
      molarMass(metal),
    ),
    sources: [sourceOf(cementation)],
  });

/** Copper that went into solution as silver and palladium came out. */
export function displacedCopper(found: { silver: Mass; palladium: Mass }, origin: string): Figure<'g'> {
  const part = (metal: 'Ag' | 'Pd', mass: Mass) =>
    displacedBy(metal, weighed(mass, `${origin}/${metal}`, `${capital(metals[metal].name)} recovered`));
  return workedOut({
    sentence: 'Copper displaced in all',
    unit: 'g',
    formula: plus(part('Ag', found.silver), part('Pd', found.palladium)),
  });
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * The narrowest of several, with the rest behind it in order; evidence that tells only of a part comes last. Undefined when
 * there is none.
 */
export function narrowest<K extends Known<Unit, Unit>>(
  known: readonly K[],
): { best: K; others: readonly K[] } | undefined {
  const part = ({ atLeast }: K): number => (atLeast ? 1 : 0);
  const [best, ...others] = [...known].sort((a, b) => part(a) - part(b) || width(a.all).cmp(width(b.all)));
  return best && { best, others };
}
