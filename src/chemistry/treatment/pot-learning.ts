/**
 * Learning from the pot: readings of dose, pH and temperature refit free acid, metals and what the base is worth within what
 * was known of them, and say what is left to add. The model is the equilibrium of `equilibrium/`, the fit that of `fit.ts`.
 * Where readings contradict the plan there is no amount left to add, but what contradicts, what may be behind it, what to do.
 */
import { minus, notBelowNothing } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import { bases, metals } from '../../reference/tables';
import { capital } from '../evidence';
import { gramsAt, gramsPerMoleLearnt, gramsTo, partLearnt, type Told, toldOf } from './learnt-figures';
import { through } from './matrices';
import type { Contradiction, Doubt } from './pot-contradictions';
import { tooCool, tooWarm } from './pot-heat';
import { type PotAfter, type PotBefore, potAfter } from './pot-knowledge';
import { doseOf, type PotReading, seenIn } from './pot-readings';
import { contradictionsIn } from './readings-against';
import type { Expected } from './shown-ph';
import { baseBefore, metalOf, type PotPart } from './treated-pot';

export type LearntPart = {
  readonly of: PotPart['of'];
  readonly before: Figure<'mol'>;
  readonly now: Figure<'mol'>;
};

/** What a reading had to tell. */
export type ReadingTold = {
  /** pH that what was known before it let expect at its dose: nearly all of what may be. */
  readonly expected: Expected;
  /** pH of the fit at its dose. */
  readonly fitted: number;
};

type Point = readonly [grams: number, pH: number];

/** Plain numbers, for drawing: pH against g as sold. */
export type LearntCurve = {
  readonly line: readonly Point[];
  /** Ends of the range of the dose at each pH: reached soonest, and latest. */
  readonly soonest: readonly Point[];
  readonly latest: readonly Point[];
  readonly read: readonly Point[];
};

export type Learnt = {
  readonly readings: readonly PotReading[];
  readonly told: readonly ReadingTold[];
  readonly curve: LearntCurve;
  readonly doubts: readonly Doubt[];
} & (
  | {
      readonly agrees: true;
      readonly parts: readonly LearntPart[];
      /** As sold for a mole of hydroxide: what the base is worth in this pot. */
      readonly gramsPerMole: Figure<'g/mol'>;
      /** g as sold from the first gram to the target. */
      readonly total: Figure<'g'>;
      /** g as sold still to add; nothing where the readings say that it is past. */
      readonly remaining: Figure<'g'>;
    }
  | { readonly agrees: false; readonly contradictions: readonly Contradiction[] }
);

export const nameOfPart = (of: PotPart['of']): string => {
  const [metal, before] = [metalOf(of), baseBefore(of)];
  if (metal) return capital(metals[metal].name);
  if (before) return `Given by ${bases[before].name.toLowerCase()} before`;
  return { acid: 'Free nitric acid', carbonate: 'Carbonate left' }[of as string] ?? 'Iron(II)';
};

/** What readings, in the order in which they were taken, make of what was known. */
export function learnt(before: PotBefore, readings: readonly PotReading[]): Learnt {
  const after = potAfter(before, readings.map(seenIn));
  const told = toldOf(before, after, readings);
  const contradictions = [...contradictionsIn(before, after), ...tooWarm(before, readings)];
  const shown = {
    readings,
    told: toldBy(before, after),
    curve: curveOf(told),
    doubts: tooCool(before, readings),
  };
  const total = gramsTo(told, before.asked.pH);
  if (contradictions.length > 0 || !total) return { ...shown, agrees: false, contradictions };
  return {
    ...shown,
    agrees: true,
    parts: before.pot.parts.map(({ of, amount }, k) => ({
      of,
      before: amount,
      now: partLearnt(told, k, `${nameOfPart(of)}, by the readings`),
    })),
    gramsPerMole: gramsPerMoleLearnt(told),
    total,
    remaining: remainingOf(before, total, readings.at(-1)),
  };
}

function remainingOf(before: PotBefore, total: Figure<'g'>, last: PotReading | undefined): Figure<'g'> {
  const { base, pH } = before.asked;
  return workedOut({
    sentence: `${bases[base].name} left to add to pH ${pH}`,
    unit: 'g',
    formula: last ? notBelowNothing(minus(total, doseOf(last))) : notBelowNothing(total),
  });
}

/** What was learnt before any reading, after the first, and so on: how the range closes in. */
export const closingIn = (before: PotBefore, readings: readonly PotReading[]): readonly Learnt[] =>
  [...readings.keys(), readings.length].map((count) => learnt(before, readings.slice(0, count)));

const toldBy = (before: PotBefore, after: PotAfter): readonly ReadingTold[] =>
  after.seen.flatMap((_, i) => {
    const { expected } = potAfter(before, after.seen.slice(0, i + 1));
    return expected ? [{ expected, fitted: after.fit.pH[i] ?? Number.NaN }] : [];
  });

/** A range is two standard uncertainties on either side. */
const ends = 2;

function curveOf(told: Told): LearntCurve {
  const { before, after } = told;
  const at = after.curve.pH.map((pH) => {
    const { grams, slopes } = gramsAt(before, after, pH);
    const open = through(through(slopes, before.known.root), after.fit.left);
    return { pH, grams, half: ends * Math.hypot(...open) };
  });
  const drawn = at.filter(({ grams }) => grams >= 0);
  return {
    line: drawn.map(({ grams, pH }) => [grams, pH]),
    soonest: drawn.map(({ grams, pH, half }) => [Math.max(0, grams - half), pH]),
    latest: drawn.map(({ grams, pH, half }) => [grams + half, pH]),
    read: after.seen.map(({ grams, pH }) => [grams, pH]),
  };
}
