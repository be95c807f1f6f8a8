/**
 * The solids that are there fix as many activities: the components they fix (metals first) are written by the free ones,
 * and every species by the free components alone. What is left to solve has no solids in it.
 */
import { add, at } from './floats';
import { addRow, type Sparse, sparse } from './sparse';
import type { System } from './system';

export type Assemblage = {
  /** Numbers of the phases that are there. */
  readonly phases: readonly number[];
  readonly fixed: readonly number[];
  readonly free: readonly number[];
  /** Inverse of the phases' numbers of the fixed components: fixed × phases. */
  readonly inverse: Float64Array;
  /** Part of each free component in a fixed one: ln a(fixed) = inverse · lnK − share · ln a(free). Fixed × free. */
  readonly share: Float64Array;
  /** Numbers of the free components in each species once the fixed ones are written out. */
  readonly nu: Sparse;
  /** Water in each species once the fixed components are written out: ln n = ν·λ(free) + water · ln a(w) + what stays. */
  readonly water: Float64Array;
  /** The same two of each phase of the system. */
  readonly phaseNu: Sparse;
  readonly phaseWater: Float64Array;
};

/** Smaller than this a number that should be a small whole one is nought. */
const nought = 1e-9;

/** Gauss and Jordan with the first component that a phase can fix; undefined where one phase is made of others. */
export function assemblageOf(system: System, phases: readonly number[]): Assemblage | undefined {
  const n = system.components.length;
  const r = phases.length;
  const rows = phases.map((p, i) => {
    const row = new Float64Array(n + r);
    row.set(system.phases[p]?.nu ?? []);
    row[n + i] = 1;
    return row;
  });
  const fixed: number[] = [];
  for (const row of rows) {
    const pivot = row.findIndex((x, k) => k < n && Math.abs(x) > nought);
    if (pivot < 0) return undefined;
    fixed.push(pivot);
    const by = at(row, pivot);
    for (let k = 0; k < n + r; k++) row[k] = at(row, k) / by;
    for (const other of rows) {
      const factor = at(other, pivot);
      if (other === row || factor === 0) continue;
      for (let k = 0; k < n + r; k++) other[k] = at(other, k) - factor * at(row, k);
    }
  }
  const isFixed = new Set(fixed);
  const free = system.components.flatMap((_, k) => (isFixed.has(k) ? [] : [k]));
  const inverse = Float64Array.from(rows.flatMap((row) => [...row.subarray(n)]));
  const share = Float64Array.from(rows.flatMap((row) => free.map((k) => at(row, k))));
  // Water that a fixed component brings along, by the solids that fix it.
  const waterIn = fixed.map((_, p) =>
    phases.reduce((sum, q, i) => sum + at(inverse, p * r + i) * (system.phases[q]?.water ?? 0), 0),
  );
  const waterLeft = (water: number, row: Float64Array): number =>
    fixed.reduce((left, q, p) => left - at(row, q) * (waterIn[p] ?? 0), water);
  const written = (row: Float64Array): Float64Array => {
    const left = Float64Array.from(free, (k) => at(row, k));
    for (let p = 0; p < r; p++) {
      const x = at(row, fixed[p] as number);
      if (x === 0) continue;
      for (let c = 0; c < left.length; c++) add(left, c, -x * at(share, p * left.length + c));
    }
    for (let c = 0; c < left.length; c++) if (Math.abs(at(left, c)) < nought) left[c] = 0;
    return left;
  };
  const species = system.species.map((_, j) => {
    const row = new Float64Array(n);
    addRow(system.nu, j, 1, row);
    return row;
  });
  return {
    phases,
    fixed,
    free,
    inverse,
    share,
    nu: sparse(species.map(written)),
    water: system.water.map((w, j) => waterLeft(w, species[j] as Float64Array)),
    phaseNu: sparse(system.phases.map(({ nu }) => written(nu))),
    phaseWater: Float64Array.from(system.phases, ({ nu, water }) => waterLeft(water, nu)),
  };
}

/** How much of each solid that is there one of another takes up that is made of them alone. */
export function madeOf({ fixed, phases, inverse }: Assemblage, nu: Float64Array): number[] {
  return phases.map((_, q) =>
    fixed.reduce((sum, k, p) => sum + at(nu, k) * at(inverse, p * phases.length + q), 0),
  );
}

/** Remembers assemblages by the phases that are there: along a curve they come again. */
export function assemblages(system: System): (phases: readonly number[]) => Assemblage | undefined {
  const known = new Map<string, Assemblage | undefined>();
  return (phases) => {
    const key = phases.join();
    if (!known.has(key)) known.set(key, assemblageOf(system, phases));
    return known.get(key);
  };
}
