/** What each container holds and what was done to it, by following everything in the order in which it happened. */
import { asHeld, isNothing, isVolume, nothing, placedAmount, plus } from './amounts';
import type { ContentsMoved, StreamPlaced } from './entries/containers';
import type { StreamLogged } from './entries/streams';
import type { BenchTested, DoseAdded, TreatmentBegun, TreatmentEnded } from './entries/treatments';
import { newPot, noteOtherContents, type Pot, putIn, putThrough, takeOut } from './pot';
import type {
  ContainerState,
  ContentsPart,
  Happening,
  Held,
  StreamState,
  Told,
  TreatmentState,
  Upset,
} from './state';

export type Vessel = Pick<ContainerState, 'marks'>;

export type Contents = Pick<
  ContainerState,
  'holds' | 'contents' | 'firstWasteIn' | 'movements' | 'benchTests'
>;
export type Placing = Pick<StreamState, 'placed' | 'placements' | 'whereNow'>;
/** A treatment as it was told, without what it did. */
export type ToldTreatment = Omit<TreatmentState, 'treated'>;

export const noContents: Contents = {
  holds: nothing,
  contents: [],
  firstWasteIn: null,
  movements: [],
  benchTests: [],
};
export const notPlaced: Placing = { placed: nothing, placements: [], whereNow: [] };

type Ledger = {
  readonly pots: ReadonlyMap<string, Pot>;
  readonly vessels: ReadonlyMap<string, Vessel>;
  readonly streams: ReadonlyMap<string, Told<StreamLogged>>;
  readonly treatments: ReadonlyMap<string, ToldTreatment>;
  readonly treated: Map<string, readonly ContentsPart[]>;
  readonly placed: Map<string, Held>;
  readonly placements: Map<string, StreamState['placements'][number][]>;
  readonly upsets: Upset[];
};

type Moment = { readonly entryId: string; readonly at: string };

const closedAt = (vessel: Vessel | undefined, at: string): boolean =>
  vessel?.marks
    .filter(({ at: marked, body }) => marked < at && (body.mark === 'closed' || body.mark === 'reopened'))
    .at(-1)?.body.mark === 'closed';

