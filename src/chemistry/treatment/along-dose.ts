/**
 * A pot along its dose, the points close together where the pH rises fast: near the end of a titration a drop of base is a whole unit of pH,
 * so steps of equal dose would jump over where the metals come down.
 */
import { Pot, type Titration } from '../equilibrium/pot';
import type { Equilibrium } from '../equilibrium/solve';
import { carbonDioxide } from '../equilibrium/system';
import type { PointFailure } from '../equilibrium/titration';
import { ladder } from './ladder';

export type DosePoint = {
  /** Hydroxide put in, mol. */
  readonly base: number;
  readonly at: Equilibrium;
  /** mol of carbon dioxide that has left. */
  readonly gone: number;
};

export type PhSpan = { readonly from: number; readonly to: number };

export type AlongDose =
  | { readonly ok: true; readonly points: readonly DosePoint[] }
  /** `points`: those before it. */
  | { readonly ok: false; readonly failure: PointFailure; readonly points: readonly DosePoint[] };

export type Walk = {
  /** Rising, mol of hydroxide, from nothing. */
  readonly doses: readonly number[];
  /** Whether two neighbours need one between them. */
  readonly tooFar: (a: DosePoint, b: DosePoint) => boolean;
  /** Whether a point is the last. */
  readonly ends?: (point: DosePoint) => boolean;
};

/** The points at the doses, and between them wherever two neighbours are too far apart. Ends at the first that has no equilibrium. */
export function alongDoses(titration: Titration, { doses, tooFar, ends }: Walk): AlongDose {
  const pot = new Pot(titration);
  const leaves = titration.gas === 'leaves';
  const solve = (base: number, before: number) => {
    const solved = pot.at(base, before);
    if (!solved.ok) return { ok: false as const, failure: { ...solved.failure, base } };
    const over = leaves ? (solved.value.solids.get(carbonDioxide) ?? 0) : 0;
    return { ok: true as const, point: { base, at: solved.value, gone: before + over } };
  };
  const points: DosePoint[] = [];
  for (const base of doses) {
    const next = solve(base, points.at(-1)?.gone ?? 0);
    const failure = next.ok ? fillUpTo(next.point) : next.failure;
    if (failure) return { ok: false, failure, points };
    if (next.ok && ends?.(next.point)) break;
  }
  return { ok: true, points };

  /** Adds points from the last one up to `end`, halving while two are too far apart. */
  function fillUpTo(end: DosePoint): PointFailure | undefined {
    const ahead = [end];
    for (let next = ahead.at(-1); next; next = ahead.at(-1)) {
      const last = points.at(-1);
      if (!last || !tooFar(last, next)) {
        points.push(next);
        ahead.pop();
        continue;
      }
      const middle = solve((last.base + next.base) / 2, last.gone);
      if (!middle.ok) return middle.failure;
      ahead.push(middle.point);
    }
    return undefined;
  }
}

/** Two neighbours between which the pH rises by more than `rise`, and that are not within `finest` mol already. */
export const steep =
  (rise: number, finest: number): Walk['tooFar'] =>
  (a, b) =>
    b.at.pH - a.at.pH > rise && b.base - a.base > finest;

/** pH between neighbours at most, and the part of the pot's size below which a step is no longer halved. */
const near = 0.05;
const finest = 1e-9;

/**
 * The points around and within a span of pH. The last one has the pH at which the base ends where that lies below `to`.
 * @param size of the pot: `sizeOf`, mol
 */
export function alongDose(titration: Titration, size: number, { from, to }: PhSpan): AlongDose {
  const tooSteep = steep(near, finest * size);
  return alongDoses(titration, {
    doses: ladder(size),
    tooFar: (a, b) => b.at.pH > from && a.at.pH < to && tooSteep(a, b),
    ends: ({ at }) => at.pH > to,
  });
}

/**
 * A number of the pot at a pH, straight between the logarithms of the two points beside it. Undefined beyond the points.
 * @param of at least nothing
 */
export function atPhAlong(
  points: readonly DosePoint[],
  pH: number,
  of: (at: Equilibrium) => number,
): number | undefined {
  const after = points.findIndex(({ at }) => at.pH >= pH);
  const b = points[after];
  const a = points[Math.max(after - 1, 0)];
  if (!a || !b) return undefined;
  const [low, high] = [of(a.at), of(b.at)];
  if (low <= 0 || high <= 0 || a === b) return high;
  const share = (pH - a.at.pH) / (b.at.pH - a.at.pH);
  return low * (high / low) ** share;
}
