/**
 * Tests of readings against what was known and against each other. Nothing is made fit that does not; the numbers say which
 * test told.
 */
import { reachOf, solvedAt } from './against-ph';
import { fitted } from './fit';
import { gramsAt, gramsTo, toldOf } from './learnt-figures';
import { dot, through } from './matrices';
import type { Contradiction } from './pot-contradictions';
import { amountsIn, expectedOf, type PotAfter, type PotBefore, potAfter } from './pot-knowledge';
import { phOffAt, type Seen } from './shown-ph';
import { chargeOfPot } from './treated-pot';

/** Standard uncertainties within which a reading counts as explained. */
const far = 4;
/** Squares of standard uncertainties that a few readings may strain the fit by, and the same above their count for many. */
const fewest = 20;
const tail = 5;
/** pH readings this close are the same; a rise this large is steep. */
const same = 0.05;
const steep = 2;
/** From here on ammonium takes base, and shows in the readings: its pKa is 9.25. */
const ammoniaShows = 7.5;
/** Shares of the charge that are tried. */
const ammoniaTried = [0.05, 0.1, 0.2, 0.4];

type Way = Pick<PotAfter, 'curve' | 'fit'>;

/** Standard uncertainty of a pH beside the model. */
const spreadOf = ({ known, pot }: PotBefore, { pH, spread }: Seen): number =>
  Math.hypot(spread, known.unsure[phOffAt(pot.parts.length, pH)]?.spread ?? 0);

/** Dose up to a pH at the end of all that a fit leaves open, on either side of it. */
function endOf(before: PotBefore, after: Way, one: Seen, sign: 1 | -1): number {
  const { place, left } = after.fit;
  const to = one.pH + sign * far * spreadOf(before, one);
  const { slopes } = gramsAt(before, after, Math.min(to, reachOf(after.curve)));
  const along = through(through(slopes, before.known.root), left);
  const size = Math.hypot(...along) || 1;
  const end = place.map((p, i) => p + (sign * far * dot(left[i] ?? [], along)) / size);
  return gramsAt(before, after, to, end).grams + sign * far * one.gramsSpread;
}

/** Whether a reading lies beyond all that a fit, the model and the reading itself leave open, whichever way copper comes down. */
const beyond = (before: PotBefore, after: PotAfter, one: Seen): boolean =>
  [after, ...after.besides].every(
    (way) => one.grams > endOf(before, way, one, 1) || one.grams < endOf(before, way, one, -1),
  );

/** What the last of some readings contradicts. */
function ofTheLast(before: PotBefore, after: PotAfter): readonly Contradiction[] {
  const reading = after.seen.length - 1;
  const last = after.seen[reading];
  if (!last) return [];
  const reach = reachOf(before.curve);
  if (last.pH - far * spreadOf(before, last) > reach) return [{ code: 'above-reach', reading, reach }];
  return [
    ...againstAmounts(before, after, last),
    ...fallen(after.seen, last),
    ...stood(before, after.seen, last),
  ];
}

/** The last reading against what was known, against the readings before it, and all of them together. */
function againstAmounts(before: PotBefore, after: PotAfter, last: Seen): readonly Contradiction[] {
  const { seen, fit, expected } = after;
  const reading = seen.length - 1;
  const known = potAfter(before, []);
  if (beyond(before, known, last)) {
    const grams = gramsTo(toldOf(before, known, []), last.pH);
    return [{ code: 'outside-known', reading, ...(grams?.value.gt(0) ? { expected: grams } : {}) }];
  }
  if (expected && beyond(before, potAfter(before, seen.slice(0, -1)), last))
    return [{ code: 'against-others', reading, ...expected }];
  // So many squares of standard numbers add up to their count, ± √(2 × count), with a long tail where they are few.
  const most = Math.max(fewest, seen.length + tail * Math.sqrt(2 * seen.length));
  return fit.strain > most
    ? [{ code: 'do-not-go-together', reading, off: fit.strain, count: seen.length }]
    : [];
}

/** pH that fell as base went in, by the largest fall to the last reading. */
function fallen(seen: readonly Seen[], last: Seen): readonly Contradiction[] {
  const reading = seen.length - 1;
  const [most] = seen
    .slice(0, -1)
    .map((one, from) => ({ one, from, by: one.pH - last.pH }))
    .filter(({ one, by }) => one.grams < last.grams && by > far * Math.hypot(one.spread, last.spread))
    .sort((a, b) => b.by - a.by);
  return most ? [{ code: 'falls', from: most.from, reading, by: most.by }] : [];
}

/** pH that has stood since an earlier reading, though all up to that one let expect a leap. */
function stood(before: PotBefore, seen: readonly Seen[], last: Seen): readonly Contradiction[] {
  const reading = seen.length - 1;
  const moved = seen.findLastIndex(({ pH }) => Math.abs(pH - last.pH) > same);
  const [from, one] = [moved + 1, seen[moved + 1]];
  if (!one || from === reading || one.grams >= last.grams) return [];
  const rise = expectedOf(before, potAfter(before, seen.slice(0, from + 1)), last).low - one.pH;
  return rise >= steep ? [{ code: 'no-rise', from, reading, rise }] : [];
}

/** Whether ammonia explains readings that nothing else does: each share of the charge is tried, what was known moved to fit. */
function ammoniaIn(before: PotBefore, after: PotAfter): readonly Contradiction[] {
  const { seen, fit } = after;
  if (fit.strain < far ** 2 || !seen.some(({ pH }) => pH >= ammoniaShows)) return [];
  const amounts = amountsIn(before, fit.place);
  const charge = chargeOfPot(new Map(before.pot.parts.map(({ of }, k) => [of, amounts[k] ?? 0])));
  const tried = ammoniaTried.flatMap((share) => {
    const curve = solvedAt(before.pot, after.curve, amounts, share * charge);
    if (!curve.ok) return [];
    return [{ share, strain: fitted(curve.value, before.known, seen, fit).strain }];
  });
  const [best] = tried.sort((a, b) => a.strain - b.strain);
  if (!best || fit.strain - best.strain < far ** 2) return [];
  return [{ code: 'ammonia', share: best.share, moles: best.share * charge }];
}

const found = new WeakMap<PotAfter, readonly Contradiction[]>();

/** Worked out once for each row of readings. */
function lastOnce(before: PotBefore, seen: readonly Seen[]): readonly Contradiction[] {
  const after = potAfter(before, seen);
  const contradictions = found.get(after) ?? ofTheLast(before, after);
  found.set(after, contradictions);
  return contradictions;
}

/** All that readings contradict, in the order in which it showed; ammonia last. */
export const contradictionsIn = (before: PotBefore, after: PotAfter): readonly Contradiction[] => [
  ...after.seen.flatMap((_, i) => lastOnce(before, after.seen.slice(0, i + 1))),
  ...ammoniaIn(before, after),
];
