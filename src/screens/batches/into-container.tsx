/** Into which container a waste goes: one that is there, a new one described on the spot, or none yet. */
import * as z from 'zod/mini';
import { asHeld } from '../../ledger/amounts';
import { nextCode } from '../../ledger/decisions/codes';
import { fillingFault } from '../../ledger/decisions/containers';
import { describedFault } from '../../ledger/described-container';
import { comingOfWaste } from '../../ledger/dilution';
import type { Amount } from '../../ledger/entries/containers';
import { type Waste, wasteSide } from '../../ledger/meeting-sides';
import type { Refusal } from '../../ledger/refusal';
import type { ContainerState, State } from '../../ledger/state';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import { containerChoice, hereFirst } from '../containers/container-choice';
import { emptyVessel, VesselDraft, VesselForm, vesselIntention } from '../containers/vessel-form';
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

/**
 * Why this should not go into the chosen container, or into the new one as it is described; null when it may, or when
 * it goes into none yet.
 * @param at when the new one was taken into use
 */
export function intoFault(
  state: State,
  into: IntoDraft,
  filling: { readonly amount: Amount; readonly waste: Waste; readonly at: string },
): Refusal | null {
  const asked = {
    added: asHeld(filling.amount),
    side: wasteSide(state, filling.waste),
    field: 'into',
    coming: comingOfWaste(state, filling.waste, filling.amount),
  };
  if (into.where !== 'new')
    return chosenContainer(state, into) ? fillingFault(state, into.where, asked) : null;
  const described = vesselIntention(into.vessel, filling.at);
  return described && describedFault(state, described, asked);
}

type Props = {
  readonly into: IntoDraft;
  readonly onChange: (into: IntoDraft) => void;
  readonly tried: boolean;
  /** Offers these alone, beside a new one. */
  readonly only?: (container: ContainerState) => boolean;
};

export function IntoContainer({ into, onChange, tried, only }: Props) {
  const { state, sign } = useShell();
  const containers = hereFirst(state.value);
  const codes = containers.map(({ body }) => body.code);
  return (
    <>
      <SelectField
        label={w.into}
        value={into.where === '' ? undefined : into.where}
        none={words.choose}
        options={[
          { value: 'new', label: w.newContainer },
          ...(only ? containers.filter(only) : containers).map((c) =>
            containerChoice(state.value, c, sign.value),
          ),
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
