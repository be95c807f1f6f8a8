/**
 * From what a person wants to the bodies that are written. What has happened is never refused for being wrong, only
 * for naming things nobody has told of or not fitting its shape; a plan can be refused for what it would do.
 */
import { endStep, openBatch, startStep } from './decisions/batches';
import { changeList, finishChecklist } from './decisions/checklists';
import { stopClock } from './decisions/clocks';
import {
  determineContents,
  logPlacement,
  openContainer,
  placedAsTold,
  placeStream,
} from './decisions/containers';
import { correctEntry, withdrawEntry } from './decisions/corrections';
import { fileProof, logHandOver, logRejectedLoad } from './decisions/hand-overs';
import { closeFinding, finishWalk } from './decisions/inspections';
import { logMove, moveAll, moveContents } from './decisions/moves';
import { stated } from './decisions/stated';
import { logVentilationCheck } from './decisions/stations';
import { beginTreatment, endTreatment, logTreatment } from './decisions/treatments';
import { Body } from './entries/body';
import type { Context, Intention, IntentionOf } from './intention';
import { knows, referencesOf } from './references';
import { type Decided, type Refusal, refused, written } from './refusal';
import type { State } from './state';

function logStream(state: State, intention: IntentionOf<'log-stream'>, { newId }: Context): Decided {
  const { placements = [], ...stream } = stated(intention);
  const streamId = newId();
  return written(
    { kind: 'stream-logged', v: 1, streamId, ...stream },
    ...placements.map((placement) => placedAsTold(state, { streamId, ...placement }, stream)),
  );
}

function changePerson(state: State, intention: IntentionOf<'change-person'>): Decided {
  const { personId } = intention;
  if (!state.people.has(personId))
    return refused({ code: 'unknown', details: { to: 'person', id: personId }, field: 'personId' });
  return written({ kind: 'person-added', v: 1, ...stated(intention) });
}

