/** The form of the two ways as a draft, and what is asked by it. */
import * as z from 'zod/mini';
import type { TwoWaysAsked } from '../../ledger/two-ways';
import { exact, type Figure, given } from '../../quantities/figure';
import type { Written } from '../../quantities/written';
import { type BaseId, baseIds } from '../../reference/tables';
import { type FieldRead, readTyped, Typed, typed } from '../form';
import { twoWaysWords as w } from './words';

export const TwoWaysDraft = z.object({
  base: z.enum(baseIds as [BaseId, ...BaseId[]]),
  pH: Typed,
  solids: Typed,
  portions: Typed,
  hours: Typed,
});
export type TwoWaysDraft = z.infer<typeof TwoWaysDraft>;

/** @param containerId absent: all that hold liquid */
export const draftName = (containerId: string | undefined): string => `two-ways-${containerId ?? 'all'}`;

export const emptyTwoWays = (): TwoWaysDraft => ({
  base: 'hydrated-lime',
  pH: { typed: '9.5', unit: '1' },
  solids: typed('%'),
  portions: typed('1'),
  hours: typed('h'),
});

/** Between these the model holds. */
const phFrom = 2;
const phTo = 12.5;

export type TwoWaysReads = {
  readonly pH: FieldRead<'1'>;
  readonly solids: FieldRead<'%'>;
  readonly portions: FieldRead<'1'>;
  readonly hours: FieldRead<'h'>;
};

function readPh(field: Typed): FieldRead<'1'> {
  const read = readTyped<'1'>(field);
  if (read.state !== 'written') return read;
  const value = Number(read.written.value);
  return value < phFrom || value > phTo ? { state: 'wrong', fault: w.phRange(phFrom, phTo) } : read;
}

const stated = <U extends '%' | '1' | 'h'>(
  origin: string,
  sentence: string,
  { value, unit }: Written<U>,
): Figure<U> =>
  given({
    origin: `two-ways/${origin}`,
    sentence,
    value,
    unit,
    how: 'stated',
    spread: exact,
    decimals: value.split('.')[1]?.length ?? 0,
  });

/** The fields as they read, and what is asked; undefined while the pH is not there. */
export function readTwoWays(draft: TwoWaysDraft): {
  readonly reads: TwoWaysReads;
  readonly asked: TwoWaysAsked | undefined;
} {
  const reads: TwoWaysReads = {
    pH: readPh(draft.pH),
    solids: readTyped(draft.solids, { aboveZero: true, most: 100 }),
    portions: readTyped(draft.portions, { aboveZero: true, most: 100 }),
    hours: readTyped(draft.hours, { most: 1000 }),
  };
  const { pH, solids, portions, hours } = reads;
  if (pH.state !== 'written') return { reads, asked: undefined };
  const asked: TwoWaysAsked = {
    base: draft.base,
    pH: Number(pH.written.value),
    ...(solids.state === 'written' ? { solids: stated('solids', w.solids, solids.written) } : {}),
    ...(portions.state === 'written' ? { portions: stated('portions', w.portions, portions.written) } : {}),
    ...(hours.state === 'written' ? { hours: stated('hours', w.hours, hours.written) } : {}),
  };
  return { reads, asked };
}
