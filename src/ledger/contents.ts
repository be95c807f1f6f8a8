/** What each container holds, by following every movement in the order it happened. */
import { type Quantity, quantity } from '../quantities/quantity';
import { asHeld, isNothing, isVolume, less, noMass, nothing, noVolume, placedAmount, plus } from './amounts';
import type { ContentsMoved, StreamPlaced } from './entries/containers';
import type { StreamLogged } from './entries/streams';
import type {
  ContainerMovement,
  ContainerState,
  ContentsPart,
  Held,
  Movement,
  StreamState,
  Told,
  Upset,
} from './state';

/** A container while its movements are followed. `parts` is keyed by stream; '' is what no stream accounts for. */
type Pot = {
  holds: Held;
  parts: Map<string, Held>;
  since: string | null;
  readonly movements: ContainerMovement[];
};

export type Vessel = Pick<ContainerState, 'marks'>;

export type Contents = Pick<ContainerState, 'holds' | 'contents' | 'firstWasteIn' | 'movements'>;
export type Placing = Pick<StreamState, 'placed' | 'placements' | 'whereNow'>;

export const noContents: Contents = { holds: nothing, contents: [], firstWasteIn: null, movements: [] };
export const notPlaced: Placing = { placed: nothing, placements: [], whereNow: [] };

type Ledger = {
  readonly pots: ReadonlyMap<string, Pot>;
  readonly vessels: ReadonlyMap<string, Vessel>;
  readonly streams: ReadonlyMap<string, Told<StreamLogged>>;
  readonly placed: Map<string, Held>;
  readonly placements: Map<string, StreamState['placements'][number][]>;
  readonly upsets: Upset[];
};

type Moment = { readonly entryId: string; readonly at: string };

const earlier = (a: string | null, b: string): string => (a !== null && a < b ? a : b);

const closedAt = (vessel: Vessel | undefined, at: string): boolean =>
  vessel?.marks
    .filter(({ at: marked, body }) => marked < at && (body.mark === 'closed' || body.mark === 'reopened'))
    .at(-1)?.body.mark === 'closed';

function putIn(pot: Pot, parts: ReadonlyMap<string, Held>, since: string): void {
  for (const [streamId, held] of parts) {
    pot.parts.set(streamId, plus(pot.parts.get(streamId) ?? nothing, held));
    pot.holds = plus(pot.holds, held);
  }
  pot.since = earlier(pot.since, since);
}

/**
 * Takes `taken` out of a pot that is taken to be mixed: each part gives its share of the volume, or of the mass.
 * @returns what was taken, by stream; what the pot did not hold by the ledger is under ''
 */
function takeOut(pot: Pot, taken: Held): Map<string, Held> {
  const out = new Map<string, Held>();
  const share = <U extends 'L' | 'g'>(of: Quantity<U>, all: Quantity<U>, part: Quantity<U>, unit: U) =>
    quantity(of.gte(all) ? part : part.times(of).div(all), unit);
  const before = pot.holds;
  for (const [streamId, part] of pot.parts) {
    const given: Held = {
      volume: taken.volume.isZero() ? noVolume : share(taken.volume, before.volume, part.volume, 'L'),
      mass: taken.mass.isZero() ? noMass : share(taken.mass, before.mass, part.mass, 'g'),
    };
    if (isNothing(given)) continue;
    out.set(streamId, given);
    const left = less(part, given);
    if (isNothing(left)) pot.parts.delete(streamId);
    else pot.parts.set(streamId, left);
  }
  pot.holds = less(before, taken);
  if (isNothing(pot.holds)) {
    pot.parts.clear();
    pot.since = null;
  }
  const missing = less(taken, before);
  if (!isNothing(missing)) out.set('', plus(out.get('') ?? nothing, missing));
  return out;
}

function noteClosed(ledger: Ledger, containerId: string, { entryId, at }: Moment): void {
  if (closedAt(ledger.vessels.get(containerId), at))
    ledger.upsets.push({ code: 'added-while-closed', entryId, containerId });
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
  putIn(pot, new Map([[stream ? streamId : '', held]]), at);
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
  const parts = source ? takeOut(source, taken) : new Map([['', taken]]);
  source?.movements.push({ ...seen, way: 'out', otherId: toContainerId, after: source.holds });
  if (!target || toContainerId === null) return;
  noteClosed(ledger, toContainerId, { entryId, at });
  putIn(target, parts, since);
  target.movements.push({ ...seen, way: 'in', otherId: fromContainerId, after: target.holds });
}

const contentsOf = (pot: Pot): Contents => ({
  holds: pot.holds,
  contents: [...pot.parts].map(([id, held]): ContentsPart => ({ streamId: id === '' ? null : id, ...held })),
  firstWasteIn: pot.since,
  movements: pot.movements,
});

/**
 * @param movements in the order in which they happened
 * @param vessels the containers there are, with their marks in order
 * @param streams the streams that were logged
 */
export function followed(
  movements: readonly Movement[],
  vessels: ReadonlyMap<string, Vessel>,
  streams: ReadonlyMap<string, Told<StreamLogged>>,
): {
  readonly containers: ReadonlyMap<string, Contents>;
  readonly placings: ReadonlyMap<string, Placing>;
  readonly upsets: readonly Upset[];
} {
  const newPot = (): Pot => ({ holds: nothing, parts: new Map(), since: null, movements: [] });
  const pots = new Map([...vessels.keys()].map((id) => [id, newPot()]));
  const ledger: Ledger = { pots, vessels, streams, placed: new Map(), placements: new Map(), upsets: [] };
  for (const { body, ...told } of movements) {
    if (body.kind === 'stream-placed') place(ledger, { ...told, body });
    else move(ledger, { ...told, body });
  }
  const whereNow = new Map<string, string[]>();
  for (const [id, pot] of pots)
    for (const streamId of pot.parts.keys()) {
      const places = whereNow.get(streamId);
      if (places) places.push(id);
      else whereNow.set(streamId, [id]);
    }
  return {
    containers: new Map([...pots].map(([id, pot]) => [id, contentsOf(pot)])),
    placings: new Map(
      [...streams.keys()].map((id) => [
        id,
        {
          placed: ledger.placed.get(id) ?? notPlaced.placed,
          placements: ledger.placements.get(id) ?? notPlaced.placements,
          whereNow: whereNow.get(id) ?? notPlaced.whereNow,
        },
      ]),
    ),
    upsets: ledger.upsets,
  };
}
