/** A run on the screen: every answer goes into the draft at once, and can be undone for five seconds. */
import { useEffect, useState } from 'preact/hooks';
import { finishedRun } from '../../ledger/finished-run';
import {
  answer,
  answerAgain,
  back,
  begin,
  type RunFailure,
  resume,
  standing,
} from '../../safety/checklist-run';
import type { Checklist } from '../../safety/checklist-schema';
import type { Given, Run } from '../../safety/run-schema';
import { tick } from '../../ui/stay-awake';
import { type Shell, useShell } from '../shell';
import { KeptRun, runDraft } from './kept-run';
import { type ListFor, partOf } from './list-for';
import { performedFault } from './words';

const undoMs = 5_000;

/** Words of the answer that can be undone still; null after a while. */
function useUndo() {
  const [undo, setUndo] = useState<{ readonly said: string } | null>(null);
  useEffect(() => {
    if (!undo) return;
    const timer = setTimeout(() => setUndo(null), undoMs);
    return () => clearTimeout(timer);
  }, [undo]);
  return [undo, setUndo] as const;
}

/** The station where the phone is, with its name. */
export function placeNow({ state, station }: Shell): Run['context']['place'] {
  const name = state.value.stations.get(station.value ?? '')?.body.name;
  return station.value === null || name === undefined ? undefined : { id: station.value, name };
}

export type RunOnScreen = ReturnType<typeof useRun>;

export function useRun(list: Checklist, what: ListFor, person: string) {
  const shell = useShell();
  const name = runDraft(list.id, partOf(what));
  const place = placeNow(shell);
  const fresh = (): KeptRun => ({
    runId: shell.newId(),
    run: begin(list, { person, ...what, ...(place ? { place } : {}) }, shell.moment()),
  });
  const [kept, setKept] = useState<KeptRun>(() => shell.draft.read(name, KeptRun) ?? fresh());
  const [undo, setUndo] = useUndo();
  const [fault, setFault] = useState<string | null>(null);

  const keep = (next: KeptRun): void => {
    shell.draft.keep(name, next);
    setKept(next);
  };
  const goOnWith = (run: Run): void => keep({ ...kept, run });

  /** Writes the run down as it stands. @returns the entry, or null with the fault shown */
  async function finish(run: Run): Promise<string | null> {
    const done = await shell.perform(finishedRun(kept.runId, run, shell.moment()));
    const id = done.ok
      ? done.written[0]?.id
      : [...shell.state.value.checklists.values()].find(({ body }) => body.runId === kept.runId)?.entryId;
    if (id === undefined) {
      setFault(done.ok ? null : performedFault(done));
      return null;
    }
    return id;
  }

  async function clear(run: Run): Promise<void> {
    const id = await finish(run);
    if (id === null) return;
    shell.draft.drop(name);
    shell.go(`clearance/${id}`, 'replace');
  }

  /** @param said the answer in words, for the undo */
  function give(given: Given, said: string): RunFailure | null {
    const result = answer(kept.run, given, shell.moment());
    if (!result.ok) return result.failure;
    tick();
    goOnWith(result.value.run);
    setUndo({ said });
    if (result.value.state === 'complete') void clear(result.value.run);
    return null;
  }

  /** The question before is open again, as if it had just appeared. */
  function takeBack(): void {
    const result = back(kept.run);
    if (!result.ok) return;
    setUndo(null);
    setFault(null);
    goOnWith({ ...result.value, openedAt: shell.moment() });
  }

  function again(): void {
    const result = answerAgain(kept.run);
    if (!result.ok) return;
    setUndo(null);
    goOnWith(result.value);
  }

  return {
    runId: kept.runId,
    run: kept.run,
    now: standing(kept.run),
    arrived: resume(kept.run, shell.now.value),
    undo,
    fault,
    give,
    takeBack,
    again,
    goOnWith,
    restart: () => keep(fresh()),
    finish: () => finish(kept.run),
    clear: () => clear(kept.run),
    drop: () => shell.draft.drop(name),
    say: setFault,
  };
}
