/** Small matrices as rows, and roots of them: lower triangles that say how uncertain things are made of independent ones. */
import { factorise } from '../equilibrium/cholesky';
import { at } from '../equilibrium/floats';

export type Matrix = readonly (readonly number[])[];

export function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] ?? 0) * (b[i] ?? 0);
  return sum;
}

export const unit = (n: number): number[][] =>
  Array.from({ length: n }, (_, i) => Array.from({ length: n }, (__, k) => (i === k ? 1 : 0)));

/** Cholesky's root of a covariance. A direction that the others hold fast has nothing of its own left. */
export function rootOf(covariance: Matrix): number[][] {
  const n = covariance.length;
  const flat = Float64Array.from(covariance.flat());
  factorise(flat, n);
  return covariance.map((_, i) =>
    covariance.map((__, k) => {
      const entry = k > i ? 0 : at(flat, i * n + k);
      return Number.isFinite(entry) ? entry : 0;
    }),
  );
}

/** Row times matrix. */
export const through = (row: readonly number[], matrix: Matrix): number[] =>
  (matrix[0] ?? []).map((_, k) => row.reduce((sum, r, i) => sum + r * (matrix[i]?.[k] ?? 0), 0));

/** Row times the inverse of a root; nothing where the root has nothing of its own. */
export function throughInverse(row: readonly number[], root: Matrix): number[] {
  const n = row.length;
  const found = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    let sum = row[k] ?? 0;
    for (let i = k + 1; i < n; i++) sum -= (found[i] ?? 0) * (root[i]?.[k] ?? 0);
    const own = root[k]?.[k] ?? 0;
    found[k] = own === 0 ? 0 : sum / own;
  }
  return found;
}
