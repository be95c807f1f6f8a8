/** What is written down already, beside the lines: shown as it was, and taken over by a tap, never by itself. */
import { lastVentilationOf } from '../../ledger/ventilation-found';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { amountText, momentText } from '../amounts';
import type { Form } from '../form';
import { useShell } from '../shell';
import { chargeText } from './charge-text';
import { draftOf, type VentilationDraft } from './draft';
import { ventilationWords as w } from './words';

type Props = { readonly form: Form<VentilationDraft>; readonly batchId: string | null };

/** Acid that the batch was charged with, as it was poured. */
export function AcidOffers({ form, batchId }: Props) {
  const { state, sign, now } = useShell();
  const charged = state.value.batches.get(batchId ?? '')?.charged ?? [];
  const acids = charged.flatMap(({ entryId, at, body: { charge } }) =>
    charge.what === 'acid' ? [{ entryId, at, charge }] : [],
  );
  if (acids.length === 0) return null;
  return (
    <Buttons>
      {acids.slice(-3).map(({ entryId, at, charge: { volume, strength } }) => (
        <Button
          key={entryId}
          second={w.charged(momentText(at, now.value))}
          onTap={() =>
            form.change({
              volume: { typed: volume.value, unit: volume.unit },
              strength: { typed: strength.value, unit: strength.unit },
            })
          }
        >
          {w.useAcid(
            amountText(volume, sign.value),
            `${strength.value.replace('.', sign.value)}\u202f${strength.unit}`,
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
