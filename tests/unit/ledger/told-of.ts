/**
 * All that pages, papers and lists read of what stands, runs, is due or awaited, by name: for two states to be held against
 * each other. What happened longer ago than `since` is asked of neither.
 */
import { accumulationStart, standsNearWork } from '../../../src/ledger/accumulation';
import { basesKept } from '../../../src/ledger/bases-kept';
import {
  baseForPh,
  benchFor,
  comesOf,
  minded,
  treatable as treatableLoad,
} from '../../../src/ledger/before-treatment';
import { lackingIn, waiting } from '../../../src/ledger/candidate-words';
import { clearancesHolding } from '../../../src/ledger/clearance';
import { looksAwaited, runningClocks } from '../../../src/ledger/clocks-running';
import { acceptedBesides, candidatesOf } from '../../../src/ledger/container-candidates';
import { containerFigures, figuresBefore, namedFigures } from '../../../src/ledger/container-figures';
import { isDoubted, lifeOf, mayBeDone } from '../../../src/ledger/container-life';
import { massOf } from '../../../src/ledger/container-mixture';
import { comingOutOf, dilutedBy } from '../../../src/ledger/dilution';
import { disputesIn } from '../../../src/ledger/disagreements';
import { awaited, dues, duesOf } from '../../../src/ledger/due';
import { evidenceBehind } from '../../../src/ledger/evidence-behind';
import { fillLimit, fillPercent } from '../../../src/ledger/fill';
import { freeSpace } from '../../../src/ledger/free-space';
import { differencesOf } from '../../../src/ledger/hand-over-differences';
import { hoodsDue } from '../../../src/ledger/hoods-due';
import { resultsNow } from '../../../src/ledger/lab-levels';
import { changedForPerson } from '../../../src/ledger/last-gone-through';
import { lastReading } from '../../../src/ledger/last-reading';
import { levelAgainst } from '../../../src/ledger/level-against';
import { containersOnPaper, fillForBase, neutraliserFor } from '../../../src/ledger/list-bounds';
import { contentsSide } from '../../../src/ledger/meeting-sides';
import { nearWork } from '../../../src/ledger/near-work';
import { notDetermined } from '../../../src/ledger/not-determined';
import { emptyPlaces } from '../../../src/ledger/places-that-fit';
import { dueNow, pressing } from '../../../src/ledger/pressing';
import { monthHeld, onSiteNow } from '../../../src/ledger/quantities-now';
import { apartAmong, gapsOf, gapsOfPlace } from '../../../src/ledger/readiness';
import { reportDisagreements } from '../../../src/ledger/report-disagrees';
import { outlookOf } from '../../../src/ledger/run-outlook';
import { signedOver } from '../../../src/ledger/signed-over';
import type { BatchState, ContainerState, State, TreatmentState } from '../../../src/ledger/state';
import { requiredBefore, stepOffers } from '../../../src/ledger/step-offers';
import { stillToSay } from '../../../src/ledger/still-to-say';
import { runningTreatment } from '../../../src/ledger/treatment';
import { readinessOf, treatable } from '../../../src/ledger/treatment-begin';
import { planFor } from '../../../src/ledger/treatment-plan';
import { nextLook, stagesSoFar } from '../../../src/ledger/treatment-run';
import { checksAt, lastVentilation } from '../../../src/ledger/ventilation-found';
import {
  findingsAt,
  lastSeen,
  lastWalk,
  lookDue,
  notSeenSince,
  stillToSee,
  walkDue,
  walkOrder,
  walkUnderWay,
} from '../../../src/ledger/walks';
import { wasteKinds } from '../../../src/ledger/waste-kinds';
import { withoutLimit } from '../../../src/ledger/without-limit';
import { workshopLists } from '../../../src/ledger/workshop-lists';
import { labelsData } from '../../../src/paperwork/labels/gather';
import { labelKnownOf } from '../../../src/paperwork/labels/known-of';
import { mustLeave } from '../../../src/paperwork/must-leave';
import { calendarDay, monthOf } from '../../../src/rules/clocks/calendar-day';

export type When = { readonly now: string; readonly zone: string; readonly since: string };

type Told = Readonly<Record<string, unknown>>;

const idOf = ({ body }: ContainerState): string => body.containerId;

const standing = (state: State): readonly ContainerState[] =>
  [...state.containers.values()].filter(({ goneSince }) => goneSince === null);

const askers = ({ people }: State): readonly (string | null)[] => [
  null,
  ...[...people.values()].flatMap(({ leftAt, body }) => (leftAt === null ? body.personId : [])),
];

