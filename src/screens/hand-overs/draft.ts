/** A hand-over as its form holds it, and the entry that it becomes. */
import * as z from 'zod/mini';
import { isNothing, unitsOf } from '../../ledger/amounts';
import { isDoubted } from '../../ledger/container-life';
import type { Amount } from '../../ledger/entries/containers';
import type { FiledPaper } from '../../ledger/entries/files';
import { Files } from '../../ledger/entries/files';
import type { Photo } from '../../ledger/entries/photos';
import { Photos } from '../../ledger/entries/photos';
import type { IntentionOf } from '../../ledger/intention';
import type { ContainerState, State } from '../../ledger/state';
import { type FieldRead, readTyped, Typed, typed } from '../form';
import { notSigned, Signing, signatureOf } from '../signing';
import { given, givenFiles, givenPhotos } from '../tried';
import { WhenDraft } from '../when';
import { knownCollectors } from './collectors';

export const HandOverDraft = z.object({
  chosen: z.array(z.string()),
  /** Of those of which the collector has another amount. */
  theirs: z.record(z.string(), Typed),
  name: z.string(),
  licence: z.string(),
  contact: z.string(),
  destination: z.string(),
  driver: z.string(),
  vehicle: z.string(),
  document: z.string(),
  /** Null until somebody chose: the newest that names them all. Empty for none. */
  paperId: z.nullable(z.string()),
  generator: Signing,
  collector: Signing,
  photos: Photos,
  files: Files,
  note: z.string(),
  when: WhenDraft,
});
export type HandOverDraft = z.infer<typeof HandOverDraft>;

/**
 * What can leave: containers that are here and not empty, or of which nobody knows; those set aside first.
 * @param also what was chosen already, whatever it is
 */
export function mayLeave(state: State, also: readonly string[] = []): readonly ContainerState[] {
  const all = [...state.containers.values()].filter(
    (container) =>
      also.includes(container.body.containerId) ||
      (container.goneSince === null &&
        (!isNothing(container.holds) || container.levels.length > 0 || isDoubted(state, container))),
  );
  return all.toSorted((a, b) => Number(a.leavingSince === null) - Number(b.leavingSince === null));
}

/** Of a paper those that are still here. */
const begunWith = (state: State, id: string): readonly string[] =>
  state.papers.get(id)?.body.containerIds.filter((one) => state.containers.get(one)?.goneSince === null) ?? [
    id,
  ];

/** @param id the container, or the paper about several, that it was begun with; otherwise all that is set aside to leave */
export function emptyHandOver(
  state: State,
  id: string | undefined,
  signer: string | undefined,
): HandOverDraft {
  const aside = mayLeave(state).filter(({ leavingSince }) => leavingSince !== null);
  const [first] = knownCollectors(state);
  return {
    chosen: id === undefined ? aside.map(({ body }) => body.containerId) : [...begunWith(state, id)],
    theirs: {},
    name: first?.name ?? '',
    licence: first?.licence ?? '',
    contact: first?.contact ?? '',
    destination: first?.destination ?? '',
    driver: '',
    vehicle: '',
    document: '',
    paperId: id !== undefined && state.papers.has(id) ? id : null,
    generator: notSigned(signer),
    collector: notSigned(),
    photos: [],
    files: [],
    note: '',
    when: '',
  };
}

/** Who drives mostly signs: their name stands under it until somebody writes another. */
export const withDriver = ({ driver, collector }: HandOverDraft, now: string): Partial<HandOverDraft> => ({
  driver: now,
  ...(collector.name === driver ? { collector: { ...collector, name: now } } : {}),
});

/** As the collector has it: in the kind the record has, or the other. */
export const unitsTheirs: readonly Amount['unit'][] = ['L', 'mL', 'US gal', 'kg', 'g', 'lb'];

export const emptyTheirs = (container: ContainerState): Typed => typed(unitsOf(container.holds)[0]);

export const readTheirs = (field: Typed): FieldRead<Amount['unit']> =>
  readTyped<Amount['unit']>(field, { aboveZero: true });

/** Papers that name any of them, the newest first. */
export const papersOf = (state: State, chosen: readonly string[]) =>
  [...state.papers.values()]
    .filter(({ body }) => (body.paper ?? 'disposal') === 'disposal')
    .filter(({ body }) => body.containerIds.some((id) => chosen.includes(id)))
    .toReversed();

/** The one that was picked; the newest that names all of them where nobody has picked. */
export function paperChosen(state: State, { paperId, chosen }: HandOverDraft): string {
  if (paperId !== null) return paperId;
  const all = papersOf(state, chosen).find(({ body }) =>
    chosen.every((id) => body.containerIds.includes(id)),
  );
  return all?.body.paperId ?? '';
}

/** Null where an amount of the collector is missing or wrong. */
function takenOf(draft: HandOverDraft): IntentionOf<'log-hand-over'>['containers'] | null {
  const taken = [];
  for (const containerId of draft.chosen) {
    const field = draft.theirs[containerId];
    const read = field && readTheirs(field);
    if (read && read.state !== 'written') return null;
    taken.push({ containerId, ...(read ? { agreed: read.written as Amount } : {}) });
  }
  return taken.length === 0 ? null : taken;
}

type Kept = { readonly photos: readonly Photo[]; readonly files: readonly FiledPaper[] };

/** Null where something is missing or wrong, which the form then says. */
export function handOverIntention(
  state: State,
  draft: HandOverDraft,
  kept: Kept,
): IntentionOf<'log-hand-over'> | null {
  const containers = takenOf(draft);
  if (!containers || draft.name.trim() === '') return null;
  const [generator, collector] = [signatureOf(draft.generator), signatureOf(draft.collector)];
  const paperId = paperChosen(state, draft);
  return {
    do: 'log-hand-over',
    collector: {
      name: draft.name.trim(),
      ...given('licence', draft.licence),
      ...given('contact', draft.contact),
    },
    ...given('driver', draft.driver),
    ...given('vehicle', draft.vehicle),
    ...given('document', draft.document),
    ...given('destination', draft.destination),
    containers,
    ...(paperId === '' ? {} : { paperId }),
    signatures: { ...(generator ? { generator } : {}), ...(collector ? { collector } : {}) },
    ...given('note', draft.note),
    ...givenPhotos(kept.photos),
    ...givenFiles(kept.files),
  };
}
