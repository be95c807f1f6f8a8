/** Begins to check a file in a worker of its own, which ends with it. */
import { ownScript } from '../../ui/own-script';
import type { Checked, CheckFile } from './check-file';
import checkWorker from './check-worker?worker&url';

export const checkInWorker: CheckFile = (file) => {
  const worker = new Worker(ownScript(checkWorker), { type: 'module' });
  let end: (checked: Checked) => void = () => undefined;
  const ended = new Promise<Checked>((resolve) => {
    end = resolve;
  });
  worker.addEventListener('message', ({ data }: MessageEvent<Checked>) => end(data));
  // It has one thing to say: where it broke without it, its code is not on the phone, or there was no room.
  worker.addEventListener('error', (event) => {
    console.warn('the worker that checks files broke', event.message);
    end({ ok: false, failure: 'not-loaded' });
  });
  worker.postMessage(file);
  return {
    checked: ended.finally(() => worker.terminate()),
    cancel: () => end({ ok: false, failure: 'cancelled' }),
  };
};
