/** The form of a washing as a draft, and what it comes to. */
import * as z from 'zod/mini';
import { volumeRead } from '../../chemistry/liquor';
import {
  leastWater,
  shareAllowed,
  type TradeOffPoint,
  type WashesNeeded,
  type WashLimit,
  washesNeeded,
  washingTradeOff,
  worthStopping,
} from '../../chemistry/wash-limit';
import { type Washable, type Washed, washable, washed } from '../../chemistry/washing';
import type { Residue } from '../../ledger/container-load';
import { exact, type Figure, given } from '../../quantities/figure';
import type { Written } from '../../quantities/written';
import { type Metal, metalSymbols } from '../../reference/tables';
import { washWays } from '../../reference/washing-tables';
import { type FieldRead, readTyped, Typed, typed } from '../form';
import { washingWords as w } from './words';

export const volumeUnits = ['L', 'mL', 'US gal'] as const;
export const limitUnits = ['mg/kg', 'mg/L'] as const;

export const WashingDraft = z.object({
  /** Which of the residues, counted from 0. */
  residue: z.string(),
  way: z.enum(washWays),
  level: Typed,
  volume: Typed,
  washes: Typed,
  metal: z.enum(metalSymbols as [Metal, ...Metal[]]),
  limit: Typed,
});
export type WashingDraft = z.infer<typeof WashingDraft>;

export const draftName = (containerId: string): string => `washing-${containerId}`;

export const emptyWashing = (): WashingDraft => ({
  residue: '0',
  way: 'drained',
  level: typed('L'),
  volume: typed('L'),
  washes: typed('1'),
  metal: 'Cu',
  limit: typed('mg/kg'),
});

type VolumeUnit = (typeof volumeUnits)[number];

export type WashingReads = {
  readonly level: FieldRead<VolumeUnit>;
  readonly volume: FieldRead<VolumeUnit>;
  readonly washes: FieldRead<'1'>;
  readonly limit: FieldRead<(typeof limitUnits)[number]>;
};

/** A residue whose liquor is known. */
export type HoldingResidue = Residue & { readonly held: NonNullable<Residue['held']> };

export const holding = (residues: readonly Residue[]): readonly HoldingResidue[] =>
  residues.filter((r): r is HoldingResidue => r.held !== undefined);

export type UnderLimit = {
  readonly metal: Metal;
  /** Undefined where nobody told how much of the metal there is. */
  readonly allowed: Figure<'1'> | undefined;
  /** It is kept before any wash. */
  readonly kept: boolean;
  readonly points: readonly TradeOffPoint[];
  readonly least: TradeOffPoint | undefined;
  readonly enough: TradeOffPoint | undefined;
  readonly needed: WashesNeeded | undefined;
};

export type WashingOutcome = {
  readonly washable: Washable;
  readonly washed: Washed | undefined;
  readonly under: UnderLimit | undefined;
};

function readWashes(field: Typed): FieldRead<'1'> {
  const read = readTyped<'1'>(field, { aboveZero: true, most: 60 });
  return read.state === 'written' && !/^\d+$/.test(read.written.value)
    ? { state: 'wrong', fault: w.whole }
    : read;
}

const readFields = (draft: WashingDraft): WashingReads => ({
  level: readTyped(draft.level, { aboveZero: true, most: 100_000 }),
  volume: readTyped(draft.volume, { aboveZero: true, most: 100_000 }),
  washes: readWashes(draft.washes),
  limit: readTyped(draft.limit, { aboveZero: true }),
});

const asVolume = (written: Written<VolumeUnit>, what: string, sentence: string) =>
  volumeRead(written, `washing/${what}`, sentence);

/** A limit is what it is: nothing widens it. */
function limitOf(metal: Metal, { value, unit }: Written<(typeof limitUnits)[number]>): WashLimit {
  const told = {
    origin: 'washing/limit',
    sentence: 'May stay',
    value,
    how: 'stated',
    spread: exact,
  } as const;
  const decimals = value.split('.')[1]?.length ?? 0;
  const at = unit === 'mg/kg' ? given({ ...told, unit, decimals }) : given({ ...told, unit, decimals });
  return { metal, at };
}

function underLimit(of: Washable, limit: WashLimit, volume: Figure<'L'> | undefined): UnderLimit {
  const allowed = shareAllowed(of, limit);
  const points = allowed ? washingTradeOff(of, allowed) : [];
  return {
    metal: limit.metal,
    allowed,
    kept: allowed?.value.gte(1) ?? false,
    points,
    least: leastWater(points),
    enough: worthStopping(points),
    needed: allowed && volume ? washesNeeded(of, volume, limit) : undefined,
  };
}

/** Every field as it reads, and what can be worked out of those that are told. */
export function readWashing(
  draft: WashingDraft,
  residues: readonly HoldingResidue[],
): { readonly reads: WashingReads; readonly outcome: WashingOutcome | undefined } {
  const reads = readFields(draft);
  const residue = residues[Number(draft.residue)] ?? residues[0];
  const settled = draft.way === 'settled';
  if (!residue || (settled && reads.level.state !== 'written')) return { reads, outcome: undefined };
  const level =
    settled && reads.level.state === 'written'
      ? asVolume(reads.level.written, 'level', 'Liquor that stays when it is poured off')
      : undefined;
  const of = washable(residue, level);
  if (!of)
    return {
      reads: settled ? { ...reads, level: { state: 'wrong', fault: w.levelTooLow } } : reads,
      outcome: undefined,
    };
  const { volume, washes, limit } = reads;
  const each =
    volume.state === 'written' ? asVolume(volume.written, 'volume', 'Water for each wash') : undefined;
  return {
    reads,
    outcome: {
      washable: of,
      washed: each && washes.state === 'written' ? washed(of, each, Number(washes.written.value)) : undefined,
      under:
        limit.state === 'written' ? underLimit(of, limitOf(draft.metal, limit.written), each) : undefined,
    },
  };
}

/** The figures of a washing by the name that stands in the address of their working. */
export function namedFigures(outcome: WashingOutcome): ReadonlyMap<string, Figure> {
  const { washable: of, washed: after, under } = outcome;
  const named: [string, Figure | undefined][] = [
    ['evenness', of.evenness],
    ['dry', of.dry],
    ['share', after?.share],
    ['acid', after?.acidStays],
    ['wash-water', after?.washWater.volume],
    ['water', after?.water],
    ...(after?.metals ?? []).flatMap((m): [string, Figure][] => [
      [`${m.metal}-stays`, m.stays],
      [`${m.metal}-dry`, m.perDryMass],
      [`${m.metal}-held`, m.perLitre],
      [`${m.metal}-water`, m.inWashWater],
    ]),
    ['allowed', under?.allowed],
    ['least', under?.least?.water],
    ['enough', under?.enough?.water],
  ];
  return new Map(named.filter((pair): pair is [string, Figure] => pair[1] !== undefined));
}