function noteClosed(ledger: Ledger, containerId: string, { entryId, at }: Moment): void {
  if (closedAt(ledger.vessels.get(containerId), at))
    ledger.upsets.push({ code: 'added-while-closed', entryId, containerId });
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

function place(ledger: Ledger, { entryId, at, body }: Told<StreamPlaced>): void {
  const { streamId, containerId, amount } = body;
  const pot = ledger.pots.get(containerId);
  if (!pot) return;
  noteClosed(ledger, containerId, { entryId, at });
  const stream = ledger.streams.get(streamId);
  const inItsTerms = stream ? placedAmount(amount, stream.body) : null;
  if (stream && !inItsTerms)
    ledger.upsets.push({ code: 'placed-in-another-unit', entryId, containerId, streamId });
  const held = inItsTerms ?? asHeld(amount);
  if (isNothing(held)) return;
  noteRunning(ledger, containerId, pot, entryId);
  noteOtherContents(pot, at);
  putIn(pot, [{ streamId: stream ? streamId : null, treatedBy: [], ...held }], at);
  pot.movements.push({
    entryId,
    at,
    way: 'in',
    amount,
    purpose: 'placed',
    streamId,
    otherId: null,
    after: pot.holds,
  });
  if (!stream) return;
  ledger.placed.set(streamId, plus(ledger.placed.get(streamId) ?? nothing, held));
  const placements = ledger.placements.get(streamId) ?? [];
  ledger.placements.set(streamId, [...placements, { entryId, containerId, amount }]);
}

function noteTooMuch(ledger: Ledger, entryId: string, body: ContentsMoved, before: Held): void {
  const unit = isVolume(body.amount) ? 'L' : 'g';
  const taken = asHeld(body.amount);
  const [had, wanted] = unit === 'L' ? [before.volume, taken.volume] : [before.mass, taken.mass];
  if (wanted.lte(had)) return;
  const containerId = body.fromContainerId;
  ledger.upsets.push({ code: 'more-taken-than-held', entryId, containerId, held: had, taken: wanted, unit });
}

function move(ledger: Ledger, { entryId, at, body }: Told<ContentsMoved>): void {
  const { fromContainerId, toContainerId, amount, purpose } = body;
  const source = ledger.pots.get(fromContainerId);
  const target = toContainerId === null ? undefined : ledger.pots.get(toContainerId);
  const taken = asHeld(amount);
  if (isNothing(taken)) return;
  const seen = { entryId, at, amount, purpose, streamId: null } as const;
  const since = source?.since ?? at;
  if (source) noteTooMuch(ledger, entryId, body, source.holds);
  const parts = source ? takeOut(source, taken, at) : [{ streamId: null, treatedBy: [], ...taken }];
  source?.movements.push({ ...seen, way: 'out', otherId: toContainerId, after: source.holds });
  if (!target || toContainerId === null) return;
  noteClosed(ledger, toContainerId, { entryId, at });
  noteRunning(ledger, toContainerId, target, entryId);
  noteOtherContents(target, at);
  putIn(target, parts, since);
  target.movements.push({ ...seen, way: 'in', otherId: fromContainerId, after: target.holds });
}

function begin(ledger: Ledger, { entryId, body }: Told<TreatmentBegun>): void {
  const { treatmentId, containerId } = body;
  const pot = ledger.pots.get(containerId);
  // A second entry that tells of the same treatment begins nothing.
  if (!pot || ledger.treatments.get(treatmentId)?.entryId !== entryId) return;
  if (pot.running.length > 0)
    ledger.upsets.push({ code: 'treatment-while-another-runs', entryId, containerId, treatmentId });
  pot.running = [...pot.running, treatmentId];
}

function dose(ledger: Ledger, { entryId, at, body }: Told<DoseAdded>): void {
  const { treatmentId, mass } = body;
  const containerId = ledger.treatments.get(treatmentId)?.body.containerId ?? '';
  const pot = ledger.pots.get(containerId);
  if (!pot || isNothing(asHeld(mass))) return;
  if (!pot.running.includes(treatmentId))
    ledger.upsets.push({ code: 'dose-outside-treatment', entryId, containerId, treatmentId });
  treat(ledger, pot, treatmentId, at);
}

/** What has reached its end was treated, even when nobody told of a dose. */
function end(ledger: Ledger, { entryId, at, body }: Told<TreatmentEnded>): void {
  const { treatmentId, outcome } = body;
  const treatment = ledger.treatments.get(treatmentId);
  const pot = ledger.pots.get(treatment?.body.containerId ?? '');
  if (!treatment || !pot || treatment.ended?.entryId !== entryId) return;
  if (outcome === 'reached' && treatment.doses.length === 0) treat(ledger, pot, treatmentId, at);
  pot.running = pot.running.filter((id) => id !== treatmentId);
}

function testOnBench(ledger: Ledger, test: Told<BenchTested>): void {
  const pot = ledger.pots.get(test.body.containerId);
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
  'treatment-begun': begin,
  'dose-added': dose,
  'treatment-ended': end,
  'bench-tested': testOnBench,
  // What is seen changes nothing.
  'pot-read': () => {},
};

const follow = (ledger: Ledger, told: Happening): void =>
  (follows[told.body.kind] as (ledger: Ledger, told: Happening) => void)(ledger, told);

const contentsOf = (pot: Pot): Contents => ({
  holds: pot.holds,
  contents: [...pot.parts.values()],
  firstWasteIn: pot.since,
  movements: pot.movements,
  benchTests: pot.benchTests,
});

function whereNow(pots: ReadonlyMap<string, Pot>): ReadonlyMap<string, readonly string[]> {
  const places = new Map<string, Set<string>>();
  for (const [id, { parts }] of pots)
    for (const { streamId } of parts.values())
      if (streamId !== null) places.set(streamId, (places.get(streamId) ?? new Set()).add(id));
  return new Map([...places].map(([streamId, ids]) => [streamId, [...ids]]));
}

export type Things = {
  /** The containers there are, with their marks in order. */
  readonly vessels: ReadonlyMap<string, Vessel>;
  readonly streams: ReadonlyMap<string, Told<StreamLogged>>;
  readonly treatments: ReadonlyMap<string, ToldTreatment>;
};

/** @param happenings in the order in which they happened */
export function followed(
  happenings: readonly Happening[],
  { vessels, streams, treatments }: Things,
): {
  readonly containers: ReadonlyMap<string, Contents>;
  readonly placings: ReadonlyMap<string, Placing>;
  /** What each treatment found in its container, where it did something. */
  readonly treated: ReadonlyMap<string, readonly ContentsPart[]>;
  readonly upsets: readonly Upset[];
} {
  const pots = new Map([...vessels.keys()].map((id) => [id, newPot()]));
  const [placed, placements, treated] = [new Map(), new Map(), new Map()];
  const ledger: Ledger = { pots, vessels, streams, treatments, treated, placed, placements, upsets: [] };
  for (const happening of happenings) follow(ledger, happening);
  const places = whereNow(pots);
  const placingOf = (id: string): Placing => ({
    placed: ledger.placed.get(id) ?? notPlaced.placed,
    placements: ledger.placements.get(id) ?? notPlaced.placements,
    whereNow: places.get(id) ?? notPlaced.whereNow,
  });
  return {
    containers: new Map([...pots].map(([id, pot]) => [id, contentsOf(pot)])),
    placings: new Map([...streams.keys()].map((id) => [id, placingOf(id)])),
    treated,
    upsets: ledger.upsets,
  };
}
