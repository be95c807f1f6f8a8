/**
 * Which older entries still matter to what stands, runs or is awaited now. The others are of things that are over: they stay
 * in the record, and are not needed to go on with it. So what was wrong with one of these is told in its history, not among
 * what is wrong now.
 */
import { subDays } from 'date-fns';
import { isNothing } from './amounts';
import { awaited } from './due';
import type { Body, PlainBody } from './entries/body';
import type { Entry } from './entries/entry';
import { brings } from './entries-about';
import { flagsOfStep } from './flags';
import { lastOfEach } from './last-of-each';
import { nearWork } from './near-work';
import { type Reference, referencesOf } from './references';
import { namedBy } from './standing';
import type { ContainerState, HistoryLine, State } from './state';
import { lastEmpty, marksThatCount } from './what-holds-of-a-container';

type Kind = Reference['to'];

const nameOf = (to: Kind, id: string): string => `${to} ${id}`;

/** What the workshop is and how it works: few entries, and all of them may be asked for at any time. */
const ofTheWorkshop: ReadonlySet<PlainBody['kind']> = new Set([
  'workshop-described',
  'person-added',
  'person-left',
  'local-rule-stated',
  'base-described',
  'list-changed',
  'station-described',
  'station-given-up',
  'price-stated',
]);

/** A container is over when it is gone and no proof of it is awaited; that of a load is awaited with the load. */
const standsOrIsAwaited = ({ goneSince, handOverId, proofFiledAt }: ContainerState, from: string): boolean =>
  goneSince === null || goneSince >= from || (handOverId === null && proofFiledAt === null);

/**
 * A vessel that is never emptied holds a trace of all that was ever in it. Longer ago than so many days before all is kept
 * nobody goes back for it. Status: reasoned; waste that old is gone.
 */
const backDays = 400;

/** What is kept, with what must not be missing beside it. */
class Keeping {
  readonly live = new Set<string>();
  /** From when on what befell a container is kept: what was in it until then is over. */
  readonly since = new Map<string, string>();
  readonly #state: State;
  /** What came from elsewhere before, and was treated before, is not asked where it was until then. */
  readonly #furthest: string;

  constructor(state: State, furthest: string) {
    this.#state = state;
    this.#furthest = furthest;
  }

  /** What it held at `at`, with what its sources held when it came from them. */
  container(containerId: string, at: string): void {
    const open: [id: string, at: string][] = [[containerId, at]];
    for (let next = open.pop(); next; next = open.pop()) {
      const [id, then] = next;
      const container = this.#state.containers.get(id);
      this.live.add(nameOf('container', id));
      // Nobody tells of it any more: what names it is all there is to know.
      if (!container) this.since.set(id, '');
      if (!container) continue;
      const before = this.since.get(id);
      const since = lastEmpty(container, then);
      if (before !== undefined && before <= since) continue;
      this.since.set(id, since);
      for (const { at: came, way, otherId } of container.movements) {
        const isOfIt = came >= since && (before === undefined || came < before);
        if (way === 'in' && otherId !== null && isOfIt && came >= this.#furthest) open.push([otherId, came]);
      }
    }
  }

  keep(to: Kind, id: string): void {
    const name = nameOf(to, id);
    if (this.live.has(name)) return;
    this.live.add(name);
    if (to === 'treatment') this.#treatment(id);
    if (to === 'hand-over') this.#handOver(id);
    if (to === 'batch') this.#batch(id);
  }

  #treatment(id: string): void {
    const treatment = this.#state.treatments.get(id);
    if (!treatment || treatment.at < this.#furthest) return;
    this.container(treatment.body.containerId, treatment.at);
    for (const { streamId } of treatment.treated ?? []) if (streamId !== null) this.keep('stream', streamId);
  }

  #handOver(id: string): void {
    const handOver = this.#state.handOvers.get(id);
    for (const { containerId } of handOver?.body.containers ?? [])
      this.container(containerId, handOver?.at ?? '');
  }

  /** Its account asks for all that came of it. */
  #batch(id: string): void {
    const batch = this.#state.batches.get(id);
    for (const streamId of batch?.streamIds ?? []) this.keep('stream', streamId);
    for (const stepId of batch?.steps ?? []) this.keep('step', stepId);
  }
}

