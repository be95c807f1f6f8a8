/** Things and how they hang together: batches with their steps and streams, containers with their contents. */
import { loggedAmount, stillUnplaced } from './amounts';
import { containersOf } from './containers-linked';
import { followed, notPlaced, type Placing, type ToldTreatment } from './contents';
import type { StreamLogged, StreamTested } from './entries/streams';
import { asHappened, byId, grouped, mapped } from './grouping';
import { handedOverWhileGone, handOversOf, marksOf } from './hand-overs-linked';
import { unknownReferences } from './references';
import type { SortedFacts } from './sorted-facts';
import {
  type BatchState,
  type ChecklistState,
  type ClockState,
  emptyState,
  type Happening,
  type Movement,
  type PersonState,
  type State,
  type StationState,
  type StepState,
  type StreamState,
  type Told,
  type Trouble,
} from './state';
import { findingsOf, walksOf } from './walks-linked';

/** A person who was added again after leaving is back; the time it happened decides. */
function peopleOf(facts: SortedFacts): Map<string, PersonState> {
  const people = new Map<string, PersonState>();
  const left = new Map(asHappened(facts['person-left']).map((fact) => [fact.body.personId, fact.at]));
  for (const fact of asHappened(facts['person-added'])) {
    const gone = left.get(fact.body.personId);
    people.set(fact.body.personId, { ...fact, leftAt: gone !== undefined && gone >= fact.at ? gone : null });
  }
  return people;
}

/** As with people: described again after it was given up, a place is in use again. */
function stationsOf(facts: SortedFacts): Map<string, StationState> {
  const stations = new Map<string, StationState>();
  const left = new Map(asHappened(facts['station-given-up']).map((fact) => [fact.body.stationId, fact.at]));
  for (const fact of asHappened(facts['station-described'])) {
    const gone = left.get(fact.body.stationId);
    const givenUpAt = gone !== undefined && gone >= fact.at ? gone : null;
    stations.set(fact.body.stationId, { ...fact, givenUpAt });
  }
  return stations;
}

function stepsOf(facts: SortedFacts, troubles: Trouble[]): Map<string, StepState> {
  const started = byId(asHappened(facts['step-started']), ({ stepId }) => stepId, troubles);
  const ended = new Map(asHappened(facts['step-ended']).map((fact) => [fact.body.stepId, fact]));
  const streams = grouped(asHappened(facts['stream-logged']), ({ body }) => body.stepId);
  const late = grouped(asHappened(facts['checklist-finished']), ({ body }) => body.late?.stepId ?? null);
  return mapped(started, (fact, stepId) => ({
    ...fact,
    endedAt: ended.get(stepId)?.at ?? null,
    endNote: ended.get(stepId)?.body.note ?? null,
    lateLists: (late.get(stepId) ?? []).map(({ entryId }) => entryId),
    streamIds: [...new Set((streams.get(stepId) ?? []).map(({ body }) => body.streamId))],
  }));
}

function checklistsOf(facts: SortedFacts): Map<string, ChecklistState> {
  const later = grouped(asHappened(facts['checklist-answered-later']), ({ body }) => body.checklist);
  return new Map(
    asHappened(facts['checklist-finished']).map((fact) => [
      fact.entryId,
      { ...fact, later: later.get(fact.entryId) ?? [] },
    ]),
  );
}

function clocksOf(facts: SortedFacts, troubles: Trouble[]): Map<string, ClockState> {
  const started = byId(asHappened(facts['clock-started']), ({ clockId }) => clockId, troubles);
  const stopped = grouped(asHappened(facts['clock-stopped']), ({ body }) => body.clockId);
  return mapped(started, (fact, clockId) => ({ ...fact, stopped: stopped.get(clockId)?.[0] ?? null }));
}

function batchesOf(
  facts: SortedFacts,
  steps: ReadonlyMap<string, StepState>,
  streams: ReadonlyMap<string, Told<StreamLogged>>,
  troubles: Trouble[],
): Map<string, BatchState> {
  const stepsByBatch = grouped(steps.values(), ({ body }) => body.batchId);
  const streamsByBatch = grouped(streams.values(), ({ body }) => body.batchId);
  const checklists = grouped(asHappened(facts['checklist-finished']), ({ body }) => body.batchId);
  const charged = grouped(asHappened(facts['batch-charged']), ({ body }) => body.batchId);
  const recovered = grouped(asHappened(facts['batch-recovered']), ({ body }) => body.batchId);
  return mapped(
    byId(facts['batch-opened'], ({ batchId }) => batchId, troubles),
    (fact, batchId) => ({
      ...fact,
      steps: (stepsByBatch.get(batchId) ?? []).map(({ body }) => body.stepId),
      streamIds: (streamsByBatch.get(batchId) ?? []).map(({ body }) => body.streamId),
      checklists: (checklists.get(batchId) ?? []).map(({ entryId }) => entryId),
      charged: charged.get(batchId) ?? [],
      recovered: recovered.get(batchId) ?? [],
    }),
  );
}

