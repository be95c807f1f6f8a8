/** What pages, labels and lists tell of each container that stands here. */
import { accumulationStart, standsNearWork } from '../../../src/ledger/accumulation';
import { lackingIn, waiting } from '../../../src/ledger/candidate-words';
import { acceptedBesides, candidatesOf } from '../../../src/ledger/container-candidates';
import { containerFigures, namedFigures } from '../../../src/ledger/container-figures';
import { isDoubted, lifeOf, mayBeDone } from '../../../src/ledger/container-life';
import { massOf } from '../../../src/ledger/container-mixture';
import { comingOutOf, dilutedBy } from '../../../src/ledger/dilution';
import { disputesIn } from '../../../src/ledger/disagreements';
import { duesOf } from '../../../src/ledger/due';
import { evidenceBehind } from '../../../src/ledger/evidence-behind';
import { fillLimit, fillPercent } from '../../../src/ledger/fill';
import { freeSpace } from '../../../src/ledger/free-space';
import { resultsNow } from '../../../src/ledger/lab-levels';
import { levelAgainst } from '../../../src/ledger/level-against';
import { contentsSide } from '../../../src/ledger/meeting-sides';
import { notDetermined } from '../../../src/ledger/not-determined';
import { emptyPlaces } from '../../../src/ledger/places-that-fit';
import { gapsOf } from '../../../src/ledger/readiness';
import { reportDisagreements } from '../../../src/ledger/report-disagrees';
import { signedOver } from '../../../src/ledger/signed-over';
import type { ContainerState, State } from '../../../src/ledger/state';
import { stillToSay } from '../../../src/ledger/still-to-say';
import { findingsAt, lastSeen, lookDue } from '../../../src/ledger/walks';
import { wasteKinds } from '../../../src/ledger/waste-kinds';
import { labelsData } from '../../../src/paperwork/labels/gather';
import { labelKnownOf } from '../../../src/paperwork/labels/known-of';
import { mustLeave } from '../../../src/paperwork/must-leave';
import { type Asking, idOf, named, standing, type Told, type When } from './asking';

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