function contentsTold(state: State, container: ContainerState): Told {
  const id = idOf(container);
  const figures = containerFigures(state, id);
  const acid = figures.acid.figure;
  return {
    named: namedFigures(figures),
    why: [figures.noBase, figures.silent, figures.acid.openIn, figures.contents.unaccounted],
    evidence: [
      acid && evidenceBehind(state, acid, 'acid'),
      ...figures.metals.map(({ metal, all }) => all && evidenceBehind(state, all, metal)),
    ],
    disputed: disputesIn(state, id),
    mass: massOf(state, container),
    kinds: wasteKinds(state, id),
    side: contentsSide(state, id),
    answers: container.answers,
    tests: container.benchTests.filter(({ staleSince }) => staleSince === null),
    reports: resultsNow(container.reports),
    disagrees: reportDisagreements(state, container),
    'not-determined': notDetermined(state, id),
  };
}

function candidatesTold(state: State, container: ContainerState): Told {
  const all = candidatesOf(state, container);
  if (typeof all === 'string') return { candidates: all };
  return {
    candidates: all,
    words: [waiting(container, all), lackingIn(all), stillToSay(container, all)],
    besides: acceptedBesides(container, all),
  };
}

function standingTold(state: State, container: ContainerState, { now, zone }: When): Told {
  const id = idOf(container);
  return {
    life: [lifeOf(state, container), isDoubted(state, container), mayBeDone(state, container)],
    dues: [duesOf(state, container, now, zone), accumulationStart(state, container)],
    leaves: mustLeave({ state, now, zone }, container),
    look: [lookDue(state, container, now, zone), lastSeen(state, container)],
    findings: findingsAt(state, id).filter(({ closed }) => closed === null),
    fill: [fillLimit(state, container), fillPercent(container), freeSpace(state, id)],
    level: levelAgainst(container),
    beside: standsNearWork(state, container),
    gaps: gapsOf(state, container, containerFigures(state, id), { now, zone }),
    places: emptyPlaces(state, container).map(idOf),
    signed: signedOver(state, [id]),
  };
}

function labelTold(state: State, container: ContainerState, { now, zone }: When): Told {
  const asked = { state, now, zone, madeBy: 'Maren', sign: '.', demo: false, appAddress: 'app' } as const;
  const id = idOf(container);
  return { label: labelsData([id], asked, new Map([[id, labelKnownOf(state, container)]])) };
}

/** What would be lost by thinning, were some of each poured into the next one. */
function dilutionTold(state: State): Told {
  const ids = standing(state).flatMap((container) => (container.contents.length > 0 ? idOf(container) : []));
  return Object.fromEntries(
    ids.map((id, i) => {
      const coming = comingOutOf(state, ids[i + 1] ?? '', [{ value: '0.4', unit: 'L' }]);
      return [`diluted ${id}`, dilutedBy(state, id, coming)];
    }),
  );
}

function treatingTold(state: State, container: ContainerState, { now }: When): Told {
  const id = idOf(container);
  const load = treatableLoad(state, id);
  return {
    load,
    minded: load && minded(load, 'hydrated-lime'),
    fill: fillForBase(state, id, { stages: [{ agent: 'limestone' }] }),
    running: runningTreatment(state, id)?.body.treatmentId,
    begin: askers(state).map((who) => readinessOf(state, id, { who, at: now })),
  };
}

/** It asks the model, which takes a while: of the first that has a load. */
function plannedTold(state: State, id: string): Told {
  return {
    needed: baseForPh(state, id, 'hydrated-lime', 9),
    comes: comesOf(state, id, 'hydrated-lime', 9),
    bench: benchFor(state, id, 'hydrated-lime'),
    plan: planFor(state, id, { stages: [{ base: 'hydrated-lime', pH: 9 }] }),
  };
}

function treatmentTold(state: State, treatment: TreatmentState): Told {
  return {
    before: namedFigures(figuresBefore(state, treatment.body.treatmentId)),
    stages: stagesSoFar(treatment),
    look: nextLook(treatment),
    outlook: outlookOf(state, treatment),
  };
}

function batchTold(state: State, { body: { batchId } }: BatchState, { now }: When): Told {
  const stationIds = [undefined, ...state.stations.keys()];
  return {
    offers: askers(state).flatMap((who) =>
      stationIds.map((stationId) => stepOffers(state, { batchId, who, at: now, stationId })),
    ),
    awaited: looksAwaited(state, batchId),
    ventilation: lastVentilation(state, batchId),
  };
}

/** Months of which everything is at hand, this one first. */
function monthsTold(state: State, { now, zone, since }: When): Told {
  const months: string[] = [];
  for (let month = monthOf(now, zone); `${month}-01` > since.slice(0, 10); ) {
    months.push(month);
    month = monthOf(new Date(Date.parse(`${month}-01T00:00:00.000Z`) - 86_400_000).toISOString(), zone);
  }
  return Object.fromEntries(
    months.map((name) => {
      const { month, against } = monthHeld(state, name, zone);
      // What arose in another month is judged to have, and older ones are not at hand.
      return [name, { ...month, judged: month.judged.filter(({ rule }) => rule !== 'other-month'), against }];
    }),
  );
}

