/** Orders work on backups in a worker of its own, and ends it. */
import type { TellBackup } from '../../storage/backup/progress';
import { ownScript } from '../../ui/own-script';
import backupWorker from './backup-worker?worker&url';
import type { Brought, Looked, Made, Order, Says, WorkFailure } from './jobs';

type Answer = Exclude<Says, { progress: unknown }>;

/** One worker; one order after the other. */
export type BackupWork = {
  readonly make: (wanted: Extract<Order, { do: 'make' }>['wanted'], tell: TellBackup) => Promise<Made>;
  readonly look: (order: Omit<Extract<Order, { do: 'look' }>, 'do'>, tell: TellBackup) => Promise<Looked>;
  /** Brings in the file that was looked at last. */
  readonly bring: (wanted: Extract<Order, { do: 'bring' }>['wanted'], tell: TellBackup) => Promise<Brought>;
  /** Ends what runs; a transaction that has not ended is undone. */
  readonly end: () => void;
};

export function backupInWorker(): BackupWork {
  const worker = new Worker(ownScript(backupWorker), { type: 'module' });
  let heard = false;
  let answer: (given: Answer | WorkFailure) => void = () => undefined;
  let tell: TellBackup = () => undefined;
  worker.addEventListener('message', ({ data }: MessageEvent<Says>) => {
    heard = true;
    if ('progress' in data) tell(data.progress);
    else answer(data);
  });
  // A worker that never said a word did not come up: its code is not on the phone.
  worker.addEventListener('error', (event) => {
    console.warn('the worker of the backups broke', event.message);
    answer(heard ? { code: 'broken', name: 'worker' } : { code: 'not-loaded' });
  });
  worker.addEventListener('messageerror', () => answer({ code: 'broken', name: 'message' }));
  const ordered = (order: Order, listen: TellBackup): Promise<Answer | WorkFailure> => {
    tell = listen;
    return new Promise((resolve) => {
      answer = resolve;
      worker.postMessage(order);
    });
  };
  const not = (failure: WorkFailure) => ({ ok: false, failure }) as const;
  return {
    make: async (wanted, listen) => {
      const said = await ordered({ do: 'make', wanted }, listen);
      return 'made' in said ? said.made : not(said as WorkFailure);
    },
    look: async (order, listen) => {
      const said = await ordered({ do: 'look', ...order }, listen);
      return 'looked' in said ? said.looked : not(said as WorkFailure);
    },
    bring: async (wanted, listen) => {
      const said = await ordered({ do: 'bring', wanted }, listen);
      return 'brought' in said ? said.brought : not(said as WorkFailure);
    },
    end: () => {
      worker.terminate();
      answer({ code: 'cancelled' });
    },
  };
}