/** One case for each intention, so that a new one does not compile until it has its decision. */
function decided(state: State, intention: Intention, context: Context): Decided {
  const v = 1;
  switch (intention.do) {
    case 'describe-workshop':
      return written({ kind: 'workshop-described', v, ...stated(intention) });
    case 'add-person':
      return written({ kind: 'person-added', v, personId: context.newId(), ...stated(intention) });
    case 'change-person':
      return changePerson(state, intention);
    case 'person-leaves':
      return written({ kind: 'person-left', v, ...stated(intention) });
    case 'state-local-rule':
      return written({ kind: 'local-rule-stated', v, ...stated(intention) });
    case 'describe-base':
      return written({ kind: 'base-described', v, ...stated(intention) });
    case 'open-batch':
      return openBatch(state, intention, context);
    case 'finish-checklist':
      return finishChecklist(state, intention, context);
    case 'answer-checklist-later':
      return written({ kind: 'checklist-answered-later', v, ...stated(intention) });
    case 'change-list':
      return changeList(state, intention);
    case 'start-clock':
      return written({ kind: 'clock-started', v, clockId: context.newId(), ...stated(intention) });
    case 'stop-clock':
      return stopClock(state, intention);
    case 'add-station':
      return written({ kind: 'station-described', v, stationId: context.newId(), ...stated(intention) });
    case 'change-station':
      return written({ kind: 'station-described', v, ...stated(intention) });
    case 'give-up-station':
      return written({ kind: 'station-given-up', v, ...stated(intention) });
    case 'log-ventilation-check':
      return logVentilationCheck(state, intention, context);
    case 'log-silver-check':
      return written({ kind: 'silver-checked', v, checkId: context.newId(), ...stated(intention) });
    case 'start-step':
      return startStep(state, intention, context);
    case 'log-step-happened':
      return written({ kind: 'step-started', v, stepId: context.newId(), ...stated(intention) });
    case 'end-step':
      return endStep(state, intention);
    case 'log-charge':
      return written({ kind: 'batch-charged', v, ...stated(intention) });
    case 'log-recovery':
      return written({ kind: 'batch-recovered', v, ...stated(intention) });
    case 'log-stream':
      return logStream(state, intention, context);
    case 'log-stream-test':
      return written({ kind: 'stream-tested', v, ...stated(intention) });
    case 'say-counting':
      return written({ kind: 'counting-said', v, ...stated(intention) });
    case 'open-container':
      return openContainer(state, intention, context);
    case 'change-container':
      return written({ kind: 'container-changed', v, ...stated(intention) });
    case 'place-stream':
      return placeStream(state, intention);
    case 'log-placement-happened':
      return logPlacement(state, intention);
    case 'move-contents':
      return moveContents(state, intention);
    case 'move-all':
      return moveAll(state, intention);
    case 'log-move-happened':
      return logMove(state, intention);
    case 'mark-container':
      return written({ kind: 'container-marked', v, ...stated(intention) });
    case 'log-level':
      return written({ kind: 'level-read', v, ...stated(intention) });
    case 'log-water-lost':
      return written({ kind: 'water-lost', v, ...stated(intention) });
    case 'determine-contents':
      return determineContents(intention, context);
    case 'answer-candidate':
      return written({ kind: 'candidate-answered', v, ...stated(intention) });
    case 'log-lab-report':
      return written({ kind: 'lab-reported', v, ...stated(intention) });
    case 'log-inspected':
      return written({ kind: 'container-inspected', v, ...stated(intention) });
    case 'finish-walk':
      return finishWalk(state, intention);
    case 'close-finding':
      return closeFinding(state, intention);
    case 'begin-treatment':
      return beginTreatment(state, intention, context);
    case 'log-treatment-happened':
      return logTreatment(state, intention, context);
    case 'log-dose':
      return written({ kind: 'dose-added', v, ...stated(intention) });
    case 'log-pot-reading':
      return written({ kind: 'pot-read', v, ...stated(intention) });
    case 'end-treatment':
      return endTreatment(state, intention);
    case 'log-bench-test':
      return written({ kind: 'bench-tested', v, ...stated(intention) });
    case 'state-price':
      return written({ kind: 'price-stated', v, ...stated(intention) });
    case 'record-paper':
      return written({ kind: 'paper-made', v, paperId: context.newId(), ...stated(intention) });
    case 'log-hand-over':
      return logHandOver(intention, context);
    case 'log-rejected-load':
      return logRejectedLoad(state, intention);
    case 'file-proof':
      return fileProof(state, intention);
    case 'correct-entry':
      return correctEntry(state, intention);
    case 'withdraw-entry':
      return withdrawEntry(state, intention);
    default:
      return intention satisfies never;
  }
}

/** Why the bodies cannot stand in this record: one names a thing nobody has told of. */
function unknownFault(state: State, bodies: readonly Body[]): Refusal | null {
  const made = new Set(
    bodies.flatMap((body) => {
      if (body.kind === 'stream-logged') return [body.streamId];
      return body.kind === 'container-opened' ? [body.containerId] : [];
    }),
  );
  const lost = bodies
    .flatMap(referencesOf)
    .find((reference) => !knows(state, reference) && !made.has(reference.id));
  return lost ? { code: 'unknown', details: { to: lost.to, id: lost.id }, field: lost.field } : null;
}

function fittingBodies(bodies: readonly Body[]): Decided {
  const fitting: Body[] = [];
  for (const body of bodies) {
    const read = Body.safeParse(body);
    if (read.success) fitting.push(read.data);
    else {
      const [issue] = read.error.issues;
      const path = issue?.path.join('.') ?? '';
      return refused({
        code: 'does-not-fit',
        details: { path, message: issue?.message ?? '' },
        field: path,
      });
    }
  }
  return written(...fitting);
}

/**
 * @param state what the entries so far add up to
 * @param intention what the person wants to write down or begin
 * @returns bodies that fit their schemas, with texts trimmed, to be sealed and stored; or why not
 */
export function decide(state: State, intention: Intention, context: Context): Decided {
  const result = decided(state, intention, context);
  if (!result.ok) return result;
  const fault = unknownFault(state, result.bodies);
  return fault ? refused(fault) : fittingBodies(result.bodies);
}
