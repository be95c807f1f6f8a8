import type { ChecklistFinished } from './entries/checklists';
import type { Refusal } from './refusal';
import type { State, Told } from './state';

/** A step of a batch, begun by a person at a moment. */
export type Beginning = {
  readonly step: string;
  readonly batchId: string | null;
  readonly who: string | null;
  readonly at: string;
};

/** Why this clearance does not hold for this beginning; null when it does. It holds until its last moment, inclusive. */
export function clearanceFault(state: State, clearance: string, beginning: Beginning): Refusal | null {
  const field = 'clearance';
  const run = state.checklists.get(clearance);
  if (!run) return { code: 'no-clearance', details: { clearance }, field };
  const { step, batchId, outcome, validUntil } = run.body;
  if (step !== beginning.step) return { code: 'clearance-for-another-step', details: { step }, field };
  if (batchId !== beginning.batchId)
    return { code: 'clearance-for-another-batch', details: { batchId }, field };
  if (outcome === 'stopped') return { code: 'clearance-stopped', details: { clearance }, field };
  if (run.who !== beginning.who)
    return { code: 'clearance-of-another-person', details: { who: run.who }, field };
  if (validUntil !== null && validUntil < beginning.at)
    return { code: 'clearance-expired', details: { clearance, validUntil }, field };
  return null;
}

/** Clearances that hold at `now` and that no treatment was begun on, the newest of each list and batch, the first to end first. */
export function clearancesHolding(state: State, now: string): readonly Told<ChecklistFinished>[] {
  const used = new Set([...state.treatments.values()].map(({ body }) => body.clearance));
  const newest = new Map<string, Told<ChecklistFinished>>();
  for (const told of state.checklists.values()) {
    const { checklist, batchId, validUntil } = told.body;
    if (validUntil !== null && validUntil > now && !used.has(told.entryId))
      newest.set(`${checklist.id} ${batchId}`, told);
  }
  return [...newest.values()].sort((a, b) =>
    (a.body.validUntil ?? '') < (b.body.validUntil ?? '') ? -1 : 1,
  );
}
