/**
 * Whether a register is as it was made: every hash is worked out again, and every line held against its entry. What that
 * proves, and what not, stands in the register itself (`registerWords.proves`).
 */
import type { Entry } from '../../ledger/entries/entry';
import { compareEntries } from '../../ledger/order';
import { hashOf } from '../../ledger/seal';
import { namedBy, standing } from '../../ledger/standing';
import { contentHashOf, type Head, laterKind, type Wrong, wrongInItself } from '../../ledger/verify';
import { Held, RegisterData, type RegisterLine } from './register-data';
import { wrongInChains } from './verify-chains';
import { writtenAmounts } from './written-amounts';
import type { FileWrong, Found, Placed, WhyEntry } from './wrong';

export type RegisterVerdict =
  | {
      readonly whole: true;
      readonly kind: 'register';
      readonly firstDay: string;
      readonly lastDay: string;
      /** In the file whole; `listed` of them have a line, `byHash` more stand by their hash alone. */
      readonly entries: number;
      readonly listed: number;
      readonly byHash: number;
      readonly heads: readonly Head[];
      readonly contentHash: string;
    }
  | { readonly whole: false; readonly kind: 'register'; readonly wrong: readonly FileWrong[] }
  | { readonly whole: null; readonly why: NewerEntry };

/** Nothing is wrong as far as it can be looked at, but this version does not know of what kind an entry is. */
export type NewerEntry = {
  readonly code: 'newer-entry';
  readonly number: number | null;
  readonly kind: string;
};

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const listIn = (value: unknown, member: string): readonly unknown[] => {
  const list = isObject(value) ? value[member] : undefined;
  return Array.isArray(list) ? list : [];
};

type Said = {
  readonly number: number | null;
  readonly codes: readonly string[];
  readonly says: string | null;
};

/** What the lines say of entries, by number and by id; a file that was tampered with may hold anything. */
function saidIn(raw: unknown): (number: number | null, id: string | null) => Said {
  const byKey = new Map<unknown, Said>();
  for (const line of listIn(raw, 'lines')) {
    if (!isObject(line)) continue;
    const codes = listIn(line, 'about').flatMap((thing) =>
      isObject(thing) && typeof thing.code === 'string' ? [thing.code] : [],
    );
    const says = [line.called, line.says].filter((text) => typeof text === 'string').join(': ') || null;
    const number = typeof line.number === 'number' ? line.number : null;
    for (const key of [line.number, line.id]) byKey.set(key, { number, codes, says });
  }
  return (number, id) => byKey.get(id) ?? byKey.get(number) ?? { number, codes: [], says: null };
}

type Read = { readonly placed: Placed; readonly why: Wrong | null; readonly newer?: string | null };

function readEntry(raw: unknown, at: number): Read {
  const inner = isObject(raw) && isObject(raw.entry) ? raw.entry : {};
  const number = isObject(raw) && typeof raw.number === 'number' ? raw.number : null;
  const id = typeof inner.id === 'string' ? inner.id : null;
  const held = Held.safeParse(raw);
  if (!held.success) {
    const issues = held.error.issues.map(({ path, message }) => ({
      path: ['entries', at, ...path].join('.'),
      message,
    }));
    return { placed: { number, id, entry: null }, why: { code: 'schema', issues } };
  }
  const why = wrongInItself(inner);
  return { placed: { number, id, entry: why ? null : (inner as Entry) }, why, newer: laterKind(inner, why) };
}

/** Numbers rise, and so do the entries by the order of the record; each stands once. */
function wrongInOrder(placed: readonly Placed[]): Found[] {
  const ids = new Set<string>();
  let before: Placed | null = null;
  return placed.flatMap(({ number, id, entry }): Found[] => {
    if (id !== null && ids.has(id)) return [{ number, id, why: { code: 'twice' } }];
    if (id !== null) ids.add(id);
    const late =
      before !== null &&
      ((before.number ?? 0) >= (number ?? 0) ||
        (before.entry !== null && entry !== null && compareEntries(before.entry, entry) > 0));
    if (late) return [{ number, id, why: { code: 'out-of-order' } }];
    before = { number, id, entry };
    return [];
  });
}

const isSame = (a: unknown, b: unknown): boolean => hashOf({ is: a }) === hashOf({ is: b });

/** A line says what can be held against its entry as the entry says it. */
function wrongInLine(
  line: RegisterLine,
  entry: Entry,
  now: ReturnType<typeof standing>['history'][number] | undefined,
  numberOf: ReadonlyMap<string, number | null>,
): WhyEntry | null {
  const own = {
    id: entry.id,
    hash: entry.hash,
    kind: entry.body.kind,
    happenedAt: entry.happenedAt,
    writtenAt: entry.writtenAt,
    standing: now?.standing,
  };
  for (const [member, value] of Object.entries(own))
    if (line[member as keyof typeof own] !== value) return { code: 'line-differs', member };
  // The words beside an amount may be others in a later version of the app.
  const bare = (amounts: RegisterLine['amounts']) => amounts.map(({ of, value, unit }) => [of, value, unit]);
  if (!isSame(bare(line.amounts), bare(writtenAmounts(entry.body))))
    return { code: 'line-differs', member: 'amounts' };
  const changedBy = (now?.changedBy ?? []).map((id) => numberOf.get(id));
  return isSame(
    line.changedBy.map(({ number }) => number),
    changedBy,
  )
    ? null
    : { code: 'line-differs', member: 'changedBy' };
}

