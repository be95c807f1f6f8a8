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

/** Null when the part names nothing in the record. */
export function listFor(state: State, part: string): ListFor | null {
  if (part === '-') return { batchId: null };
  if (part.startsWith(container)) {
    const containerId = part.slice(container.length);
    return state.containers.has(containerId) ? { batchId: null, containerId } : null;
  }
  if (part.startsWith(late)) {
    const step = state.steps.get(part.slice(late.length))?.body;
    return step ? { batchId: step.batchId, lateFor: step.stepId } : null;
  }
  return state.batches.has(part) ? { batchId: part } : null;
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
