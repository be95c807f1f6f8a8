/** The pH that a curve lets be expected once so much of the base is in. */

/** g as sold, and the pH it comes to. */
type Point = { readonly grams: number; readonly pH: number };

/** Readings that may be expected after a portion. */
export type Expected = { readonly low: number; readonly likely: number; readonly high: number };

/** pH at so many grams, straight between the points; undefined beyond them. */
export function phAt(points: readonly Point[], grams: number): number | undefined {
  const after = points.findIndex((p) => p.grams >= grams);
  const [a, b] = [points[Math.max(after - 1, 0)], points[after]];
  if (!a || !b) return undefined;
  return b.grams === a.grams ? b.pH : a.pH + ((grams - a.grams) / (b.grams - a.grams)) * (b.pH - a.pH);
}

/** A likely line and the two that it may run between. */
export type Lines = {
  readonly likely: readonly Point[];
  readonly soonest: readonly Point[];
  readonly latest: readonly Point[];
};

/** Undefined beyond the end of a line. */
export function expectedOn({ likely, soonest, latest }: Lines, grams: number): Expected | undefined {
  const [low, middle, high] = [latest, likely, soonest].map((points) => phAt(points, grams));
  return low === undefined || middle === undefined || high === undefined
    ? undefined
    : { low: Math.min(low, middle, high), likely: middle, high: Math.max(low, middle, high) };
}