function listsTold(state: State, { now }: When): Told {
  const lists = [...workshopLists(state).values()];
  return {
    lists,
    changed: lists.map((list) =>
      askers(state).map((who) => (who === null ? [] : changedForPerson(state, list, who))),
    ),
    required: lists.map((list) =>
      askers(state).map((who) => requiredBefore(state, list, { who, batchId: null, at: now })),
    ),
    readings: lists.map(({ id, items }) => items.map((item) => lastReading(state, id, item.id))),
    holding: clearancesHolding(state, now),
  };
}

function walkTold(state: State, { now, zone }: When): Told {
  const underWay = walkUnderWay(state, now);
  return {
    due: walkDue(state, now, zone),
    last: lastWalk(state),
    order: walkOrder(state).map(idOf),
    'not-seen': notSeenSince(state),
    'under-way': underWay,
    'to-see': underWay && stillToSee(state, underWay.walkId, []).map(idOf),
    place: findingsAt(state, null).filter(({ closed }) => closed === null),
  };
}

/** Of a paper whose containers are here: what was put away is gone. */
function paperTold(state: State): unknown {
  const ids = [...state.papers.values()].at(-1)?.body.containerIds ?? [];
  const areHere = ids.every((id) => state.containers.get(id)?.goneSince === null);
  return areHere ? containersOnPaper(state) : null;
}

function placeTold(state: State, when: When): Told {
  const { now, zone } = when;
  const { workshop, people, rules, bases, prices, stations } = state;
  return {
    place: { workshop, people, rules, bases, prices, stations, kept: basesKept(state) },
    gaps: gapsOfPlace(state),
    pressing: pressing(state, now, zone).filter(({ what }) => what !== 'flag'),
    due: [dues(state, now, zone), dueNow(state, now, zone), withoutLimit(state, now, zone)],
    clocks: runningClocks(state, now),
    hoods: hoodsDue(state, calendarDay(now, zone)),
    checks: [...stations.keys()].map((id) => checksAt(state, id)[0]),
    beside: nearWork(state, now, zone),
    'on-site': onSiteNow(state),
    apart: apartAmong(state, standing(state).map(idOf)),
    treatable: treatable(state).map(idOf),
    soda: neutraliserFor(state),
    paper: paperTold(state),
    awaited: [...state.handOvers.values()].flatMap((load) =>
      awaited(state, load).length > 0 ? [[load, awaited(state, load), differencesOf(state, load)]] : [],
    ),
  };
}

/** Each under the name of what it is asked of: "container C-07 label". */
function named(of: string, told: Told): readonly (readonly [string, unknown])[] {
  return Object.entries(told).map(([name, value]) => [`${of} ${name}`, value]);
}

const runsOrBegan = (state: State, { steps }: BatchState, since: string): boolean =>
  steps.some((id) => {
    const step = state.steps.get(id);
    return step !== undefined && (step.endedAt === null || step.at >= since);
  });

export type Asking = (state: State, when: When) => Generator<readonly [string, unknown]>;

/** What is told of the place, its walks, lists and months, and of what runs there. */
export const toldOfPlace: Asking = function* (state, when) {
  yield* named('place', placeTold(state, when));
  yield* named('walk', walkTold(state, when));
  yield* named('lists', listsTold(state, when));
  yield* named('month', monthsTold(state, when));
  for (const batch of state.batches.values())
    if (runsOrBegan(state, batch, when.since))
      yield* named(`batch ${batch.body.code}`, batchTold(state, batch, when));
  for (const treatment of state.treatments.values())
    if (treatment.ended === null)
      yield* named(`treatment ${treatment.body.treatmentId}`, treatmentTold(state, treatment));
};

/** What is told of each container that stands here. */
export const toldOfContainers: Asking = function* (state, when) {
  for (const container of standing(state)) {
    const of = `container ${container.body.code}`;
    yield* named(of, contentsTold(state, container));
    yield* named(of, candidatesTold(state, container));
    yield* named(of, standingTold(state, container, when));
    yield* named(of, labelTold(state, container, when));
  }
  yield* named('container', dilutionTold(state));
};

/** What is told before any of them is treated: it asks the model. */
export const toldBeforeTreating: Asking = function* (state, when) {
  for (const container of standing(state))
    yield* named(`container ${container.body.code}`, treatingTold(state, container, when));
  const first = standing(state)
    .map(idOf)
    .find((id) => treatableLoad(state, id));
  if (first !== undefined) yield* named(`container ${first}`, plannedTold(state, first));
};
