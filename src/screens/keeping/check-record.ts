/** Begins to check a whole record in a worker of its own, which ends with it. */

import type { RecordName } from '../../storage/database';
import type { StoreFailure, StoreResult } from '../../storage/failure';
import type { Without } from '../../storage/marker';
import type { CheckProgress, Soundness } from '../../storage/soundness';
import { goneOnWithout } from '../../storage/trouble';
import { ownScript } from '../../ui/own-script';
import checkWorker from './check-record-worker?worker&url';

/** `without`: what somebody has decided to go on without, which a worker cannot read for itself. */
export type CheckWanted = { readonly name: RecordName; readonly without: readonly Without[] };

export type CheckSays = { readonly progress: CheckProgress } | { readonly checked: StoreResult<Soundness> };

/** `not-loaded`: the code of the worker is not on the phone yet. */
export type SoundnessChecked =
  | { readonly ok: true; readonly value: Soundness }
  | {
      readonly ok: false;
      readonly failure: StoreFailure | { readonly code: 'not-loaded' } | { readonly code: 'cancelled' };
    };

/** A check that runs. */
export type RunningCheck = { readonly checked: Promise<SoundnessChecked>; readonly cancel: () => void };

/** @param tell hears a few times a second how far it is */
export type CheckRecord = (name: RecordName, tell?: (progress: CheckProgress) => void) => RunningCheck;

export const checkRecordInWorker: CheckRecord = (name, tell = () => undefined) => {
  const worker = new Worker(ownScript(checkWorker), { type: 'module' });
  let end: (checked: SoundnessChecked) => void = () => undefined;
  const ended = new Promise<SoundnessChecked>((resolve) => {
    end = resolve;
  });
  worker.addEventListener('message', ({ data }: MessageEvent<CheckSays>) => {
    if ('progress' in data) tell(data.progress);
    else end(data.checked);
  });
  worker.addEventListener('error', (event) => {
    console.warn('the worker that checks the record broke', event.message);
    end({ ok: false, failure: { code: 'not-loaded' } });
  });
  const wanted: CheckWanted = { name, without: goneOnWithout(name) };
  worker.postMessage(wanted);
  return {
    checked: ended.finally(() => worker.terminate()),
    cancel: () => end({ ok: false, failure: { code: 'cancelled' } }),
  };
};
