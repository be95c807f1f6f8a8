/** Things and how they hang together: batches with their steps and streams, containers with their contents. */
import { loggedAmount, stillUnplaced } from './amounts';
import { containersOf } from './containers-linked';
import { type Carried, type Followed, followed, notPlaced, type ToldTreatment } from './contents';
import type { StreamLogged, StreamTested } from './entries/streams';
import { asHappened, type ById, byId, lastById } from './grouping';
import { handedOverWhileGone, handOversOf, marksOf } from './hand-overs-linked';
import type { Remembering } from './memory';
import { type Unknown, type UnknownBefore, unknownReferences } from './references';
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
} from './state';
import { findingsOf, walksOf } from './walks-linked';

/** A person who was added again after leaving is back; the time it happened decides. */
function peopleOf(facts: SortedFacts): ReadonlyMap<string, PersonState> {
  const people = new Map<string, PersonState>();
  const left = new Map(asHappened(facts['person-left']).map((fact) => [fact.body.personId, fact.at]));
  for (const fact of asHappened(facts['person-added'])) {
    const gone = left.get(fact.body.personId);
    people.set(fact.body.personId, { ...fact, leftAt: gone !== undefined && gone >= fact.at ? gone : null });
  }
  return people;
}

/** As with people: described again after it was given up, a place is in use again. */
function stationsOf(facts: SortedFacts): ReadonlyMap<string, StationState> {
  const stations = new Map<string, StationState>();
  const left = new Map(asHappened(facts['station-given-up']).map((fact) => [fact.body.stationId, fact.at]));
  for (const fact of asHappened(facts['station-described'])) {
    const gone = left.get(fact.body.stationId);
    const givenUpAt = gone !== undefined && gone >= fact.at ? gone : null;
    stations.set(fact.body.stationId, { ...fact, givenUpAt });
  }
  return stations;
}

function stepsOf(facts: SortedFacts, told: Remembering, started: Declared['steps']) {
  const ended = told.once('last end of a step', [facts['step-ended']], () =>
    lastById(asHappened(facts['step-ended']), ({ body }) => body.stepId),
  );
  const streams = told.grouped(
    'streams of a step',
    asHappened(facts['stream-logged']),
    ({ body }) => body.stepId,
  );
  const late = told.grouped(
    'late lists',
    asHappened(facts['checklist-finished']),
    ({ body }) => body.late?.stepId ?? null,
  );
  return told.each(
    'steps',
    started.things,
    [ended, streams, late],
    (fact, stepId): StepState => ({
      ...fact,
      endedAt: ended.get(stepId)?.at ?? null,
      endNote: ended.get(stepId)?.body.note ?? null,
      lateLists: (late.get(stepId) ?? []).map(({ entryId }) => entryId),
      streamIds: [...new Set((streams.get(stepId) ?? []).map(({ body }) => body.streamId))],
    }),
  );
}

function checklistsOf(facts: SortedFacts, told: Remembering): ReadonlyMap<string, ChecklistState> {
  const finished = facts['checklist-finished'];
  const later = told.grouped(
    'answered later',
    asHappened(facts['checklist-answered-later']),
    ({ body }) => body.checklist,
  );
  const lists = told.once('lists', [finished], () =>
    lastById(asHappened(finished), ({ entryId }) => entryId),
  );
  return told.each('checklists', lists, [later], (fact, id) => ({ ...fact, later: later.get(id) ?? [] }));
}

function clocksOf(
  facts: SortedFacts,
  told: Remembering,
  started: Declared['clocks'],
): ReadonlyMap<string, ClockState> {
  const stopped = told.grouped(
    'ends of a clock',
    asHappened(facts['clock-stopped']),
    ({ body }) => body.clockId,
  );
  return told.each('clocks', started.things, [stopped], (fact, id) => ({
    ...fact,
    stopped: stopped.get(id)?.[0] ?? null,
  }));
}

