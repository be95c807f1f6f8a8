/**
 * A vessel as path texts in px, for the screen and for the papers alike. x grows to the right, y downwards; 0 0 is the
 * left of the outline and the top of the vent.
 */
import { below, type Placing, type Point, pathText, polygon, spanAt } from './drawn-path';
import type { VesselKind } from './vessel-kinds';
import { vesselOutlines } from './vessel-outlines';

export type VesselView = {
  readonly kind: VesselKind;
  /** Volume ÷ capacity; above 1 is drawn as far as the inside goes. */
  readonly fillShare: number;
  /** Height of settled solids ÷ shoulder height. */
  readonly solidsShare?: number | undefined;
  /** Volume ÷ capacity at the filling limit, for its tick. */
  readonly limitShare?: number | undefined;
  /** px a mm: 0.25 on a shelf, 0.74 on its own page. */
  readonly scale: number;
  /** Paper between outline and liquid. */
  readonly gapPx?: number | undefined;
  /** Litres between two graduation ticks; none are drawn without it. */
  readonly tickEveryL?: number | undefined;
};

/** One graduation line on the left wall; every fifth one is long and carries its number. */
export type Tick = {
  readonly xPx: number;
  readonly yPx: number;
  readonly litres: number;
  readonly long: boolean;
};

export type VesselGeometry = {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly outline: string;
  readonly hole: string | undefined;
  readonly inside: string;
  readonly liquid: string;
  readonly solids: string;
  readonly levelLine: string;
  readonly cap: string;
  readonly stem: string;
  /** y of the liquid's level, of the solids' top, and of the filling limit. */
  readonly levelPx: number;
  readonly solidsPx: number;
  readonly limitPx: number;
  /** Outer right wall at the limit. */
  readonly limitXPx: number;
  /** Height of the nominal capacity over the ground. */
  readonly shoulderPx: number;
  /** Inner left and right at the level. */
  readonly leftPx: number;
  readonly rightPx: number;
  readonly capBoxPx: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly ticks: readonly Tick[];
};

const topOf = (points: readonly Point[]): number => Math.max(...points.map(([, y]) => y));

function ticksOf(
  { kind, tickEveryL, scale }: VesselView,
  body: readonly Point[],
  yPx: (mm: number) => number,
): readonly Tick[] {
  if (tickEveryL === undefined || tickEveryL <= 0) return [];
  const count = Math.floor((kind.capacityL * 0.9) / tickEveryL + 1e-9);
  return Array.from({ length: count }, (_, at) => {
    const litres = (at + 1) * tickEveryL;
    const mm = (kind.shoulderMm * litres) / kind.capacityL;
    return { xPx: (spanAt(body, mm)?.[0] ?? 0) * scale, yPx: yPx(mm), litres, long: (at + 1) % 5 === 0 };
  });
}

const levelText = (points: readonly Point[], yMm: number, placing: Placing): string => {
  const span = spanAt(points, yMm);
  if (!span) return '';
  return pathText({ from: [span[0], yMm], strokes: [{ to: [span[1], yMm] }] }, placing, false);
};

const filled = (points: readonly Point[], yMm: number, placing: Placing): string => {
  const [from, ...rest] = below(points, yMm);
  return from && rest.length > 1 ? pathText({ from, strokes: rest.map((to) => ({ to })) }, placing) : '';
};

/**
 * Path texts and places of a vessel.
 * @example vesselGeometry({ kind: vesselKind('jerrican', 10), fillShare: 0.67, scale: 0.74 }).levelLine
 */
export function vesselGeometry(view: VesselView): VesselGeometry {
  const { kind, scale } = view;
  const wallMm = (view.gapPx ?? 4) / scale;
  const outlines = vesselOutlines(kind, wallMm);
  const stemTop = topOf(polygon(outlines.stem));
  const placing: Placing = { scale, topMm: stemTop };
  const inside = polygon(outlines.inside);
  const body = polygon(outlines.body);
  const limitMm = (view.limitShare ?? 0.9) * kind.shoulderMm;
  const yPx = (mm: number): number => (stemTop - mm) * scale;
  // Liquid stands on the inner floor, and no higher than the inside goes, whatever was logged.
  const heightOf = (share: number): number =>
    share > 0 ? Math.min(Math.max(share * kind.shoulderMm, wallMm + 2 / scale), topOf(inside) - 0.01) : 0;
  const levelMm = heightOf(view.fillShare);
  const solidsMm = heightOf(view.solidsShare ?? 0);
  const span = spanAt(inside, levelMm) ?? [wallMm, kind.widthMm - wallMm];
  const cap = polygon(outlines.cap);
  return {
    widthPx: kind.widthMm * scale,
    heightPx: stemTop * scale,
    outline: pathText(outlines.body, placing),
    hole: outlines.hole && pathText(outlines.hole, placing),
    inside: pathText(outlines.inside, placing),
    liquid: filled(inside, levelMm, placing),
    solids: filled(inside, solidsMm, placing),
    levelLine: levelText(inside, levelMm, placing),
    cap: pathText(outlines.cap, placing),
    stem: pathText(outlines.stem, placing),
    levelPx: yPx(levelMm),
    solidsPx: yPx(solidsMm),
    limitPx: yPx(limitMm),
    limitXPx: (spanAt(body, limitMm)?.[1] ?? kind.widthMm) * scale,
    shoulderPx: kind.shoulderMm * scale,
    leftPx: span[0] * scale,
    rightPx: span[1] * scale,
    capBoxPx: {
      left: Math.min(...cap.map(([x]) => x)) * scale,
      right: Math.max(...cap.map(([x]) => x)) * scale,
      top: yPx(topOf(cap)),
      bottom: yPx(Math.min(...cap.map(([, y]) => y))),
    },
    ticks: ticksOf(view, body, yPx),
  };
}
