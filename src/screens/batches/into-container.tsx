/** Into which container a waste goes: one that is there, a new one described on the spot, or none yet. */
import * as z from 'zod/mini';
import { asHeld } from '../../ledger/amounts';
import { nextCode } from '../../ledger/decisions/codes';
import { fillingFault } from '../../ledger/decisions/containers';
import type { Amount } from '../../ledger/entries/containers';
import type { StreamLogged } from '../../ledger/entries/streams';
import type { Refusal } from '../../ledger/refusal';
import type { ContainerState, State } from '../../ledger/state';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import { contentsTitle, heldText } from '../amounts';
import { emptyVessel, VesselDraft, VesselForm } from '../containers/vessel-form';
import { containerWords } from '../containers/words';
import { useShell } from '../shell';
import { words } from '../words';
import { logWords as w } from './words';

export const IntoDraft = z.object({
  /** '' not chosen, 'new', 'later', or a container's id. */
  where: z.string(),
  vessel: VesselDraft,
});
export type IntoDraft = z.infer<typeof IntoDraft>;

export const emptyInto = (vessel: VesselDraft['vessel']): IntoDraft => ({
  where: '',
  vessel: emptyVessel(vessel),
});

/** The container chosen, where it is one that is there. */
export const chosenContainer = (state: State, into: IntoDraft): ContainerState | undefined =>
  state.containers.get(into.where);

/** Why this should not go into the chosen container; null when it may, or when it goes into none that is there. */
export const intoFault = (
  state: State,
  into: IntoDraft,
  amount: Amount,
  stream: StreamLogged['stream'],
): Refusal | null =>
  chosenContainer(state, into)
    ? fillingFault(state, into.where, { added: asHeld(amount), streams: [stream], field: 'into' })
    : null;

type Props = {
  readonly into: IntoDraft;
  readonly onChange: (into: IntoDraft) => void;
  readonly tried: boolean;
};

export function IntoContainer({ into, onChange, tried }: Props) {
  const { state, sign } = useShell();
  const containers = [...state.value.containers.values()];
  const open = containers.filter(
    ({ closedAt, doubtfulSince }) => closedAt === null && doubtfulSince === null,
  );
  const codes = containers.map(({ body }) => body.code);
  const label = (c: ContainerState): string =>
    `${c.body.code}: ${contentsTitle(state.value, c.body.containerId) || containerWords.empty}, ${heldText(c.holds, sign.value)}`;
  return (
    <>
      <SelectField
        label={w.into}
        value={into.where === '' ? undefined : into.where}
        none={words.choose}
        options={[
          { value: 'new', label: w.newContainer },
          ...open.map((c) => ({ value: c.body.containerId, label: label(c) })),
          { value: 'later', label: w.later },
        ]}
        onChoose={(where) => onChange({ ...into, where })}
        error={tried && into.where === '' ? words.choice.missing : undefined}
      />
      {into.where === 'new' && (
        <Part title={containerWords.newTitle} width="edge">
          <VesselForm
            draft={into.vessel}
            onChange={(part) => onChange({ ...into, vessel: { ...into.vessel, ...part } })}
            tried={tried}
            nextCode={nextCode('C', codes)}
          />
        </Part>
      )}
    </>
  );
}