function batchesOf(
  facts: SortedFacts,
  told: Remembering,
  { batches, streams }: Declared,
  steps: ReadonlyMap<string, StepState>,
): ReadonlyMap<string, BatchState> {
  const inOrder = told.once('steps in order', [steps], () => [...steps.values()]);
  const wastes = told.once('wastes in order', [streams.things], () => [...streams.things.values()]);
  const stepsIn = told.grouped('steps of a batch', inOrder, ({ body }) => body.batchId);
  const streamsIn = told.grouped('streams of a batch', wastes, ({ body }) => body.batchId);
  const lists = told.grouped(
    'lists of a batch',
    asHappened(facts['checklist-finished']),
    ({ body }) => body.batchId,
  );
  const charged = told.grouped('charged', asHappened(facts['batch-charged']), ({ body }) => body.batchId);
  const recovered = told.grouped(
    'recovered',
    asHappened(facts['batch-recovered']),
    ({ body }) => body.batchId,
  );
  const groups = [stepsIn, streamsIn, lists, charged, recovered];
  return told.each('batches', batches.things, groups, (fact, id) => ({
    ...fact,
    steps: (stepsIn.get(id) ?? []).map(({ body }) => body.stepId),
    streamIds: (streamsIn.get(id) ?? []).map(({ body }) => body.streamId),
    checklists: (lists.get(id) ?? []).map(({ entryId }) => entryId),
    charged: charged.get(id) ?? [],
    recovered: recovered.get(id) ?? [],
  }));
}

