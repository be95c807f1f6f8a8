/**
 * What arose, was treated and left, with the data that Directive 2008/98/EC, Article 35, wants in a chronological record
 * (from memory): quantity, nature, origin, destination, mode of transport, treatment. 40 CFR 262.40 wants manifests, reports
 * and determinations kept; of them the record has the numbers and whose word it is.
 */

import type { ContainerMarked } from '../../ledger/entries/containers';
import type { StreamLogged } from '../../ledger/entries/streams';
import { codeOfBatch, codeOfContainer } from '../../ledger/put-away';
import type { ContainerState, HandOverState, State, Told, TreatmentState } from '../../ledger/state';
import { dayOf } from '../dates';
import { type Asked, amountText, heldText } from '../disposal/asked';
import { agentWords, dataWords } from '../disposal/data-words';
import { notDetermined, streamMeaning, streamWords, unbroken } from '../words';
import { atMoment, wastesText } from './at-moment';
import { isIn, type Period } from './period';
import type { WasteLine } from './register-data';
import { registerWords as w } from './register-words';

type Line = WasteLine & { readonly at: string };
type Happened = { readonly entryId: string; readonly at: string };

const said = (parts: readonly (string | undefined)[]): string =>
  parts.filter((part) => part !== undefined && part !== '').join(', ') || notDetermined;

const codeOf = (state: State, id: string): string => unbroken(codeOfContainer(state, id) ?? notDetermined);

const codesOf = (state: State, ids: readonly string[]): string => said(ids.map((id) => codeOf(state, id)));

/** Codes that somebody accepted by then. */
const acceptedCodes = ({ answers }: ContainerState, moment: string): string[] =>
  answers.flatMap(({ at, body }) =>
    body.answer === 'accepted' && at <= moment ? [w.codeBy(body.code, body.saidBy)] : [],
  );

/** What is in it just then: what happened in that moment is not left out. */
const justAfter = (at: string): string => `${at}~`;

function natureOf(state: State, containerId: string, at: string): string {
  const container = state.containers.get(containerId);
  if (!container) return notDetermined;
  const wastes = wastesText(state, atMoment(container, justAfter(at)));
  return said([...wastes, ...acceptedCodes(container, at)]);
}

const batchesOf = (state: State, streamIds: readonly string[]): string =>
  said([
    ...new Set(
      streamIds.flatMap((id) => {
        const batchId = state.streams.get(id)?.body.batchId;
        const code = codeOfBatch(state, batchId);
        return code === undefined ? [] : [w.batch(unbroken(code))];
      }),
    ),
  ]);

const originOf = (state: State, containerId: string, at: string): string => {
  const container = state.containers.get(containerId);
  return container ? batchesOf(state, atMoment(container, justAfter(at)).streamIds) : notDetermined;
};

