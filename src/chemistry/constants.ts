/** Published values as figures: each brings its uncertainty and its source into whatever is worked out from it. */
import Decimal from 'decimal.js';
import { between, type Figure, given, type Source, within } from '../quantities/figure';
import type { Unit } from '../quantities/unit';
import { type Constant, type Ranged, type SourceId, sources } from '../reference/tables';

const decimalsOf = (text: string): number => text.split('.')[1]?.length ?? 0;

/** A source as a person reads it: title, edition, and whether it was read. */
export const sourceOf = (told: { source: SourceId; status: Source['status'] }): Source => ({
  title: `${sources[told.source].title} (${sources[told.source].edition})`,
  status: told.status,
});

/** A published value with its uncertainty. `U` must be the unit in the table: checked as the figure is made. */
export function constant<U extends Unit>(
  id: string,
  sentence: string,
  c: Constant | Ranged,
  unit: U,
): Figure<U> {
  if ('low' in c) return ranged(id, sentence, c, unit);
  if (c.unit !== unit) throw new Error(`${id} is in ${c.unit}, not in ${unit}`);
  return given({
    origin: `constant/${id}`,
    sentence,
    value: c.value,
    unit,
    how: 'constant',
    spread: within(c.uncertainty),
    decimals: decimalsOf(c.value),
    sources: [sourceOf(c)],
    ...(c.note === undefined ? {} : { note: c.note }),
  });
}

/** A published value that lies between two ends. */
export function ranged<U extends Unit>(id: string, sentence: string, r: Ranged, unit: U): Figure<U> {
  if (r.unit !== unit) throw new Error(`${id} is in ${r.unit}, not in ${unit}`);
  return given({
    origin: `constant/${id}`,
    sentence,
    value: r.value,
    unit,
    how: 'constant',
    spread: between(r.low, new Decimal(r.value), r.high),
    decimals: decimalsOf(r.value),
    sources: [sourceOf(r)],
    ...(r.note === undefined ? {} : { note: r.note }),
  });
}
