/** What each container holds and what was done to it, by following everything in the order in which it happened. */
import {
  asHeld,
  isNothing,
  isVolume,
  loggedAmount,
  nothing,
  placedAmount,
  plus,
  readableDifference,
} from './amounts';
import type {
  Amount,
  ContainerMarked,
  ContentsDetermined,
  ContentsMoved,
  LevelRead,
  StreamPlaced,
  WaterLost,
} from './entries/containers';
import type { StreamLogged } from './entries/streams';
import type { BenchTested, DoseAdded, TreatmentBegun, TreatmentEnded } from './entries/treatments';
import { isAfterAll } from './followed-before';
import {
  becomes,
  copyOf,
  dryOut,
  newPot,
  noteOtherContents,
  type Pot,
  putIn,
  putThrough,
  takeOut,
} from './pot';
import { doubtSince, sinceMarked } from './since-marked';
import type {
  ContainerMovement,
  ContainerState,
  ContentsPart,
  Happening,
  Held,
  StreamState,
  Told,
  TreatmentState,
  Upset,
} from './state';

export type Contents = Pick<
  ContainerState,
  'holds' | 'contents' | 'firstWasteIn' | 'movements' | 'benchTests' | 'levels' | 'determined'
> & { readonly othersSince: string | null };
export type Placing = Pick<StreamState, 'placed' | 'placements'>;
/** A treatment as it was told, without what it did. */
export type ToldTreatment = Omit<TreatmentState, 'treated'>;

export const notPlaced: Placing = { placed: nothing, placements: [] };

type Marks = ReadonlyMap<string, ContainerState['marks']>;

/** What is told of the things that contents are in and come from. */
export type Things = {
  /** The containers there are. */
  readonly opened: ReadonlyMap<string, unknown>;
  /** By container, in order. */
  readonly marks: Marks;
  readonly streams: ReadonlyMap<string, Told<StreamLogged>>;
  readonly treatments: ReadonlyMap<string, ToldTreatment>;
};

/** What the containers hold after `happenings`, with what was gone by. */
export type Followed = {
  readonly happenings: readonly Happening[];
  readonly things: Things;
  readonly pots: ReadonlyMap<string, Pot>;
  readonly placed: ReadonlyMap<string, Held>;
  readonly placements: ReadonlyMap<string, StreamState['placements']>;
  /** What each treatment found in its container, where it did something. */
  readonly treated: ReadonlyMap<string, readonly ContentsPart[]>;
  readonly upsets: readonly Upset[];
  /** Containers, streams and treatments that a happening named and nobody had told of. */
  readonly missed: ReadonlySet<string>;
  /** Up to when the marks of a container were asked for what shuts it, and for doubts of what is in it. */
  readonly shutAsked: ReadonlyMap<string, string>;
  readonly doubtAsked: ReadonlyMap<string, string>;
  /** What an opening carried, where it was gone on from one. */
  readonly base: Followed | null;
  /** Something was told that changes what the opening carried: what is here may be wrong. */
  readonly reachedBehind: boolean;
};

/** What was followed before an opening: the first `happened` happenings at hand are among it. */
export type Carried = Omit<Followed, 'happenings' | 'things' | 'base' | 'reachedBehind'> & {
  readonly happened: number;
};

type Ledger = Things & {
  readonly pots: Map<string, Pot>;
  readonly treated: Map<string, readonly ContentsPart[]>;
  readonly placed: Map<string, Held>;
  readonly placements: Map<string, StreamState['placements']>;
  readonly upsets: Upset[];
  readonly missed: Set<string>;
  readonly shutAsked: Map<string, string>;
  readonly doubtAsked: Map<string, string>;
  /** Pots of this ledger alone: the others belong to an older state too. */
  readonly own: Set<Pot>;
};

/** The pot of a container, to be changed. */
function potOf(ledger: Ledger, containerId: string): Pot | undefined {
  const pot = ledger.pots.get(containerId);
  if (!pot) {
    ledger.missed.add(containerId);
    return undefined;
  }
  if (ledger.own.has(pot)) return pot;
  const own = copyOf(pot);
  ledger.own.add(own);
  ledger.pots.set(containerId, own);
  return own;
}

function streamOf(ledger: Ledger, streamId: string): Told<StreamLogged> | undefined {
  const stream = ledger.streams.get(streamId);
  if (!stream) ledger.missed.add(streamId);
  return stream;
}

