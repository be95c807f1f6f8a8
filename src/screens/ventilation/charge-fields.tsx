/** The lines of a charge that makes gas: metal, acid, how the gas comes, the limit. */
import { formatWritten } from '../../quantities/format';
import { nitrousGas } from '../../reference/nitrous-gas-tables';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import type { Form } from '../form';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { strengthUnits, timeUnits, type VentilationDraft, volumeUnits } from './draft';
import { LimitFields, MixingFields } from './limit-fields';
import { MetalFields } from './metal-fields';
import { AcidOffers } from './offers';
import type { ChargeRead } from './read-charge';
import { ventilationWords as w } from './words';

export type FieldsProps = {
  readonly form: Form<VentilationDraft>;
  readonly read: ChargeRead;
  /** The person has tried to go on: what is missing is said now. */
  readonly tried: boolean;
  readonly batchId: string | null;
};

function AcidFields({ form, read, tried, batchId }: FieldsProps) {
  const { step, volume, strength } = form.value;
  return (
    <Part rule title={step === 'cementation' ? w.acidOf.cementation : w.acidOf.leach}>
      <AcidOffers form={form} batchId={batchId} />
      <NumberField
        label={w.volume}
        field={volume}
        onChange={(next) => form.change({ volume: next })}
        read={read.reads.volume}
        tried={tried}
        units={volumeUnits}
      />
      <NumberField
        label={w.strength}
        field={strength}
        onChange={(next) => form.change({ strength: next })}
        read={read.reads.strength}
        tried={tried}
        units={strengthUnits}
      />
    </Part>
  );
}

function ReleaseFields({ form, read, tried }: FieldsProps) {
  const { sign } = useShell();
  const { share, within } = nitrousGas.peak;
  const text = (value: string) => value.replace('.', sign.value);
  return (
    <Part rule title={w.release}>
      <NumberField
        label={w.releaseTime}
        field={form.value.release}
        onChange={(release) => form.change({ release })}
        read={read.reads.release}
        tried={tried}
        units={timeUnits}
      />
      <NumberField
        label={w.share}
        field={form.value.share}
        onChange={(next) => form.change({ share: next })}
        read={read.reads.share}
        tried={tried}
        units={['%']}
        optional
        hint={w.shareEmpty(text(share.low), text(share.high))}
      />
      <NumberField
        label={w.within}
        field={form.value.within}
        onChange={(next) => form.change({ within: next })}
        read={read.reads.within}
        tried={tried}
        units={timeUnits}
        optional
        hint={w.withinEmpty(formatWritten(within, sign.value))}
      />
      {read.faults.peak !== undefined && <Notice mark="wrong">{read.faults.peak}</Notice>}
    </Part>
  );
}

export const ChargeFields = (props: FieldsProps) => (
  <>
    {props.form.value.step === 'leach' && <MetalFields {...props} />}
    <AcidFields {...props} />
    <ReleaseFields {...props} />
    <LimitFields {...props} />
    <MixingFields {...props} />
  </>
);
