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

export const absolute = (expected: number, computed: number): number => Math.abs(computed - expected);

export const worstOf = (checks: readonly Check[], name: string): Check => ({
  ok: checks.every((c) => c.ok),
  line: [name, ...checks.filter((c) => !c.ok).map((c) => `  NOT ${c.line}`)].join('\n'),
});

/** Significant digits of a computed value that is handed out. */
export const digits = (x: number): number => Number(x.toPrecision(6));
export const decimals = (x: number, places: number): number => Number(x.toFixed(places));
