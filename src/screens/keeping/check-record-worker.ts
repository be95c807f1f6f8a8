/** Checks a record away from the page. A worker of one check: the page ends it. */
import { openDatabase } from '../../storage/database';
import { done, type StoreResult } from '../../storage/failure';
import { type CheckProgress, checkSoundness, type Soundness } from '../../storage/soundness';
import { decidedBy } from '../../storage/trouble';
import type { CheckSays, CheckWanted } from './check-record';

const say = (said: CheckSays): void => self.postMessage(said);

/** Between two words on how far it is, ms: a page shows no more. */
const pace = 100;

async function check({ name, without }: CheckWanted): Promise<StoreResult<Soundness>> {
  const opened = await openDatabase(name, () => undefined, 'only-if-there');
  if (!opened.ok) return opened;
  let last = 0;
  const tell = (progress: CheckProgress): void => {
    const at = performance.now();
    if (at - last < pace) return;
    last = at;
    say({ progress });
  };
  const sound = await checkSoundness(opened.value, tell, decidedBy(without));
  opened.value.close();
  return sound.ok ? done(sound.value) : sound;
}

self.addEventListener('message', async ({ data: wanted }: MessageEvent<CheckWanted>) => {
  try {
    say({ checked: await check(wanted) });
  } catch (cause) {
    console.warn('the record was not checked', cause);
    const { name: kind, message } = cause instanceof Error ? cause : new Error(String(cause));
    say({ checked: { ok: false, failure: { code: 'store-failed', name: kind, message } } });
  }
});
