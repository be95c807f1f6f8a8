/** What is written down already, beside the lines: shown as it was, and taken over by a tap, never by itself. */
import { acidChargedTo, acidInLiquorOf } from '../../ledger/acid-offered';
import { lastVentilationOf } from '../../ledger/ventilation-found';
import { formatWritten } from '../../quantities/format';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { amountText, momentText } from '../amounts';
import type { Form } from '../form';
import { useShell } from '../shell';
import { chargeText } from './charge-text';
import { draftOf, type VentilationDraft } from './draft';
import { ventilationWords as w } from './words';

type Props = { readonly form: Form<VentilationDraft>; readonly batchId: string | null };

/** Acid that the batch was charged with as it was poured, or the free acid of its liquor as it was titrated. */
export function AcidOffers({ form, batchId }: Props) {
  const { state, sign, now } = useShell();
  const batch = state.value.batches.get(batchId ?? '');
  if (!batch) return null;
  const leach = form.value.step === 'leach';
  const acids = leach ? acidChargedTo(batch) : acidInLiquorOf(state.value, batch);
  const said = leach ? w.charged : w.titrated;
  if (acids.length === 0) return null;
  return (
    <Buttons>
      {acids.slice(-3).map(({ entryId, at, volume, strength }) => (
        <Button
          key={entryId}
          second={said(momentText(at, now.value))}
          onTap={() =>
            form.change({
              volume: { typed: volume.value, unit: volume.unit },
              strength: { typed: strength.value, unit: strength.unit },
            })
          }
        >
          {w.useAcid(
            amountText(volume, sign.value),
            `${formatWritten(strength, sign.value)}\u202f${strength.unit}`,
          )}
        </Button>
      ))}
    </Buttons>
  );
}

/** The charge of this step that was checked last, of the same batch. */
export function LastCharge({ form, batchId }: Props) {
  const { state, sign, now } = useShell();
  const last = lastVentilationOf(state.value, batchId, form.value.step);
  if (!last) return null;
  const { charge } = last.body;
  return (
    <Part>
      <Button
        second={w.useLastSecond(momentText(last.at, now.value), chargeText(charge, sign.value))}
        onTap={() => form.change(draftOf(charge))}
      >
        {w.useLast}
      </Button>
    </Part>
  );
}
