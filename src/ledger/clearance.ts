/** What a list that was gone through lets begin: one step, of one batch or container, by one person, at one place, for a while. */
import { isWalk } from '../safety/checklist-schema';
import { grouped } from './grouping';
import type { Refusal } from './refusal';
import type { ChecklistState, State } from './state';

/** A step begun by a person at a moment. What is not known of it (`undefined`) is not compared. */
export type Beginning = {
  readonly step: string;
  readonly batchId: string | null;
  readonly containerId?: string | undefined;
  readonly stationId?: string | null | undefined;
  readonly who: string | null;
  readonly at: string;
  /** Bases that are to go in: of a treatment. */
  readonly bases?: readonly string[] | undefined;
};

type Strength = { readonly value: string; readonly unit: string };

/** 25 and 25.0 are one strength. */
const strengthText = ({ value, unit }: Strength): string => `${Number(value)} ${unit}`;

/** Strength of the acid last charged to a batch by then; null where none was charged. */
function chargedBy(state: State, batchId: string | null, at: string): string | null {
  const acid = state.batches
    .get(batchId ?? '')
    ?.charged.findLast((told) => told.at <= at && told.body.charge.what === 'acid')?.body.charge;
  return acid?.what === 'acid' ? strengthText(acid.strength) : null;
}

type Checks = State['ventilationChecks'];
type Check = Checks extends ReadonlyMap<string, infer C> ? C : never;

const checksByBatch = new WeakMap<Checks, ReadonlyMap<string, readonly Check[]>>();

/** Checks of the air for a batch, or for none. */
function checksOf({ ventilationChecks }: State, batchId: string | null): readonly Check[] {
  const known =
    checksByBatch.get(ventilationChecks) ??
    grouped(ventilationChecks.values(), ({ body }) => body.batchId ?? '');
  checksByBatch.set(ventilationChecks, known);
  return known.get(batchId ?? '') ?? [];
}

/** Strength of the acid that the air of a step was last checked for by then; null where it was not. */
function checkedBy(state: State, batchId: string | null, step: string, at: string): string | null {
  const charge = checksOf(state, batchId).findLast((told) => told.at <= at && told.body.charge.step === step)
    ?.body.charge;
  return charge && 'acid' in charge ? strengthText(charge.acid.strength) : null;
}

const differ = (one: string | null | undefined, other: string | null | undefined): boolean =>
  one !== null && one !== undefined && other !== null && other !== undefined && one !== other;

const stoppedLists = new WeakMap<State['checklists'], readonly ChecklistState[]>();

/** Lists that stopped: few, and asked for at each step. */
function stoppedOf({ checklists }: State): readonly ChecklistState[] {
  const known =
    stoppedLists.get(checklists) ?? [...checklists.values()].filter(({ body }) => body.outcome === 'stopped');
  stoppedLists.set(checklists, known);
  return known;
}

/** A later run of the same list, for the same thing, that stopped by then: what it saw ends what was seen before. */
const stoppedSince = (state: State, { body }: ChecklistState, at: string): ChecklistState | undefined =>
  stoppedOf(state).find(
    ({ body: later }) =>
      later.checklist.id === body.checklist.id &&
      later.batchId === body.batchId &&
      later.containerId === body.containerId &&
      later.finishedAt > body.finishedAt &&
      later.finishedAt <= at,
  );

/** Whether something went into the container after its list: level, acid and what is in it were looked at before. */
const filledSince = (state: State, { body }: ChecklistState, at: string): boolean =>
  state.containers
    .get(body.containerId ?? '')
    ?.movements.some((moved) => moved.way === 'in' && moved.at > body.finishedAt && moved.at <= at) === true;

/** A base that the list was not gone through for; undefined where it told of none. */
const baseNotMeant = (
  { body: { bases } }: ChecklistState,
  { bases: going = [] }: Beginning,
): string | undefined => bases && going.find((base) => !bases.includes(base));