function treatmentsOf(facts: SortedFacts, troubles: Trouble[]): Map<string, ToldTreatment> {
  const begun = byId(asHappened(facts['treatment-begun']), ({ treatmentId }) => treatmentId, troubles);
  const doses = grouped(asHappened(facts['dose-added']), ({ body }) => body.treatmentId);
  const readings = grouped(asHappened(facts['pot-read']), ({ body }) => body.treatmentId);
  const ended = new Map(asHappened(facts['treatment-ended']).map((fact) => [fact.body.treatmentId, fact]));
  return mapped(begun, (fact, treatmentId) => ({
    ...fact,
    doses: doses.get(treatmentId) ?? [],
    readings: readings.get(treatmentId) ?? [],
    ended: ended.get(treatmentId) ?? null,
  }));
}

/** Evidence found later stands among the stream's own, and a density that was measured later counts. */
function withTests(body: StreamLogged, tests: readonly Told<StreamTested>[]): StreamLogged {
  const { liquid } = body;
  if (!liquid || tests.length === 0) return body;
  const density = tests.findLast((told) => told.body.density)?.body.density ?? liquid.density;
  return {
    ...body,
    liquid: {
      ...liquid,
      ...(density ? { density } : {}),
      findings: [...liquid.findings, ...tests.flatMap((told) => told.body.findings)],
      freeAcid: [...liquid.freeAcid, ...tests.flatMap((told) => told.body.freeAcid)],
    },
  };
}

/** Streams as they were logged, with what was found of them later. */
function loggedStreams(facts: SortedFacts, troubles: Trouble[]): Map<string, Told<StreamLogged>> {
  const tests = grouped(asHappened(facts['stream-tested']), ({ body }) => body.streamId);
  return mapped(
    byId(asHappened(facts['stream-logged']), ({ streamId }) => streamId, troubles),
    (fact, streamId) => ({ ...fact, body: withTests(fact.body, tests.get(streamId) ?? []) }),
  );
}

function streamsOf(
  facts: SortedFacts,
  logged: ReadonlyMap<string, Told<StreamLogged>>,
  placings: ReadonlyMap<string, Placing>,
): Map<string, StreamState> {
  const tests = grouped(asHappened(facts['stream-tested']), ({ body }) => body.streamId);
  const counting = new Map(asHappened(facts['counting-said']).map((told) => [told.body.streamId, told]));
  return mapped(logged, (fact, streamId) => {
    const amount = loggedAmount(fact.body);
    const placing = placings.get(streamId) ?? notPlaced;
    return {
      ...fact,
      ...placing,
      amount,
      unplaced: stillUnplaced(amount, placing.placed),
      tests: tests.get(streamId) ?? [],
      counting: counting.get(streamId) ?? null,
    };
  });
}

const isMovement = (happening: Happening): happening is Movement =>
  happening.body.kind === 'stream-placed' || happening.body.kind === 'contents-moved';

/**
 * @param facts those that stand, each kind in the order of the log
 * @param befell what befell contents among them, of all kinds, in the order of the log
 */
export function linked(facts: SortedFacts, befell: readonly Happening[]): State {
  const troubles: Trouble[] = [];
  const steps = stepsOf(facts, troubles);
  const logged = loggedStreams(facts, troubles);
  const opened = byId(facts['container-opened'], ({ containerId }) => containerId, troubles);
  const marks = marksOf(facts);
  const vessels = mapped(opened, (_, id) => ({ marks: marks.get(id) ?? [] }));
  const told = treatmentsOf(facts, troubles);
  const happenings = asHappened(befell);
  const things = { vessels, streams: logged, treatments: told };
  const { containers, placings, treated, upsets } = followed(happenings, things);
  const handOvers = handOversOf(facts, (id) => containers.get(id)?.movements ?? [], troubles);
  const state: State = {
    ...emptyState,
    workshop: facts['workshop-described'].at(-1) ?? null,
    people: peopleOf(facts),
    rules: new Map(facts['local-rule-stated'].map((fact) => [fact.body.stated.rule, fact])),
    bases: new Map(facts['base-described'].map((fact) => [fact.body.base, fact])),
    batches: batchesOf(facts, steps, logged, troubles),
    steps,
    checklists: checklistsOf(facts),
    listChanges: facts['list-changed'],
    stations: stationsOf(facts),
    ventilationChecks: byId(asHappened(facts['ventilation-checked']), ({ checkId }) => checkId, troubles),
    clocks: clocksOf(facts, troubles),
    silverChecks: byId(asHappened(facts['silver-checked']), ({ checkId }) => checkId, troubles),
    streams: streamsOf(facts, logged, placings),
    containers: containersOf(facts, opened, { marks, contents: containers, treatments: told, handOvers }),
    handOvers,
    walks: walksOf(facts),
    findings: findingsOf(facts),
    treatments: mapped(told, (fact, id) => ({ ...fact, treated: treated.get(id) ?? null })),
    prices: new Map(facts['price-stated'].map((fact) => [fact.body.what, fact])),
    papers: byId(facts['paper-made'], ({ paperId }) => paperId, troubles),
    movements: happenings.filter(isMovement),
    happenings,
    upsets: [...upsets, ...handedOverWhileGone(facts, marks)],
  };
  return { ...state, troubles: [...troubles, ...unknownReferences(facts, state)] };
}