export function wasteLines(asked: Asked, period: Period, numberOf: (entryId: string) => number): WasteLine[] {
  const { state, sign, zone } = asked;
  const line = (
    { entryId, at }: Happened,
    event: WasteLine['event'],
    told: Partial<Omit<WasteLine, 'event'>>,
  ): Line[] =>
    isIn(period, at)
      ? [
          {
            at,
            number: numberOf(entryId),
            day: dayOf(at, zone),
            event,
            quantity: notDetermined,
            nature: notDetermined,
            origin: notDetermined,
            destination: notDetermined,
            mode: notDetermined,
            method: notDetermined,
            document: notDetermined,
            ...told,
          },
        ]
      : [];

  const amountOf = ({ liquid, solid }: StreamLogged): string =>
    said([liquid && amountText(liquid.volume, sign), solid && amountText(solid.wetMass, sign)]);

  const originOfStream = ({ batchId, stepId }: StreamLogged): string => {
    const step = stepId === null ? undefined : state.steps.get(stepId)?.body.step.replaceAll('-', ' ');
    const code = codeOfBatch(state, batchId);
    return said([code === undefined ? w.noBatch : w.batch(unbroken(code)), step]);
  };

  const arose = [...state.streams.values()].flatMap((stream) =>
    line(stream, 'arose', {
      quantity: amountOf(stream.body),
      nature: `${streamWords[stream.body.stream]}: ${streamMeaning[stream.body.stream]}`,
      origin: originOfStream(stream.body),
      destination: codesOf(state, [...new Set(stream.placements.map(({ containerId }) => containerId))]),
      mode: w.withinWorkshop,
    }),
  );

  const methodOf = ({ doses, ended }: TreatmentState): string =>
    said([
      ...doses.map(({ body }) => `${agentWords(body.agent)} ${amountText(body.mass, sign)}`),
      ended ? dataWords.outcome[ended.body.outcome] : undefined,
    ]);

  const treated = [...state.treatments.values()].flatMap((treatment) => {
    const { containerId } = treatment.body;
    const container = state.containers.get(containerId);
    const then = container && atMoment(container, justAfter(treatment.at));
    return line(treatment, 'treated', {
      ...(then ? { quantity: heldText(then.holds, sign) } : {}),
      nature: natureOf(state, containerId, treatment.at),
      origin: codeOf(state, containerId),
      destination: codeOf(state, containerId),
      mode: w.withinWorkshop,
      method: methodOf(treatment),
    });
  });

  const left = (handOver: HandOverState): Line[] =>
    handOver.parts.flatMap(({ containerId, agreed, held }) => {
      const { collector, destination, vehicle, document } = handOver.body;
      const proof = handOver.proofs.findLast(({ body }) => body.containerIds.includes(containerId));
      return line(handOver, 'left', {
        quantity: agreed
          ? w.agreed(heldText(held, sign), amountText(agreed, sign))
          : w.byRecord(heldText(held, sign)),
        nature: `${codeOf(state, containerId)}: ${natureOf(state, containerId, handOver.at)}`,
        origin: originOf(state, containerId, handOver.at),
        destination: said([collector.name, collector.licence && w.licence(collector.licence), destination]),
        mode: said([vehicle, handOver.body.driver]),
        document: document ?? notDetermined,
        method: proof?.body.treatedHow ?? notDetermined,
      });
    });

  const whatCameOfIt = (handOver: HandOverState): Line[] => [
    ...handOver.rejected.flatMap((told) =>
      line(told, 'came-back', {
        nature: `${codesOf(state, told.body.containerIds)}: ${told.body.why}`,
        origin: handOver.body.collector.name,
        destination: w.here,
        document: told.body.document ?? notDetermined,
      }),
    ),
    ...handOver.proofs.flatMap((told) =>
      line(told, 'proof', {
        nature: codesOf(state, told.body.containerIds),
        origin: originOf(state, told.body.containerIds[0] ?? '', handOver.at),
        destination: said([told.body.saidBy ?? handOver.body.collector.name, handOver.body.destination]),
        method: told.body.treatedHow ?? notDetermined,
        document: told.body.document ?? notDetermined,
      }),
    ),
  ];

  const handedOver = new Set(
    [...state.handOvers.values()].flatMap((one) => [
      one.entryId,
      ...one.rejected.map((told) => told.entryId),
    ]),
  );
  /** Containers that left some other way than by a hand-over. */
  const marked = (container: ContainerState, mark: Told<ContainerMarked>): Line[] => {
    const { mark: what, to, document } = mark.body;
    const { containerId, code } = container.body;
    if (handedOver.has(mark.entryId)) return [];
    const told = {
      document: document ?? notDetermined,
      nature: `${unbroken(code)}: ${natureOf(state, containerId, mark.at)}`,
    };
    const holds = heldText(atMoment(container, justAfter(mark.at)).holds, sign);
    const origin = originOf(state, containerId, mark.at);
    if (what === 'gone')
      return line(mark, 'left', {
        ...told,
        quantity: w.byRecord(holds),
        origin,
        destination: to ?? notDetermined,
      });
    if (what === 'came-back')
      return line(mark, 'came-back', { ...told, quantity: w.byRecord(holds), destination: w.here });
    return what === 'proof-filed' ? line(mark, 'proof', { ...told, origin }) : [];
  };

  return [
    ...arose,
    ...treated,
    ...[...state.handOvers.values()].flatMap((one) => [...left(one), ...whatCameOfIt(one)]),
    ...[...state.containers.values()].flatMap((container) =>
      container.marks.flatMap((mark) => marked(container, mark)),
    ),
  ]
    .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : a.number - b.number))
    .map(({ at: _, ...told }) => told);
}
