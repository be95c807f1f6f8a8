/** Work on backups done in the page itself: in these tests there is no worker. */
import type { BackupWork } from '../../src/screens/backup/in-worker';
import { backupJobs, type WorkFailure } from '../../src/screens/backup/jobs';
import type { TellBackup } from '../../src/storage/backup/progress';

type Cancelled = { readonly ok: false; readonly failure: Extract<WorkFailure, { code: 'cancelled' }> };

/**
 * Ended, it answers at once, as a worker that is ended does; what it still does nobody hears of.
 * @param before is waited for before any work is begun
 */
export function backupHere(before: () => Promise<void> = async () => undefined): BackupWork {
  const work = backupJobs();
  let end: () => void = () => undefined;
  const ended = new Promise<Cancelled>((resolve) => {
    end = () => resolve({ ok: false, failure: { code: 'cancelled' } });
  });
  let isOver = false;
  const until =
    (tell: TellBackup): TellBackup =>
    (progress) => {
      if (!isOver) tell(progress);
    };
  const ordered = async (...[order, tell]: Parameters<typeof work>) => {
    await before();
    return work(order, until(tell));
  };
  const orCancelled = <T>(said: Promise<T>): Promise<T | Cancelled> => Promise.race([said, ended]);
  return {
    make: (wanted, tell) =>
      orCancelled(
        ordered({ do: 'make', wanted }, tell).then((said) => {
          if ('made' in said) return said.made;
          throw new Error('no backup');
        }),
      ),
    look: (order, tell) =>
      orCancelled(
        ordered({ do: 'look', ...order }, tell).then((said) => {
          if ('looked' in said) return said.looked;
          throw new Error('not looked');
        }),
      ),
    bring: (wanted, tell) =>
      orCancelled(
        ordered({ do: 'bring', wanted }, tell).then((said) => {
          if ('brought' in said) return said.brought;
          throw new Error('not brought');
        }),
      ),
    end: () => {
      isOver = true;
      end();
    },
  };
}