/** While too much stands beside the work: all that stood there since it was too much for the first time. */
function keepNearWork(state: State, from: string, keeping: Keeping): void {
  if (from === '') return;
  const near = nearWork(state, from, 'UTC');
  const passed = near?.mayHavePassed ?? near?.passed;
  if (!passed) return;
  // A day more, whatever the zone.
  const at = subDays(new Date(`${passed.since}T00:00:00.000Z`), 1).toISOString();
  for (const { body, areas, goneSince } of state.containers.values())
    if ((goneSince === null || goneSince >= at) && areas.some(({ is }) => is === 'near-work'))
      keeping.container(body.containerId, at);
}

function keepContainers(state: State, from: string, keeping: Keeping): void {
  for (const handOver of state.handOvers.values())
    if (awaited(state, handOver).length > 0 || handOver.at >= from)
      keeping.keep('hand-over', handOver.body.handOverId);
  for (const container of state.containers.values()) {
    const { body, doubtfulSince } = container;
    const at = doubtfulSince !== null && doubtfulSince < from ? doubtfulSince : from;
    if (standsOrIsAwaited(container, from)) keeping.container(body.containerId, at);
  }
  keepNearWork(state, from, keeping);
  // Whatever is told of one that is long gone is told of it all the same.
  for (const { entry, at, body } of state.history)
    if (at >= from || entry.writtenAt >= from)
      for (const { to, id } of referencesOf(body ?? entry.body))
        if (to === 'container') keeping.container(id, from);
}

function keepStreams(state: State, from: string, keeping: Keeping): void {
  for (const [containerId, { contents }] of state.containers)
    for (const { streamId } of keeping.since.has(containerId) ? contents : [])
      if (streamId !== null) keeping.keep('stream', streamId);
  for (const { at, body, unplaced } of state.streams.values())
    if (at >= from || !isNothing(unplaced)) keeping.keep('stream', body.streamId);
}

function keepTreatments(state: State, from: string, keeping: Keeping): void {
  for (const { at, body, ended } of state.treatments.values())
    if (ended === null || at >= from) keeping.keep('treatment', body.treatmentId);
  for (const [containerId, { contents, treatmentIds }] of state.containers)
    if (keeping.since.has(containerId))
      for (const id of [...contents.flatMap(({ treatedBy }) => treatedBy), ...treatmentIds.slice(-1)])
        keeping.keep('treatment', id);
}

function keepBatches(state: State, from: string, keeping: Keeping): void {
  for (const { at, body, endedAt } of state.steps.values())
    if (body.batchId !== null && (at >= from || endedAt === null)) keeping.keep('batch', body.batchId);
  for (const { at, body } of state.batches.values()) if (at >= from) keeping.keep('batch', body.batchId);
  // That one was begun without its list, or on one that did not clear it, stays visible.
  const long = subDays(new Date(from === '' ? 0 : from), backDays).toISOString();
  for (const step of state.steps.values())
    if (step.at >= long && flagsOfStep(state, step).length > 0) keeping.keep('step', step.body.stepId);
  // The next step is offered for it.
  const newest = [...state.batches.values()].at(-1);
  if (newest) keeping.keep('batch', newest.body.batchId);
}

/** Of what was corrected or withdrawn of late all is kept, as of what was told of late. */
function keepChanged({ history }: State, from: string, keeping: Keeping): void {
  const lines = new Map(history.map((line) => [line.entry.id, line]));
  for (const { entry } of history) {
    if (entry.writtenAt < from) continue;
    let target = namedBy(entry);
    while (target !== null) {
      const line = lines.get(target);
      for (const { to, id } of line ? brings(target, line.body ?? line.entry.body) : [])
        if (to === 'container') keeping.container(id, from);
        else keeping.keep(to, id);
      target = line ? namedBy(line.entry) : null;
    }
  }
}

/** Everything that stands, runs, is awaited, or is younger than `from`. */
function keepingOf(state: State, from: string): Keeping {
  const keeping = new Keeping(state, from === '' ? '' : subDays(new Date(from), backDays).toISOString());
  keepContainers(state, from, keeping);
  keepStreams(state, from, keeping);
  keepTreatments(state, from, keeping);
  keepBatches(state, from, keeping);
  keepChanged(state, from, keeping);
  for (const { body, stopped } of state.clocks.values())
    if (stopped === null) keeping.keep('clock', body.clockId);
  for (const { entryId, found, closed } of state.findings.values()) {
    if (closed !== null) continue;
    keeping.keep('finding', found.findingId);
    // What was found at a place is told at the end of a walk, which nothing names.
    keeping.keep('entry', entryId);
  }
  for (const entryId of lastOfEach(state)) keeping.keep('entry', entryId);
  return keeping;
}

