/** Begins a paper in a worker of its own, which ends with it. */
import type { Progress } from '../../paperwork/progress';
import type { RecordName } from '../../storage/database';
import { ownScript } from '../../ui/own-script';
import type { Common, Made, MakePaper, PaperFailure } from './making';
import type { Order } from './paper-worker';
import paperWorker from './paper-worker?worker&url';

export type WorkerSays = { readonly progress: Progress } | { readonly made: Made };

/** Of a record that is not all at hand the worker reads itself what the page has. */
const orderOf = (record: RecordName, job: Order['job'], { state, ...common }: Common): Order => ({
  job,
  common,
  of: state.earlier ? { record } : { log: state.log },
});

export const makeInWorker =
  (record: RecordName): MakePaper =>
  (job, common, tell) => {
    const worker = new Worker(ownScript(paperWorker), { type: 'module' });
    let end: (made: Made) => void = () => undefined;
    const ended = new Promise<Made>((resolve) => {
      end = resolve;
    });
    const fail = (failure: PaperFailure): void => end({ ok: false, failure });
    let heard = false;
    worker.addEventListener('message', ({ data }: MessageEvent<WorkerSays>) => {
      heard = true;
      if ('progress' in data) tell(data.progress);
      else end(data.made);
    });
    // A worker that never said a word did not come up: its code is not on the phone.
    worker.addEventListener('error', (event) => {
      console.warn('the worker of the papers broke', event.message);
      fail(heard ? { code: 'not-made', name: 'worker' } : { code: 'not-loaded' });
    });
    worker.addEventListener('messageerror', () => fail({ code: 'not-made', name: 'message' }));
    worker.postMessage(orderOf(record, job, common));
    return {
      made: ended.finally(() => worker.terminate()),
      cancel: () => fail({ code: 'cancelled' }),
    };
  };
