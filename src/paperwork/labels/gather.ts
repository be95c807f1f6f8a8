/** Gathers what labels say from the state, and from what others make of it: hazards, codes, the law that was chosen. */

import { hashOf } from '../../ledger/seal';
import type { ContainerState, State } from '../../ledger/state';
import { givesGas, namedKind, wasteKinds } from '../../ledger/waste-kinds';
import { storageClock } from '../../rules/clocks/storage-clock';
import { neverFor } from '../../safety/never-rules';
import type { StreamKind } from '../../safety/stream-kind';
import { dayOf } from '../dates';
import type { Asked } from '../disposal/asked';
import { phOf, stateOf } from '../disposal/origins';
import { capital, dataWords, joined, notDetermined, streamMeaning, streamWords, unbroken } from '../words';
import { containerLink } from './container-link';
import type {
  LabelCode,
  LabelContents,
  LabelData,
  LabelHazards,
  LabelLaw,
  LabelsContent,
  LabelsData,
} from './label-data';

export type LabelsAsked = Asked & {
  /** Where the app stands, with or without a page of it. */
  readonly appAddress: string;
};

/** What the record alone does not tell of one container; absent: not determined. */
export type LabelKnown = {
  /** Where it is not what the local rules say. */
  readonly law?: LabelLaw;
  readonly hazards?: LabelHazards;
  /** A transport entry is printed only once it is confirmed. */
  readonly codes?: readonly LabelCode[];
  /** When the law's time began, where that is not the first waste in. A calendar day. */
  readonly start?: string;
  /** The careful last day. */
  readonly mustLeaveBy?: string;
};

/** Kinds of what is in it, each once, as they are called now. */
function kindsIn(state: State, { contents }: ContainerState): readonly StreamKind[] {
  const kinds = contents.flatMap((part) => {
    const body = part.streamId === null ? undefined : state.streams.get(part.streamId)?.body;
    if (body) return [namedKind(body.stream, part)];
    return part.treatedBy.length > 0 ? (['treated-slurry'] as const) : [];
  });
  return [...new Set(kinds)];
}

function batchesOf(state: State, { contents }: ContainerState): string {
  const codes = contents.flatMap(({ streamId }) => {
    const batchId = streamId === null ? undefined : state.streams.get(streamId)?.body.batchId;
    const code = batchId ? state.batches.get(batchId)?.body.code : undefined;
    return code === undefined ? [] : [unbroken(code)];
  });
  const each = [...new Set(codes)];
  return each.length === 0 ? '' : ` ${capital(dataWords.ofBatches(each))}.`;
}

function nameOf(state: State, container: ContainerState): string {
  const kinds = kindsIn(state, container);
  const unaccounted = container.contents.some(({ streamId }) => streamId === null);
  const names = [...kinds.map((kind) => streamWords[kind]), ...(unaccounted ? [dataWords.notAccounted] : [])];
  const [only, ...more] = kinds;
  const told = only !== undefined && more.length === 0 && !unaccounted ? `: ${streamMeaning[only]}` : '';
  return `${capital(joined(names))}${told}`;
}

function contentsOf(asked: LabelsAsked, container: ContainerState): LabelContents {
  const { state, zone } = asked;
  const { doubtfulSince, contents } = container;
  if (doubtfulSince !== null) {
    const byRecord = contents.length === 0 ? notDetermined : nameOf(state, container);
    return { are: 'doubtful', since: dayOf(doubtfulSince, zone), byRecord };
  }
  if (contents.length === 0) return { are: 'none' };
  const second = `pH:\u00a0${phOf(asked, container)}. ${stateOf(asked, container)}.${batchesOf(state, container)}`;
  return { are: 'known', name: nameOf(state, container), second };
}

/** What nobody accounts for is taken for what gives off gas. */
function gasOf(state: State, { body, contents, doubtfulSince }: ContainerState): LabelData['gas'] {
  const { kinds, unaccounted } = wasteKinds(state, body.containerId);
  const gives = kinds.some(givesGas) || unaccounted || doubtfulSince !== null;
  if (contents.length === 0 && doubtfulSince === null) return 'none';
  if (!gives) return 'none';
  return body.cap === 'tight' ? 'fit-vent' : 'vented';
}

