/** What a collector read or wrote of a container, against what the record says it held when it left. */
import Decimal from 'decimal.js';
import { over, minus as without } from '../quantities/expression';
import { exact, type Figure, given, workedOut } from '../quantities/figure';
import { converted } from '../quantities/quantity';
import { handingOver } from '../reference/handing-over-tables';
import { isVolume } from './amounts';
import { mixtureOf } from './container-mixture';
import type { Amount } from './entries/containers';
import type { HandedOverPart, HandOverState, Held, State } from './state';

export type Difference = {
  readonly containerId: string;
  readonly agreed: Amount;
  /** What it held by the record, in the kind of amount that was agreed. */
  readonly record: Figure<'L'> | Figure<'kg'>;
  /** Of what the record says; below nothing where less was agreed. */
  readonly share: Figure<'%'>;
  /** Against the share that has to be explained: `over` by all of its range, `may be over` by what is likeliest. */
  readonly standing: 'over' | 'may be over' | 'under';
};

/** Printed as finely as what is held is printed everywhere, and used as it is. */
const printedDecimals = { L: 2, g: 0 } as const;

const byRecord = <U extends 'L' | 'g'>(containerId: string, held: Held['volume' | 'mass'], unit: U) =>
  given({
    decimals: printedDecimals[unit],
    formulaDecimals: Math.max(printedDecimals[unit], held.decimalPlaces()),
    origin: `handed-over/${containerId}/${unit}`,
    sentence: 'By the record',
    value: held,
    unit,
    how: 'worked-out',
    spread: exact,
  });

/** All of it by mass, worked out; only while it is as it left, since of what was in it then nothing else tells. */
function weighedOut(state: State, { containerId, asItLeft }: HandedOverPart): Figure<'kg'> | null {
  const container = state.containers.get(containerId);
  if (!container || !asItLeft) return null;
  const mixture = mixtureOf(state, container);
  return typeof mixture === 'string' ? null : mixture.mass;
}

/** Litres against litres, where no solid stands beside them; by mass against what was weighed, else what was worked out. */
function recordOf(state: State, part: HandedOverPart, agreed: Amount): Figure<'L'> | Figure<'kg'> | null {
  const { containerId, held } = part;
  if (isVolume(agreed)) return held.mass.isZero() ? byRecord(containerId, held.volume, 'L') : null;
  if (!held.volume.isZero()) return weighedOut(state, part);
  const grams = byRecord(containerId, held.mass, 'g');
  return workedOut({ sentence: 'By the record', unit: 'kg', formula: { op: 'figure', figure: grams } });
}

/** Papers are set against each other as they are written: whatever their last digit hides. */
const asWritten = (containerId: string, written: Amount) => {
  const unit = isVolume(written) ? 'L' : 'kg';
  const value = converted(written.value, written.unit, unit);
  return given({
    decimals: value.decimalPlaces(),
    origin: `agreed/${containerId}`,
    sentence: 'As the collector has it',
    value,
    unit,
    how: 'stated',
    spread: exact,
  });
};

function standingOf({ value, low, high }: Figure<'%'>): Difference['standing'] {
  const limit = handingOver.difference.value;
  const nearest =
    low.isNegative() === high.isNegative() ? Decimal.min(low.abs(), high.abs()) : new Decimal(0);
  if (nearest.gt(limit)) return 'over';
  return value.abs().gt(limit) ? 'may be over' : 'under';
}

/** Null where the collector's amount was taken as it is, or where nothing tells the one from the other. */
export function differenceOf(state: State, part: HandedOverPart): Difference | null {
  const { containerId, agreed } = part;
  const record = agreed && recordOf(state, part, agreed);
  if (!agreed || !record || record.value.isZero()) return null;
  const share = workedOut({
    sentence: 'Difference from the record',
    unit: '%',
    formula: over(without(asWritten(containerId, agreed), record), record),
    signed: true,
  });
  return { containerId, agreed, record, share, standing: standingOf(share) };
}

/** Of a whole load, in its order. */
export const differencesOf = (state: State, { parts }: HandOverState): readonly Difference[] =>
  parts.flatMap((part) => differenceOf(state, part) ?? []);