function treatmentOf(ledger: Ledger, treatmentId: string): ToldTreatment | undefined {
  const treatment = ledger.treatments.get(treatmentId);
  if (!treatment) ledger.missed.add(treatmentId);
  return treatment;
}

type Moment = { readonly entryId: string; readonly at: string };

/** What keeps everything out of a container, with what ends that, and what it is when something went in all the same. */
const shut = [
  ['closed', 'reopened', 'added-while-closed'],
  ['held', 'let-go', 'added-while-held'],
  ['gone', 'came-back', 'added-while-gone'],
] as const;

/** What was marked in the same minute may have come after it. */
function noteShut(ledger: Ledger, containerId: string, { entryId, at }: Moment): void {
  ledger.shutAsked.set(containerId, at);
  const marks = ledger.marks.get(containerId)?.filter((told) => told.at < at) ?? [];
  for (const [as, undone, code] of shut)
    if (sinceMarked(marks, as, undone) !== null) ledger.upsets.push({ code, entryId, containerId });
}

/** Everything in the pot has been through the treatment from now on; what it was before is kept once. */
function treat(ledger: Ledger, pot: Pot, treatmentId: string, at: string): void {
  if (!ledger.treated.has(treatmentId)) ledger.treated.set(treatmentId, [...pot.parts.values()]);
  putThrough(pot, treatmentId, at);
}

function noteRunning(ledger: Ledger, containerId: string, pot: Pot, entryId: string): void {
  for (const treatmentId of pot.running)
    ledger.upsets.push({ code: 'added-during-treatment', entryId, containerId, treatmentId });
}

type Seen = Pick<ContainerMovement, 'way' | 'amount' | 'purpose'> &
  Partial<Pick<ContainerMovement, 'streamId' | 'otherId'>>;

/** Once the pot holds what it holds after it. */
function noteMovement(pot: Pot, { entryId, at }: Moment, seen: Seen): void {
  pot.movements.push({ entryId, at, streamId: null, otherId: null, ...seen, after: pot.holds });
}

function notePlacing(
  ledger: Ledger,
  streamId: string,
  held: Held,
  placement: StreamState['placements'][number],
): void {
  ledger.placed.set(streamId, plus(ledger.placed.get(streamId) ?? nothing, held));
  ledger.placements.set(streamId, [...(ledger.placements.get(streamId) ?? []), placement]);
}

function place(ledger: Ledger, { entryId, at, body }: Told<StreamPlaced>): void {
  const { streamId, containerId, amount } = body;
  const pot = potOf(ledger, containerId);
  const stream = streamOf(ledger, streamId);
  if (!pot) return;
  noteShut(ledger, containerId, { entryId, at });
  const inItsTerms = stream ? placedAmount(amount, stream.body) : null;
  if (stream && !inItsTerms)
    ledger.upsets.push({ code: 'placed-in-another-unit', entryId, containerId, streamId });
  const held = inItsTerms ?? asHeld(amount);
  if (isNothing(held)) return;
  noteRunning(ledger, containerId, pot, entryId);
  noteOtherContents(pot, at);
  putIn(pot, [{ streamId: stream ? streamId : null, treatedBy: [], ...held }], at);
  noteMovement(pot, { entryId, at }, { way: 'in', amount, purpose: 'placed', streamId });
  if (stream) notePlacing(ledger, streamId, held, { entryId, containerId, amount });
}

/** Since when nobody knew what was in it, if nobody had said so by then. */
function doubtfulBy(ledger: Ledger, containerId: string, at: string): string | null {
  ledger.doubtAsked.set(containerId, at);
  const pot = ledger.pots.get(containerId);
  // What goes out in the minute in which it was emptied is what emptied it.
  const isBefore = (told: Told<ContainerMarked>) =>
    told.body.mark === 'emptied' ? told.at < at : told.at <= at;
  const marks = ledger.marks.get(containerId)?.filter(isBefore) ?? [];
  return doubtSince(marks, pot?.determined ?? null, pot?.movements ?? []);
}

