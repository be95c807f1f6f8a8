/** Makes the opening of a long record away from the page. A worker of one opening: the page ends it. */
import type { RecordName } from '../storage/database';
import type { StoreResult } from '../storage/failure';
import { makeOpening } from '../storage/openings';
import { openRecord } from '../storage/record';

export type OpeningWanted = { readonly name: RecordName; readonly now: string };

async function made({ name, now }: OpeningWanted): Promise<StoreResult<string | null>> {
  const opened = await openRecord(name, { newId: () => crypto.randomUUID(), onClosed: () => undefined });
  if (!opened.ok) return opened;
  const result = await makeOpening(opened.value, now);
  opened.value.close();
  return result;
}

self.addEventListener('message', async ({ data }: MessageEvent<OpeningWanted>) => {
  self.postMessage(await made(data));
});
