/** What a list is gone through for, and how that stands in its address: the whole place, a batch, a container, a step begun already. */
import { codeOfBatch, codeOfContainer } from '../../ledger/put-away';
import type { State } from '../../ledger/state';
import { type Checklist, isWalk } from '../../safety/checklist-schema';

export type ListFor = {
  readonly batchId: string | null;
  readonly containerId?: string | undefined;
  /** The step that has begun already. */
  readonly lateFor?: string | undefined;
};

/** A list, and what it is gone through for. */
export type Going = { readonly list: Checklist; readonly what: ListFor };

const container = 'container-';
const late = 'late-';

/** @example partOf({ batchId: null }) // '-' */
export function partOf({ batchId, containerId, lateFor }: ListFor): string {
  if (lateFor !== undefined) return `${late}${lateFor}`;
  return containerId === undefined ? (batchId ?? '-') : `${container}${containerId}`;
}

/** Where a list is gone through; the walk has a place of its own. */
export const addressOf = (list: Checklist, what: ListFor): string =>
  isWalk(list) ? 'walk' : `check/${partOf(what)}/${list.id}`;

/** What the part of an address names, as the parts of others do; nothing where it is for the whole place. */
export function namedIn(part: string): { readonly [of in 'batch' | 'container' | 'step']?: string } {
  if (part === '-') return {};
  if (part.startsWith(container)) return { container: part.slice(container.length) };
  return part.startsWith(late) ? { step: part.slice(late.length) } : { batch: part };
}

/** Null when the part names nothing in the record. */
export function listFor(state: State, part: string): ListFor | null {
  const { batch, container: containerId, step: stepId } = namedIn(part);
  if (batch !== undefined) return state.batches.has(batch) ? { batchId: batch } : null;
  if (containerId !== undefined)
    return state.containers.has(containerId) ? { batchId: null, containerId } : null;
  if (stepId === undefined) return { batchId: null };
  const step = state.steps.get(stepId)?.body;
  return step ? { batchId: step.batchId, lateFor: step.stepId } : null;
}

/** What it was for, by its label. */
export const codeOf = (state: State, { batchId, containerId }: ListFor): string | undefined =>
  containerId === undefined ? codeOfBatch(state, batchId) : codeOfContainer(state, containerId);

/** Steps of the test for silver, which is led look by look. */
const led: ReadonlySet<string> = new Set(['chloride-test', 'ammonia-test']);

/** The test for silver that the step belongs to; null for every other step. */
export const silverCheckOf = ({ batchId, step }: ListFor & { readonly step: string }): string | null =>
  batchId !== null && led.has(step) ? `batches/${batchId}/silver-check` : null;

/** Where a person goes who leaves the list. */
export function homeOf({ batchId, containerId }: ListFor): string {
  if (containerId !== undefined) return `treatment/begin/${containerId}`;
  return batchId === null ? 'today' : `batches/${batchId}`;
}
