/** The charge that the form of a check tells, and what in it is missing or wrong. */
import type { LimitId } from '../../reference/exposure-limits-tables';
import { madeBy, type NotMade } from '../../safety/ventilation/made';
import type { GassingCharge, WrittenCharge } from '../../safety/ventilation/station-schema';
import { reasonWords } from '../../safety/ventilation/words';
import { type FieldRead, readTyped } from '../form';
import { missing } from '../tried';
import { words } from '../words';
import type { massUnits, strengthUnits, timeUnits, VentilationDraft, volumeUnits } from './draft';
import { ventilationWords as w } from './words';

type Mass = (typeof massUnits)[number];
type Time = (typeof timeUnits)[number];

export type ChargeReads = {
  readonly masses: readonly FieldRead<Mass>[];
  readonly total: FieldRead<Mass>;
  readonly volume: FieldRead<(typeof volumeUnits)[number]>;
  readonly strength: FieldRead<(typeof strengthUnits)[number]>;
  readonly release: FieldRead<Time>;
  readonly share: FieldRead<'%'>;
  readonly within: FieldRead<Time>;
  readonly ownLimit: FieldRead<'ppm'>;
  readonly ownMixing: FieldRead<'1'>;
};

export type ChargeFaults = Partial<Record<'metals' | 'limit' | 'whose' | 'peak' | 'charge', string>>;

export type ChargeRead = {
  readonly reads: ChargeReads;
  /** What is missing or wrong beside the numbers. */
  readonly faults: ChargeFaults;
  readonly charge: WrittenCharge | undefined;
};

/** More than any bench takes: a mistyped unit. */
const aboveZero = { aboveZero: true, most: 100_000 };

const readsOf = (draft: VentilationDraft): ChargeReads => ({
  masses: draft.masses.map(({ mass }) => readTyped<Mass>(mass, aboveZero)),
  total: readTyped(draft.total, aboveZero),
  volume: readTyped(draft.volume, aboveZero),
  strength: readTyped(draft.strength, aboveZero),
  release: readTyped(draft.release, aboveZero),
  share: readTyped(draft.share, { aboveZero: true, most: 100 }),
  within: readTyped(draft.within, aboveZero),
  ownLimit: readTyped(draft.ownLimit, { aboveZero: true, most: 1000 }),
  ownMixing: readTyped(draft.ownMixing, { aboveZero: true, most: 10 }),
});

type Leach = Extract<WrittenCharge, { step: 'leach' }>;

/** Undefined while a mass is missing or wrong. */
function metalsOf(draft: VentilationDraft, reads: ChargeReads): Leach['metals'] | undefined {
  if (draft.known === 'total')
    return reads.total.state === 'written' ? { known: 'total', mass: reads.total.written } : undefined;
  const masses = draft.masses.flatMap(({ metal }, i) => {
    const read = reads.masses[i];
    return read?.state === 'written' ? [{ metal, mass: read.written }] : [];
  });
  return masses.length > 0 && masses.length === draft.masses.length ? { known: 'each', masses } : undefined;
}

function limitOf(draft: VentilationDraft, reads: ChargeReads): GassingCharge['limit'] | undefined {
  if (draft.limit !== 'own') return draft.limit as LimitId | undefined;
  const whose = draft.whose.trim();
  return reads.ownLimit.state === 'written' && whose !== ''
    ? { at: reads.ownLimit.written, whose }
    : undefined;
}

/** Nothing where what is usual is taken; undefined while one of the two is missing or wrong. */
function peakOf({ share, within }: ChargeReads): Pick<GassingCharge, 'peak'> | undefined {
  if (share.state === 'empty' && within.state === 'empty') return {};
  return share.state === 'written' && within.state === 'written'
    ? { peak: { share: share.written, within: within.written } }
    : undefined;
}

function mixingOf({ mixing }: VentilationDraft, { ownMixing }: ChargeReads) {
  if (mixing === 'usual') return {};
  if (mixing !== 'own') return { mixing: { value: mixing, unit: '1' as const } };
  return ownMixing.state === 'written' ? { mixing: ownMixing.written } : undefined;
}

/** The charge of the lines; undefined while one that is needed is missing or wrong. */
function gassingCharge(draft: VentilationDraft, reads: ChargeReads): GassingCharge | undefined {
  const { volume, strength, release } = reads;
  const [limit, peak, mixing] = [limitOf(draft, reads), peakOf(reads), mixingOf(draft, reads)];
  if (volume.state !== 'written' || strength.state !== 'written' || release.state !== 'written')
    return undefined;
  if (!limit || !peak || !mixing) return undefined;
  const acid = { volume: volume.written, strength: strength.written };
  const common = { acid, release: release.written, limit, ...peak, ...mixing };
  if (draft.step !== 'leach') return { step: 'cementation', ...common };
  const metals = metalsOf(draft, reads);
  return metals && { step: 'leach', metals, ...common };
}

/** At which line a fault of the whole stands; the others stand at the end. */
const lineOf: Partial<Record<NotMade, 'strength' | 'ownMixing' | 'share'>> = {
  'acid-outside-table': 'strength',
  'mixing-outside': 'ownMixing',
  'peak-share-outside': 'share',
};

function faultsOf(draft: VentilationDraft, { share, within }: ChargeReads): ChargeFaults {
  const noMetals = draft.step === 'leach' && draft.known === 'each' && draft.masses.length === 0;
  const whose = draft.limit === 'own' ? missing(draft.whose) : undefined;
  const half = (share.state === 'empty') !== (within.state === 'empty');
  return {
    ...(noMetals ? { metals: w.noMetal } : {}),
    ...(draft.limit === undefined ? { limit: words.choice.missing } : {}),
    ...(whose === undefined ? {} : { whose }),
    ...(half ? { peak: w.bothOrNone } : {}),
  };
}

/** Every line as it reads, and the charge that they tell together. */
export function readCharge(draft: VentilationDraft): ChargeRead {
  const reads = readsOf(draft);
  const { step } = draft;
  if (step === 'acid-dilution' || step === 'filtration') return { reads, faults: {}, charge: { step } };
  const faults = faultsOf(draft, reads);
  const charge = gassingCharge(draft, reads);
  const made = charge && madeBy(charge);
  if (!made || made.ok) return { reads, faults, charge };
  const fault = reasonWords[made.reason];
  const line = lineOf[made.reason];
  return line
    ? { reads: { ...reads, [line]: { state: 'wrong', fault } }, faults, charge: undefined }
    : { reads, faults: { ...faults, charge: fault }, charge: undefined };
}
