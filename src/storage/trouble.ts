/**
 * What is wrong with a record as a whole, so that nothing may be written into it until somebody has decided. Found when it
 * is opened, from the marker and the ends of the chains: the cost does not grow with the record. What lies deeper is found
 * by `soundness.ts`.
 */
import { type Gap, gapLength, isWithin } from '../ledger/chains';
import { type Head, wrongInItself } from '../ledger/verify';
import { cameBack } from './came-back';
import { headsMissing, headsOf, lastEntries, wrongWithHead } from './device-heads';
import { done, failed, failureOf, type StoreResult } from './failure';
import { type Marker, noteCameBack, noteHeads, readMarker, tellsOfEntries, type Without } from './marker';
import type { Corrupted, OpenRecord } from './record';
import { type IsDecided, type Soundness, type Unsound, type Untold, unsoundEntry } from './soundness';

/** An entry or a head; a damaged photo is told and never shown, but what was written down is whole without it. */
type UnsoundInChain = Exclude<Unsound, { readonly what: 'photo' }>;

export type Trouble =
  /** The database is not there, or nothing is in it, and the marker tells of entries. */
  | { readonly code: 'gone' }
  /** `missing` are ends of chains by the marker; so many `entries` at the least are not there. 0: others stand in their place. */
  | { readonly code: 'shorter'; readonly missing: readonly Head[]; readonly entries: number }
  /** The first of what is wrong, and how many there are. */
  | { readonly code: 'damaged'; readonly wrong: readonly UnsoundInChain[]; readonly count: number }
  /** As they were sealed, and not to be understood by this version of the app. */
  | { readonly code: 'later-version'; readonly entries: number };

/** The entries that are not there before one that is; null where it is something else that is wrong. */
export function missingBefore(wrong: UnsoundInChain): Gap | null {
  if (wrong.what !== 'entry' || wrong.why.code !== 'counter-gap' || wrong.device === null) return null;
  return { device: wrong.device, from: wrong.why.expected, to: wrong.why.found - 1 };
}

function isTaken(wrong: UnsoundInChain, without: readonly Without[]): boolean {
  if (wrong.what !== 'entry') return false;
  const gap = missingBefore(wrong);
  return without.some((one) => {
    if (one.what === 'missing') return gap !== null && isWithin(gap, one);
    if (one.what !== 'entry') return false;
    const { id, hash, device, counter } = one;
    return id === wrong.id && hash === wrong.hash && device === wrong.device && counter === wrong.counter;
  });
}

/** Which of what is wrong somebody decided to go on without. */
export const decidedBy =
  (without: readonly Without[]): IsDecided =>
  (found) =>
    found.what !== 'photo' && isTaken(found, without);

/** What comes of things that are wrong one by one, without those that somebody decided to go on without. */
export function troubleFrom(
  wrong: readonly Unsound[],
  untold: Pick<Untold, 'damaged' | 'later'>,
  without: readonly Without[],
): readonly Trouble[] {
  const left = wrong.filter((one): one is UnsoundInChain => one.what !== 'photo' && !isTaken(one, without));
  const later = left.filter((one) => one.what === 'entry' && one.later).length + untold.later;
  const damaged = left.filter((one) => one.what === 'head' || !one.later);
  const count = damaged.length + untold.damaged;
  return [
    ...(count > 0 ? [{ code: 'damaged', wrong: damaged, count } as const] : []),
    ...(later > 0 ? [{ code: 'later-version', entries: later } as const] : []),
  ];
}

const unsoundOf = (corrupted: readonly Corrupted[]): readonly Unsound[] =>
  corrupted.map(({ raw, issues }) => unsoundEntry(raw, { code: 'schema', issues }));

const allTold = { damaged: 0, later: 0 };

/** What comes of entries that were read and could not be understood. */
export const troubleOfCorrupted = (
  corrupted: readonly Corrupted[],
  without: readonly Without[],
): readonly Trouble[] => troubleFrom(unsoundOf(corrupted), allTold, without);

/** What stands after a look at everything: it knows of entries and heads, and only the marker of what is missing. */
export const troubleAfterCheck = (
  before: readonly Trouble[],
  { wrong, untold }: Soundness,
  without: readonly Without[],
): readonly Trouble[] => [
  ...before.filter(({ code }) => code === 'gone' || code === 'shorter'),
  ...troubleFrom(wrong, untold, without),
];

/** What somebody decided to go on without, as the marker has it. */
export function goneOnWithout(name: OpenRecord['name']): readonly Without[] {
  const found = readMarker(name);
  return found.state === 'there' ? found.marker.without : [];
}

const isInChains = ({ device, to }: Gap, heads: readonly Head[]): boolean =>
  heads.some((head) => head.device === device && head.counter > to);

/** Entries of which a marker tells: the counters, without those that somebody has given up between them. */
export const entriesTold = ({ entries, heads, without }: Marker): number =>
  without.reduce(
    // Those of a record that was given up as a whole are not in this one.
    (left, one) => (one.what === 'missing' && isInChains(one, heads) ? left - gapLength(one) : left),
    entries,
  );

/** @param missing ends of chains by the marker, which are not there. @param ends of chains on the disk */
function shorterThan(missing: readonly Head[], ends: readonly Head[]): readonly Trouble[] {
  if (missing.length === 0) return [];
  const counters = new Map(ends.map(({ device, counter }) => [device, counter]));
  const entries = missing.reduce(
    (sum, { device, counter }) => sum + Math.max(0, counter - (counters.get(device) ?? 0)),
    0,
  );
  return [{ code: 'shorter', missing, entries }];
}

/** Last entries that are not as they were sealed: of the others only a look at everything tells. */
function wrongLasts(lasts: readonly unknown[], corrupted: readonly Corrupted[]): readonly Unsound[] {
  const known = new Set(corrupted.map(({ id }) => id));
  return lasts.flatMap((last) => {
    const why = wrongInItself(last);
    const unsound = why && unsoundEntry(last, why);
    return unsound && !known.has(unsound.id) ? unsound : [];
  });
}

/**
 * What is wrong with a record that is being opened; where nothing is, the marker is brought up to it. All that the disk has to
 * say is asked for at once, also while the record is still being read.
 * @param reading gives what could not be read
 */
export async function troubleAtOpen(
  { name, database }: OpenRecord,
  reading: PromiseLike<readonly Corrupted[]>,
): Promise<StoreResult<readonly Trouble[]>> {
  try {
    const marker = readMarker(name);
    const [first, back, head, lasts, missing] = await Promise.all([
      database.transaction('entries').store.openKeyCursor(),
      cameBack(database, goneOnWithout(name)),
      wrongWithHead(database),
      lastEntries(database),
      headsMissing(database, marker.state === 'there' ? marker.marker.heads : []),
    ]);
    const corrupted = await reading;
    if (first === null && tellsOfEntries(marker)) return done([{ code: 'gone' }]);
    noteCameBack(name, back);
    const wrong: readonly Unsound[] = [
      ...(head ? [{ what: 'head', why: head } as const] : []),
      ...unsoundOf(corrupted),
      ...wrongLasts(lasts, corrupted),
    ];
    const ends = headsOf(lasts);
    const trouble = [...shorterThan(missing, ends), ...troubleFrom(wrong, allTold, goneOnWithout(name))];
    if (trouble.length === 0) noteHeads(name, ends);
    return done(trouble);
  } catch (error) {
    return failed(failureOf(error));
  }
}
