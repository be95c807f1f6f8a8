/**
 * Readings that contradict the plan: what no amounts within what was known explain. Nothing is made fit that does not; the
 * numbers say which test told.
 */
import type { Figure } from '../../quantities/figure';
import { baseAt, baseThere, reachOf, solvedAt } from './against-ph';
import { amountsAt, fitted, type Seen, shownAfter } from './fit';
import { placed } from './known-before';
import { gramsAt, gramsTo, type Told } from './learnt-figures';
import { normalPoints } from './normal-points';
import { amountsIn, type PotAfter, type PotBefore, potAfter } from './pot-knowledge';
import { chargeOfPot } from './treated-pot';

/** Readings are counted from 0, in the order in which they were taken. */
export type Contradiction =
  /** Nothing within four standard uncertainties of what was known brings this pH at this dose. `expected`: dose that does. */
  | { readonly code: 'outside-known'; readonly reading: number; readonly expected?: Figure<'g'> }
  /** The same by the readings before it: the pH that they let expect at this dose. */
  | { readonly code: 'against-others'; readonly reading: number; readonly low: number; readonly high: number }
  /** All readings up to this one together lie further from any amounts than chance puts them. `off` of about `expected`. */
  | {
      readonly code: 'do-not-go-together';
      readonly reading: number;
      readonly off: number;
      readonly expected: number;
    }
  /** Two readings are the same, though at least so much rise in pH lies between their doses. */
  | { readonly code: 'no-rise'; readonly from: number; readonly reading: number; readonly rise: number }
  /** pH fell by so much as base went in. */
  | { readonly code: 'falls'; readonly from: number; readonly reading: number; readonly by: number }
  /** Higher than this base goes in this pot. */
  | { readonly code: 'above-reach'; readonly reading: number; readonly reach: number }
  /** Ammonia explains the readings, metals do not: as a share of all that takes base, and in mol. */
  | { readonly code: 'ammonia'; readonly share: number; readonly moles: number }
  | {
      readonly code: 'too-warm';
      readonly reading: number;
      /** K; `most` is if nothing were lost. */
      readonly rise: number;
      readonly most: Figure<'K'>;
    };

export type Cause =
  | 'load-wrong'
  | 'dose-miswritten'
  | 'wrong-reagent'
  | 'spent-reagent'
  | 'electrode'
  | 'not-mixed'
  | 'ammonia';

export type NextStep = 'stop' | 'wait' | 'stir' | 'calibrate' | 'test-a-sample' | 'air' | 'test-for-ammonia';

/** What may be behind each, likeliest first. */
export const causesOf: Readonly<Record<Contradiction['code'], readonly Cause[]>> = {
  'outside-known': ['load-wrong', 'dose-miswritten', 'wrong-reagent', 'electrode'],
  'against-others': ['not-mixed', 'electrode', 'dose-miswritten', 'spent-reagent'],
  'do-not-go-together': ['wrong-reagent', 'electrode', 'load-wrong', 'spent-reagent', 'not-mixed'],
  'no-rise': ['wrong-reagent', 'electrode', 'spent-reagent', 'not-mixed'],
  falls: ['not-mixed', 'electrode', 'dose-miswritten'],
  'above-reach': ['wrong-reagent', 'electrode'],
  ammonia: ['ammonia', 'load-wrong'],
  'too-warm': ['wrong-reagent', 'load-wrong', 'dose-miswritten'],
};

const inOrder: readonly NextStep[] = ['stop', 'wait', 'stir', 'calibrate', 'test-a-sample'];

/** What to do before any more goes in, in order. */
export const nextAfter: Readonly<Record<Contradiction['code'], readonly NextStep[]>> = {
  'outside-known': inOrder,
  'against-others': inOrder,
  'do-not-go-together': inOrder,
  'no-rise': inOrder,
  falls: inOrder,
  'above-reach': ['stop', 'calibrate', 'test-a-sample'],
  ammonia: ['stop', 'air', 'test-for-ammonia', 'test-a-sample'],
  'too-warm': ['stop', 'wait', 'test-a-sample'],
};

/** Standard uncertainties within which a reading counts as explained. */
const far = 4;
const same = 0.05;
const steep = 2;
/** From here on ammonium takes base, and shows in the readings. Its pKa is 9.25. */
const ammoniaShows = 7.5;
const ammoniaTried = [0.05, 0.1, 0.2, 0.4];
/** Square of standard uncertainties by which ammonia must explain better than none. */
const better = far ** 2;

/** Whether a reading lies beyond all that a fit, and the reading itself, leave open. */
function beyond(before: PotBefore, after: PotAfter, { grams, pH, spread, gramsSpread }: Seen): boolean {
  const end = (sign: 1 | -1): number => {
    const to = pH + sign * far * spread;
    const { slopes } = gramsAt({ before, after }, Math.min(to, reachOf(after.curve)));
    const along = after.fit.place.map((_, k) => {
      const inward = before.known.root[0]?.map((__, j) =>
        slopes.reduce((sum, s, i) => sum + s * (before.known.root[i]?.[j] ?? 0), 0),
      );
      return (inward ?? []).reduce((sum, s, i) => sum + s * (after.fit.left[i]?.[k] ?? 0), 0);
    });
    const size = Math.hypot(...along) || 1;
    const place = after.fit.place.map(
      (p, i) =>
        p + sign * far * along.reduce((sum, a, k) => sum + ((after.fit.left[i]?.[k] ?? 0) * a) / size, 0),
    );
    return gramsAt({ before, after }, to, place).grams + sign * far * gramsSpread;
  };
  return grams > end(1) || grams < end(-1);
}

