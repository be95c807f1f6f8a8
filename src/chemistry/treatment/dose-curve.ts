/** pH and dissolved metals against the base put in: what the plot and the plan's expected readings are read from. */
import type { BaseId, Metal } from '../../reference/tables';
import type { StatedPurity } from '../base-needed';
import { componentOfMetal } from '../equilibrium/reaction';
import { type PointFailure, titrate } from '../equilibrium/titration';
import { dissolved } from '../equilibrium/told';
import type { Load } from '../load';
import { gramsPerMole } from './pot-knowledge';
import {
  type Amounts,
  atEnd,
  likely,
  sizeOf,
  type TreatedPot,
  type Turn,
  titrationOf,
  treatedPot,
  turnsOf,
} from './treated-pot';

/** Plain numbers, for drawing: the figures beside a plot are worked out on their own. */
export type CurvePoint = {
  /** As sold, with the usual excess, g. */
  readonly grams: number;
  readonly pH: number;
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
  readonly soonest: readonly CurvePoint[];
  readonly latest: readonly CurvePoint[];
  /** Where half of a metal has come down. */
  readonly leaving: readonly Leaving[];
};

export type CurveFailure = { readonly code: 'acid-open' } | PointFailure;
export type Curved =
  | { readonly ok: true; readonly value: DoseCurve }
  | { readonly ok: false; readonly failure: CurveFailure };

const pointsOnCurve = 100;
/** How far beyond the charge of acid and metals the curve goes. */
const beyond = 1.25;

/** @param upTo g as sold up to which it goes at least */
export function doseCurve(load: Load, base: BaseId, stated?: StatedPurity, upTo = 0): Curved {
  const pot = treatedPot(load, base);
  if (!pot) return { ok: false, failure: { code: 'acid-open' } };
  const each = gramsPerMole(base, stated);
  const [low, middle, high] = [each.low, each.value, each.high].map((g) => g.toNumber());
  if (low === undefined || middle === undefined || high === undefined) throw new Error('no grams');
  const most = Math.max(beyond * sizeOf(pot, atEnd(pot, 'high')) * high, beyond * upTo, 1e-6);
  const along = (amounts: Amounts, grams: number, turn?: Turn) => curve(pot, amounts, grams, most, turn);
  const points = along(likely(pot), middle);
  const turns = turnsOf(pot);
  const soonest = outermost(
    turns.map((turn) => along(atEnd(pot, 'low'), low, turn)),
    Math.max,
  );
  const latest = outermost(
    turns.map((turn) => along(atEnd(pot, 'high'), high, turn)),
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

type Along =
  | { readonly ok: true; readonly value: readonly CurvePoint[] }
  | { readonly ok: false; readonly failure: PointFailure };

/** Several curves over the same grams as the one that runs outside them all. */
function outermost(curves: readonly Along[], outer: (...pH: number[]) => number): Along {
  const solved = curves.flatMap((one) => (one.ok ? [one.value] : []));
  const [first] = solved;
  // A turn that has no equilibrium somewhere says nothing; where none has, that is told.
  if (!first) return curves[0] ?? { ok: true, value: [] };
  return {
    ok: true,
    value: first.map((point, i) => ({
      ...point,
      pH: outer(...solved.map((points) => points[i]?.pH ?? point.pH)),
    })),
  };
}

/** @param each g that give one mole of hydroxide */
function curve(pot: TreatedPot, amounts: Amounts, each: number, most: number, turn?: Turn): Along {
  const bases = Array.from({ length: pointsOnCurve }, (_, i) => (most / each) * (i / (pointsOnCurve - 1)));
  const titrated = titrate(titrationOf(pot, amounts, turn), bases);
  if (!titrated.ok) return titrated;
  const metals = metalsOf(pot);
  return {
    ok: true,
    value: titrated.value.map(({ base, at }) => ({
      grams: base * each,
      pH: at.pH,
      ionicStrength: at.ionicStrength,
      dissolved: new Map(metals.map((metal) => [metal, dissolved(at, componentOfMetal(metal))])),
    })),
  };
}

const metalsOf = (pot: TreatedPot): readonly Metal[] => [
  ...new Set(
    pot.parts.flatMap(({ of }) => (of === 'acid' ? [] : of === 'iron(II)' ? ['Fe' as const] : [of])),
  ),
];

function leavingOn(points: readonly CurvePoint[], pot: TreatedPot): readonly Leaving[] {
  return metalsOf(pot).flatMap((metal) => {
    const all = points[0]?.dissolved.get(metal) ?? 0;
    const at = points.find((p) => (p.dissolved.get(metal) ?? 0) < all / 2);
    return all > 0 && at ? [{ metal, grams: at.grams, pH: at.pH }] : [];
  });
}
