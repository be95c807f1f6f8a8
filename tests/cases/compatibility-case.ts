/**
 * Cases of kind `compatibility`: two lists of group numbers. Every cell between them as printed, blank ones empty; the codes in
 * all; the rules that must fire for the things of such groups; whether mixing them may be planned at all.
 */
import * as z from 'zod/mini';
import { cellsBetween, chartCell } from '../../src/safety/must-not-meet/chart';
import { thingsOfGroups } from '../../src/safety/must-not-meet/matter';
import { meetings } from '../../src/safety/must-not-meet/meetings';
import type { Check, Outcome } from './outcome';
import { sameSet } from './sets';

const Groups = z.array(z.int().check(z.positive())).check(z.minLength(1));

export const CompatibilityCase = z.object({
  id: z.string(),
  kind: z.literal('compatibility'),
  input: z.object({ a: Groups, b: Groups }),
  expected: z.object({
    cells: z.optional(z.record(z.string(), z.array(z.string()))),
    codes: z.optional(z.array(z.string())),
    specificRules: z.optional(z.array(z.string())),
    allowPlannedMixing: z.optional(z.boolean()),
  }),
});
type CompatibilityCase = z.infer<typeof CompatibilityCase>;

const sorted = (all: Iterable<string>): string[] => [...all].sort();
const list = (all: readonly string[]): string => (all.length === 0 ? 'none' : all.join(' '));

function mustFire(expected: readonly string[], computed: readonly string[]): Check {
  const missing = expected.filter((id) => !computed.includes(id));
  return {
    ok: missing.length === 0,
    line: `rules: expected at least ${list(expected)}, computed ${list(computed)}`,
  };
}

/** What the tables say of two lists of groups. */
export function compatibility({ a, b }: CompatibilityCase['input']) {
  const cells = Object.fromEntries(
    sorted(cellsBetween(a, b)).map((cell): [string, readonly string[]] => {
      const found = chartCell(cell);
      // A gap of the copy that is taken for dangerous is no statement of the chart.
      return [cell, found && !found.suspected ? found.codes : []];
    }),
  );
  const asMatter = (groups: readonly number[]) => thingsOfGroups(groups).map((thing) => ({ thing }));
  const found = meetings(asMatter(a), asMatter(b));
  return {
    cells,
    codes: sorted(new Set(Object.values(cells).flat())),
    specificRules: sorted(new Set(found.flatMap(({ ruling, by }) => (ruling.kind === 'rule' ? [by] : [])))),
    allowPlannedMixing: found.every(({ severity }) => severity === 'mind'),
  };
}

export function evaluateCompatibility({ input, expected }: CompatibilityCase): Outcome {
  const computed = compatibility(input);
  const { cells, codes, specificRules, allowPlannedMixing: allowed } = expected;
  const checks: Check[] = [];
  if (cells) {
    checks.push(sameSet('cells', Object.keys(cells), Object.keys(computed.cells)));
    for (const [cell, said] of Object.entries(cells))
      checks.push(sameSet(`cell ${cell}`, said, computed.cells[cell] ?? []));
  }
  if (codes) checks.push(sameSet('codes', codes, computed.codes));
  if (specificRules) checks.push(mustFire(specificRules, computed.specificRules));
  if (allowed !== undefined)
    checks.push({
      ok: allowed === computed.allowPlannedMixing,
      line: `mixing may be planned: expected ${allowed}, computed ${computed.allowPlannedMixing}`,
    });
  if (checks.length === 0) checks.push({ ok: false, line: 'nothing expected' });
  return { checks, computed, notes: [] };
}