/** More went out than was in, by what a vessel or a scale can show. Where nobody knew what was in it, the record has nothing that could be contradicted. */
function noteTooMuch(
  ledger: Ledger,
  { entryId, at }: Moment,
  containerId: string,
  amount: Amount,
  before: Held,
): void {
  const unit = isVolume(amount) ? 'L' : 'g';
  const taken = asHeld(amount);
  const [had, wanted] = unit === 'L' ? [before.volume, taken.volume] : [before.mass, taken.mass];
  if (isNothing(readableDifference(taken, before))) return;
  if (doubtfulBy(ledger, containerId, at) !== null) return;
  ledger.upsets.push({ code: 'more-taken-than-held', entryId, containerId, held: had, taken: wanted, unit });
}

function move(ledger: Ledger, { entryId, at, body }: Told<ContentsMoved>): void {
  const { fromContainerId, toContainerId, amount, purpose } = body;
  const source = potOf(ledger, fromContainerId);
  const target = toContainerId === null ? undefined : potOf(ledger, toContainerId);
  const taken = asHeld(amount);
  if (isNothing(taken)) return;
  const moment = { entryId, at };
  const since = source?.since ?? at;
  if (source) noteTooMuch(ledger, moment, fromContainerId, amount, source.holds);
  const parts = source ? takeOut(source, taken, at) : [{ streamId: null, treatedBy: [], ...taken }];
  if (source) noteMovement(source, moment, { way: 'out', amount, purpose, otherId: toContainerId });
  if (!target || toContainerId === null) return;
  noteShut(ledger, toContainerId, moment);
  noteRunning(ledger, toContainerId, target, entryId);
  noteOtherContents(target, at);
  putIn(target, parts, since);
  noteMovement(target, moment, { way: 'in', amount, purpose, otherId: fromContainerId });
}

function begin(ledger: Ledger, { entryId, at, body }: Told<TreatmentBegun>): void {
  const { treatmentId, containerId } = body;
  const pot = potOf(ledger, containerId);
  const told = treatmentOf(ledger, treatmentId);
  // A second entry that tells of the same treatment begins nothing, nor does one that had ended by then.
  if (!pot || told?.entryId !== entryId || (told.ended && told.ended.at < at)) return;
  if (pot.running.length > 0)
    ledger.upsets.push({ code: 'treatment-while-another-runs', entryId, containerId, treatmentId });
  pot.running = [...pot.running, treatmentId];
}

function dose(ledger: Ledger, { entryId, at, body }: Told<DoseAdded>): void {
  const { treatmentId, mass } = body;
  const containerId = treatmentOf(ledger, treatmentId)?.body.containerId ?? '';
  const pot = potOf(ledger, containerId);
  if (!pot || isNothing(asHeld(mass))) return;
  if (!pot.running.includes(treatmentId))
    ledger.upsets.push({ code: 'dose-outside-treatment', entryId, containerId, treatmentId });
  treat(ledger, pot, treatmentId, at);
}

/** What has reached its end was treated, even when nobody told of a dose. */
function end(ledger: Ledger, { entryId, at, body }: Told<TreatmentEnded>): void {
  const { treatmentId, outcome } = body;
  const treatment = treatmentOf(ledger, treatmentId);
  const pot = potOf(ledger, treatment?.body.containerId ?? '');
  if (!treatment || !pot || treatment.ended?.entryId !== entryId) return;
  if (outcome === 'reached' && treatment.doses.length === 0) treat(ledger, pot, treatmentId, at);
  pot.running = pot.running.filter((id) => id !== treatmentId);
}

/** Water that went off leaves less liquid with the same in it. */
function dry(ledger: Ledger, { entryId, at, body }: Told<WaterLost>): void {
  const pot = potOf(ledger, body.containerId);
  const lost = asHeld(body.amount);
  if (!pot || isNothing(lost)) return;
  noteTooMuch(ledger, { entryId, at }, body.containerId, body.amount, pot.holds);
  dryOut(pot, lost.volume);
  noteMovement(pot, { entryId, at }, { way: 'out', amount: body.amount, purpose: 'evaporated' });
}

function readLevel(ledger: Ledger, told: Told<LevelRead>): void {
  const pot = potOf(ledger, told.body.containerId);
  if (pot) pot.levels = [...pot.levels, { ...told, held: pot.holds }];
}

