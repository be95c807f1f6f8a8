/** Reading and adding in arrays of floats whose index is known to be inside. */
export const at = (a: Float64Array, i: number): number => a[i] as number;

export const add = (a: Float64Array, i: number, x: number): void => {
  a[i] = at(a, i) + x;
};
