/** Makes, reads and brings in backups away from the page, which ends it. */
import type { BackupStage, TellBackup } from '../../storage/backup/progress';
import { backupJobs, type Order, type Says } from './jobs';

/** Between two words on how far it is, ms: a page shows no more. */
const pace = 50;

const say = (said: Says): void => self.postMessage(said);

/** Tells the first of each stage, and of the others as many as a person can follow. */
function paced(): TellBackup {
  let last: { readonly stage: BackupStage; readonly at: number } | undefined;
  return (progress) => {
    const at = performance.now();
    if (last?.stage === progress.stage && at - last.at < pace) return;
    last = { stage: progress.stage, at };
    say({ progress });
  };
}

/** What engines say when there is no room for an array or a text. */
const noRoom = /allocation|array length|string length|out of memory|too large/i;

function brokenBy(order: Order, cause: unknown): Says {
  const full = cause instanceof RangeError && noRoom.test(cause.message);
  if (full && order.do === 'make') return { made: { ok: false, refusal: { code: 'no-room' } } };
  if (full && order.do === 'look') return { looked: { ok: false, refusal: { code: 'no-room' } } };
  const name = cause instanceof Error ? cause.name : String(cause);
  const failed = { ok: false, failure: { code: 'broken', name } } as const;
  return order.do === 'make'
    ? { made: failed }
    : order.do === 'look'
      ? { looked: failed }
      : { brought: failed };
}

const work = backupJobs();

self.addEventListener('message', async ({ data: order }: MessageEvent<Order>) => {
  try {
    say(await work(order, paced()));
  } catch (cause) {
    console.warn('a backup was not worked on to its end', cause);
    say(brokenBy(order, cause));
  }
});
