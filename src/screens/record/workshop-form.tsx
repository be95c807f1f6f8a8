/** The fields of the workshop, the three that must be there first, the rest folded. */
import { Part } from '../../ui/page';
import { TextField, type TextFieldProps } from '../../ui/text-field';
import styles from './record.module.css';
import { workshopWords as w } from './words';
import type { WorkshopField, WorkshopFields } from './workshop-fields';

type Line = {
  readonly field: WorkshopField;
  readonly label: string;
  readonly hint?: string;
  readonly kind?: TextFieldProps['kind'];
  readonly longest: number;
  readonly autoComplete?: string;
};

const needed: readonly Line[] = [
  { field: 'name', label: w.name, longest: 120, autoComplete: 'organization' },
  {
    field: 'address',
    label: w.address,
    hint: w.addressHint,
    kind: 'lines',
    longest: 500,
    autoComplete: 'street-address',
  },
  { field: 'emergencyNumber', label: w.emergencyNumber, hint: w.emergencyHint, kind: 'tel', longest: 120 },
];

const more: readonly Line[] = [
  { field: 'mapReference', label: w.mapReference, hint: w.mapHint, longest: 120 },
  { field: 'noSignal', label: w.noSignal, kind: 'lines', longest: 2000 },
  { field: 'generatorNumber', label: w.generatorNumber, hint: w.generatorHint, longest: 120 },
  { field: 'authority', label: w.authority, longest: 120 },
  { field: 'authorityContact', label: w.authorityContact, kind: 'lines', longest: 500 },
  { field: 'collector', label: w.collector, longest: 120 },
  { field: 'collectorContact', label: w.collectorContact, kind: 'lines', longest: 500 },
  { field: 'collectorLicence', label: w.collectorLicence, longest: 120 },
  { field: 'counter', label: w.counter, hint: w.counterHint, kind: 'lines', longest: 500 },
];

type WorkshopFormProps = {
  readonly value: WorkshopFields;
  readonly change: (part: Partial<WorkshopFields>) => void;
  /** Shown at their fields. */
  readonly faults: Partial<Record<WorkshopField, string>>;
};

export function WorkshopForm({ value, change, faults }: WorkshopFormProps) {
  const line = ({ field, label, hint, kind, longest, autoComplete }: Line) => (
    <TextField
      key={field}
      label={label}
      value={value[field]}
      onInput={(typed) => change({ [field]: typed })}
      kind={kind}
      rows={2}
      hint={hint}
      error={faults[field]}
      maxLength={longest}
      autoComplete={autoComplete}
      required={needed.some((one) => one.field === field)}
    />
  );
  const open = more.some(({ field }) => faults[field] !== undefined || value[field] !== '');
  return (
    <Part>
      {needed.map(line)}
      <details class={styles.fold} open={open || undefined}>
        <summary>
          <span>{w.more}</span>
        </summary>
        <p class={styles.quiet}>{w.moreHint}</p>
        {more.map(line)}
      </details>
    </Part>
  );
}
