/** What is done with something that is wrong: told look by look, written with its container, a stop at once. */
import type { Photos } from '../../ledger/entries/photos';
import { foundOf } from '../../ledger/seen-on-walk';
import type { Item } from '../../safety/checklist-item';
import type { RunFailure } from '../../safety/checklist-run';
import type { Answered, Given } from '../../safety/run-schema';
import { tick } from '../../ui/stay-awake';
import { performedWords } from '../fault';
import { givenPhotos } from '../tried';
import type { Stop, WalkDraft, Wrong } from './draft';
import type { Walking } from './use-walk';

/** Nothing is asked of it just now. */
const between = (wrong: Wrong, found: Wrong['found'] = wrong.found): Wrong => ({
  ...wrong,
  look: null,
  answered: null,
  found,
});

export function wrongOn(walking: Walking) {
  const { shell, draft, keep, write, inspected, undoable, setUndo, codeOf, finishIfAll } = walking;

  const tellWrong = (containerId: string): void =>
    void keep({ wrong: { of: containerId, look: null, answered: null, found: [] } });
  const chooseLook = (wrong: Wrong, look: string | null): void =>
    void keep({ wrong: { ...wrong, look, answered: null } });
  const leaveWrong = (): void => void keep({ wrong: null });

  async function writeStop(wrong: Wrong, stop: Stop, before?: WalkDraft): Promise<void> {
    if (wrong.of === null) return;
    const entry = await write(inspected(wrong.of, wrong.found));
    if (entry === null) return;
    keep({ wrong: null, stop: { ...stop, written: true } });
    if (before) undoable(codeOf(wrong.of), before, entry);
  }

  /** What stops is written down with all that was found there; what to do now stands on the screen in any case. */
  async function stopAt(wrong: Wrong, answered: Answered): Promise<void> {
    const findingId = shell.newId();
    const found = foundOf(answered, findingId);
    const stop: Stop = { of: wrong.of, findingId, answered, written: wrong.of === null };
    if (wrong.of === null) {
      keep({ place: [...draft.place, answered], found: [...draft.found, found], wrong: null, stop });
      return;
    }
    const withIt = between(wrong, [...wrong.found, found]);
    keep({ wrong: withIt, stop });
    await writeStop(withIt, stop, { ...draft, wrong: between(wrong) });
  }

  /** An answer to a look of the container in hand. */
  function answerWrong(wrong: Wrong, item: Item, given: Given): RunFailure | null {
    const result = walking.answered(item, given);
    if (!result.ok) return result.failure;
    tick();
    if (result.value.verdict === 'stops') void stopAt(wrong, result.value);
    else if (result.value.verdict === 'noted') keep({ wrong: { ...wrong, answered: result.value } });
    else chooseLook(wrong, null);
    return null;
  }

  async function writeFound(wrong: Wrong): Promise<boolean> {
    if (wrong.of === null || wrong.found.length === 0) return false;
    const entry = await write(inspected(wrong.of, wrong.found));
    if (entry === null) return false;
    keep({ wrong: null });
    undoable(codeOf(wrong.of), { ...draft, wrong: between(wrong) }, entry);
    return true;
  }

  /** Keeps a finding with what was added to it. @param more the container is not done with */
  async function keepFound(wrong: Wrong, note: string, photos: Photos, more: boolean): Promise<boolean> {
    if (wrong.answered === null) return false;
    const found = foundOf(wrong.answered, shell.newId(), { note: note.trim(), photos });
    if (wrong.of === null) {
      const place = [...draft.place, wrong.answered];
      finishIfAll(keep({ place, found: [...draft.found, found], wrong: null }));
      return true;
    }
    const withIt = between(wrong, [...wrong.found, found]);
    if (!more) return writeFound(withIt);
    keep({ wrong: withIt });
    return true;
  }

  /** Past a stop: the next container or look, or the end. */
  const goOn = (done: WalkDraft['done'] = draft.done): void => finishIfAll(keep({ done, stop: null }));

  /** What was done about a stop. @returns why it could not be written; null when it was */
  async function sayDone(stop: Stop, done: string, photos: Photos): Promise<string | null> {
    const { findingId, of } = stop;
    // What was closed is not taken back with its container.
    setUndo(null);
    if (of === null) {
      goOn([...draft.done, { findingId, done, photos }]);
      return null;
    }
    const why = performedWords(
      await shell.perform({ do: 'close-finding', findingId, done, ...givenPhotos(photos) }),
    );
    if (why === null) goOn();
    return why;
  }

  return {
    tellWrong,
    chooseLook,
    leaveWrong,
    stopAt,
    writeStop,
    answerWrong,
    writeFound,
    keepFound,
    goOn: () => goOn(),
    sayDone,
  };
}
