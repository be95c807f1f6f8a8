/** From a checklist that was gone through to what is written of it. */

import { secondIn, standing, toldIn } from '../safety/checklist-run';
import { contentHash } from '../safety/checklists';
import { clearanceUntil } from '../safety/clearance';
import { inThisRun } from '../safety/in-this-run';
import type { Answered, Run } from '../safety/run-schema';
import type { ChecklistAnswer } from './entries/checklists';
import type { IntentionOf } from './intention';

/** An answer as the record keeps it. */
export const answerOf = ({
  item,
  ask,
  kind,
  answer,
  unit,
  min,
  max,
  from,
  byApp,
  who,
  own,
  range,
  reason,
  verdict,
  at,
  quick,
}: Answered): ChecklistAnswer => ({
  item,
  ask,
  kind,
  answer,
  at,
  ...(unit === undefined ? {} : { unit }),
  ...(min === undefined ? {} : { min }),
  ...(max === undefined ? {} : { max }),
  ...(from === undefined ? {} : { from }),
  ...(who === undefined ? {} : { who: { name: who.name, ...(who.at === undefined ? {} : { at: who.at }) } }),
  ...(byApp === undefined ? {} : { byApp }),
  ...(own === undefined ? {} : { own }),
  ...(range === undefined ? {} : { range }),
  ...(reason === undefined ? {} : { reason }),
  ...(verdict === 'stops' ? { stopped: true } : {}),
  ...(quick === undefined ? {} : { quick }),
});

/** Time of return that somebody stated: it ends the clearance of a list that may be left alone, and of no other. */
const returnIn = (run: Run): string | undefined =>
  run.list.longestHours === undefined ? undefined : secondIn(run)?.at;

/** Bases that the list lets go in; undefined where it asks for none. */
function basesIn({ list, context }: Run): string[] | undefined {
  const asked = list.items.find((item) => item.kind === 'choice' && item.expects !== undefined);
  const item = asked && inThisRun(asked, context);
  if (item?.kind !== 'choice') return undefined;
  return item.choices.flatMap(({ base, stops }) => (base === undefined || stops ? [] : [base]));
}

/** A complete run is cleared; any other has stopped, and gives no clearance. @param at when it was finished */
export function finishedRun(runId: string, run: Run, at: string): IntentionOf<'finish-checklist'> {
  const cleared = standing(run).state === 'complete';
  const { list, context } = run;
  const second = secondIn(run);
  const bases = basesIn(run);
  return {
    do: 'finish-checklist',
    runId,
    step: list.step,
    batchId: context.batchId,
    ...(context.containerId === undefined ? {} : { containerId: context.containerId }),
    ...(context.lateFor === undefined ? {} : { late: { stepId: context.lateFor } }),
    checklist: { id: list.id, version: String(list.version), hash: contentHash(list), title: list.title },
    outcome: cleared ? 'cleared' : 'stopped',
    startedAt: run.begunAt,
    finishedAt: at,
    // From the last answer, however late it is written down: what was seen then is not seen now.
    validUntil:
      cleared && context.lateFor === undefined ? clearanceUntil(list, run.openedAt, returnIn(run)) : null,
    ...(context.place === undefined ? {} : { stationId: context.place.id, place: context.place.name }),
    ...(second === undefined
      ? {}
      : { second: { name: second.name, ...(second.at === undefined ? {} : { at: second.at }) } }),
    ...(bases === undefined ? {} : { bases }),
    answers: toldIn(run).map(answerOf),
  };
}
