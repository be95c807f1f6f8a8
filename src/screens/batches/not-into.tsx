/** A waste that is being logged, and the container chosen for it that it must not go into. */
import { asHeld } from '../../ledger/amounts';
import type { Amount } from '../../ledger/entries/containers';
import { type Waste, wasteSide } from '../../ledger/meeting-sides';
import { placesThatFit } from '../../ledger/places-that-fit';
import { type ApartRefusal, cardOf, refusedFor } from '../apart/refused';
import { RefusedTransfer } from '../apart/refused-transfer';
import { useShell } from '../shell';
import { unplacedDrawing } from '../vessel-drawing';
import { chosenContainer, type IntoDraft } from './into-container';
import { previewVessel } from './preview-vessel';

type Props = {
  readonly refusal: ApartRefusal;
  readonly into: IntoDraft;
  readonly waste: Waste;
  readonly amount: Amount;
  readonly busy: boolean;
  /** A container's id, or 'new'. */
  readonly onPlace: (where: string) => void;
  readonly onAlready: (card: string) => void;
  readonly onBack: () => void;
};

export function NotInto({ refusal, into, waste, amount, onPlace, onAlready, ...rest }: Props) {
  const { state } = useShell();
  const chosen = chosenContainer(state.value, into)?.body;
  const { material, otherMaterial } = chosen ?? into.vessel;
  const side = wasteSide(state.value, waste);
  const containerId = chosen?.containerId ?? '';
  const refused = refusedFor(state.value, refusal, { side }, { containerId, material, otherMaterial });
  const filling = { added: asHeld(amount), side, field: 'into' };
  const code = chosen?.code ?? into.vessel.code.trim();
  return (
    <RefusedTransfer
      {...rest}
      refused={refused}
      from={{ code: null, drawing: unplacedDrawing(filling.added) }}
      into={{ code: code === '' ? null : code, drawing: previewVessel(state.value, into, null) }}
      places={placesThatFit(state.value, filling, [containerId])}
      onPlace={onPlace}
      onNew={() => onPlace('new')}
      onAlready={() => onAlready(cardOf(refused))}
    />
  );
}
