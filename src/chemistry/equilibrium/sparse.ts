/** Rows of numbers, most of them nought: row j has its entries at `starts[j]` up to `starts[j + 1]`. */
export type Sparse = {
  readonly starts: Int32Array;
  readonly columns: Int32Array;
  readonly values: Float64Array;
};

export function sparse(rows: readonly ArrayLike<number>[]): Sparse {
  const [columns, values]: [number[], number[]] = [[], []];
  const starts = [0];
  for (const row of rows) {
    for (let c = 0; c < row.length; c++) {
      if (row[c] === 0) continue;
      columns.push(c);
      values.push(row[c] as number);
    }
    starts.push(columns.length);
  }
  return {
    starts: Int32Array.from(starts),
    columns: Int32Array.from(columns),
    values: Float64Array.from(values),
  };
}

/** Row j times `x`. */
export function rowTimes({ starts, columns, values }: Sparse, j: number, x: Float64Array): number {
  let sum = 0;
  for (let a = starts[j] as number; a < (starts[j + 1] as number); a++)
    sum += (values[a] as number) * (x[columns[a] as number] as number);
  return sum;
}

/** Adds row j times `factor` to `x`. */
export function addRow(
  { starts, columns, values }: Sparse,
  j: number,
  factor: number,
  x: Float64Array,
): void {
  for (let a = starts[j] as number; a < (starts[j + 1] as number); a++) {
    const c = columns[a] as number;
    x[c] = (x[c] as number) + (values[a] as number) * factor;
  }
}
