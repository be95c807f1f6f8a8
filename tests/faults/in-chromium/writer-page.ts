/** Writes into a record as the app does, and tells of each acknowledgement the moment it has it. */
import { v7 } from 'uuid';
import { openBook } from '../../../src/app/open-book';
import type { Intention } from '../../../src/ledger/intention';
import { photosNamed } from '../../../src/ledger/photos-named';
import { verifyChain } from '../../../src/ledger/verify';
import { databaseName } from '../../../src/storage/database-name';

export type Seen = {
  /** Hashes of all entries on the disk, in no order. */
  readonly hashes: readonly string[];
  readonly whole: boolean;
  /** What is wrong with the chain, with a pair of which only one half is there, or with a photo that an entry names. */
  readonly wrong: readonly string[];
  /** What the app itself finds wrong when it opens the record. */
  readonly trouble: readonly string[];
};

export type Writer = {
  readonly look: () => Promise<Seen>;
  /** Goes on until the process ends. Each answer is waited for, so that at most one write is ever under way. */
  readonly writeOn: () => Promise<never>;
};

declare global {
  interface Window {
    writer: Writer;
    /** Of the test: it has heard that this is on the disk. */
    acknowledged: (hashes: readonly string[]) => Promise<void>;
  }
}

const opened = openBook('real').then((result) => {
  if (!result.ok) throw new Error(JSON.stringify(result.failure));
  return result.value;
});

async function everything(): Promise<{ entries: unknown[]; photos: Map<string, Uint8Array> }> {
  // Opened where there is none it would be made anew, and would say nothing of what happened.
  const there = await indexedDB.databases();
  if (!there.some(({ name }) => name === databaseName('real'))) return { entries: [], photos: new Map() };
  const request = indexedDB.open(databaseName('real'));
  const db = await new Promise<IDBDatabase>((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const all = (store: string) =>
    new Promise<unknown[]>((resolve, reject) => {
      const asked = db.transaction(store).objectStore(store).getAll();
      asked.onsuccess = () => resolve(asked.result);
      asked.onerror = () => reject(asked.error);
    });
  const [entries, photos] = [await all('entries'), await all('photos')];
  db.close();
  const kept = photos as { hash: string; bytes: Uint8Array }[];
  return { entries, photos: new Map(kept.map(({ hash, bytes }) => [hash, bytes])) };
}

const hex = (bytes: ArrayBuffer): string =>
  [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, '0')).join('');

async function look(): Promise<Seen> {
  const book = await opened;
  const { entries, photos } = await everything();
  const verdict = verifyChain(entries);
  const wrong: string[] = verdict.whole ? [] : [JSON.stringify(verdict)];
  type Read = { readonly hash: string; readonly body: { readonly kind: string; readonly streamId?: string } };
  const read = entries as readonly Read[];
  const [logged, placed] = ['stream-logged', 'stream-placed'].map(
    (kind) => new Set(read.flatMap(({ body }) => (body.kind === kind ? [body.streamId] : []))),
  );
  for (const streamId of new Set([...(logged ?? []), ...(placed ?? [])]))
    if (!logged?.has(streamId) || !placed?.has(streamId)) wrong.push(`half of ${streamId} is missing`);
  for (const { hash } of photosNamed(read)) {
    const bytes = photos.get(hash);
    const is = bytes && hex(await crypto.subtle.digest('SHA-256', bytes as BufferSource));
    if (is !== hash) wrong.push(`photo ${hash} is ${is ?? 'missing'}`);
  }
  return {
    hashes: read.map(({ hash }) => hash),
    whole: verdict.whole,
    wrong,
    trouble: book.trouble.value.map((trouble) => JSON.stringify(trouble)),
  };
}

async function does(intention: Intention): Promise<void> {
  const result = await (await opened).perform(intention, null);
  if (!result.ok) throw new Error(JSON.stringify(result));
  await window.acknowledged(result.written.map(({ hash }) => hash));
}

async function pictured(containerId: string): Promise<void> {
  const bytes = new Uint8Array(64 * 1024);
  crypto.getRandomValues(bytes);
  const kept = await (await opened).keepPhoto(bytes);
  if (!kept.ok) throw new Error(JSON.stringify(kept.failure));
  const photos = [{ hash: kept.value, type: 'image/jpeg' as const, bytes: bytes.length }];
  await does({ do: 'log-level', containerId, level: { value: '1', unit: 'L' }, photos });
}

/** One entry, two that belong together, one with a photo, over and over. */
async function writeOn(): Promise<never> {
  const book = await opened;
  if (book.state.value.containers.size === 0)
    await does({
      do: 'open-container',
      vessel: 'drum',
      capacity: { value: '200', unit: 'L' },
      material: 'HDPE',
      cap: 'vented',
      openedOn: '2026-03-02',
    });
  const [containerId = ''] = book.state.value.containers.keys();
  const volume = { value: '0.01', unit: 'L' } as const;
  for (;;) {
    await does({ do: 'add-person', name: `Person ${v7()}` });
    await does({
      do: 'log-stream',
      batchId: null,
      stepId: null,
      stream: 'wash-water',
      liquid: { volume, findings: [], freeAcid: [] },
      placements: [{ containerId, amount: volume }],
    });
    await pictured(containerId);
  }
}

window.writer = { look, writeOn };
