/** A whole record in memory, read as one on the disk is. */
import type { Entry } from '../../src/ledger/entries/entry';
import { namedBy } from '../../src/ledger/standing';
import type { WholeRecord } from '../../src/storage/pages-of-entries';

/** All that corrects or withdraws one of these, or one another. */
function changesOf(all: readonly Entry[], ids: readonly string[]): readonly Entry[] {
  const named = new Set(ids);
  const found = new Set<Entry>();
  for (let before = -1; before < found.size; ) {
    before = found.size;
    for (const entry of all)
      if (named.has(namedBy(entry) ?? '')) {
        found.add(entry);
        named.add(entry.id);
      }
  }
  return all.filter((entry) => found.has(entry));
}

/** @param log gives every entry there is, in order */
export function wholeInMemory(log: () => readonly Entry[], device: string): WholeRecord {
  const withChanges = (entries: readonly Entry[]) => ({
    entries,
    changes: changesOf(
      log(),
      entries.map(({ id }) => id),
    ),
  });
  const done = <T>(value: T) => ({ ok: true, value }) as const;
  return {
    device,
    count: async () => done(log().length),
    page: async (before, many) => {
      const all = log();
      const end =
        before === null
          ? all.length
          : all.findIndex((entry) => entry.device === before[1] && entry.counter === before[2]);
      const entries = all.slice(Math.max(0, end - many), end);
      const [first] = entries;
      const next = first && end > many ? ([first.writtenAt, first.device, first.counter] as const) : null;
      return done({ ...withChanges(entries.toReversed()), corrupted: [], next });
    },
    entry: async (id) => {
      const entry = log().find((one) => one.id === id) ?? null;
      return done({ entry, changes: entry ? changesOf(log(), [id]) : [] });
    },
    lookThrough: async ({ takes, missed, tell }) => {
      const all = log();
      const taken = new Set(all.filter(takes).map(({ id }) => id));
      for (const id of missed?.() ?? []) taken.add(id);
      tell({ done: all.length, of: all.length });
      return done(withChanges(all.filter(({ id }) => taken.has(id))));
    },
  };
}
