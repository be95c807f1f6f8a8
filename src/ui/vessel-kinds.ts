/**
 * Vessels people keep liquor in, by outer size. These are round figures of our own, measured from no maker's sheet:
 * a vessel whose capacity is not here is scaled from the nearest of its family. Depth is not drawn.
 */
export type VesselFamily = 'jerrican' | 'bottle' | 'tub';

export type VesselKind = {
  readonly family: VesselFamily;
  readonly capacityL: number;
  /** Outer width, or diameter of a round one. */
  readonly widthMm: number;
  /** Outer height to the top of the closed cap, without its vent. */
  readonly heightMm: number;
  /** Height of the liquid when filled to its nominal capacity. */
  readonly shoulderMm: number;
};

export const vesselKinds: readonly VesselKind[] = [
  { family: 'jerrican', capacityL: 20, widthMm: 290, heightMm: 390, shoulderMm: 318 },
  { family: 'jerrican', capacityL: 10, widthMm: 230, heightMm: 310, shoulderMm: 252 },
  { family: 'jerrican', capacityL: 5, widthMm: 190, heightMm: 250, shoulderMm: 200 },
  { family: 'bottle', capacityL: 2.5, widthMm: 140, heightMm: 262, shoulderMm: 172 },
  { family: 'bottle', capacityL: 1, widthMm: 98, heightMm: 190, shoulderMm: 130 },
  { family: 'tub', capacityL: 12, widthMm: 285, heightMm: 262, shoulderMm: 225 },
];

/**
 * The kind of this family and capacity, scaled from the nearest known one (nearest in ratio; all lengths by the cube
 * root of the ratio, so that the shape stays).
 * @example vesselKind('jerrican', 10).widthMm // 230
 */
export function vesselKind(family: VesselFamily, capacityL: number): VesselKind {
  const wanted = capacityL > 0 && Number.isFinite(capacityL) ? capacityL : 1;
  const distance = (kind: VesselKind) => Math.abs(Math.log(kind.capacityL / wanted));
  const nearest = vesselKinds
    .filter((kind) => kind.family === family)
    .reduce((best, kind) => (distance(kind) < distance(best) ? kind : best));
  const growth = Math.cbrt(wanted / nearest.capacityL);
  return {
    family,
    capacityL: wanted,
    widthMm: nearest.widthMm * growth,
    heightMm: nearest.heightMm * growth,
    shoulderMm: nearest.shoulderMm * growth,
  };
}
