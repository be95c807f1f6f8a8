/** Makes papers away from the page, so that the page stays at hand. A worker of one paper: the page ends it. */
import type { Entry } from '../../ledger/entries/entry';
import { applyAll } from '../../ledger/fold';
import type { State } from '../../ledger/state';
import type { Stage, Tell } from '../../paperwork/progress';
import type { RecordName } from '../../storage/database';
import { readAtHand, readWhole } from '../../storage/openings';
import { openRecord } from '../../storage/record';
import { type Job, runJob } from './jobs';
import type { WorkerSays } from './make-in-worker';
import { type Common, failureOf, type Made, madeOf } from './making';

/** What a paper is made of, as it travels: the entries in place of the state that they add up to, or the record to read. */
export type Order = {
  readonly job: Job;
  readonly common: Omit<Common, 'state'>;
  readonly of: { readonly log: readonly Entry[] } | { readonly record: RecordName };
};

/** What is at hand of the record, as the page has it. @throws where it cannot be read */
async function stateOf(of: Order['of']): Promise<State> {
  if ('log' in of) return applyAll(of.log);
  const opened = await openRecord(of.record, { newId: () => crypto.randomUUID(), onClosed: () => undefined });
  if (!opened.ok) throw new Error(opened.failure.code);
  try {
    const near = await readAtHand(opened.value);
    const read =
      near.ok && near.value ? { ok: true as const, value: near.value } : await readWhole(opened.value);
    if (!read.ok) throw new Error(read.failure.code);
    return read.value.state;
  } finally {
    opened.value.close();
  }
}

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
  const { job, common, of } = data;
  const tell = paced();
  const files = await runJob(
    job,
    async () => {
      tell({ stage: 'reading', done: 0, of: 1 });
      return { ...common, state: await stateOf(of) };
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
