/** Which things a body names, and which of them nobody has told of. */
import type { Body, PlainBody } from './entries/body';
import { goesOn } from './memory';
import type { SortedFacts } from './sorted-facts';
import type { Fact, State, Trouble } from './state';
import { changedLists } from './workshop-lists';

export type Reference = {
  readonly to:
    | 'person'
    | 'batch'
    | 'step'
    | 'stream'
    | 'container'
    | 'checklist'
    | 'treatment'
    | 'clock'
    | 'station'
    | 'list'
    | 'finding'
    | 'hand-over'
    | 'paper'
    | 'entry';
  readonly id: string;
  /** Field of the body that holds it. */
  readonly field: string;
};

const ref = (to: Reference['to'], field: string, id: string | null): Reference[] =>
  id === null ? [] : [{ to, id, field }];

function referencesOfStream(body: Extract<PlainBody, { kind: 'stream-logged' }>): Reference[] {
  const liquor = body.solid?.holds.liquor;
  return [
    ...ref('batch', 'batchId', body.batchId),
    ...ref('step', 'stepId', body.stepId),
    ...(liquor && liquor !== 'not-determined' ? ref('stream', 'solid.holds.liquor', liquor) : []),
  ];
}

/** What must be there already for a body to make sense. */
export function referencesOf(body: Body): Reference[] {
  switch (body.kind) {
    case 'workshop-described':
    case 'person-added':
    case 'local-rule-stated':
    case 'base-described':
    case 'batch-opened':
    case 'container-opened':
    case 'price-stated':
    case 'list-changed':
    case 'station-described':
      return [];
    case 'station-given-up':
      return ref('station', 'stationId', body.stationId);
    case 'ventilation-checked':
      return [...ref('batch', 'batchId', body.batchId), ...ref('station', 'stationId', body.stationId)];
    case 'person-left':
      return ref('person', 'personId', body.personId);
    case 'checklist-finished':
      return [
        ...ref('batch', 'batchId', body.batchId),
        ...ref('container', 'containerId', body.containerId ?? null),
        ...ref('step', 'late.stepId', body.late?.stepId ?? null),
        ...ref('station', 'stationId', body.stationId ?? null),
      ];
    case 'checklist-answered-later':
      return ref('checklist', 'checklist', body.checklist);
    case 'clock-stopped':
      return ref('clock', 'clockId', body.clockId);
    case 'silver-checked':
      return [
        ...ref('batch', 'batchId', body.batchId),
        ...body.streamIds.flatMap((id) => ref('stream', 'streamIds', id)),
      ];
    case 'clock-started':
    case 'batch-charged':
    case 'batch-recovered':
      return ref('batch', 'batchId', body.batchId);
    case 'step-started':
      return [
        ...ref('batch', 'batchId', body.batchId),
        ...ref('checklist', 'clearance', body.clearance),
        ...ref('station', 'stationId', body.stationId ?? null),
      ];
    case 'step-ended':
      return ref('step', 'stepId', body.stepId);
    case 'stream-logged':
      return referencesOfStream(body);
    case 'stream-placed':
      return [
        ...ref('stream', 'streamId', body.streamId),
        ...ref('container', 'containerId', body.containerId),
      ];
    case 'contents-moved':
      return [
        ...ref('container', 'fromContainerId', body.fromContainerId),
        ...ref('container', 'toContainerId', body.toContainerId),
      ];
    case 'treatment-begun':
      return [
        ...ref('container', 'containerId', body.containerId),
        ...ref('checklist', 'clearance', body.clearance),
      ];
    case 'dose-added':
    case 'pot-read':
    case 'treatment-ended':
      return ref('treatment', 'treatmentId', body.treatmentId);
    case 'stream-tested':
    case 'counting-said':
      return ref('stream', 'streamId', body.streamId);
    case 'contents-determined':
      return [
        ...ref('container', 'containerId', body.containerId),
        ...ref('stream', 'streamId', body.streamId),
      ];
    case 'walk-finished':
      return [
        ...body.containerIds.flatMap((id) => ref('container', 'containerIds', id)),
        ...body.notSeen.flatMap(({ containerId }) => ref('container', 'notSeen', containerId)),
      ];
    case 'finding-closed':
      return ref('finding', 'findingId', body.findingId);
    case 'bench-tested':
    case 'container-changed':
    case 'water-lost':
    case 'level-read':
    case 'candidate-answered':
    case 'lab-reported':
    case 'container-inspected':
    case 'container-marked':
      return ref('container', 'containerId', body.containerId);
    case 'paper-made':
      return body.containerIds.flatMap((id) => ref('container', 'containerIds', id));
    case 'handed-over':
      return [
        ...body.containers.flatMap(({ containerId }) => ref('container', 'containers', containerId)),
        ...ref('paper', 'paperId', body.paperId ?? null),
      ];
    case 'load-rejected':
    case 'proof-filed':
      return [
        ...ref('hand-over', 'handOverId', body.handOverId),
        ...body.containerIds.flatMap((id) => ref('container', 'containerIds', id)),
      ];
    case 'entry-corrected':
      return [...ref('entry', 'corrects', body.corrects), ...referencesOf(body.body)];
    case 'entry-withdrawn':
      return ref('entry', 'withdraws', body.withdraws);
    default:
      return body satisfies never;
  }
}

