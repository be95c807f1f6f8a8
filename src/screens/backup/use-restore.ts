/** A file on its way into the record: looked at, then brought in. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { shortOf } from '../../storage/marker';
import { whileWriting } from '../../storage/one-writer';
import { useShell } from '../shell';
import { type HowFar, howFar, notBegun, spansOf } from './how-far';
import type { BackupWork } from './in-worker';
import type { Brought, FoundBackup } from './jobs';
import { refusalOfFile, restoreWords as w, workFailureWords } from './words';

type Count = { readonly entries: number; readonly files: number };

export type Restoring =
  /** `fault`: why the file before was not taken. */
  | { readonly at: 'choose'; readonly fault: string | null }
  | { readonly at: 'locked'; readonly file: File; readonly fault: string | null }
  | { readonly at: 'work'; readonly title: string; readonly howFar: HowFar; readonly canLeave: boolean }
  | { readonly at: 'found'; readonly found: FoundBackup; readonly fault: string | null }
  /** `isAsked`: who holds the phone now. */
  | ({
      readonly at: 'done';
      readonly came: Count;
      readonly mended: Count;
      readonly short: number;
      readonly isAsked: boolean;
    } & Pick<Extract<Brought, { ok: true }>, 'without'>);

const atChoice = (fault: string | null): Restoring => ({ at: 'choose', fault });

/** Leaving the page ends what runs; what was not written to its end is undone. */
export function useRestore() {
  const { record, moment, newId, backups, marker, choosePerson } = useShell();
  const [restoring, setRestoring] = useState<Restoring>(atChoice(null));
  const work = useRef<BackupWork | null>(null);
  useEffect(() => () => work.current?.end(), []);
  const end = (): void => {
    work.current?.end();
    work.current = null;
  };

  const told =
    (title: string, spans: Parameters<typeof howFar>[0]) => (progress: Parameters<typeof howFar>[1]) =>
      setRestoring({
        at: 'work',
        title,
        howFar: howFar(spans, progress),
        // Written while nobody can say any more whether it was left in time.
        canLeave: progress.stage !== 'writing-entries',
      });

  async function look(file: File, passphrase?: string): Promise<void> {
    end();
    const own = backups.work();
    work.current = own;
    setRestoring({ at: 'work', title: w.reading, howFar: notBegun, canLeave: true });
    const looked = await own.look({ record, file, passphrase }, told(w.reading, spansOf.look));
    if (looked.ok) return setRestoring({ at: 'found', found: looked.found, fault: null });
    if (!('refusal' in looked)) return setRestoring(atChoice(workFailureWords(looked.failure)));
    const { code } = looked.refusal;
    const asks = code === 'passphrase-needed' || code === 'passphrase-wrong';
    const fault = code === 'passphrase-needed' ? null : refusalOfFile(looked.refusal);
    setRestoring(asks ? { at: 'locked', file, fault } : atChoice(fault));
  }

  async function bring(found: FoundBackup): Promise<void> {
    const own = work.current;
    if (!own) return;
    setRestoring({ at: 'work', title: w.bringing, howFar: notBegun, canLeave: true });
    const wanted = { record, now: moment(), newDevice: newId() };
    // A new version of the app waits for its end.
    const brought = await whileWriting(() => own.bring(wanted, told(w.bringing, spansOf.bring)));
    if (brought.ok) {
      const { entries, files, without } = brought;
      if (without.length > 0) backups.noteWithout(without);
      if (found.noted) backups.noteBroughtIn(found.noted);
      // Whoever brings it back need not be whom it names, nor who held this phone before.
      const isAsked = found.plan.here === 0;
      if (isAsked) choosePerson(null);
      const short = shortOf(marker(), found.heads);
      const mended = { entries: found.plan.mended, files: found.plan.files.mended };
      // What was mended was written as well.
      const came = { entries: entries - mended.entries, files: files - mended.files };
      return setRestoring({ at: 'done', came, mended, without, short, isAsked });
    }
    const fault = workFailureWords(brought.failure);
    const again = brought.failure.code === 'disk-full' || brought.failure.code === 'blocked';
    setRestoring(again ? { at: 'found', found, fault } : atChoice(fault));
  }

  const leave = (): void => {
    end();
    setRestoring(atChoice(null));
  };
  return { restoring, look, bring, leave };
}
