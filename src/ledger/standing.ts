/** Which entries stand, after corrections and withdrawals. Nothing is taken out of the history. */
import type { PlainBody } from './entries/body';
import type { Entry } from './entries/entry';
import type { Fact, HistoryLine, Trouble } from './state';

export type Standing = {
  readonly history: readonly HistoryLine[];
  readonly facts: readonly Fact[];
  readonly troubles: readonly Trouble[];
};

type Changes = ReadonlyMap<string, readonly Entry[]>;

/** The entry that `entry` corrects or withdraws; null when it is a plain one. */
export function namedBy({ body }: Entry): string | null {
  if (body.kind === 'entry-corrected') return body.corrects;
  return body.kind === 'entry-withdrawn' ? body.withdraws : null;
}

function changesByTarget(log: readonly Entry[]): Changes {
  const changes = new Map<string, Entry[]>();
  for (const entry of log) {
    const target = namedBy(entry);
    if (target !== null) changes.set(target, [...(changes.get(target) ?? []), entry]);
  }
  return changes;
}

/**
 * Whether no standing withdrawal names the entry. A withdrawal can itself be withdrawn; a ring of them, which no
 * honest record holds, withdraws nothing.
 */
function stands(entry: Entry, changes: Changes, asked: ReadonlySet<string> = new Set()): boolean {
  const named = changes.get(entry.id);
  if (!named) return true;
  const path = new Set(asked).add(entry.id);
  return !named.some(
    (change) =>
      change.body.kind === 'entry-withdrawn' && !path.has(change.id) && stands(change, changes, path),
  );
}

type Version = { readonly body: PlainBody; readonly at: string; readonly corrected: boolean };

/** The last standing correction of the same kind, or the entry as written. Each correction is of the whole body. */
function versionOf(entry: Entry, body: PlainBody, changes: Changes): Version {
  let version: Version = { body, at: entry.happenedAt, corrected: false };
  for (const change of changes.get(entry.id) ?? []) {
    if (change.body.kind !== 'entry-corrected' || change.body.body.kind !== body.kind) continue;
    if (!stands(change, changes)) continue;
    version = { body: change.body.body, at: change.body.happenedAt ?? version.at, corrected: true };
  }
  return version;
}

function troublesOf(log: readonly Entry[]): Trouble[] {
  const kinds = new Map(log.map(({ id, body }) => [id, body.kind]));
  const troubles: Trouble[] = [];
  for (const entry of log) {
    const subject = namedBy(entry);
    if (subject === null) continue;
    const kind = kinds.get(subject);
    if (kind === undefined) troubles.push({ entryId: entry.id, code: 'refers-to-unknown', subject });
    else if (entry.body.kind === 'entry-corrected' && entry.body.body.kind !== kind)
      troubles.push({ entryId: entry.id, code: 'corrects-another-kind', subject });
  }
  return troubles;
}

/** @param log in order, each entry once */
export function standing(log: readonly Entry[]): Standing {
  const changes = changesByTarget(log);
  const history: HistoryLine[] = [];
  const facts: Fact[] = [];
  for (const entry of log) {
    const changedBy = (changes.get(entry.id) ?? []).map(({ id }) => id);
    const { body, happenedAt, who, id } = entry;
    const plain = body.kind === 'entry-corrected' || body.kind === 'entry-withdrawn' ? null : body;
    if (!stands(entry, changes)) {
      history.push({ entry, standing: 'withdrawn', body: null, at: happenedAt, changedBy });
    } else if (plain === null) {
      history.push({ entry, standing: 'as-written', body, at: happenedAt, changedBy });
    } else {
      const version = versionOf(entry, plain, changes);
      const word = version.corrected ? 'corrected' : 'as-written';
      history.push({ entry, standing: word, body: version.body, at: version.at, changedBy });
      facts.push({ entryId: id, at: version.at, who, body: version.body });
    }
  }
  return { history, facts, troubles: troublesOf(log) };
}
