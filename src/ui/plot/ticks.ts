/** Round places for the ticks of an axis. */

const steps = [1, 2, 5] as const;

/** Floating point keeps 0.30000000000000004 of 0.1 × 3; a tick is 0.3. */
const clean = (value: number): number => Number(value.toPrecision(12)) + 0;

/** The smallest of 1, 2, 5 times a power of ten that cuts `span` into at most `most` pieces. */
export function niceStep(span: number, most: number): number {
  const rough = span / Math.max(1, most);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = steps.find((times) => times * power >= rough * (1 - 1e-9)) ?? 10;
  return clean(step * power);
}

/**
 * Multiples of a step of 1, 2 or 5 times a power of ten, from `from` to `to`, at most `most` of them.
 * @example niceTicks(0, 400, 5) // [0, 100, 200, 300, 400]
 */
export function niceTicks(from: number, to: number, most: number): readonly number[] {
  const step = niceStep(to - from, Math.max(1, most - 1));
  const slack = (to - from) * 1e-9;
  const first = Math.ceil((from - slack) / step);
  const count = Math.floor((to + slack) / step) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, at) => clean((first + at) * step));
}

/**
 * Powers of ten from `from` to `to`, every second or third where they are more than `most`; 1, 2 and 5 times them on a
 * range that holds fewer than two.
 * @param from above 0
 */
export function decadeTicks(from: number, to: number, most: number): readonly number[] {
  const first = Math.ceil(Math.log10(from) - 1e-9);
  const last = Math.floor(Math.log10(to) + 1e-9);
  if (last > first) {
    const every = Math.ceil((last - first + 1) / Math.max(1, most));
    return Array.from({ length: Math.floor((last - first) / every) + 1 }, (_, at) =>
      clean(10 ** (first + at * every)),
    );
  }
  const inside = [first - 1, first]
    .flatMap((power) => steps.map((times) => clean(times * 10 ** power)))
    .filter((value) => value >= from * (1 - 1e-9) && value <= to * (1 + 1e-9));
  return inside.slice(0, Math.max(1, most));
}