/** Somebody says what is in it: from then on it is that, whatever the record held. It is as old as the oldest in it, and as the doubt. */
function determine(ledger: Ledger, told: Told<ContentsDetermined>): void {
  const { entryId, at } = told;
  const { containerId, streamId } = told.body;
  const pot = potOf(ledger, containerId);
  const stream = streamOf(ledger, streamId)?.body;
  const amount = stream?.liquid?.volume ?? stream?.solid?.wetMass;
  if (!pot || !stream || !amount) return;
  const held = loggedAmount(stream);
  noteOtherContents(pot, at);
  becomes(pot, { streamId, treatedBy: [], ...held }, doubtfulBy(ledger, containerId, at) ?? at);
  pot.determined = told;
  noteMovement(pot, { entryId, at }, { way: 'in', amount, purpose: 'determined', streamId });
  notePlacing(ledger, streamId, held, { entryId, containerId, amount });
}

function testOnBench(ledger: Ledger, test: Told<BenchTested>): void {
  const pot = potOf(ledger, test.body.containerId);
  if (pot) pot.benchTests = [...pot.benchTests, { ...test, staleSince: null }];
}

const follows: {
  readonly [K in Happening['body']['kind']]: (
    ledger: Ledger,
    told: Told<Extract<Happening['body'], { kind: K }>>,
  ) => void;
} = {
  'stream-placed': place,
  'contents-moved': move,
  'water-lost': dry,
  'level-read': readLevel,
  'contents-determined': determine,
  'treatment-begun': begin,
  'dose-added': dose,
  'treatment-ended': end,
  'bench-tested': testOnBench,
  // What is seen changes nothing.
  'pot-read': () => {},
};

const follow = (ledger: Ledger, told: Happening): void =>
  (follows[told.body.kind] as (ledger: Ledger, told: Happening) => void)(ledger, told);

export const contentsOf = (pot: Pot): Contents => ({
  holds: pot.holds,
  contents: [...pot.parts.values()],
  firstWasteIn: pot.since,
  movements: pot.movements,
  benchTests: pot.benchTests,
  levels: pot.levels,
  determined: pot.determined,
  othersSince: pot.othersSince,
});

const nothingFollowed = (things: Things): Followed => ({
  happenings: [],
  things,
  pots: new Map(),
  placed: new Map(),
  placements: new Map(),
  treated: new Map(),
  upsets: [],
  missed: new Set(),
  shutAsked: new Map(),
  doubtAsked: new Map(),
  base: null,
  reachedBehind: false,
});

/** `last`, with what was told and happened after it. */
function followedOn(last: Followed, happenings: readonly Happening[], things: Things): Followed {
  const ledger: Ledger = {
    ...things,
    pots: new Map(last.pots),
    placed: new Map(last.placed),
    placements: new Map(last.placements),
    treated: new Map(last.treated),
    upsets: [...last.upsets],
    missed: new Set(last.missed),
    shutAsked: new Map(last.shutAsked),
    doubtAsked: new Map(last.doubtAsked),
    own: new Set(),
  };
  for (const id of things.opened.keys()) if (!ledger.pots.has(id)) ledger.pots.set(id, newPot());
  for (const happening of happenings.slice(last.happenings.length)) follow(ledger, happening);
  const { pots, placed, placements, treated, upsets, missed, shutAsked, doubtAsked } = ledger;
  const now = { pots, placed, placements, treated, upsets, missed, shutAsked, doubtAsked };
  return { ...last, ...now, happenings, things };
}

function carriedOver(
  { happened, ...carried }: Carried,
  happenings: readonly Happening[],
  things: Things,
): Followed {
  const base: Followed = {
    ...carried,
    happenings: happenings.slice(0, happened),
    things,
    base: null,
    reachedBehind: false,
  };
  return { ...base, base };
}

/**
 * What containers hold, by following everything.
 * @param happenings in the order in which they happened
 * @param last what was followed before: gone on from where what is new comes after all of it and changes nothing of it
 */
export function followed(
  happenings: readonly Happening[],
  things: Things,
  last?: Followed | Carried,
): Followed {
  if (!last) return followedOn(nothingFollowed(things), happenings, things);
  const before = 'happened' in last ? carriedOver(last, happenings, things) : last;
  if (isAfterAll(before, happenings, things)) return followedOn(before, happenings, things);
  const { base } = before;
  if (!base) return followedOn(nothingFollowed(things), happenings, things);
  const holds = isAfterAll(base, happenings, things);
  return { ...followedOn({ ...base, base }, happenings, things), reachedBehind: !holds };
}
