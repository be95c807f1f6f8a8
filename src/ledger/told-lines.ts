/** Lines of the history as they are read: each with what corrected or withdrew it, and whether it was written down later. */
import type { Entry } from './entries/entry';
import { joined } from './order';
import { standing } from './standing';
import type { HistoryLine, State } from './state';

/** `changes` are the lines of what corrected or withdrew it, in order; one that was withdrawn itself is among them. */
export type ToldLine = HistoryLine & { readonly changes: readonly HistoryLine[] };

const told = (lines: readonly HistoryLine[], of: (id: string) => HistoryLine | undefined): ToldLine[] =>
  lines.map((line) => ({ ...line, changes: line.changedBy.flatMap((id) => of(id) ?? []) }));

/**
 * Lines of entries that were read from the disk, in the order given.
 * @param changes all that corrected or withdrew them, and one another
 */
export function toldLines(entries: readonly Entry[], changes: readonly Entry[]): readonly ToldLine[] {
  const all = new Map(standing(joined(entries, changes)).history.map((line) => [line.entry.id, line]));
  const of = (id: string): HistoryLine | undefined => all.get(id);
  return told(
    entries.flatMap(({ id }) => of(id) ?? []),
    of,
  );
}

/** Lines of the state, likewise. */
export function toldIn(state: State, lines: readonly HistoryLine[]): readonly ToldLine[] {
  const named = new Set(lines.flatMap(({ changedBy }) => changedBy));
  const all = new Map(
    state.history.flatMap((line) => (named.has(line.entry.id) ? [[line.entry.id, line] as const] : [])),
  );
  return told(lines, (id) => all.get(id));
}

/** Below this, in ms, an entry counts as written while it happened. */
const atOnceMs = 60_000;

/** When it was written beside when it happened, as it was first said: `before` where a clock stood wrong. */
export function writtenWhen({ happenedAt, writtenAt }: Entry): 'as-it-happened' | 'later' | 'before' {
  const ms = Date.parse(writtenAt) - Date.parse(happenedAt);
  return Math.abs(ms) < atOnceMs ? 'as-it-happened' : ms > 0 ? 'later' : 'before';
}
