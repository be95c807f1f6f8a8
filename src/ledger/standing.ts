/** Which entries stand, after corrections and withdrawals. Nothing is taken out of the history. */
import type { PlainBody } from './entries/body';
import type { Entry } from './entries/entry';
import type { Fact, HistoryLine, Trouble } from './state';

type Changes = ReadonlyMap<string, readonly Entry[]>;

export type Standing = {
  readonly log: readonly Entry[];
  readonly history: readonly HistoryLine[];
  readonly facts: readonly Fact[];
  readonly troubles: readonly Trouble[];
  /** By the entry that they correct or withdraw, in order. */
  readonly changes: Changes;
};

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

/** `by` is the correction that counts; null as written. */
type Version = { readonly body: PlainBody; readonly at: string; readonly by: Entry | null };

/** The last standing correction of the same kind, or the entry as written. Each correction is of the whole body. */
function versionOf(entry: Entry, body: PlainBody, changes: Changes): Version {
  let version: Version = { body, at: entry.happenedAt, by: null };
  for (const change of changes.get(entry.id) ?? []) {
    if (change.body.kind !== 'entry-corrected' || change.body.body.kind !== body.kind) continue;
    if (!stands(change, changes)) continue;
    version = { body: change.body.body, at: change.body.happenedAt ?? version.at, by: change };
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

const factsMade = new WeakMap<Entry, Fact>();

/** The same fact for the same entry, or the same correction of it, so that what rests on it is not worked out again. */
function factOf(entry: Entry, { body, at, by }: Version): Fact {
  const known = factsMade.get(by ?? entry);
  if (known && known.entryId === entry.id && known.at === at) return known;
  const fact: Fact = { entryId: entry.id, at, who: entry.who, body };
  factsMade.set(by ?? entry, fact);
  return fact;
}

type Line = { readonly line: HistoryLine; readonly fact: Fact | null };

function lineOf(entry: Entry, changes: Changes): Line {
  const changedBy = (changes.get(entry.id) ?? []).map(({ id }) => id);
  const { body, happenedAt } = entry;
  const plain = body.kind === 'entry-corrected' || body.kind === 'entry-withdrawn' ? null : body;
  if (!stands(entry, changes))
    return { line: { entry, standing: 'withdrawn', body: null, at: happenedAt, changedBy }, fact: null };
  if (plain === null)
    return { line: { entry, standing: 'as-written', body, at: happenedAt, changedBy }, fact: null };
  const version = versionOf(entry, plain, changes);
  const word = version.by ? 'corrected' : 'as-written';
  return {
    line: { entry, standing: word, body: version.body, at: version.at, changedBy },
    fact: factOf(entry, version),
  };
}

function allOf(log: readonly Entry[]): Standing {
  const changes = changesByTarget(log);
  const lines = log.map((entry) => lineOf(entry, changes));
  return {
    log,
    history: lines.map(({ line }) => line),
    facts: lines.flatMap(({ fact }) => fact ?? []),
    troubles: troublesOf(log),
    changes,
  };
}

/** What was added at the end of the log and neither changes anything nor is changed; null where there is more to it. */
function onlyAdded(log: readonly Entry[], last: Standing): readonly Entry[] | null {
  const end = last.log.length;
  if (log.length <= end || log[end - 1] !== last.log[end - 1] || log[0] !== last.log[0]) return null;
  const added = log.slice(end);
  return added.every((entry) => namedBy(entry) === null && !last.changes.has(entry.id)) ? added : null;
}

/**
 * @param log in order, each entry once
 * @param last of an older log: of one that goes on where it ended only what was added is looked at
 */
export function standing(log: readonly Entry[], last?: Standing): Standing {
  const added = last ? onlyAdded(log, last) : null;
  if (!last || !added) return allOf(log);
  const lines = added.map((entry) => lineOf(entry, last.changes));
  return {
    ...last,
    log,
    history: [...last.history, ...lines.map(({ line }) => line)],
    facts: [...last.facts, ...lines.flatMap(({ fact }) => fact ?? [])],
  };
}
