/** Which entries stand behind a container's contents: named by id and hash, so that each can be found in the record. */

import type { Body } from '../../ledger/entries/body';
import { placeInRecord } from '../../ledger/opening';
import { namedBy } from '../../ledger/standing';
import type { State } from '../../ledger/state';
import { notDetermined } from '../words';
import type { Asked } from './asked';
import type { ContainerData } from './disposal-data';
import { entrySays } from './entry-says';
import { kindWords } from './entry-words';

/** Containers that something in this one was poured over from, itself first. */
function upstream(state: State, containerId: string, seen = new Set<string>()): ReadonlySet<string> {
  if (seen.has(containerId)) return seen;
  seen.add(containerId);
  for (const { way, otherId } of state.containers.get(containerId)?.movements ?? [])
    if (way === 'in' && otherId !== null) upstream(state, otherId, seen);
  return seen;
}

/** Ids of the things behind a container: wastes, batches, steps, treatments, what walks found. */
export function thingsBehind(state: State, containerId: string) {
  const containers = upstream(state, containerId);
  const streams = new Set<string>();
  for (const id of containers)
    for (const { streamId } of state.containers.get(id)?.movements ?? [])
      if (streamId !== null) streams.add(streamId);
  // A wet solid holds liquor of another waste, whose evidence counts too.
  for (const id of streams) {
    const held = state.streams.get(id)?.body.solid?.holds.liquor;
    if (held !== undefined && held !== 'not-determined') streams.add(held);
  }
  const bodies = [...streams].flatMap((id) => state.streams.get(id)?.body ?? []);
  const batches = new Set(bodies.flatMap(({ batchId }) => batchId ?? []));
  const steps = new Set(bodies.flatMap(({ stepId }) => stepId ?? []));
  for (const id of batches) for (const step of state.batches.get(id)?.steps ?? []) steps.add(step);
  const treatments = new Set(
    [...state.treatments.values()].flatMap(({ body }) =>
      containers.has(body.containerId) ? [body.treatmentId] : [],
    ),
  );
  const findings = new Set(
    [...state.findings.values()].flatMap(({ containerId: at, found }) =>
      at !== null && containers.has(at) ? [found.findingId] : [],
    ),
  );
  return { containers, streams, batches, steps, treatments, findings };
}

type Behind = ReturnType<typeof thingsBehind>;

function isBehind(body: Body, behind: Behind, clearances: ReadonlySet<string>, entryId: string): boolean {
  switch (body.kind) {
    case 'workshop-described':
    case 'local-rule-stated':
    case 'base-described':
      return true;
    case 'batch-opened':
    case 'batch-charged':
    case 'batch-recovered':
      return behind.batches.has(body.batchId);
    case 'step-started':
    case 'step-ended':
      return behind.steps.has(body.stepId);
    case 'checklist-finished':
      return clearances.has(entryId) || (body.late !== undefined && behind.steps.has(body.late.stepId));
    case 'checklist-answered-later':
      return clearances.has(body.checklist);
    case 'stream-logged':
    case 'stream-tested':
    case 'counting-said':
      return behind.streams.has(body.streamId);
    case 'container-opened':
    case 'container-changed':
    case 'container-marked':
    case 'water-lost':
    case 'level-read':
    case 'contents-determined':
    case 'candidate-answered':
    case 'lab-reported':
    case 'container-inspected':
    case 'treatment-begun':
    case 'bench-tested':
    case 'stream-placed':
      return behind.containers.has(body.containerId);
    case 'contents-moved':
      return [body.fromContainerId, body.toContainerId].some(
        (id) => id !== null && behind.containers.has(id),
      );
    case 'handed-over':
      return body.containers.some(({ containerId }) => behind.containers.has(containerId));
    case 'load-rejected':
    case 'proof-filed':
      return body.containerIds.some((id) => behind.containers.has(id));
    case 'dose-added':
    case 'pot-read':
    case 'treatment-ended':
      return behind.treatments.has(body.treatmentId);
    case 'finding-closed':
      return behind.findings.has(body.findingId);
    case 'silver-checked':
      return body.streamIds.some((id) => behind.streams.has(id));
    case 'ventilation-checked':
      return body.batchId !== null && behind.batches.has(body.batchId);
    case 'list-changed':
    case 'station-described':
    case 'station-given-up':
    case 'clock-started':
    case 'clock-stopped':
    case 'price-stated':
    case 'entry-corrected':
    case 'entry-withdrawn':
    case 'person-added':
    case 'person-left':
    case 'walk-finished':
    case 'paper-made':
      return false;
    default:
      return body satisfies never;
  }
}

/** In the order of the record; `number` is the place in it. */
export function entriesBehind(asked: Asked, containerId: string): ContainerData['entries'] {
  const { state } = asked;
  const behind = thingsBehind(state, containerId);
  const begun = [
    ...[...behind.steps].map((id) => state.steps.get(id)),
    ...[...behind.treatments].map((id) => state.treatments.get(id)),
  ];
  const clearances = new Set(begun.flatMap((told) => told?.body.clearance ?? []));
  const ids = new Set(
    state.log.filter(({ id, body }) => isBehind(body, behind, clearances, id)).map(({ id }) => id),
  );
  // A correction, its withdrawal, and so on, each follow what they name.
  for (const entry of state.log) {
    const named = namedBy(entry);
    if (named !== null && ids.has(named)) ids.add(entry.id);
  }
  const byId = new Map(state.log.map((entry) => [entry.id, entry]));
  return state.log.flatMap((entry, index) => {
    if (!ids.has(entry.id)) return [];
    const who = entry.who === null ? undefined : state.people.get(entry.who)?.body.name;
    return [
      {
        number: placeInRecord(state, index),
        id: entry.id,
        hash: entry.hash,
        happenedAt: entry.happenedAt,
        kind: kindWords[entry.body.kind],
        says: entrySays(asked, entry.body, byId.get(namedBy(entry) ?? '')?.body),
        who: who ?? notDetermined,
      },
    ];
  });
}
