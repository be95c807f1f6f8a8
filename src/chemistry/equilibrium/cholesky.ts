/** Symmetric positive definite sets of equations, row after row in one array. */
import { at } from './floats';

/** Cholesky's factor in place. A direction in which the matrix is flat to rounding is shut: nothing moves along it. */
export function factorise(matrix: Float64Array, n: number): void {
  for (let k = 0; k < n; k++) {
    const before = at(matrix, k * n + k);
    let pivot = before;
    for (let p = 0; p < k; p++) pivot -= at(matrix, k * n + p) ** 2;
    const root = pivot > before * 1e-15 && pivot > 0 ? Math.sqrt(pivot) : Number.POSITIVE_INFINITY;
    matrix[k * n + k] = root;
    for (let i = k + 1; i < n; i++) {
      let sum = at(matrix, i * n + k);
      if (sum !== 0 || k > 0)
        for (let p = 0; p < k; p++) sum -= at(matrix, i * n + p) * at(matrix, k * n + p);
      matrix[i * n + k] = sum / root;
    }
  }
}

/** Writes the solution into `right` from `start` on, by the factor. */
export function solveBy(factor: Float64Array, right: Float64Array, n: number, start = 0): void {
  for (let i = 0; i < n; i++) {
    let sum = at(right, start + i);
    for (let p = 0; p < i; p++) sum -= at(factor, i * n + p) * at(right, start + p);
    right[start + i] = sum / at(factor, i * n + i);
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = at(right, start + i);
    for (let p = i + 1; p < n; p++) sum -= at(factor, p * n + i) * at(right, start + p);
    right[start + i] = sum / at(factor, i * n + i);
  }
}
