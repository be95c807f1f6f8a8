/** Decisions on entries that were wrong. */
import type { Body, PlainBody } from '../entries/body';
import type { Amount } from '../entries/containers';
import type { StreamLogged } from '../entries/streams';
import type { IntentionOf } from '../intention';
import { type Decided, refused, written } from '../refusal';
import type { State } from '../state';
import { stated } from './stated';

/** The thing that a body tells of, which a correction must leave as it is; null for a body that opens no thing. */
function subjectOf(body: PlainBody): string | null {
  switch (body.kind) {
    case 'person-added':
      return body.personId;
    case 'batch-opened':
      return body.batchId;
    case 'checklist-finished':
      return body.runId;
    case 'step-started':
      return body.stepId;
    case 'stream-logged':
      return body.streamId;
    case 'container-opened':
      return body.containerId;
    case 'treatment-begun':
      return body.treatmentId;
    case 'paper-made':
      return body.paperId;
    case 'handed-over':
    case 'load-rejected':
    case 'proof-filed':
      return body.handOverId;
    case 'clock-started':
      return body.clockId;
    case 'silver-checked':
    case 'ventilation-checked':
      return body.checkId;
    case 'station-described':
      return body.stationId;
    default:
      return null;
  }
}

export function correctEntry(state: State, intention: IntentionOf<'correct-entry'>): Decided {
  const { corrects, body: given } = intention;
  const field = 'corrects';
  const target = state.log.find(({ id }) => id === corrects)?.body;
  if (!target) return refused({ code: 'unknown', details: { to: 'entry', id: corrects }, field });
  if (target.kind === 'entry-corrected' || target.kind === 'entry-withdrawn')
    return refused({ code: 'not-correctable', details: { kind: target.kind }, field });
  if (given.kind !== target.kind)
    return refused({
      code: 'another-kind',
      details: { written: target.kind, given: given.kind },
      field: 'body',
    });
  const [was, is] = [subjectOf(target), subjectOf(given)];
  if (was !== null && is !== null && was !== is)
    return refused({ code: 'another-subject', details: { written: was, given: is }, field: 'body' });
  return written(
    { kind: 'entry-corrected', v: 1, ...stated(intention) },
    ...placementToo(state, target, intention),
  );
}

/** What of a waste was logged: its volume, or its mass where it has none. */
const allOf = ({ liquid, solid }: StreamLogged): Amount | undefined => liquid?.volume ?? solid?.wetMass;

/**
 * A waste of which all was put into one container, as it was logged: when its amount was wrong there, it was wrong in
 * the container too. Where somebody placed a part, or has corrected the placement, that stays.
 */
function placementToo(
  state: State,
  target: PlainBody,
  { body, reason }: IntentionOf<'correct-entry'>,
): Body[] {
  if (target.kind !== 'stream-logged' || body.kind !== 'stream-logged') return [];
  const now = state.streams.get(target.streamId);
  const [placement, second] = now?.placements ?? [];
  const [was, is] = [now && allOf(now.body), allOf(body)];
  if (!placement || second || !was || !is) return [];
  const whole = placement.amount.value === was.value && placement.amount.unit === was.unit;
  const same = was.value === is.value && was.unit === is.unit;
  const placed = state.log.find(({ id }) => id === placement.entryId)?.body;
  if (!whole || same || placed?.kind !== 'stream-placed') return [];
  return [
    {
      kind: 'entry-corrected',
      v: 1,
      corrects: placement.entryId,
      body: { ...placed, containerId: placement.containerId, amount: is },
      reason,
    },
  ];
}

export function withdrawEntry(state: State, intention: IntentionOf<'withdraw-entry'>): Decided {
  const { withdraws } = intention;
  const line = state.history.find(({ entry }) => entry.id === withdraws);
  if (line?.standing === 'withdrawn')
    return refused({ code: 'already-withdrawn', details: { id: withdraws }, field: 'withdraws' });
  return written({ kind: 'entry-withdrawn', v: 1, ...stated(intention) });
}
