/** What comes of a case: every expected value beside the computed one, and all computed values in the case's own shape. */

/** One expected value, or one row of them. */
export type Check = {
  readonly ok: boolean;
  /** For a person: where, expected, computed, deviation. */
  readonly line: string;
};

export type Outcome = {
  readonly checks: readonly Check[];
  readonly computed: unknown;
  /** Other result sets of the case, only told. */
  readonly notes: readonly string[];
};

/** `name expected computed (deviation)`, right when the deviation is within `tolerance`; null is only right for null. */
export function compared(
  name: string,
  expected: number | null,
  computed: number | null,
  deviation: (expected: number, computed: number) => number,
  tolerance: number,
  unit = '',
): Check {
  if (expected === null || computed === null)
    return { ok: expected === computed, line: `${name}: expected ${expected}, computed ${computed}` };
  const off = deviation(expected, computed);
  return {
    // Not a number is never within.
    ok: off <= tolerance,
    line: `${name}: expected ${expected}, computed ${computed} (off by ${off.toExponential(1)}${unit}, allowed ${tolerance}${unit})`,
  };
}

export const relative = (expected: number, computed: number): number =>
  expected === computed ? 0 : Math.abs(computed - expected) / Math.abs(expected);

/** Half of the last place that a value is printed to: "0.06" may stand for anything from 0.055 to 0.065. */
export function printedTo(written: string | number): number {
  const places = /\.(\d+)$/.exec(String(written))?.[1]?.length;
  return places === undefined ? 0 : 0.5 * 10 ** -places;
}

/** A printed value against a computed one: what its last place leaves open is no deviation. */
export function comparedAsPrinted(
  name: string,
  expected: string | number | null,
  computed: number | null,
  tolerance: number,
): Check {
  const value = expected === null ? null : Number(expected);
  const open = expected === null ? 0 : printedTo(expected);
  const beyondPrint = (said: number, found: number): number => {
    const off = Math.max(0, absolute(said, found) - open);
    return off === 0 ? 0 : off / Math.abs(said);
  };
  return compared(name, value, computed, beyondPrint, tolerance);
}

export const absolute = (expected: number, computed: number): number => Math.abs(computed - expected);

export const worstOf = (checks: readonly Check[], name: string): Check => ({
  ok: checks.every((c) => c.ok),
  line: [name, ...checks.filter((c) => !c.ok).map((c) => `  NOT ${c.line}`)].join('\n'),
});

/** Significant digits of a computed value that is handed out. */
export const digits = (x: number): number => Number(x.toPrecision(6));
export const decimals = (x: number, places: number): number => Number(x.toFixed(places));
