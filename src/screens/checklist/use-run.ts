/** A run on the screen: every answer goes into the draft at once, and can be undone for five seconds. */
import { useEffect, useState } from 'preact/hooks';
import { finishedRun } from '../../ledger/finished-run';
import {
  answer,
  answerAgain,
  back,
  begin,
  movedTo,
  type RunFailure,
  resume,
  standing,
} from '../../safety/checklist-run';
import type { Checklist } from '../../safety/checklist-schema';
import { hourPassed } from '../../safety/named-time';
import type { Context, Given, Run } from '../../safety/run-schema';
import { minutesAfter } from '../../safety/stated-time';
import { tick } from '../../ui/stay-awake';
import { useShell } from '../shell';
import { KeptRun, runDraft } from './kept-run';
import { knownHere } from './known-here';
import { type ListFor, partOf } from './list-for';
import { isSamePlace, usePlace } from './use-place';
import { useUndo } from './use-undo';
import { performedFault } from './words';

/** What a run is begun with; a place that is not known has no key. */
const contextOf = (person: string, what: ListFor, place: Context['place']): Context => ({
  person,
  ...what,
  ...(place ? { place } : {}),
});

/** A person has answered something, or the place has stopped it. */
const isBegun = ({ answered, overcome }: Run): boolean =>
  overcome.length > 0 || answered.some(({ byApp, verdict }) => byApp === undefined || verdict === 'stops');

export type RunOnScreen = ReturnType<typeof useRun>;

export function useRun(list: Checklist, what: ListFor, person: string) {
  const shell = useShell();
  const name = runDraft(list.id, partOf(what));
  const { place, choose } = usePlace(list);
  const [elsewhere, setElsewhere] = useState(false);
  const fresh = (): KeptRun => ({
    runId: shell.newId(),
    run: begin(list, { ...contextOf(person, what, place), ...knownHere(shell, list, what) }, shell.moment()),
  });
  const [kept, setKept] = useState<KeptRun>(() => shell.draft.read(name, KeptRun) ?? fresh());
  const [undo, setUndo] = useUndo<{ readonly said: string }>();
  const [fault, setFault] = useState<string | null>(null);

  const keep = (next: KeptRun): void => {
    shell.draft.keep(name, next);
    setKept(next);
  };
  const goOnWith = (run: Run): void => keep({ ...kept, run });

  const isElsewhere = !isSamePlace(kept.run.context.place, place);
  // With nothing answered yet, the list is simply asked where the phone is now.
  useEffect(() => {
    if (isElsewhere && !isBegun(kept.run)) goOnWith(movedTo(kept.run, place, shell.moment()));
  });

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
    if (result.value.state === 'complete' && !hourPassed(result.value.run, shell.moment()))
      void clear(result.value.run);
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

  /** Another place is another run; what stopped it before stays told. */
  function moveTo(stationId: string | null): void {
    const to = choose(stationId);
    setElsewhere(to === undefined);
    setUndo(null);
    goOnWith(movedTo(kept.run, to, shell.moment()));
  }

  /** The question of the place is open, with no answer of the app. */
  function askWhere(): void {
    moveTo(null);
    setElsewhere(false);
  }

  return {
    runId: kept.runId,
    run: kept.run,
    now: standing(kept.run),
    arrived: resume(kept.run, shell.now.value),
    /** Answers from before this moment are too old for the list. */
    since: minutesAfter(shell.now.value, -list.validHours * 60),
    where: { elsewhere, list: `${partOf(what)}/${list.id}`, onStation: moveTo },
    place,
    isElsewhere,
    begun: isBegun(kept.run),
    undo,
    fault,
    give,
    takeBack,
    again,
    askWhere,
    moveTo,
    goOnWith,
    restart: () => keep(fresh()),
    finish: () => finish(kept.run),
    clear: (run: Run = kept.run) => clear(run),
    drop: () => shell.draft.drop(name),
    say: setFault,
  };
}