/** Things of which nothing may be missing once anything of them is at hand. */
const toldOfLater: ReadonlySet<Kind> = new Set([
  'step',
  'stream',
  'checklist',
  'clock',
  'finding',
  'treatment',
]);

/** Things that an entry speaks of, but for those that are always known. */
const thingsIn = (id: string, body: Body): readonly Reference[] => [
  ...brings(id, body).map((named) => ({ ...named, field: '' })),
  ...referencesOf(body).filter(({ to }) => to !== 'person' && to !== 'station' && to !== 'list'),
];

/** Few of each, and whether one counts rests on the others. */
const alwaysOfContainer: ReadonlySet<PlainBody['kind']> = new Set([
  'container-opened',
  'container-changed',
  'candidate-answered',
]);

/** Many of each, and those that count are named. */
const namedOfContainer: ReadonlySet<PlainBody['kind']> = new Set(['container-marked', 'container-inspected']);

/** What tells of a waste that came of a step, and of where it went, stands without the step. */
const withoutTheirStep: ReadonlySet<Body['kind']> = new Set([
  'stream-logged',
  'stream-placed',
  'contents-moved',
]);

export type Kept = {
  readonly log: readonly Entry[];
  /** Of each container that is at hand: from when on what befell it is kept. */
  readonly since: ReadonlyMap<string, string>;
};

/**
 * Entries of the log, in order, that are younger than `from` or matter to what stands, runs or is awaited, with all that
 * corrects or withdraws them.
 */
export function stillMatter(state: State, from: string): Kept {
  const keeping = keepingOf(state, from);
  const { live, since } = keeping;
  const isOfLive = (body: PlainBody, at: string, { to, id }: Reference): boolean =>
    live.has(nameOf(to, id)) &&
    (to !== 'container' ||
      alwaysOfContainer.has(body.kind) ||
      (!namedOfContainer.has(body.kind) && at >= (since.get(id) ?? '')));
  const kept = (): ReadonlySet<string> =>
    new Set(
      [...since.keys()].flatMap((id) => {
        const container = state.containers.get(id);
        if (!container) return [];
        return [
          ...marksThatCount(container),
          ...container.inspections.slice(-1).map(({ entryId }) => entryId),
        ];
      }),
    );
  const matters = ({ entry, body, at }: HistoryLine, named: ReadonlySet<string>): boolean => {
    if (entry.writtenAt >= from || at >= from || named.has(entry.id) || live.has(nameOf('entry', entry.id)))
      return true;
    const plain = body ?? entry.body;
    if (plain.kind === 'entry-corrected' || plain.kind === 'entry-withdrawn') return false;
    return (
      ofTheWorkshop.has(plain.kind) || thingsIn(entry.id, plain).some((thing) => isOfLive(plain, at, thing))
    );
  };
  const ids = new Set<string>();
  // What is kept keeps what it was begun on and what was told of it later: its list, how a step ended, what came of a finding.
  for (let before = -1; before < ids.size; ) {
    before = ids.size;
    const named = kept();
    for (const line of state.history) {
      const { id, body } = line.entry;
      if (ids.has(id) || !matters(line, named)) continue;
      ids.add(id);
      const plain = line.body ?? body;
      for (const { to, id: thing } of thingsIn(id, plain))
        if (toldOfLater.has(to) && !(to === 'step' && withoutTheirStep.has(plain.kind)))
          keeping.keep(to, thing);
    }
  }
  // What changes an entry goes with it, and the other way round.
  for (let before = -1; before < ids.size; ) {
    before = ids.size;
    for (const { entry, changedBy } of state.history) {
      const target = namedBy(entry);
      if (ids.has(entry.id)) for (const id of changedBy) ids.add(id);
      if (ids.has(entry.id) && target !== null) ids.add(target);
    }
  }
  return { log: state.log.filter(({ id }) => ids.has(id)), since };
}
