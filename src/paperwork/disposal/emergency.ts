/** What to know and to do if something goes wrong with a load, from the kinds of waste in it. Never a number that nobody gave. */
import { isDoubted } from '../../ledger/container-life';
import { lawsOf } from '../../ledger/laws';
import type { ContainerState, State } from '../../ledger/state';
import { wasteKinds } from '../../ledger/waste-kinds';
import { actOf, type EmergencyCard, emergencyCards } from '../../safety/emergency-cards';
import { emergencyServices, hazardsOf, type LoadHazard, loadEquipment } from '../../safety/load-hazards';
import { whoKnows } from '../telephone';
import { notDetermined, statusWords, unbroken } from '../words';
import type { Asked } from './asked';
import type { Emergency } from './set-data';
import { setWords as w } from './set-words';

type Telephone = Emergency['telephones'][number];

const statusText = (status: string): string => statusWords[status] ?? status;

/** The number of the services where no other line has it already. */
function servicesFor(state: State, given: string): Telephone[] {
  const places = new Set(lawsOf(state).map((law) => (law === 'eu' ? 'eu' : 'us')));
  return [...places].flatMap((place) => {
    const { number } = emergencyServices[place];
    return number === given ? [] : [{ who: w.services[place], number }];
  });
}

function telephonesOf(asked: Asked): Telephone[] {
  const { state } = asked;
  const told = state.workshop?.body;
  const number = told?.emergencyNumber ?? notDetermined;
  const { collector } = told ?? {};
  const known = whoKnows(asked);
  return [
    { who: w.emergencyNumber, number },
    ...servicesFor(state, number),
    known === null
      ? { who: w.knowsWaste, number: notDetermined }
      : { who: w.knows(known.name), number: known.phone },
    ...(collector ? [{ who: w.collector(collector.name), number: collector.contact }] : []),
  ];
}

const ofContainer = (state: State, container: ContainerState): readonly LoadHazard[] =>
  hazardsOf(wasteKinds(state, container.body.containerId).kinds, isDoubted(state, container));

function cardTold(card: EmergencyCard, number: string | undefined): Emergency['cards'][number] {
  return {
    title: card.title,
    say: [...card.say],
    steps: card.steps.map((step) => ({
      do: actOf(step, number),
      more: [...(step.small ?? [])],
      source: step.source,
      status: statusText(step.status),
    })),
  };
}

export function emergencyOf(asked: Asked, containers: readonly ContainerState[]): Emergency {
  const { state } = asked;
  const found = new Map<string, { hazard: LoadHazard; containers: string[] }>();
  for (const container of containers)
    for (const hazard of ofContainer(state, container)) {
      const one = found.get(hazard.id) ?? { hazard, containers: [] };
      one.containers.push(unbroken(container.body.code));
      found.set(hazard.id, one);
    }
  const all = hazardsOf([...new Set([...found.values()].flatMap(({ hazard }) => hazard.streams))], true);
  const hazards = all.flatMap(({ id }) => found.get(id) ?? []);
  const cards = new Set(hazards.flatMap(({ hazard }) => hazard.cards));
  return {
    telephones: telephonesOf(asked),
    hazards: hazards.map(({ hazard, containers: codes }) => ({
      title: hazard.title,
      is: hazard.is,
      gases: [...hazard.gases],
      notUsed: [...hazard.notUsed],
      containers: codes,
      source: hazard.source,
      status: statusText(hazard.status),
    })),
    cards: [...emergencyCards.values()].flatMap((card) =>
      cards.has(card.id) ? [cardTold(card, state.workshop?.body.emergencyNumber)] : [],
    ),
    equipment: loadEquipment.map(({ says, source, status }) => ({
      says,
      source,
      status: statusText(status),
    })),
  };
}