function treatmentsOf(
  facts: SortedFacts,
  told: Remembering,
  begun: Declared['treatments'],
): ReadonlyMap<string, ToldTreatment> {
  const doses = told.grouped('doses', asHappened(facts['dose-added']), ({ body }) => body.treatmentId);
  const readings = told.grouped('readings', asHappened(facts['pot-read']), ({ body }) => body.treatmentId);
  const ended = told.once('last end of a treatment', [facts['treatment-ended']], () =>
    lastById(asHappened(facts['treatment-ended']), ({ body }) => body.treatmentId),
  );
  return told.each('treatments as told', begun.things, [doses, readings, ended], (fact, id) => ({
    ...fact,
    doses: doses.get(id) ?? [],
    readings: readings.get(id) ?? [],
    ended: ended.get(id) ?? null,
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

type Tests = ReadonlyMap<string, readonly Told<StreamTested>[]>;

const testsOf = (facts: SortedFacts, told: Remembering): Tests =>
  told.grouped('tests', asHappened(facts['stream-tested']), ({ body }) => body.streamId);

/** Streams as they were logged, with what was found of them later. */
const loggedStreams = (
  told: Remembering,
  { streams }: Declared,
  tests: Tests,
): ReadonlyMap<string, Told<StreamLogged>> =>
  told.each('streams as logged', streams.things, [tests], (fact, id) => ({
    ...fact,
    body: withTests(fact.body, tests.get(id) ?? []),
  }));

function streamsOf(
  facts: SortedFacts,
  told: Remembering,
  logged: ReadonlyMap<string, Told<StreamLogged>>,
  tests: Tests,
  { placed, placements }: Followed,
): ReadonlyMap<string, StreamState> {
  const counting = told.once('counting', [facts['counting-said']], () =>
    lastById(asHappened(facts['counting-said']), ({ body }) => body.streamId),
  );
  return told.each('streams', logged, [placed, placements, tests, counting], (fact, id) => {
    const amount = loggedAmount(fact.body);
    const inContainers = placed.get(id) ?? notPlaced.placed;
    return {
      ...fact,
      placed: inContainers,
      placements: placements.get(id) ?? notPlaced.placements,
      amount,
      unplaced: stillUnplaced(amount, inContainers),
      tests: tests.get(id) ?? [],
      counting: counting.get(id) ?? null,
    };
  });
}

/** Things that can be told of once only. */
function declared(facts: SortedFacts, told: Remembering) {
  const first = <B extends Parameters<typeof byId>[0][number]['body']>(
    name: string,
    list: readonly Told<B>[],
    idOf: (body: B) => string,
  ): ById<B> => told.once(`told of: ${name}`, [list], () => byId(list, idOf));
  return {
    steps: first('step', asHappened(facts['step-started']), ({ stepId }) => stepId),
    streams: first('stream', asHappened(facts['stream-logged']), ({ streamId }) => streamId),
    containers: first('container', facts['container-opened'], ({ containerId }) => containerId),
    treatments: first('treatment', asHappened(facts['treatment-begun']), ({ treatmentId }) => treatmentId),
    handOvers: first('hand-over', asHappened(facts['handed-over']), ({ handOverId }) => handOverId),
    batches: first('batch', facts['batch-opened'], ({ batchId }) => batchId),
    ventilation: first('ventilation', asHappened(facts['ventilation-checked']), ({ checkId }) => checkId),
    clocks: first('clock', asHappened(facts['clock-started']), ({ clockId }) => clockId),
    silver: first('silver check', asHappened(facts['silver-checked']), ({ checkId }) => checkId),
    papers: first('paper', facts['paper-made'], ({ paperId }) => paperId),
  };
}

type Declared = ReturnType<typeof declared>;

const isMovement = (happening: Happening): happening is Movement =>
  happening.body.kind === 'stream-placed' || happening.body.kind === 'contents-moved';

/**
 * @param facts those that stand, each kind in the order of the log
 * @param befell what befell contents among them, of all kinds, in the order of the log
 */
export function linked(facts: SortedFacts, befell: readonly Happening[], told: Remembering): State {
  const things = declared(facts, told);
  const tests = testsOf(facts, told);
  const logged = loggedStreams(told, things, tests);
  const steps = stepsOf(facts, told, things.steps);
  const marks = marksOf(facts, told);
  const treatments = treatmentsOf(facts, told, things.treatments);
  const happenings = asHappened(befell);
  const contents = told.once(
    'contents',
    [happenings, things.containers.things, marks, logged, treatments],
    (last?: Followed | Carried) =>
      followed(happenings, { opened: things.containers.things, marks, streams: logged, treatments }, last),
  );
  const handOvers = handOversOf(facts, told, things.handOvers, contents);
  const once = <T>(name: string, list: readonly unknown[], make: () => T): T => told.once(name, [list], make);
  const state: State = {
    ...emptyState,
    workshop: facts['workshop-described'].at(-1) ?? null,
    people: told.once('people', [facts['person-added'], facts['person-left']], () => peopleOf(facts)),
    rules: once(
      'rules',
      facts['local-rule-stated'],
      () => new Map(facts['local-rule-stated'].map((fact) => [fact.body.stated.rule, fact])),
    ),
    bases: once(
      'bases',
      facts['base-described'],
      () => new Map(facts['base-described'].map((fact) => [fact.body.base, fact])),
    ),
    batches: batchesOf(facts, told, things, steps),
    steps,
    checklists: checklistsOf(facts, told),
    listChanges: facts['list-changed'],
    stations: told.once('stations', [facts['station-described'], facts['station-given-up']], () =>
      stationsOf(facts),
    ),
    ventilationChecks: things.ventilation.things,
    clocks: clocksOf(facts, told, things.clocks),
    silverChecks: things.silver.things,
    streams: streamsOf(facts, told, logged, tests, contents),
    containers: containersOf(facts, told, things.containers.things, {
      marks,
      contents,
      treatments,
      handOvers,
    }),
    handOvers,
    walks: walksOf(facts, told),
    findings: findingsOf(facts, told),
    treatments: told.each('treatments', treatments, [contents.treated], (fact, id) => ({
      ...fact,
      treated: contents.treated.get(id) ?? null,
    })),
    prices: once(
      'prices',
      facts['price-stated'],
      () => new Map(facts['price-stated'].map((fact) => [fact.body.what, fact])),
    ),
    papers: things.papers.things,
    movements: once('movements', happenings, () => happenings.filter(isMovement)),
    happenings,
    upsets: [...contents.upsets, ...handedOverWhileGone(facts, told, marks)],
  };
  const twice = Object.values(things).flatMap(({ troubles }) => troubles);
  const unknown = told.once('unknown', [facts], (last?: Unknown | UnknownBefore) =>
    unknownReferences(facts, state, last),
  );
  return { ...state, troubles: [...twice, ...unknown.troubles] };
}
