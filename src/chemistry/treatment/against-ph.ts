/**
 * The base that a pot takes up to each pH, and how much more for more of each part. Read this way round a titration curve
 * hardly bends: more acid moves all of it along by as much, more of a metal all that lies beyond where the metal comes down.
 */
import { Pot, type Titration } from '../equilibrium/pot';
import type { NoEquilibrium } from '../equilibrium/solve';
import { carbonDioxide } from '../equilibrium/system';
import { type Amounts, chargeOfPot, likely, type TreatedPot, type Turn, titrationOf } from './treated-pot';

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

/** Steps along a curve, halved where the pH rises fast, down to a share of a step. */
const steps = 48;
const fastRise = 0.4;
const halvings = 4;
/** How far a curve goes beyond the charge, and beyond that, mol for each kg of water: lime makes it pH 12. */
const beyond = 1.3;
const surplus = 0.06;
/** Each part is changed by so much of itself, at least by so much of the charge, to see what it does. */
const change = { ofItself: 0.3, ofCharge: 0.02 };
/** pH below that of the liquor as it was taken to be, for one that turns out to be stronger. */
const stronger = [1.5, 1.2, 0.9, 0.7, 0.5, 0.35, 0.2, 0.1];

const amountsOf = (pot: TreatedPot, each: readonly number[]): Amounts =>
  new Map(pot.parts.map(({ of }, k) => [of, each[k] ?? 0]));

/** @param ammonia mol of ammonium nitrate beside what the load tells */
function curveOf(pot: TreatedPot, each: readonly number[], turn: Turn, ammonia = 0): Solved<Curve> {
  const amounts = amountsOf(pot, each);
  const titration = withAmmonia(titrationOf(pot, amounts, turn), ammonia);
  const solver = new Pot(titration);
  const leaves = titration.gas === 'leaves';
  const most = beyond * (chargeOfPot(amounts) + ammonia) + surplus * pot.waterKilograms;
  const points: { base: number; pH: number }[] = [];
  let gone = 0;
  const between = (from: { base: number; pH: number }, to: { base: number; pH: number }, left: number) => {
    if (left === 0 || to.pH - from.pH < fastRise) return;
    const base = (from.base + to.base) / 2;
    const solved = solver.at(base, gone);
    if (!solved.ok) return;
    const middle = { base, pH: solved.value.pH };
    between(from, middle, left - 1);
    points.push(middle);
    between(middle, to, left - 1);
  };
  for (let i = 0; i <= steps; i++) {
    const base = (most * i) / steps;
    const solved = solver.at(base, gone);
    if (!solved.ok) return solved;
    const here = { base, pH: solved.value.pH };
    const last = points.at(-1);
    if (last) between(last, here, halvings);
    points.push(here);
    if (leaves) gone += solved.value.solids.get(carbonDioxide) ?? 0;
  }
  const rising = points.filter(({ pH }, i) => points.slice(0, i).every((p) => pH > p.pH + 1e-4));
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

const nodesOf = (curve: Curve, upTo: number): readonly number[] => {
  const start = curve.pH[0] ?? 0;
  return [...stronger.map((x) => start - x), ...curve.pH.filter((pH, i) => i === 0 || pH <= upTo)];
};

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
  const pH = nodesOf(middle.value, Math.min(...changed.map(({ curve }) => curve.pH.at(-1) ?? 0)));
  const base = pH.map((to) => baseOn(middle.value, to));
  const slopes = changed.map(({ curve, by }) =>
    Float64Array.from(pH, (to, j) => (baseOn(curve, to) - (base[j] ?? 0)) / by),
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
  const pH = nodesOf(solved.value, Number.POSITIVE_INFINITY);
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

/** mol of hydroxide up to each pH of the curve with other amounts. Called for every point that may be, so it is kept bare. */
export function baseThere(curve: AgainstPh, amounts: readonly number[]): Float64Array {
  const base = Float64Array.from(curve.base);
  for (let k = 0; k < amounts.length; k++) {
    const more = (amounts[k] ?? 0) - (curve.amounts[k] ?? 0);
    const slopes = curve.slopes[k] as Float64Array;
    for (let j = 0; j < base.length; j++) base[j] = (base[j] as number) + more * (slopes[j] as number);
  }
  return base;
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
