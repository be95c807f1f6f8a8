/** Checks a record away from the page. A worker of one check: the page ends it. */
import { openDatabase, type RecordName } from '../../storage/database';
import { done, type StoreResult } from '../../storage/failure';
import { checkSoundness, type Soundness } from '../../storage/soundness';
import type { CheckSays } from './check-record';

const say = (said: CheckSays): void => self.postMessage(said);

/** Between two words on how far it is, ms: a page shows no more. */
const pace = 100;

async function check(name: RecordName): Promise<StoreResult<Soundness>> {
  const opened = await openDatabase(name, () => undefined, 'only-if-there');
  if (!opened.ok) return opened;
  let last = 0;
  const sound = await checkSoundness(opened.value, (progress) => {
    const at = performance.now();
    if (at - last < pace) return;
    last = at;
    say({ progress });
  });
  opened.value.close();
  return sound.ok ? done(sound.value) : sound;
}

self.addEventListener('message', async ({ data: name }: MessageEvent<RecordName>) => {
  try {
    say({ checked: await check(name) });
  } catch (cause) {
    console.warn('the record was not checked', cause);
    const { name: kind, message } = cause instanceof Error ? cause : new Error(String(cause));
    say({ checked: { ok: false, failure: { code: 'store-failed', name: kind, message } } });
  }
});