/** Whether the state knows the thing. */
export function knows(state: State, { to, id }: Reference): boolean {
  switch (to) {
    case 'person':
      return state.people.has(id);
    case 'batch':
      return state.batches.has(id);
    case 'step':
      return state.steps.has(id);
    case 'stream':
      return state.streams.has(id);
    case 'container':
      return state.containers.has(id);
    case 'checklist':
      return state.checklists.has(id);
    case 'treatment':
      return state.treatments.has(id);
    case 'clock':
      return state.clocks.has(id);
    case 'station':
      return state.stations.has(id);
    case 'list':
      return changedLists(state).has(id);
    case 'finding':
      return state.findings.has(id);
    case 'hand-over':
      return state.handOvers.has(id);
    case 'paper':
      return state.papers.has(id);
    case 'entry':
      return state.log.some((entry) => entry.id === id);
    default:
      return to satisfies never;
  }
}

type Lists = readonly (readonly Fact[])[];

export type Unknown = {
  readonly lists: Lists;
  readonly facts: readonly Fact[];
  readonly troubles: readonly Trouble[];
  /** Told of in entries that are not at hand. */
  readonly away: ReadonlySet<string>;
};

/** What an opening knows: entries that name what nobody told of, and what those at hand name that is told of elsewhere. */
export type UnknownBefore = { readonly entries: ReadonlySet<string>; readonly away: ReadonlySet<string> };

const byEntry = (a: Fact, b: Fact): number => (a.entryId < b.entryId ? -1 : a.entryId > b.entryId ? 1 : 0);

/** Facts that may name something unknown. */
function askedOf(lists: Lists, last?: Unknown | UnknownBefore): readonly Fact[] {
  if (!last) return lists.flat();
  if ('entries' in last) return lists.flat().filter(({ entryId }) => last.entries.has(entryId));
  const goes = lists.every((list, i) => goesOn(list, last.lists[i] ?? []));
  if (!goes) return lists.flat();
  return [...last.facts, ...lists.flatMap((list, i) => list.slice(last.lists[i]?.length ?? 0))];
}

/**
 * Standing facts that name what no standing fact tells of.
 * @param last where every list goes on from what it was then, nothing that was known has become unknown
 */
export function unknownReferences(facts: SortedFacts, state: State, last?: Unknown | UnknownBefore): Unknown {
  const lists: Lists = Object.values(facts);
  const { away = new Set<string>() } = last ?? {};
  const asked = askedOf(lists, last);
  const unknownIn = ({ body }: Fact) =>
    referencesOf(body).filter((reference) => !knows(state, reference) && !away.has(reference.id));
  const found = asked.filter((fact) => unknownIn(fact).length > 0).toSorted(byEntry);
  const troubles = found.flatMap((fact) =>
    unknownIn(fact).map(
      ({ id }): Trouble => ({ entryId: fact.entryId, code: 'refers-to-unknown', subject: id }),
    ),
  );
  return { lists, facts: found, troubles, away };
}
