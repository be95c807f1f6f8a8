/** The lines that describe a new container; used on its own page and while logging a waste. */
import { format } from 'date-fns';
import * as z from 'zod/mini';
import type { ContainerOpened } from '../../ledger/entries/containers';
import type { IntentionOf } from '../../ledger/intention';
import { SelectField } from '../../ui/select-field';
import { TextField } from '../../ui/text-field';
import { readTyped, Typed, typed } from '../form';
import { NumberField } from '../number-field';
import { PickOrWrite } from '../pick-or-write';
import { useShell } from '../shell';
import { lifeWords } from './life-words';
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
  /** A draft of an earlier version has none. */
  area: z._default(z.enum(['', 'near-work', 'store']), ''),
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
  area: '',
});

/** A vessel as it is now. */
export const vesselDraftOf = (body: ContainerOpened): VesselDraft => ({
  code: body.code,
  vessel: body.vessel,
  capacity: { typed: body.capacity.value, unit: body.capacity.unit },
  material: body.material,
  otherMaterial: body.otherMaterial ?? '',
  cap: body.cap,
  place: body.place ?? '',
  tray: body.tray ?? '',
  area: body.area ?? '',
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
    ...(draft.area === '' ? {} : { area: draft.area }),
    openedOn: format(new Date(openedAt), 'yyyy-MM-dd'),
  };
}

type Change = Omit<IntentionOf<'change-container'>, 'do' | 'containerId' | 'note' | 'photos'>;

/** What was given before and is empty now is there no more. */
const textChange = <K extends 'otherMaterial' | 'place' | 'tray'>(
  key: K,
  was: string | undefined,
  is: string,
): { readonly [P in K]?: string | null } => {
  const text = is.trim();
  if (text === (was ?? '')) return {};
  return { [key]: text === '' ? null : text } as { readonly [P in K]: string | null };
};

/** What is other about a vessel; null while something is wrong, empty where nothing is other. */
export function vesselChange(was: ContainerOpened, draft: VesselDraft): Change | null {
  const capacity = readCapacity(draft);
  if (capacity.state !== 'written') return null;
  const { written } = capacity;
  const same = written.value === was.capacity.value && written.unit === was.capacity.unit;
  return {
    ...(same ? {} : { capacity: written }),
    ...(draft.material === was.material ? {} : { material: draft.material }),
    ...textChange('otherMaterial', was.otherMaterial, draft.material === 'other' ? draft.otherMaterial : ''),
    ...(draft.cap === was.cap ? {} : { cap: draft.cap }),
    ...textChange('place', was.place, draft.place),
    ...textChange('tray', was.tray, draft.tray),
    ...(draft.area === '' || draft.area === was.area ? {} : { area: draft.area }),
  };
}

const options = <V extends string>(names: Readonly<Record<V, string>>) =>
  (Object.entries(names) as [V, string][]).map(([value, label]) => ({ value, label }));

type Props = {
  readonly draft: VesselDraft;
  readonly onChange: (part: Partial<VesselDraft>) => void;
  readonly tried: boolean;
  /** The next free code; absent for a vessel that has its code and its kind. */
  readonly nextCode?: string;
};

/** Trays and places that other vessels stand in. */
function useUsed(key: 'tray' | 'place'): readonly string[] {
  const { state } = useShell();
  return [...state.value.containers.values()].flatMap(({ body }) => body[key] ?? []);
}

export function VesselForm({ draft, onChange, tried, nextCode }: Props) {
  const [trays, places] = [useUsed('tray'), useUsed('place')];
  return (
    <>
      {nextCode !== undefined && (
        <SelectField
          label={w.vessel}
          value={draft.vessel}
          options={options(vesselWords)}
          onChoose={(vessel) => onChange({ vessel })}
        />
      )}
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
      {nextCode !== undefined && (
        <TextField
          label={w.code}
          value={draft.code}
          maxLength={16}
          hint={w.codeHint(nextCode)}
          onInput={(code) => onChange({ code })}
        />
      )}
      <PickOrWrite
        label={w.tray}
        value={draft.tray}
        known={trays}
        onInput={(tray) => onChange({ tray })}
        optional
      />
      <PickOrWrite
        label={w.place}
        value={draft.place}
        known={places}
        onInput={(place) => onChange({ place })}
        optional
      />
      <SelectField
        label={lifeWords.area}
        value={draft.area}
        options={options(lifeWords.areas)}
        onChoose={(area) => onChange({ area })}
      />
    </>
  );
}
