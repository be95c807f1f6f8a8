/** The form of a dilution as a draft, and what it comes to. */
import * as z from 'zod/mini';
import type { WrittenStrength } from '../../chemistry/acid-strength';
import {
  type Dilution,
  type DilutionFailure,
  mixtureOf,
  type Pouring,
  pouringAt,
  recipeFor,
  type WrittenVolume,
} from '../../chemistry/dilution';
import type { Figure } from '../../quantities/figure';
import { type FieldRead, readTyped, Typed, typed } from '../form';
import { dilutionWords as w } from './words';

/** Taken where nobody wrote how warm it is. */
export const usualRoomC = '20';

export const strengthUnits = ['%', 'mol/L', 'kg/L'] as const;
export const volumeUnits = ['L', 'mL', 'US gal'] as const;

export const DilutionDraft = z.object({
  find: z.enum(['recipe', 'mixture']),
  stock: Typed,
  wanted: Typed,
  volume: Typed,
  acid: Typed,
  water: Typed,
  room: Typed,
});
export type DilutionDraft = z.infer<typeof DilutionDraft>;

export const draftName = (batchId: string): string => `dilution-${batchId}`;

export const emptyDilution = (): DilutionDraft => ({
  find: 'recipe',
  stock: typed('%'),
  wanted: typed('%'),
  volume: typed('L'),
  acid: typed('L'),
  water: typed('L'),
  room: typed('°C'),
});

type Field = Exclude<keyof DilutionDraft, 'find'>;
export type DilutionReads = {
  readonly stock: FieldRead<WrittenStrength['unit']>;
  readonly wanted: FieldRead<WrittenStrength['unit']>;
  readonly volume: FieldRead<WrittenVolume['unit']>;
  readonly acid: FieldRead<WrittenVolume['unit']>;
  readonly water: FieldRead<WrittenVolume['unit']>;
  readonly room: FieldRead<'°C'>;
};

export type Outcome = {
  readonly dilution: Dilution;
  readonly pouring: Pouring;
  /** As typed, or the usual one. */
  readonly roomC: string;
};

const readFields = (draft: DilutionDraft): DilutionReads => ({
  stock: readTyped(draft.stock, { aboveZero: true }),
  wanted: readTyped(draft.wanted, { aboveZero: true }),
  volume: readTyped(draft.volume, { aboveZero: true }),
  acid: readTyped(draft.acid, { aboveZero: true }),
  water: readTyped(draft.water, { aboveZero: true }),
  room: readTyped(draft.room, { most: 60 }),
});

/** At which field a failure stands, and in which words; what reading alone has refused already is left to it. */
function failureAt(failure: DilutionFailure): readonly [Field, string] | undefined {
  switch (failure.code) {
    case 'outside-table':
      return [failure.which, w.outside(failure.low, failure.high, failure.unit)];
    case 'not-weaker':
      return ['wanted', w.notWeaker];
    case 'no-acid':
    case 'no-water':
    case 'no-volume':
      return undefined;
  }
}

/** The dilution that the fields tell; undefined while one of them is missing or wrong. */
function diluted(find: DilutionDraft['find'], { stock, wanted, volume, acid, water }: DilutionReads) {
  if (stock.state !== 'written') return undefined;
  if (find === 'recipe')
    return wanted.state === 'written' && volume.state === 'written'
      ? recipeFor({ stock: stock.written, wanted: wanted.written, volume: volume.written })
      : undefined;
  return acid.state === 'written' && water.state === 'written'
    ? mixtureOf({ stock: stock.written, acid: acid.written, water: water.written })
    : undefined;
}

/** Every field as it reads, with the fault of the whole at the field that it concerns, and what it comes to. */
export function readDilution(draft: DilutionDraft): {
  readonly reads: DilutionReads;
  readonly outcome: Outcome | undefined;
} {
  const reads = readFields(draft);
  const found = diluted(draft.find, reads);
  if (!found) return { reads, outcome: undefined };
  if (!found.ok) {
    const at = failureAt(found.failure);
    return {
      reads: at ? { ...reads, [at[0]]: { state: 'wrong', fault: at[1] } } : reads,
      outcome: undefined,
    };
  }
  if (reads.room.state === 'wrong') return { reads, outcome: undefined };
  const roomC = reads.room.state === 'written' ? reads.room.written.value : usualRoomC;
  const { dilution } = found;
  return { reads, outcome: { dilution, pouring: pouringAt(dilution, roomC), roomC } };
}

/** The figures of a dilution by the name that stands in the address of their working. */
export function namedFigures({ dilution, pouring }: Outcome): ReadonlyMap<string, Figure> {
  const { acid, water, whole, mixture, warming } = dilution;
  return new Map<string, Figure>([
    ['acid', acid.volume],
    ['water', water.volume],
    ['volume', whole.volume],
    ['mass', whole.mass],
    ['percent', mixture.percent],
    ['molarity', mixture.molarity],
    ['density', mixture.density],
    ['heat', warming.heat],
    ['rise', warming.rise],
    ...(pouring.kind === 'in-portions' ? [['portion', pouring.portion] as const] : []),
  ]);
}