function startOf({ zone }: LabelsAsked, { firstWasteIn }: ContainerState, { start }: LabelKnown): string {
  if (start !== undefined) return start;
  return firstWasteIn === null ? notDetermined : dayOf(firstWasteIn, zone);
}

/** The day before the law's last one: whoever counts the first day as the first is still in time. */
function leaveBy(
  { state, now, zone }: LabelsAsked,
  { firstWasteIn }: ContainerState,
  known: LabelKnown,
): string {
  if (known.mustLeaveBy !== undefined) return known.mustLeaveBy;
  const stated = state.rules.get('storage-days')?.body.stated;
  if (firstWasteIn === null || stated?.rule !== 'storage-days') return notDetermined;
  return storageClock(firstWasteIn, Number(stated.value.value), now, zone).carefulLastDay;
}

/** The words of the United States are asked for to the letter, and serve elsewhere as well. */
function lawOf({ rules }: State): LabelLaw | undefined {
  const stated = rules.get('laws')?.body.stated;
  if (stated?.rule !== 'laws') return undefined;
  return stated.value.some((law) => law.startsWith('us-')) ? 'us' : 'eu';
}

function labelOf(asked: LabelsAsked, container: ContainerState, known: LabelKnown): LabelData {
  const { state, appAddress } = asked;
  const { containerId, code } = container.body;
  const doubtful = container.doubtfulSince !== null;
  return {
    containerId,
    code: unbroken(code),
    link: containerLink(appAddress, containerId),
    law: known.law ?? lawOf(state) ?? notDetermined,
    contents: contentsOf(asked, container),
    // What was made of the record does not hold for contents that nobody knows.
    hazards: doubtful ? notDetermined : (known.hazards ?? notDetermined),
    codes: doubtful
      ? []
      : (known.codes ?? []).filter(
          ({ list, standing }) => list !== 'transport' || standing.is === 'confirmed',
        ),
    nevers: neverFor(wasteKinds(state, containerId).kinds)
      .filter(({ id }) => id !== 'seal-gassing')
      .map(({ short }) => short),
    gas: gasOf(state, container),
    start: startOf(asked, container, known),
    mustLeaveBy: leaveBy(asked, container, known),
  };
}

/** The number of whoever made it, else of the first who works here and has one. */
function telephoneOf({ state, madeBy }: LabelsAsked): string {
  const here = [...state.people.values()].filter(({ leftAt }) => leftAt === null);
  const maker = here.find(({ body }) => body.name === madeBy && body.phone !== undefined);
  const { name, phone } = (maker ?? here.find(({ body }) => body.phone !== undefined))?.body ?? {};
  return phone === undefined ? notDetermined : `${phone} (${name})`;
}

function sealed(content: LabelsContent): LabelsData {
  const plain = JSON.parse(JSON.stringify(content)) as LabelsContent;
  return { ...plain, contentHash: hashOf(plain) };
}

/**
 * The labels of these containers, in the order asked for; one that is not in the record gets none.
 * @param known by container id
 * @throws when none of the containers is in the record
 */
export function labelsData(
  containerIds: readonly string[],
  asked: LabelsAsked,
  known: ReadonlyMap<string, LabelKnown> = new Map(),
): LabelsData {
  const { state, now, zone, madeBy, demo } = asked;
  const labels = [...new Set(containerIds)].flatMap((id) => {
    const container = state.containers.get(id);
    return container ? [labelOf(asked, container, known.get(id) ?? {})] : [];
  });
  if (labels.length === 0) throw new Error('a label needs a container of the record');
  const told = state.workshop?.body;
  return sealed({
    v: 1,
    kind: 'container-labels',
    language: 'en',
    demo,
    madeAt: now,
    zone,
    madeBy: madeBy ?? notDetermined,
    workshop: {
      name: told?.name ?? notDetermined,
      address: told?.address ?? notDetermined,
      telephone: telephoneOf(asked),
      generatorNumber: told?.generatorNumber ?? notDetermined,
    },
    labels,
  });
}
