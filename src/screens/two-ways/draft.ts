/** The form of the two ways as a draft, and what is asked by it. */
import * as z from 'zod/mini';
import type { State } from '../../ledger/state';
import type { TwoWaysAsked } from '../../ledger/two-ways';
import { exact, type Figure, given } from '../../quantities/figure';
import type { Written } from '../../quantities/written';
import { type BaseId, baseIds } from '../../reference/tables';
import { type FieldRead, readTyped, Typed, typed } from '../form';
import { useShell } from '../shell';
import { emptyTreatment, readPh, TreatmentDraft, treatmentDraftName } from '../treatment/draft';
import { proposal } from '../treatment/target';
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

/** For several containers at once: the usual one of the trade for copper and nickel. */
const usualPh = 9;

/** A decimal of the pH is as fine as anybody ends at. */
const asTyped = (pH: number): Typed => ({ typed: pH.toFixed(1), unit: '1' });

/**
 * Base and pH as they stand on the page of the container's treatment; with nothing there, or for all containers, what is
 * proposed.
 * @param planned what was chosen on that page
 */
export function firstTwoWays(
  state: State,
  containerId: string | undefined,
  planned: TreatmentDraft | null,
): TwoWaysDraft {
  const { base, target } = planned ?? emptyTreatment();
  const usual = containerId === undefined ? usualPh : proposal(state, containerId).pH;
  const pH = readPh(target).state === 'written' ? target : asTyped(usual);
  return { base, pH, solids: typed('%'), portions: typed('1'), hours: typed('h') };
}

/** What the form opens with. */
export function useFirst(containerId: string | undefined): () => TwoWaysDraft {
  const { state, draft } = useShell();
  return () => {
    const planned =
      containerId === undefined ? null : draft.read(treatmentDraftName(containerId), TreatmentDraft);
    return firstTwoWays(state.value, containerId, planned);
  };
}

export type TwoWaysReads = {
  readonly pH: FieldRead<'1'>;
  readonly solids: FieldRead<'%'>;
  readonly portions: FieldRead<'1'>;
  readonly hours: FieldRead<'h'>;
};

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
