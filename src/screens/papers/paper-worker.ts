/** Makes papers away from the page, so that the page stays at hand. A worker of one paper: the page ends it. */
import type { Entry } from '../../ledger/entries/entry';
import { applyAll } from '../../ledger/fold';
import { type Job, runJob } from './jobs';
import type { WorkerSays } from './make-in-worker';
import type { Common } from './making';

/** What a paper is made of, as it travels: the entries in place of the state that they add up to. */
export type Order = {
  readonly job: Job;
  readonly common: Omit<Common, 'state'>;
  readonly log: readonly Entry[];
};

const say = (said: WorkerSays, transfer: Transferable[] = []): void => self.postMessage(said, { transfer });

self.addEventListener('message', async ({ data }: MessageEvent<Order>) => {
  const { job, common, log } = data;
  const made = await runJob(
    job,
    () => {
      say({ progress: { stage: 'reading', done: 0, of: 1 } });
      return { ...common, state: applyAll(log) };
    },
    (progress) => say({ progress }),
  );
  say({ made }, made.ok ? made.paper.files.map(({ bytes }) => bytes.buffer) : []);
});
