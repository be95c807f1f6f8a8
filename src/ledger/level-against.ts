/** A level that was read on a container, against what the record says it held just then. */
import Decimal from 'decimal.js';
import { spreadFor } from '../chemistry/evidence';
import { converted, inUnit, quantity } from '../quantities/quantity';
import { halfLastDigit } from '../quantities/written';
import { isVolume, readably } from './amounts';
import type { Amount } from './entries/containers';
import type { ContainerState, LevelState } from './state';

export type LevelAgainst = {
  readonly at: string;
  readonly level: Decimal;
  readonly held: Decimal;
  readonly unit: 'L' | 'g';
  /** By how much they may differ and still be one: the reading may be off, and what was poured was read as finely. */
  readonly within: Decimal;
  readonly agrees: boolean;
  /** Whether less is in it than the record has, and how much less or more, as finely as it can be read. */
  readonly less: boolean;
  readonly gap: Amount;
};

/** Two readings of the same fineness, independent of each other: √2 times what one may be off. */
const twoReadings = Decimal.sqrt(2);

/**
 * Null where litres and grams stand in it side by side, or the scale was read of what is counted in litres: only a density
 * could tell the one from the other.
 */
function against({ at, body, held }: LevelState): LevelAgainst | null {
  const { level, spread } = body;
  const unit = isVolume(level) ? 'L' : 'g';
  if (!(unit === 'L' ? held.mass : held.volume).isZero()) return null;
  const read = inUnit(level, unit);
  const off = spreadFor(spread, unit === 'L' ? 'vessel-scale' : 'weighing', unit)(quantity(read, unit));
  const digit = converted(halfLastDigit(level.value), level.unit, unit);
  const within = Decimal.max(off.minus, off.plus, digit).times(twoReadings);
  const wanted = unit === 'L' ? held.volume : held.mass;
  const difference = read.minus(wanted);
  const [agrees, less] = [difference.abs().lte(within), difference.isNegative()];
  return { at, level: read, held: wanted, unit, within, agrees, less, gap: readably(difference.abs(), unit) };
}

/**
 * The last level; null where none was read, or where something was told since that may explain it: what went in or out,
 * water that went off, somebody's word on what is in it. Null too where nobody knows what is in it: then the record holds
 * nothing that a level could contradict.
 */
export function levelAgainst({
  levels,
  movements,
  doubtfulSince,
}: Pick<ContainerState, 'levels' | 'movements' | 'doubtfulSince'>): LevelAgainst | null {
  const last = levels.at(-1);
  if (!last || doubtfulSince !== null || movements.some(({ at }) => at > last.at)) return null;
  return against(last);
}
