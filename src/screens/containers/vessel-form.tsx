/** The lines that describe a new container; used on its own page and while logging a waste. */
import { format } from 'date-fns';
import * as z from 'zod/mini';
import type { IntentionOf } from '../../ledger/intention';
import { SelectField } from '../../ui/select-field';
import { TextField } from '../../ui/text-field';
import { readTyped, Typed, typed } from '../form';
import { NumberField } from '../number-field';
import { capWords, materialWords, vesselWords, containerWords as w } from './words';

export const VesselDraft = z.object({
  code: z.string(),
  vessel: z.enum(['jerrican', 'bottle', 'tub', 'drum']),
  capacity: Typed,
  material: z.enum(['HDPE', 'PP', 'glass', 'other']),
  /** What else it is made of; a draft of an earlier version has none. */
  otherMaterial: z._default(z.string(), ''),
  cap: z.enum(['vented', 'tight', 'lid', 'open']),
  place: z.string(),
  tray: z.string(),
});
export type VesselDraft = z.infer<typeof VesselDraft>;

export const emptyVessel = (vessel: VesselDraft['vessel'] = 'jerrican'): VesselDraft => ({
  code: '',
  vessel,
  capacity: { ...typed('L'), typed: vessel === 'tub' ? '12' : '5' },
  material: 'HDPE',
  otherMaterial: '',
  cap: vessel === 'tub' ? 'lid' : 'vented',
  place: '',
  tray: '',
});

export const readCapacity = (draft: VesselDraft) =>
  readTyped<'L' | 'mL' | 'US gal'>(draft.capacity, { aboveZero: true, most: 10_000 });

/** What to write down, or null while something is wrong. @param openedAt the moment it was taken into use */
export function vesselIntention(draft: VesselDraft, openedAt: string): IntentionOf<'open-container'> | null {
  const capacity = readCapacity(draft);
  if (capacity.state !== 'written') return null;
  const [code, place, tray] = [draft.code.trim(), draft.place.trim(), draft.tray.trim()];
  const other = draft.otherMaterial.trim();
  return {
    do: 'open-container',
    ...(code === '' ? {} : { code }),
    vessel: draft.vessel,
    capacity: capacity.written,
    material: draft.material,
    ...(draft.material === 'other' && other !== '' ? { otherMaterial: other } : {}),
    cap: draft.cap,
    ...(place === '' ? {} : { place }),
    ...(tray === '' ? {} : { tray }),
    openedOn: format(new Date(openedAt), 'yyyy-MM-dd'),
  };
}

const options = <V extends string>(names: Readonly<Record<V, string>>) =>
  (Object.entries(names) as [V, string][]).map(([value, label]) => ({ value, label }));

type Props = {
  readonly draft: VesselDraft;
  readonly onChange: (part: Partial<VesselDraft>) => void;
  readonly tried: boolean;
  readonly nextCode: string;
};

export const VesselForm = ({ draft, onChange, tried, nextCode }: Props) => (
  <>
    <SelectField
      label={w.vessel}
      value={draft.vessel}
      options={options(vesselWords)}
      onChoose={(vessel) => onChange({ vessel })}
    />
    <NumberField
      label={w.capacity}
      field={draft.capacity}
      units={['L', 'mL', 'US gal']}
      onChange={(capacity) => onChange({ capacity })}
      read={readCapacity(draft)}
      tried={tried}
    />
    <SelectField
      label={w.cap}
      value={draft.cap}
      options={options(capWords)}
      onChoose={(cap) => onChange({ cap })}
    />
    <SelectField
      label={w.material}
      value={draft.material}
      options={options(materialWords)}
      onChoose={(material) => onChange({ material })}
    />
    {draft.material === 'other' && (
      <TextField
        label={w.otherMaterial}
        value={draft.otherMaterial}
        maxLength={120}
        hint={w.otherMaterialHint}
        onInput={(otherMaterial) => onChange({ otherMaterial })}
      />
    )}
    <TextField
      label={w.code}
      value={draft.code}
      maxLength={16}
      hint={w.codeHint(nextCode)}
      onInput={(code) => onChange({ code })}
    />
    <TextField label={w.tray} value={draft.tray} maxLength={120} onInput={(tray) => onChange({ tray })} />
    <TextField label={w.place} value={draft.place} maxLength={120} onInput={(place) => onChange({ place })} />
  </>
);
