/**
 * Points that stand for a normal distribution: always the same ones, in pairs about the middle, with the spread and the
 * independence of the distribution itself. Evenness: Roberts, the additive sequence of the generalised golden ratio; to
 * normal numbers by Box and Muller (Ann. Math. Stat. 29, 610, 1958).
 */
import { factorise } from '../equilibrium/cholesky';
import { at } from '../equilibrium/floats';

const pairs = 64;

/** The number that its own power `count` + 1 is one more than. */
function goldenRatio(count: number): number {
  let x = 1.5;
  for (let i = 0; i < 60; i++) x = (1 + x) ** (1 / (count + 1));
  return x;
}

function drawn(dimensions: number): readonly (readonly number[])[] {
  const even = dimensions + (dimensions % 2);
  const phi = goldenRatio(even);
  const uniform = (i: number, k: number): number => (0.5 + (i + 1) * phi ** -(k + 1)) % 1;
  return Array.from({ length: pairs }, (_, i) =>
    Array.from({ length: dimensions }, (_, k) => {
      const [u, v] = [uniform(i, k - (k % 2)), uniform(i, k - (k % 2) + 1)];
      const radius = Math.sqrt(-2 * Math.log(Math.max(u, 1e-12)));
      return radius * (k % 2 === 0 ? Math.cos(2 * Math.PI * v) : Math.sin(2 * Math.PI * v));
    }),
  );
}

/** Turned and stretched until the sum of their squares is that of the distribution. */
function evened(points: readonly (readonly number[])[], n: number): readonly (readonly number[])[] {
  const spread = new Float64Array(n * n);
  for (const point of points)
    for (let i = 0; i < n; i++)
      for (let k = 0; k < n; k++)
        spread[i * n + k] = at(spread, i * n + k) + ((point[i] ?? 0) * (point[k] ?? 0)) / pairs;
  factorise(spread, n);
  return points.map((point) => {
    const even: number[] = [];
    for (let i = 0; i < n; i++) {
      let sum = point[i] ?? 0;
      for (let p = 0; p < i; p++) sum -= at(spread, i * n + p) * (even[p] ?? 0);
      even.push(sum / at(spread, i * n + i));
    }
    return even;
  });
}

const known = new Map<number, readonly Float64Array[]>();

/** Mean nothing, spread one, independent. */
export function normalPoints(dimensions: number): readonly Float64Array[] {
  const points =
    known.get(dimensions) ??
    evened(drawn(dimensions), dimensions).flatMap((p) => [
      Float64Array.from(p),
      Float64Array.from(p, (x) => -x),
    ]);
  known.set(dimensions, points);
  return points;
}
