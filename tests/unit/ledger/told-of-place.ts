/** What pages and lists tell of the place, and of what runs in it. */
import { basesKept } from '../../../src/ledger/bases-kept';
import { clearancesHolding } from '../../../src/ledger/clearance';
import { looksAwaited, runningClocks } from '../../../src/ledger/clocks-running';
import { figuresBefore, namedFigures } from '../../../src/ledger/container-figures';
import { awaited, dues } from '../../../src/ledger/due';
import { differencesOf } from '../../../src/ledger/hand-over-differences';
import { hoodsDue } from '../../../src/ledger/hoods-due';
import { changedForPerson } from '../../../src/ledger/last-gone-through';
import { lastReading } from '../../../src/ledger/last-reading';
import { containersOnPaper, neutraliserFor } from '../../../src/ledger/list-bounds';
import { nearWork } from '../../../src/ledger/near-work';
import { dueNow, pressing } from '../../../src/ledger/pressing';
import { monthHeld, onSiteNow } from '../../../src/ledger/quantities-now';
import { apartAmong, gapsOfPlace } from '../../../src/ledger/readiness';
import { outlookOf } from '../../../src/ledger/run-outlook';
import type { BatchState, State, TreatmentState } from '../../../src/ledger/state';
import { requiredBefore, stepOffers } from '../../../src/ledger/step-offers';
import { treatable } from '../../../src/ledger/treatment-begin';
import { nextLook, stagesSoFar } from '../../../src/ledger/treatment-run';
import { checksAt, lastVentilation } from '../../../src/ledger/ventilation-found';
import {
  findingsAt,
  lastWalk,
  notSeenSince,
  stillToSee,
  walkDue,
  walkOrder,
  walkUnderWay,
} from '../../../src/ledger/walks';
import { withoutLimit } from '../../../src/ledger/without-limit';
import { workshopLists } from '../../../src/ledger/workshop-lists';
import { calendarDay, monthOf } from '../../../src/rules/clocks/calendar-day';
import { type Asking, askers, idOf, named, standing, type Told, type When } from './asking';

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

const runsOrBegan = (state: State, { steps }: BatchState, since: string): boolean =>
  steps.some((id) => {
    const step = state.steps.get(id);
    return step !== undefined && (step.endedAt === null || step.at >= since);
  });

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
