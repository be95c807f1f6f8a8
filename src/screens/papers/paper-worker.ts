/** Makes papers away from the page, so that the page stays at hand. A worker of one paper: the page ends it. */
import type { Entry } from '../../ledger/entries/entry';
import { applyAll } from '../../ledger/fold';
import type { Stage, Tell } from '../../paperwork/progress';
import { type Job, runJob } from './jobs';
import type { WorkerSays } from './make-in-worker';
import { type Common, failureOf, type Made, madeOf } from './making';

/** What a paper is made of, as it travels: the entries in place of the state that they add up to. */
export type Order = {
  readonly job: Job;
  readonly common: Omit<Common, 'state'>;
  readonly log: readonly Entry[];
};

/** Between two words on how far it is, ms: a page shows no more. */
const pace = 50;

const say = (said: WorkerSays): void => self.postMessage(said);

/** Tells the first of each stage, and of the others as many as a person can follow. */
function paced(): Tell {
  let last: { readonly stage: Stage; readonly at: number } | undefined;
  return (progress) => {
    const at = performance.now();
    if (last?.stage === progress.stage && at - last.at < pace) return;
    last = { stage: progress.stage, at };
    say({ progress });
  };
}

self.addEventListener('message', async ({ data }: MessageEvent<Order>) => {
  const { job, common, log } = data;
  const tell = paced();
  const files = await runJob(
    job,
    () => {
      tell({ stage: 'reading', done: 0, of: 1 });
      return { ...common, state: applyAll(log) };
    },
    tell,
  );
  let made: Made;
  try {
    // Here, as a file is a copy of its bytes, and a page would stand still for it.
    made = madeOf(files);
  } catch (cause) {
    made = { ok: false, failure: failureOf(cause) };
  }
  say({ made });
});
