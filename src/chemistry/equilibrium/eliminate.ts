import { add, at } from './floats';

/** Gauss's elimination with the largest pivot of each column; writes the solution into `right`. Rows after one another in `matrix`. */
export function eliminate(matrix: Float64Array, right: Float64Array, n: number): void {
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++)
      if (Math.abs(at(matrix, i * n + k)) > Math.abs(at(matrix, pivot * n + k))) pivot = i;
    if (pivot !== k) swapRows(matrix, right, n, k, pivot);
    const by = at(matrix, k * n + k);
    for (let i = k + 1; i < n; i++) {
      const factor = at(matrix, i * n + k) / by;
      if (factor === 0) continue;
      for (let c = k; c < n; c++) add(matrix, i * n + c, -factor * at(matrix, k * n + c));
      add(right, i, -factor * at(right, k));
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    let sum = at(right, k);
    for (let c = k + 1; c < n; c++) sum -= at(matrix, k * n + c) * at(right, c);
    right[k] = sum / at(matrix, k * n + k);
  }
}

function swapRows(matrix: Float64Array, right: Float64Array, n: number, i: number, k: number): void {
  for (let c = 0; c < n; c++) {
    const x = at(matrix, i * n + c);
    matrix[i * n + c] = at(matrix, k * n + c);
    matrix[k * n + c] = x;
  }
  const x = at(right, i);
  right[i] = at(right, k);
  right[k] = x;
}
