/** Ways through a stop that end the run; the stop is written down with either. */
import { isLook, runningStep } from '../../ledger/step-offers';
import { useShell } from '../shell';
import { returnDraft } from './kept-run';
import { type Going, homeOf } from './list-for';
import type { RunOnScreen } from './use-run';
import { performedFault } from './words';

export function useEnding(on: RunOnScreen, { list, what }: Going) {
  const { batchId } = what;
  const { perform, go, state, draft } = useShell();
  async function putOff(): Promise<void> {
    const entry = await on.finish();
    if (entry === null) return;
    on.drop();
    go(what.lateFor === undefined ? homeOf(what) : `clearance/${entry}`, 'replace');
  }
  async function already(happenedAt: string, note: string): Promise<void> {
    // Without an answer the list was not begun: only the step is written down.
    if (on.begun && (await on.finish()) === null) return;
    const goesOn = isLook(list) && runningStep(state.value, batchId, list.step) !== null;
    const done = goesOn
      ? null
      : await perform(
          {
            do: 'log-step-happened',
            batchId,
            step: list.step,
            clearance: null,
            ...(note === '' ? {} : { note }),
          },
          happenedAt,
        );
    if (done && !done.ok) return on.say(performedFault(done));
    on.drop();
    go(homeOf(what), 'replace');
  }
  /** What is in a container was treated, not a batch: which, and what went in, is asked on its own page. */
  async function alreadyTreated(): Promise<void> {
    if (on.begun && (await on.finish()) === null) return;
    on.drop();
    draft.drop(returnDraft(list.id));
    go(`${homeOf(what)}/already`, 'replace');
  }
  return { putOff, already, alreadyTreated };
}