/** pH that a fit lets expect at a dose, lowest and highest of the points that stand for what is still open. */
export function expectedAt(before: PotBefore, after: PotAfter, { grams, pH }: Pick<Seen, 'grams' | 'pH'>) {
  const parts = before.pot.parts.length;
  const all = normalPoints(before.known.unsure.length).map((point) => {
    const place = after.fit.place.map((p, i) =>
      point.reduce((sum, x, k) => sum + x * (after.fit.left[i]?.[k] ?? 0), p),
    );
    const x = placed(before.known, place);
    return shownAfter(after.curve, baseThere(after.curve, amountsAt(x, parts)), x, { grams, pH });
  });
  return { low: Math.min(...all), high: Math.max(...all) };
}

/** What the last of some readings contradicts. */
function ofTheLast(before: PotBefore, seen: readonly Seen[]): readonly Contradiction[] {
  const reading = seen.length - 1;
  const last = seen[reading];
  if (!last) return [];
  const known = potAfter(before, []);
  const reach = reachOf(before.curve);
  if (last.pH - far * last.spread > reach) return [{ code: 'above-reach', reading, reach }];
  const found: Contradiction[] = [];
  const others = potAfter(before, seen.slice(0, -1));
  if (beyond(before, known, last)) {
    const expected = gramsTo({ before, after: known, readings: [] }, last.pH);
    found.push({ code: 'outside-known', reading, ...(expected?.value.gt(0) ? { expected } : {}) });
  } else if (reading > 0 && beyond(before, others, last))
    found.push({ code: 'against-others', reading, ...expectedAt(before, others, last) });
  const off = potAfter(before, seen).fit.strain;
  // So many squares of standard numbers add up to their count, ± √(2 × count).
  const most = Math.max(far ** 2, seen.length + far * Math.sqrt(2 * seen.length));
  if (found.length === 0 && off > most)
    found.push({ code: 'do-not-go-together', reading, off, expected: seen.length });
  return [...found, ...pairs(before, seen, others)];
}

/** The last reading beside each before it. */
function pairs(before: PotBefore, seen: readonly Seen[], others: PotAfter): readonly Contradiction[] {
  const reading = seen.length - 1;
  const last = seen[reading];
  if (!last) return [];
  const fell = seen
    .slice(0, -1)
    .map((one, from) => ({ from, by: one.pH - last.pH, limit: far * Math.hypot(one.spread, last.spread) }))
    .filter(({ from, by, limit }) => by > limit && (seen[from]?.grams ?? 0) < last.grams)
    .sort((a, b) => b.by - a.by)[0];
  const before1 = seen[reading - 1];
  const rise = before1 ? expectedAt(before, others, last).low - before1.pH : 0;
  return [
    ...(fell ? [{ code: 'falls' as const, from: fell.from, reading, by: fell.by }] : []),
    ...(before1 && Math.abs(last.pH - before1.pH) <= same && last.grams > before1.grams && rise >= steep
      ? [{ code: 'no-rise' as const, from: reading - 1, reading, rise }]
      : []),
  ];
}

/** Whether ammonia explains all readings better than none: each share of the charge is tried, what was known moved to fit. */
function ammoniaIn(before: PotBefore, after: PotAfter): readonly Contradiction[] {
  if (!after.seen.some(({ pH }) => pH >= ammoniaShows)) return [];
  const amounts = amountsIn(before, after.fit.place);
  const charge = chargeOfPot(new Map(before.pot.parts.map(({ of }, k) => [of, amounts[k] ?? 0])));
  const tried = ammoniaTried.flatMap((share) => {
    const curve = solvedAt(before.pot, before.curve, amounts, share * charge);
    if (!curve.ok) return [];
    return [{ share, strain: fitted(curve.value, before.known, after.seen, after.fit).strain }];
  });
  const [best] = tried.sort((a, b) => a.strain - b.strain);
  if (!best || after.fit.strain - best.strain < better) return [];
  return [{ code: 'ammonia', share: best.share, moles: best.share * charge }];
}

/** All that readings contradict, in the order in which it showed; ammonia last. */
export function contradictionsIn({ before, after }: Told): readonly Contradiction[] {
  const one = after.seen.flatMap((_, i) => ofTheLast(before, after.seen.slice(0, i + 1)));
  return [...one, ...ammoniaIn(before, after)];
}

/** Hydroxide up to a pH by what is likely now, mol. */
export const molesTo = ({ before, after }: Told, pH: number): number =>
  baseAt(after.curve, amountsIn(before, after.fit.place), pH);