/** What a change that has a line changes stands here too, however long ago it was written. */
function changedMissing(
  { changes }: RegisterLine,
  entry: Entry,
  byNumber: ReadonlyMap<number, Entry>,
): Found | null {
  if (changes === undefined || byNumber.has(changes)) return null;
  return { number: changes, id: namedBy(entry), why: { code: 'missing' } };
}

/** Entries that have a line, by why they stand here. */
const isListed = (why: RegisterData['entries'][number]['why']): boolean =>
  why === 'period' || why === 'change';

function wrongInLines({ lines, entries, period }: RegisterData): Found[] {
  const held = entries.map((one) => ({ ...one, entry: one.entry as Entry }));
  const { history } = standing(held.map(({ entry }) => entry));
  const now = new Map(history.map((line) => [line.entry.id, line]));
  const byNumber = new Map(held.map((one) => [one.number, one.entry]));
  const numberOf = new Map(held.map(({ number, entry }) => [entry.id, number]));
  const listed = new Set<number>();
  const found = lines.flatMap((line): Found[] => {
    const { number, id } = line;
    const entry = byNumber.get(number);
    const twice = listed.has(number);
    listed.add(number);
    if (twice) return [{ number, id, why: { code: 'twice' } }];
    if (!entry) return [{ number, id, why: { code: 'missing' } }];
    const changed = changedMissing(line, entry, byNumber);
    if (changed) return [changed];
    const why = wrongInLine(line, entry, now.get(entry.id), numberOf);
    return why ? [{ number, id: entry.id, why }] : [];
  });
  const unlisted = held.filter(({ number, why, entry }) => {
    const within = entry.writtenAt >= period.from && entry.writtenAt < period.until;
    return (isListed(why) || within) && !listed.has(number);
  });
  return [
    ...found,
    ...unlisted.map(({ number, entry }): Found => ({ number, id: entry.id, why: { code: 'not-listed' } })),
  ];
}

/** Lines whose entry is not in the file, or bears another number there; told also where the file is broken otherwise. */
function wrongByLine(raw: unknown, placed: readonly Placed[]): Found[] {
  const numbers = new Map(placed.map(({ number, id }) => [id, number]));
  const here = new Set(placed.map(({ number }) => number));
  return listIn(raw, 'lines').flatMap((line): Found[] => {
    if (!isObject(line) || typeof line.number !== 'number' || typeof line.id !== 'string') return [];
    const { number, id } = line;
    const held = numbers.get(id);
    if (held === undefined) return here.has(number) ? [] : [{ number, id, why: { code: 'missing' } }];
    return held === number ? [] : [{ number, id, why: { code: 'line-differs', member: 'number' } }];
  });
}

/** One fault an entry: the first that was found. */
function once(found: readonly Found[]): Found[] {
  const known = new Set<unknown>();
  return found.filter(({ number, id }) => {
    const key = number ?? id;
    return key === null || (!known.has(key) && known.add(key));
  });
}

const isNewer = (read: readonly Read[], id: string | null, number: number | null): boolean =>
  read.some(({ placed, newer }) => newer && placed.id === id && placed.number === number);

/**
 * @param raw as read from a file: anything at all whose `kind` is "register"
 * @returns whole, or everything that is wrong: entries first, those that are wrong by themselves before those beside others;
 *   neither where nothing else is wrong than that an entry is of a kind that a later version has
 */
export function verifyRegister(raw: Readonly<Record<string, unknown>>): RegisterVerdict {
  const read = listIn(raw, 'entries').map(readEntry);
  const placed = read.map((one) => one.placed);
  const found: Found[] = read.flatMap(({ placed: { number, id }, why }) =>
    why ? [{ number, id, why }] : [],
  );
  const wrong: FileWrong[] = [];
  const sound = found.length === 0;
  found.push(...wrongByLine(raw, placed), ...wrongInOrder(placed));
  const data = RegisterData.safeParse(raw);
  if (!data.success) {
    if (sound)
      for (const { path, message } of data.error.issues.slice(0, 1))
        wrong.push({ of: 'file', code: 'schema', path: path.join('.'), message });
  } else if (sound) {
    const chains = wrongInChains(placed, data.data);
    if (found.length === 0) found.push(...wrongInLines(data.data));
    found.push(...chains.found);
    wrong.push(...chains.wrong);
  }
  const { contentHash: stated, ...rest } = raw;
  const computed = contentHashOf(rest);
  if (stated !== computed) wrong.push({ of: 'file', code: 'content-hash', stated: String(stated), computed });
  if (found.length === 0 && wrong.length === 0 && data.success) {
    const { entries, lines, links, heads, period, contentHash } = data.data;
    return {
      whole: true,
      kind: 'register',
      firstDay: period.firstDay,
      lastDay: period.lastDay,
      entries: entries.length,
      listed: lines.length,
      byHash: links.reduce((sum, { hashes }) => sum + hashes.length, 0),
      heads,
      contentHash,
    };
  }
  const newer = read.find((one) => one.newer);
  if (newer?.newer && stated === computed && found.every(({ id, number }) => isNewer(read, id, number)))
    return { whole: null, why: { code: 'newer-entry', number: newer.placed.number, kind: newer.newer } };
  const said = saidIn(raw);
  const entries = once(found).map(({ number, id, why }): FileWrong => {
    const line = said(number, id);
    return { of: 'entry', id, ...line, number: number ?? line.number, why };
  });
  return { whole: false, kind: 'register', wrong: [...entries, ...wrong] };
}
