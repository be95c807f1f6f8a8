/**
 * Cases of kind `compatibility`: two lists of group numbers. Every cell between them as printed, blank ones empty; the codes in
 * all; the rules that must fire for the things of such groups; whether mixing them may be planned at all.
 */
import * as z from 'zod/mini';
import { reactivity } from '../../src/reference/reactivity-tables';
import { cellsBetween, chartCell, isRefused } from '../../src/safety/must-not-meet/chart';
import { meetings } from '../../src/safety/must-not-meet/meetings';
import type { Check, Outcome } from './outcome';
import { sameSet } from './sets';
import { thingsOfGroups } from './things-of-groups';

const Group = z.union([
  z.int().check(z.positive()),
  z.pipe(z.string().check(z.regex(/^[1-9]\d*$/)), z.transform(Number)),
]);
const List = z.array(Group).check(z.minLength(1));
const Groups = z.union([
  List,
  z.pipe(
    z.object({ groups: List }),
    z.transform(({ groups }) => groups),
  ),
]);

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

/** A statement of the chart; a gap of the copy that is taken for dangerous, and a group that must meet nothing, have no codes there. */
function printedIn(cell: string): readonly string[] {
  const found = chartCell(cell);
  const isNever = cell.split('-').some((group) => group in reactivity.withAnything);
  return found && !found.suspected && !isNever ? found.codes : [];
}

/** What the tables say of two lists of groups; `held` is what is taken for dangerous where the chart prints nothing. */
export function compatibility({ a, b }: CompatibilityCase['input']) {
  const names = sorted(cellsBetween(a, b));
  const cells = Object.fromEntries(names.map((cell) => [cell, printedIn(cell)]));
  const held = Object.fromEntries(names.map((cell) => [cell, chartCell(cell)?.codes ?? []]));
  const asMatter = (groups: readonly number[]) => thingsOfGroups(groups).map((thing) => ({ thing }));
  const found = meetings(asMatter(a), asMatter(b));
  return {
    cells,
    held,
    codes: sorted(new Set(Object.values(cells).flat())),
    heldCodes: sorted(new Set(Object.values(held).flat())),
    specificRules: sorted(new Set(found.flatMap(({ ruling, by }) => (ruling.kind === 'rule' ? [by] : [])))),
    // Of most organics nothing here is a thing with a name: their cells speak for themselves.
    allowPlannedMixing:
      found.every(({ severity }) => severity === 'mind') && !Object.values(held).some(isRefused),
  };
}

const cellNamed = (written: string): string =>
  written
    .split(/\D+/)
    .filter(Boolean)
    .sort((one, other) => Number(one) - Number(other))
    .join('-');

/** As printed; a case may also name what is taken for dangerous. */
const printedOrHeld = (
  name: string,
  said: readonly string[],
  printed: readonly string[],
  held: readonly string[],
): Check => {
  const asPrinted = sameSet(name, said, printed);
  const asHeld = sameSet(name, said, held);
  return asHeld.ok && !asPrinted.ok ? asHeld : asPrinted;
};

export function evaluateCompatibility({ input, expected }: CompatibilityCase): Outcome {
  const computed = compatibility(input);
  const { cells, codes, specificRules, allowPlannedMixing: allowed } = expected;
  const checks: Check[] = [];
  if (cells) {
    const said = Object.entries(cells).map(([cell, all]) => [cellNamed(cell), all] as const);
    checks.push(
      sameSet(
        'cells',
        said.map(([cell]) => cell),
        Object.keys(computed.cells),
      ),
    );
    for (const [cell, all] of said)
      checks.push(printedOrHeld(`cell ${cell}`, all, computed.cells[cell] ?? [], computed.held[cell] ?? []));
  }
  if (codes) checks.push(printedOrHeld('codes', codes, computed.codes, computed.heldCodes));
  if (specificRules) checks.push(mustFire(specificRules, computed.specificRules));
  if (allowed !== undefined)
    checks.push({
      ok: allowed === computed.allowPlannedMixing,
      line: `mixing may be planned: expected ${allowed}, computed ${computed.allowPlannedMixing}`,
    });
  if (checks.length === 0) checks.push({ ok: false, line: 'nothing expected' });
  return { checks, computed, notes: [] };
}
