/**
 * The base that a pot takes up to each pH, and how much more for more of each part. Read this way round a titration curve
 * hardly bends: more acid moves all of it along by as much, more of a metal all that lies beyond where the metal comes down.
 */
import type { BaseId } from '../../reference/tables';
import type { Titration } from '../equilibrium/pot';
import type { NoEquilibrium } from '../equilibrium/solve';
import { alongDoses, steep } from './along-dose';
import { ladder } from './ladder';
import {
  type Amounts,
  baseBefore,
  chargeOfPot,
  likely,
  sizeOf,
  type TreatedPot,
  type Turn,
  titrationOf,
  undissolved,
  withoutCarbonate,
} from './treated-pot';

/** Plain numbers: mol and pH. Parts are in the order of the pot. */
export type AgainstPh = {
  /** The way in which it comes down. */
  readonly turn: Turn;
  /** mol of each part at which the curve was solved. */
  readonly amounts: readonly number[];
  /** Rising. */
  readonly pH: readonly number[];
  /** mol of hydroxide up to each pH; below nothing where only more acid would come. */
  readonly base: readonly number[];
  /** mol of hydroxide more for a mole more of the part, by part and pH. */
  readonly slopes: readonly Float64Array[];
};

type Curve = { readonly pH: readonly number[]; readonly base: readonly number[]; readonly acid: number };

export type Solved<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly failure: NoEquilibrium };

/** A step is halved where the pH rises by more, so many times at most. */
const fastRise = 0.4;
const halvings = 6;
/** Times the charge beyond which hardly anything comes, and only each so many of the ladder's doses is looked at. */
const beyond = 1.3;
const seldom = 4;
/** Steps up to where a stage before ended. */
const stepsBefore = 16;
/** pH that rises by less has not risen. */
const same = 1e-4;
/** Each part is changed by so much of itself, at least by so much of the charge, to see what it does. */
const change = { ofItself: 0.3, ofCharge: 0.02 };
/** pH below that of the liquor as it was taken to be, for one that turns out to be stronger. */
const stronger = [1.5, 1.2, 0.9, 0.7, 0.5, 0.35, 0.2, 0.1];

const amountsOf = (pot: TreatedPot, each: readonly number[]): Amounts =>
  new Map(pot.parts.map(({ of }, k) => [of, each[k] ?? 0]));

type Put = { readonly base: BaseId; readonly moles: number };

/** What stages before put in, in their order. */
const putIn = (amounts: Amounts): readonly Put[] =>
  [...amounts].flatMap(([of, moles]) => {
    const base = baseBefore(of);
    return base ? [{ base, moles }] : [];
  });

const without = (amounts: Amounts, puts: readonly Put[]): Amounts => {
  const less = new Map(amounts);
  for (const { base } of puts) less.delete(`${base} before`);
  return less;
};

type CurvePoint = { readonly pH: number; readonly base: number };

/**
 * The curve up to where stages before brought the pot, as if this base could be taken out again: what would be there were less in
 * it. Their carbonate is in it all along; it takes no base before it is reached.
 */
function upToHere(pot: TreatedPot, amounts: Amounts, turn: Turn): readonly CurvePoint[] {
  const puts = putIn(amounts);
  const all = puts.reduce((sum, { moles }) => sum + moles, 0);
  let below = all;
  return puts.flatMap(({ base, moles }, i) => {
    const alkali = { ...pot, base: withoutCarbonate(base) };
    const step = moles / stepsBefore;
    const along = alongDoses(titrationOf(alkali, without(amounts, puts.slice(i)), turn), {
      doses: Array.from({ length: stepsBefore }, (_, k) => k * step),
      tooFar: steep(fastRise, step / 2 ** halvings),
    });
    const from = below;
    below -= moles;
    return along.points.map((point) => ({ base: point.base - from, pH: point.at.pH }));
  });
}

/** @param ammonia mol of ammonium nitrate beside what the load tells */
function curveOf(pot: TreatedPot, each: readonly number[], turn: Turn, ammonia = 0): Solved<Curve> {
  const amounts = amountsOf(pot, each);
  const charge = chargeOfPot(amounts) + ammonia;
  const size = sizeOf(pot, amounts) + ammonia;
  const along = alongDoses(withAmmonia(titrationOf(pot, amounts, turn), ammonia), {
    doses: ladder(size).filter((base, i) => base <= beyond * charge || i % seldom === 0),
    tooFar: steep(fastRise, size / 40 / 2 ** halvings),
    ends: ({ at }) => undissolved(pot.base, at) > 0,
  });
  // A very strong liquor far beyond its charge may have no equilibrium; what came before has.
  if (!along.ok && along.failure.base <= beyond * charge) return along;
  // Where the base lies in the pot as it is, the curve ended as it began to: all that came since lies there.
  const here = along.points.map(({ base, at }) => ({ base: base - undissolved(pot.base, at), pH: at.pH }));
  const rising: CurvePoint[] = [];
  for (const point of [...upToHere(pot, amounts, turn), ...here])
    if (point.pH > (rising.at(-1)?.pH ?? Number.NEGATIVE_INFINITY) + same) rising.push(point);
  return {
    ok: true,
    value: { pH: rising.map((p) => p.pH), base: rising.map((p) => p.base), acid: amounts.get('acid') ?? 0 },
  };
}

