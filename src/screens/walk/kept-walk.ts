/** The walk that waits for the person, and every change of it kept at once. */
import { useRef, useState } from 'preact/hooks';
import { lastWalk, walkUnderWay, wasLeft } from '../../ledger/walks';
import { type Shell, useShell } from '../shell';
import { freshWalk, WalkDraft, walkDraft } from './draft';

/** The draft that waits, or the walk that the entries tell of, or a new one. What was described and not written is kept. */
function openedWalk(shell: Shell, only: string | undefined): WalkDraft {
  const { draft, state, newId, moment } = shell;
  const now = moment();
  const kept = draft.read(walkDraft(only), WalkDraft);
  const ended = only === undefined && kept !== null && state.value.walks.get(kept.walkId)?.finished;
  const inHand = kept?.wrong || kept?.stop || kept?.done.length;
  if (kept && (inHand || (!ended && !wasLeft(kept.openedAt, now)))) return kept;
  // One that the last walk could not see belongs to that walk.
  const of = only === undefined ? walkUnderWay(state.value, now) : lastWalk(state.value);
  return freshWalk(of?.walkId ?? newId(), now);
}

/** @param only the one container that it is for; undefined for a whole walk */
export function useKeptWalk(only: string | undefined) {
  const shell = useShell();
  const [draft, setDraft] = useState<WalkDraft>(() => openedWalk(shell, only));
  // What waits for an answer of the disk goes on from what is there then, not from what was drawn before.
  const latest = useRef(draft);
  /** What comes up by it is looked at from now on. */
  function keep(change: Partial<WalkDraft>): WalkDraft {
    const next = { ...latest.current, ...change, openedAt: shell.moment() };
    latest.current = next;
    shell.draft.keep(walkDraft(only), next);
    setDraft(next);
    return next;
  }
  return { draft, keep, drop: () => shell.draft.drop(walkDraft(only)) };
}
