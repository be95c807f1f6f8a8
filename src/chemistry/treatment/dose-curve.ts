/** pH and dissolved metals against the base put in: what the plot and the plan's expected readings are read from. */
import type { BaseId, Metal } from '../../reference/tables';
import type { StatedPurity } from '../base-needed';
import { componentOfMetal } from '../equilibrium/reaction';
import type { PointFailure } from '../equilibrium/titration';
import { dissolved } from '../equilibrium/told';
import type { Load } from '../load';
import { alongDoses, steep } from './along-dose';
import { phAt } from './expected-ph';
import { gramsPerMole } from './pot-knowledge';
import { amountsAfter, type StageAsked } from './stage-before';
import {
  type Amounts,
  atEnd,
  likely,
  metalOf,
  sizeOf,
  type TreatedPot,
  type Turn,
  titrationOf,
  treatedPot,
  turnsOf,
} from './treated-pot';

/** Plain numbers, for drawing: the figures beside a plot are worked out on their own. */
export type PhPoint = {
  /** As sold, with the usual excess, g. */
  readonly grams: number;
  readonly pH: number;
};

export type CurvePoint = PhPoint & {
  readonly ionicStrength: number;
  /** Still in solution, mol. */
  readonly dissolved: ReadonlyMap<Metal, number>;
};

export type Leaving = { readonly metal: Metal; readonly grams: number; readonly pH: number };

export type DoseCurve = {
  readonly points: readonly CurvePoint[];
  /**
   * pH against grams if all amounts and the base stand at the ends of their ranges, whichever turn the pot takes: reached
   * soonest, and latest.
   */
  readonly soonest: readonly PhPoint[];
  readonly latest: readonly PhPoint[];
  /** Where half of a metal has come down. */
  readonly leaving: readonly Leaving[];
};

export type CurveFailure =
  | { readonly code: 'acid-open' }
  /** A stage before ends below its pH. */
  | { readonly code: 'not-reached' }
  | PointFailure;
export type Curved =
  | { readonly ok: true; readonly value: DoseCurve }
  | { readonly ok: false; readonly failure: CurveFailure };

/** Steps in dose that a curve has at least, halved where the pH rises by more, so many times at most. */
const steps = 60;
const fastRise = 0.25;
const halvings = 6;
/** How far beyond the charge of acid and metals the curve goes. */
const beyond = 1.25;

export type CurveAsked = {
  readonly stated?: StatedPurity | undefined;
  /** g as sold up to which it goes at least. */
  readonly upTo?: number;
  /** Stages that come before it, each with its own base. */
  readonly after?: readonly StageAsked[] | undefined;
};

export function doseCurve(
  load: Load,
  base: BaseId,
  { stated, upTo = 0, after = [] }: CurveAsked = {},
): Curved {
  const pot = treatedPot(load, base);
  const first = treatedPot(load, after[0]?.base ?? base);
  if (!pot || !first) return { ok: false, failure: { code: 'acid-open' } };
  const each = gramsPerMole(base, stated);
  const [low, middle, high] = [each.low, each.value, each.high].map((g) => g.toNumber());
  if (low === undefined || middle === undefined || high === undefined) throw new Error('no grams');
  const most = Math.max(beyond * sizeOf(pot, mostIn(load, after, first)) * high, beyond * upTo, 1e-6);
  const along = (begin: (pot: TreatedPot) => Amounts, grams: number, turn?: Turn, aired = false): Along => {
    const brought = amountsAfter(load, after, begin, turn);
    if (brought.found === 'stall') return { ok: false, failure: { code: 'not-reached' } };
    if (brought.found === 'failure') return { ok: false, failure: { ...brought.failure, base: 0 } };
    const amounts = new Map(after.length > 0 ? brought.amounts : begin(pot));
    // Stirring may have driven out what carbonate a stage before left.
    if (aired) amounts.delete('carbonate');
    return curve(pot, amounts, grams, most, turn);
  };
  const points = along(likely, middle);
  const turns = turnsOf(first);
  const soonest = outermost(
    turns.map((turn) => along((of) => atEnd(of, 'low'), low, turn, true)),
    Math.max,
  );
  const latest = outermost(
    turns.map((turn) => along((of) => atEnd(of, 'high'), high, turn)),
    Math.min,
  );
  if (!points.ok) return points;
  if (!soonest.ok) return soonest;
  if (!latest.ok) return latest;
  return {
    ok: true,
    value: {
      points: points.value,
      soonest: soonest.value,
      latest: latest.value,
      leaving: leavingOn(points.value, pot),
    },
  };
}

/** All that may be in a pot at the most, after stages at what is likely where they do not get there. */
function mostIn(load: Load, after: readonly StageAsked[], first: TreatedPot): Amounts {
  const high = amountsAfter(load, after, (pot) => atEnd(pot, 'high'));
  return after.length > 0 && high.found === 'amounts' ? high.amounts : atEnd(first, 'high');
}

type Along =
  | { readonly ok: true; readonly value: readonly CurvePoint[] }
  | { readonly ok: false; readonly failure: CurveFailure };

/** Several curves as the one that runs outside them all, at every dose that one of them has a point at. */
function outermost(
  curves: readonly Along[],
  outer: (...pH: number[]) => number,
):
  | { readonly ok: true; readonly value: readonly PhPoint[] }
  | { readonly ok: false; readonly failure: CurveFailure } {
  const solved = curves.flatMap((one) => (one.ok ? [one.value] : []));
  const failed = curves.find((one) => !one.ok);
  // A turn that has no equilibrium somewhere says nothing; where none has, that is told.
  if (solved.length === 0 && failed) return failed;
  const doses = [...new Set(solved.flatMap((points) => points.map(({ grams }) => grams)))].sort(
    (a, b) => a - b,
  );
  const value = doses.map((grams) => ({
    grams,
    pH: outer(...solved.flatMap((points) => phAt(points, grams) ?? [])),
  }));
  return { ok: true, value };
}

/** @param each g that give one mole of hydroxide */
function curve(pot: TreatedPot, amounts: Amounts, each: number, most: number, turn?: Turn): Along {
  const step = most / each / steps;
  const along = alongDoses(titrationOf(pot, amounts, turn), {
    doses: Array.from({ length: steps + 1 }, (_, i) => i * step),
    tooFar: steep(fastRise, step / 2 ** halvings),
  });
  if (!along.ok) return along;
  const metals = metalsOf(pot);
  return {
    ok: true,
    value: along.points.map(({ base, at }) => ({
      grams: base * each,
      pH: at.pH,
      ionicStrength: at.ionicStrength,
      dissolved: new Map(metals.map((metal) => [metal, dissolved(at, componentOfMetal(metal))])),
    })),
  };
}

const metalsOf = (pot: TreatedPot): readonly Metal[] => [
  ...new Set(pot.parts.flatMap(({ of }) => (of === 'iron(II)' ? ['Fe' as const] : (metalOf(of) ?? [])))),
];

function leavingOn(points: readonly CurvePoint[], pot: TreatedPot): readonly Leaving[] {
  return metalsOf(pot).flatMap((metal) => {
    const all = points[0]?.dissolved.get(metal) ?? 0;
    const at = points.find((p) => (p.dissolved.get(metal) ?? 0) < all / 2);
    return all > 0 && at ? [{ metal, grams: at.grams, pH: at.pH }] : [];
  });
}