const withAmmonia = (titration: Titration, ammonia: number): Titration =>
  ammonia === 0
    ? titration
    : {
        ...titration,
        liquor: {
          ...titration.liquor,
          substances: new Map([...titration.liquor.substances, ['NH4NO3', ammonia]]),
        },
      };

/** Number of the last entry that is not above `x`, −1 where all are. */
function lastNotAbove(sorted: readonly number[], x: number): number {
  let [low, high] = [-1, sorted.length - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((sorted[middle] ?? 0) <= x) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Straight between the entries, flat beyond them. */
function between(xs: readonly number[], ys: ArrayLike<number>, x: number): number {
  const i = lastNotAbove(xs, x);
  const [x0, x1, y0, y1] = [xs[i], xs[i + 1], ys[i], ys[i + 1]];
  if (x0 === undefined || y0 === undefined) return ys[0] ?? 0;
  return x1 === undefined || y1 === undefined ? y0 : y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
}

/** Base to a pH on one curve. Below its start the acid that would be there more, ten times as much each unit. */
function baseOn({ pH, base, acid }: Curve, to: number): number {
  const start = pH[0] ?? 0;
  if (to < start) return -Math.max(acid, 1e-9) * (10 ** (start - to) - 1);
  return between(pH, base, to);
}

const nodesOf = ({ pH: [start = 0, ...pH] }: Curve): readonly number[] => [
  ...stronger.map((x) => start - x),
  start,
  ...pH,
];

/** The curve of a pot as it is likely, with what more of each part does. */
export function againstPh(pot: TreatedPot, turn: Turn): Solved<AgainstPh> {
  const amounts = [...likely(pot).values()];
  const middle = curveOf(pot, amounts, turn);
  if (!middle.ok) return middle;
  const charge = Math.max(chargeOfPot(likely(pot)), 1e-6);
  const changed: { readonly curve: Curve; readonly by: number }[] = [];
  for (const [k, n] of amounts.entries()) {
    const by = Math.max(change.ofItself * n, change.ofCharge * charge);
    const curve = curveOf(pot, amounts.with(k, n + by), turn);
    if (!curve.ok) return curve;
    changed.push({ curve: curve.value, by });
  }
  const pH = nodesOf(middle.value);
  const base = pH.map((to) => baseOn(middle.value, to));
  // A pot with more in it may end a little lower: beyond that it goes on as it ended.
  const slopes = changed.map(({ curve, by }) =>
    Float64Array.from(pH, (to) => {
      const both = Math.min(to, curve.pH.at(-1) ?? to);
      return (baseOn(curve, both) - baseOn(middle.value, both)) / by;
    }),
  );
  return { ok: true, value: { turn, amounts, pH, base, slopes } };
}

/** The same pot solved anew at other amounts, or with ammonia; what more of a part does at a pH is kept. */
export function solvedAt(
  pot: TreatedPot,
  curve: AgainstPh,
  amounts: readonly number[],
  ammonia = 0,
): Solved<AgainstPh> {
  const solved = curveOf(pot, amounts, curve.turn, ammonia);
  if (!solved.ok) return solved;
  const pH = nodesOf(solved.value);
  return {
    ok: true,
    value: {
      turn: curve.turn,
      amounts,
      pH,
      base: pH.map((to) => baseOn(solved.value, to)),
      slopes: curve.slopes.map((each) => Float64Array.from(pH, (to) => between(curve.pH, each, to))),
    },
  };
}

/** Highest pH that the base brings the pot to. */
export const reachOf = (curve: AgainstPh): number => curve.pH.at(-1) ?? Number.NaN;

/** What a mole more of part `k` takes up to a pH. */
export const slopeAt = (curve: AgainstPh, k: number, pH: number): number =>
  between(curve.pH, curve.slopes[k] as Float64Array, pH);

/** mol of hydroxide up to a pH with other amounts; endless above what the base reaches. */
export function baseAt(curve: AgainstPh, amounts: readonly number[], pH: number): number {
  if (pH > reachOf(curve)) return Number.POSITIVE_INFINITY;
  const more = amounts.reduce((sum, n, k) => sum + (n - (curve.amounts[k] ?? 0)) * slopeAt(curve, k, pH), 0);
  return between(curve.pH, curve.base, pH) + more;
}

/**
 * mol of hydroxide up to each pH of the curve with other amounts. Called for every point that may be, so it is kept bare.
 * @param base where it is put
 */
export function baseThere(curve: AgainstPh, amounts: ArrayLike<number>, base: Float64Array): void {
  base.set(curve.base);
  for (let k = 0; k < amounts.length; k++) {
    const more = (amounts[k] as number) - (curve.amounts[k] as number);
    const slopes = curve.slopes[k] as Float64Array;
    for (let j = 0; j < base.length; j++) base[j] = (base[j] as number) + more * (slopes[j] as number);
  }
}

/** pH after `dose` mol of hydroxide, `base` being what it takes up to each pH of the curve. */
export function phAfter({ pH }: AgainstPh, base: Float64Array, dose: number): number {
  let [low, high] = [-1, base.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((base[middle] as number) <= dose) low = middle;
    else high = middle - 1;
  }
  const [from, to] = [pH[low], pH[low + 1]];
  if (from === undefined) return pH[0] ?? Number.NaN;
  if (to === undefined) return from;
  const [a, b] = [base[low] as number, base[low + 1] as number];
  return b > a ? from + ((dose - a) / (b - a)) * (to - from) : to;
}
