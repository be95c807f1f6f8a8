/** Gathers what labels say from the state, and from what others make of it: hazards and codes. */

import type { Law } from '../../ledger/entries/local-rules';
import { lawsOf, lawsStated } from '../../ledger/laws';
import { codeOfBatch } from '../../ledger/put-away';
import { hashOf } from '../../ledger/seal';
import type { ContainerState, State } from '../../ledger/state';
import { givesGas, namedKind, wasteKinds } from '../../ledger/waste-kinds';
import { neverFor } from '../../safety/never-rules';
import type { StreamKind } from '../../safety/stream-kind';
import { dayOf } from '../dates';
import type { Asked } from '../disposal/asked';
import { dataWords } from '../disposal/data-words';
import { phOf, stateOf } from '../disposal/origins';
import { telephoneOf } from '../telephone';
import { capital, joined, notDetermined, streamMeaning, streamWords, unbroken } from '../words';
import { containerLink } from './container-link';
import { daysOf } from './days';
import type {
  CodeList,
  LabelCode,
  LabelContents,
  LabelData,
  LabelHazards,
  LabelLaw,
  LabelsContent,
  LabelsData,
} from './label-data';
import { shipmentOf } from './shipment';

export type LabelsAsked = Asked & {
  /** Where the app stands, with or without a page of it. */
  readonly appAddress: string;
};

/** What the record alone does not tell of one container; absent: not determined. */
export type LabelKnown = {
  readonly hazards?: LabelHazards;
  /** A transport entry is printed only once it is confirmed. */
  readonly codes?: readonly LabelCode[];
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
    const code = codeOfBatch(state, batchId);
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

/** The words of the United States are asked for to the letter, and serve elsewhere as well. */
function lawOf(state: State): LabelLaw | 'not determined' {
  if (!lawsStated(state)) return notDetermined;
  return lawsOf(state).some((law) => law.startsWith('us-')) ? 'us' : 'eu';
}

/** The list whose code each law has on a label. */
const listOf: Readonly<Record<Law, CodeList>> = {
  'us-federal': 'rcra',
  'us-california': 'rcra',
  eu: 'waste-list',
};

function missingOf(state: State, codes: readonly LabelCode[]): readonly CodeList[] {
  const lists = new Set(lawsOf(state).map((law) => listOf[law]));
  return [...lists].filter((list) => !codes.some((code) => code.list === list));
}

/** A transport entry is printed once it is confirmed; what was made of the record does not hold for contents that nobody knows. */
function codesOf({ doubtfulSince }: ContainerState, { codes = [] }: LabelKnown): readonly LabelCode[] {
  if (doubtfulSince !== null) return [];
  return codes.filter(({ list, standing }) => list !== 'transport' || standing.is === 'confirmed');
}

function labelOf(asked: LabelsAsked, container: ContainerState, known: LabelKnown): LabelData {
  const { state, appAddress } = asked;
  const { containerId, code } = container.body;
  const [law, contents, codes] = [lawOf(state), contentsOf(asked, container), codesOf(container, known)];
  const shipment = shipmentOf(state, container, { law, contents }, codes);
  return {
    containerId,
    code: unbroken(code),
    link: containerLink(appAddress, containerId),
    law,
    contents,
    hazards: container.doubtfulSince !== null ? notDetermined : (known.hazards ?? notDetermined),
    codes,
    codesNot: missingOf(state, codes),
    ...(shipment ? { shipment } : {}),
    nevers: neverFor(wasteKinds(state, containerId).kinds)
      .filter(({ id }) => id !== 'seal-gassing')
      .map(({ short }) => short),
    gas: gasOf(state, container),
    ...daysOf(asked, container, law),
  };
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
