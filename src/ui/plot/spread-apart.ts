/** Pushes things on a line apart until none covers another. */

export type Wanted = { readonly middle: number; readonly length: number };

type Group = { readonly members: readonly number[]; readonly length: number; readonly start: number };

/** A start for a group that leaves its members, together, nearest to where they were wanted. */
function group(wanted: readonly Wanted[], members: readonly number[], low: number, high: number): Group {
  let length = 0;
  let pull = 0;
  for (const member of members) {
    const { middle = 0, length: own = 0 } = wanted[member] ?? {};
    pull += middle - own / 2 - length;
    length += own;
  }
  const start = Math.max(low, Math.min(pull / members.length, high - length));
  return { members, length, start };
}

/**
 * Middles nearest to the wanted ones so that nothing overlaps, the order of the wanted middles is kept, and all lies
 * between `low` and `high`. Nothing when they are too long for that, together.
 */
export function spreadApart(
  wanted: readonly Wanted[],
  low: number,
  high: number,
): readonly number[] | undefined {
  if (wanted.reduce((sum, { length }) => sum + length, 0) > high - low + 1e-9) return undefined;
  const order = wanted.map((_, at) => at).sort((a, b) => (wanted[a]?.middle ?? 0) - (wanted[b]?.middle ?? 0));
  const groups: Group[] = [];
  for (const member of order) {
    let next = group(wanted, [member], low, high);
    // What would be covered is moved along with what covers it.
    for (let last = groups.at(-1); last && last.start + last.length > next.start; last = groups.at(-1)) {
      groups.pop();
      next = group(wanted, [...last.members, ...next.members], low, high);
    }
    groups.push(next);
  }
  const middles = wanted.map(() => 0);
  for (const { members, start } of groups) {
    let at = start;
    for (const member of members) {
      const length = wanted[member]?.length ?? 0;
      middles[member] = at + length / 2;
      at += length;
    }
  }
  return middles;
}
