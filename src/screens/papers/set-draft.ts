/** The set that is being put together: which containers, how it is printed, and whose signature is under it. */
import { useMemo } from 'preact/hooks';
import * as z from 'zod/mini';
import { signedOver as signedOverNow } from '../../ledger/signed-over';
import type { ContainerState, State } from '../../ledger/state';
import type { Form } from '../form';
import { useForm } from '../form';
import { useShell } from '../shell';
import { isSigned, notSigned, Signing, signatureOf } from '../signing';
import type { DisposalWanted } from './disposal-job';
import { chosenSet } from './set-address';
import { usualSheet } from './sheet';

const SetDraft = z.object({
  chosen: z.array(z.string()),
  sheet: z.enum(['A4', 'Letter']),
  labels: z.boolean(),
  working: z.boolean(),
  signing: Signing,
  /** What had been told of the containers when it was signed: `signedOver`. */
  signedOver: z.string(),
});
export type SetDraft = z.infer<typeof SetDraft>;

/** Containers that are set aside to leave, in the order of the record. */
export const leavingIds = ({ containers }: State): readonly string[] =>
  [...containers.values()]
    .filter(({ leavingSince, goneSince }) => leavingSince !== null && goneSince === null)
    .map(({ body }) => body.containerId);

function idsOf(state: State, set: string): readonly string[] {
  if (set === chosenSet) return leavingIds(state);
  const paper = [...state.papers.values()].find(({ body }) => body.paperId === set);
  return paper?.body.containerIds ?? [set];
}

/** How a signature stands to what it is under. */
export type SignedState = 'not-signed' | 'signed' | 'signed-before';

export type SetBegun = {
  readonly form: Form<SetDraft>;
  /** Those chosen that are in the record. */
  readonly containers: readonly ContainerState[];
  readonly signed: SignedState;
  readonly wanted: DisposalWanted;
};

export function useSet(set: string): SetBegun {
  const { state, person } = useShell();
  const form = useForm(`set-${set}`, SetDraft, () => ({
    chosen: [...idsOf(state.value, set)],
    sheet: usualSheet(navigator.language, state.value),
    labels: true,
    working: true,
    signing: notSigned(state.value.people.get(person.value ?? '')?.body.name),
    signedOver: '',
  }));
  const { chosen, sheet, labels, working, signing, signedOver } = form.value;
  const containers = [...state.value.containers.values()].filter(({ body }) =>
    chosen.includes(body.containerId),
  );
  const containerIds = containers.map(({ body }) => body.containerId);
  const record = state.value;
  const over = useMemo(() => signedOverNow(record, containerIds), [record, containerIds.join()]);
  const holds = signedOver === over;
  const signed = !isSigned(signing) ? 'not-signed' : holds ? 'signed' : 'signed-before';
  const signature = signed === 'signed' ? signatureOf(signing) : null;
  return { form, containers, signed, wanted: { containerIds, sheet, labels, working, signature } };
}