/** What has changed since the list was gone through; null when nothing that it holds for has. */
function changedSince(state: State, told: ChecklistState, beginning: Beginning): Refusal | null {
  const field = 'clearance';
  const { who, body } = told;
  const { batchId, containerId, stationId, finishedAt } = body;
  if (batchId !== beginning.batchId)
    return { code: 'clearance-for-another-batch', details: { batchId }, field };
  if (beginning.containerId !== undefined && containerId !== beginning.containerId)
    return { code: 'clearance-for-another-container', details: { containerId: containerId ?? null }, field };
  if (who !== beginning.who) return { code: 'clearance-of-another-person', details: { who }, field };
  if (differ(stationId, beginning.stationId))
    return { code: 'clearance-for-another-place', details: { stationId: stationId ?? null }, field };
  if (containerId !== undefined && filledSince(state, told, beginning.at))
    return { code: 'clearance-for-other-contents', details: { containerId }, field };
  const base = baseNotMeant(told, beginning);
  if (base !== undefined) return { code: 'clearance-for-another-base', details: { base }, field };
  // What was charged may be strong acid still to be diluted, what was checked is the acid of the pot: each is held against its own.
  for (const acidBy of [
    (at: string) => chargedBy(state, batchId, at),
    (at: string) => checkedBy(state, batchId, body.step, at),
  ]) {
    const [then, now] = [acidBy(finishedAt), acidBy(beginning.at)];
    if (differ(then, now)) return { code: 'clearance-for-other-acid', details: { then, now }, field };
  }
  return null;
}

/** Why this clearance does not hold for this beginning; null when it does. It holds until its last moment, inclusive. */
export function clearanceFault(state: State, clearance: string, beginning: Beginning): Refusal | null {
  const field = 'clearance';
  const run = state.checklists.get(clearance);
  if (!run) return { code: 'no-clearance', details: { clearance }, field };
  const { step, outcome, validUntil, late } = run.body;
  if (step !== beginning.step) return { code: 'clearance-for-another-step', details: { step }, field };
  if (outcome === 'stopped') return { code: 'clearance-stopped', details: { clearance }, field };
  if (late) return { code: 'clearance-late', details: { stepId: late.stepId }, field };
  const stop = stoppedSince(state, run, beginning.at);
  if (stop) return { code: 'clearance-stopped', details: { clearance: stop.entryId }, field };
  const changed = changedSince(state, run, beginning);
  if (changed) return changed;
  if (validUntil !== null && validUntil < beginning.at)
    return { code: 'clearance-expired', details: { clearance, validUntil }, field };
  return null;
}

/** Whether something was begun on it: it lets one thing begin. */
export const isUsed = (state: State, clearance: string): boolean =>
  [...state.steps.values(), ...state.treatments.values()].some(({ body }) => body.clearance === clearance);

/** Why nothing can be begun on it now; null when it can. */
export function beginningFault(state: State, clearance: string, beginning: Beginning): Refusal | null {
  const fault = clearanceFault(state, clearance, beginning);
  if (fault) return fault;
  return isUsed(state, clearance)
    ? { code: 'clearance-used', details: { clearance }, field: 'clearance' }
    : null;
}

/** Whether whoever went through it, there, may still begin on it. */
function holdsFor(state: State, { entryId, who, body }: ChecklistState, at: string): boolean {
  const { step, batchId, containerId, stationId } = body;
  return beginningFault(state, entryId, { step, batchId, containerId, stationId, who, at }) === null;
}

/** Clearances that hold at `now` and that nothing was begun on, the newest of each list and thing, the first to end first. */
export function clearancesHolding(state: State, now: string): readonly ChecklistState[] {
  const newest = new Map<string, ChecklistState>();
  for (const told of state.checklists.values()) {
    const { checklist, batchId, containerId, validUntil } = told.body;
    // A walk lets nothing begin; when the next is due is told of by itself.
    if (isWalk(told.body)) continue;
    if (validUntil !== null && validUntil > now && holdsFor(state, told, now))
      newest.set(`${checklist.id} ${batchId} ${containerId}`, told);
  }
  return [...newest.values()].sort((a, b) =>
    (a.body.validUntil ?? '') < (b.body.validUntil ?? '') ? -1 : 1,
  );
}
