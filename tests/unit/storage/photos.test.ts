import 'fake-indexeddb/auto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Body, PlainBody } from '../../../src/ledger/entries/body';
import type { Entry } from '../../../src/ledger/entries/entry';
import type { Photo } from '../../../src/ledger/entries/photos';
import { verifyChain } from '../../../src/ledger/verify';
import { append, type Stamp } from '../../../src/storage/append';
import { deleteRecord } from '../../../src/storage/database';
import { databaseName } from '../../../src/storage/database-name';
import { keepDraft } from '../../../src/storage/drafts';
import { keepPhoto, missingPhotos, photoHash, readPhoto, sweepPhotos } from '../../../src/storage/photos';
import { type OpenRecord, openRecord, readAll } from '../../../src/storage/record';

let ids = 0;
const newId = () => `0190b3b0-0000-7000-8000-${(++ids).toString(16).padStart(12, '0')}`;
const monday = '2026-03-02T08:00:00.000Z';
const tuesday = '2026-03-03T08:00:00.000Z';
const stamp: Stamp = { now: monday, zone: 'Europe/Paris', who: null, newId };

const open: OpenRecord[] = [];

async function opened(name: 'real' | 'demo' = 'real'): Promise<OpenRecord> {
  const result = await openRecord(name, { newId, onClosed: () => undefined });
  if (!result.ok) throw new Error(result.failure.code);
  open.push(result.value);
  return result.value;
}

const entriesOf = async (record: OpenRecord): Promise<readonly Entry[]> => {
  const read = await readAll(record);
  if (!read.ok) throw new Error(read.failure.code);
  return read.value.entries;
};

/** A JPEG as far as the store looks at it. */
const picture = (last: number) => new Uint8Array([0xff, 0xd8, 0xff, 0xe0, last, 0xff, 0xd9]);

async function kept(record: OpenRecord, bytes = picture(1), at = monday): Promise<Photo> {
  const result = await keepPhoto(record, bytes, at);
  if (!result.ok) throw new Error(result.failure.code);
  return { hash: result.value, type: 'image/jpeg', bytes: bytes.length };
}

const marked = (...photos: Photo[]): Body => ({
  kind: 'container-marked',
  v: 1,
  containerId: '0190b3b0-0000-7000-8000-00000000c007',
  mark: 'contents-doubtful',
  photos,
});
const names =
  (...photos: Photo[]) =>
  () =>
    ({ ok: true, bodies: [marked(...photos)] }) as const;

/** localStorage as in a browser, as far as drafts need it. */
function shelf() {
  const items = new Map<string, string>();
  return {
    get length() {
      return items.size;
    },
    key: (place: number) => [...items.keys()][place] ?? null,
    getItem: (key: string) => items.get(key) ?? null,
    setItem: (key: string, text: string) => void items.set(key, text),
    removeItem: (key: string) => void items.delete(key),
  };
}

beforeEach(() => {
  ids = 0;
  vi.stubGlobal('localStorage', shelf());
});

afterEach(async () => {
  vi.restoreAllMocks();
  for (const record of open.splice(0)) record.close();
  await deleteRecord('real');
  await deleteRecord('demo');
  vi.unstubAllGlobals();
});

describe('a photo', () => {
  test('is called by the SHA-256 of its bytes (example of FIPS 180-4: "abc")', () => {
    expect(photoHash(new TextEncoder().encode('abc'))).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
  });

  test('comes back byte for byte after a restart, with its kind', async () => {
    const png = new Uint8Array(readFileSync(join(import.meta.dirname, '../../../public/icon-192.png')));
    const first = await opened();
    const { hash } = await kept(first, png);
    first.close();
    const read = await readPhoto(await opened(), hash);
    expect(read).toEqual({ ok: true, value: { state: 'there', bytes: png, type: 'image/png' } });
  });

  test('kept twice is one photo', async () => {
    const record = await opened();
    expect((await kept(record)).hash).toBe((await kept(record, picture(1), tuesday)).hash);
    expect(await record.database.count('photos')).toBe(1);
  });

  test('that is not there is told as missing, each once', async () => {
    const record = await opened();
    const { hash } = await kept(record);
    const other = photoHash(picture(2));
    expect(await readPhoto(record, other)).toEqual({ ok: true, value: { state: 'missing' } });
    expect(await missingPhotos(record, [other, hash, other])).toEqual({ ok: true, value: [other] });
  });

  test('whose bytes are not those kept is told as damaged, and is whole again once it is kept anew', async () => {
    const record = await opened();
    const { hash } = await kept(record);
    for (const bytes of [picture(2), 'rubbish']) {
      await record.database.put('photos', { hash, bytes, keptAt: monday } as never);
      expect(await readPhoto(record, hash)).toEqual({ ok: true, value: { state: 'damaged' } });
    }
    await kept(record);
    expect(await readPhoto(record, hash)).toMatchObject({ value: { state: 'there' } });
  });

  test('of the demo is none of the real record, and goes with the demo', async () => {
    const [real, demo] = [await opened('real'), await opened('demo')];
    const { hash } = await kept(demo);
    await kept(real, picture(2));
    expect(await readPhoto(real, hash)).toMatchObject({ value: { state: 'missing' } });
    await deleteRecord('demo');
    expect(await readPhoto(await opened('demo'), hash)).toMatchObject({ value: { state: 'missing' } });
    expect(await real.database.count('photos')).toBe(1);
  });
});

describe('a photo that cannot be kept', () => {
  test('because the disk is full is told so; draft and record stand', async () => {
    const record = await opened();
    await append(record, stamp, names());
    keepDraft('real', 'mark', { note: 'label gone' });
    const before = localStorage.getItem('leesbook:draft:real:mark');
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    expect(await keepPhoto(record, picture(1), monday)).toEqual({
      ok: false,
      failure: { code: 'disk-full' },
    });
    vi.restoreAllMocks();
    expect(await record.database.count('photos')).toBe(0);
    expect(localStorage.getItem('leesbook:draft:real:mark')).toBe(before);
    expect(verifyChain(await entriesOf(record))).toMatchObject({ whole: true, entries: 1 });
  });

  test('at the very end, after every request went well, is not acknowledged either', async () => {
    const record = await opened();
    const put = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...given) {
      const request = put.apply(this, given);
      request.addEventListener('success', () => this.transaction.abort());
      return request;
    });
    expect(await keepPhoto(record, picture(1), monday)).toMatchObject({ ok: false });
    vi.restoreAllMocks();
    expect(await record.database.count('photos')).toBe(0);
  });

  test('because the record was closed is told so', async () => {
    const record = await opened();
    record.close();
    const closed = { ok: false, failure: { code: 'closed' } };
    expect(await keepPhoto(record, picture(1), monday)).toEqual(closed);
    expect(await readPhoto(record, photoHash(picture(1)))).toEqual(closed);
    expect(await missingPhotos(record, [])).toEqual(closed);
    expect(await sweepPhotos(record, [], monday)).toEqual(closed);
  });

  test('keeping asks for the disk, not for a buffer', async () => {
    const record = await opened();
    const transaction = vi.spyOn(IDBDatabase.prototype, 'transaction');
    await kept(record);
    expect(transaction).toHaveBeenCalledWith('photos', 'readwrite', { durability: 'strict' });
  });
});

describe('an entry', () => {
  test('names no photo that is not there: nothing is written, and it is told which', async () => {
    const record = await opened();
    const [here, gone] = [
      await kept(record),
      { hash: photoHash(picture(2)), type: 'image/jpeg', bytes: 7 } as const,
    ];
    expect(await append(record, stamp, names(here, gone))).toEqual({
      ok: false,
      failure: { code: 'photo-missing', hashes: [gone.hash] },
    });
    expect(await entriesOf(record)).toEqual([]);
    expect(await append(record, stamp, names(here))).toMatchObject({ ok: true });
    expect(verifyChain(await entriesOf(record))).toMatchObject({ whole: true, entries: 1 });
  });

  test('may name again what the entry that it corrects names, though the photo lies elsewhere', async () => {
    const record = await opened();
    const photo = await kept(record);
    await append(record, stamp, names(photo));
    await record.database.delete('photos', photo.hash);
    const [entry] = await entriesOf(record);
    if (!entry) throw new Error('one was written');
    const corrected = (by: Body) => () => ({ ok: true, bodies: [by] }) as const;
    const correction = (...photos: Photo[]): Body => ({
      kind: 'entry-corrected',
      v: 1,
      corrects: entry.id,
      body: marked(...photos) as PlainBody,
      reason: 'misread',
    });
    expect(await append(record, stamp, names(photo))).toMatchObject({ failure: { code: 'photo-missing' } });
    expect(await append(record, stamp, corrected(correction(photo)))).toMatchObject({ ok: true });
    const another = { ...photo, hash: photoHash(picture(2)) };
    expect(await append(record, stamp, corrected(correction(photo, another)))).toEqual({
      ok: false,
      failure: { code: 'photo-missing', hashes: [another.hash] },
    });
  });

  test('may name again what an earlier correction named, and what the caller knows to be named', async () => {
    const record = await opened();
    const [first, second] = [await kept(record), await kept(record, picture(2))];
    await append(record, stamp, names(first));
    const [entry] = await entriesOf(record);
    if (!entry) throw new Error('one was written');
    const correction = (): { readonly ok: true; readonly bodies: readonly Body[] } => ({
      ok: true,
      bodies: [
        {
          kind: 'entry-corrected',
          v: 1,
          corrects: entry.id,
          body: marked(first, second) as PlainBody,
          reason: 'misread',
        },
      ],
    });
    await append(record, stamp, correction);
    await record.database.delete('photos', second.hash);
    expect(await append(record, stamp, correction)).toMatchObject({ ok: true });
    const known = () => ({ ...names(second)(), named: new Set([second.hash]) });
    expect(await append(record, stamp, known)).toMatchObject({ ok: true });
  });
});

describe('photos that nothing names', () => {
  const swept = async (record: OpenRecord, at = tuesday): Promise<number> => {
    const result = await sweepPhotos(record, [], at);
    if (!result.ok) throw new Error(result.failure.code);
    return result.value;
  };

  test('are cleared away once a day has passed, and not a moment earlier', async () => {
    const record = await opened();
    await kept(record);
    expect(await swept(record, '2026-03-03T07:59:59.999Z')).toBe(0);
    expect(await swept(record, tuesday)).toBe(1);
    expect(await record.database.count('photos')).toBe(0);
  });

  test('stay for another day when they are kept again', async () => {
    const record = await opened();
    await kept(record);
    await kept(record, picture(1), '2026-03-02T20:00:00.000Z');
    expect(await swept(record)).toBe(0);
  });

  test('are not those of a draft, whatever form it is of', async () => {
    const record = await opened();
    keepDraft('real', 'any-form', { deep: [{ photos: [await kept(record)] }] });
    keepDraft('demo', 'any-form', { photos: [await kept(record, picture(2))] });
    expect(await swept(record)).toBe(1);
    expect(await readPhoto(record, photoHash(picture(1)))).toMatchObject({ value: { state: 'there' } });
  });

  test('are not those of an entry, also of one that the caller does not know or that cannot be read', async () => {
    const record = await opened();
    await append(record, stamp, names(await kept(record)));
    const [entry] = await entriesOf(record);
    const newer = {
      ...entry,
      id: newId(),
      counter: 2,
      body: { kind: 'of-a-later-version', pictures: [await kept(record, picture(2))] },
    };
    await record.database.put('entries', newer as never);
    await kept(record, picture(3));
    expect(await swept(record)).toBe(1);
    expect(await record.database.count('photos')).toBe(2);
    // They are not looked for again at every start.
    expect(await record.database.countFromIndex('photos', 'by-kept')).toBe(0);
  });

  test('stay where the drafts cannot be looked at', async () => {
    const record = await opened();
    await kept(record);
    vi.stubGlobal('localStorage', undefined);
    expect(await swept(record)).toBe(0);
  });
});

/** As version 1 laid it; never to be changed. */
function layVersion1(database: IDBDatabase): void {
  const entries = database.createObjectStore('entries', { keyPath: 'id' });
  entries.createIndex('in-order', ['writtenAt', 'device', 'counter']);
  entries.createIndex('by-device', ['device', 'counter'], { unique: true });
  database.createObjectStore('meta');
}

const settled = (request: IDBRequest | IDBTransaction): Promise<unknown> =>
  new Promise((resolve, reject) => {
    request.addEventListener(request instanceof IDBTransaction ? 'complete' : 'success', resolve);
    request.addEventListener('error', reject);
  });

describe('a paper that came as a file', () => {
  const pdf = new TextEncoder().encode('%PDF-1.7\n%%EOF');

  const filed = (hash: string): Body => ({
    kind: 'proof-filed',
    v: 1,
    handOverId: '0190b3b0-0000-7000-8000-00000000a0e0',
    containerIds: ['0190b3b0-0000-7000-8000-00000000c007'],
    files: [{ hash, type: 'application/pdf', bytes: pdf.length, name: 'proof.pdf' }],
  });
  const names = (hash: string) => () => ({ ok: true, bodies: [filed(hash)] }) as const;

  test('lies beside the photos and comes back byte for byte, as what it is', async () => {
    const record = await opened();
    const { hash } = await kept(record, pdf);
    const read = await readPhoto(record, hash);
    expect(read).toEqual({ ok: true, value: { state: 'there', bytes: pdf, type: 'application/pdf' } });
  });

  test('must be there before an entry names it, and stays while one does', async () => {
    const record = await opened();
    const missing = await append(record, stamp, names(photoHash(pdf)));
    expect(missing).toMatchObject({
      ok: false,
      failure: { code: 'photo-missing', hashes: [photoHash(pdf)] },
    });
    const { hash } = await kept(record, pdf);
    await append(record, stamp, names(hash));
    await sweepPhotos(record, await entriesOf(record), '2026-03-09T08:00:00.000Z');
    expect(await readPhoto(record, hash)).toMatchObject({ value: { state: 'there' } });
  });
});

test('a record of version 1 opens with all its entries, goes on in its chain, and takes photos', async () => {
  const source = await opened();
  await append(source, stamp, () => ({
    ok: true,
    bodies: ['Ana', 'Ben'].map((name) => ({ kind: 'person-added', v: 1, personId: newId(), name }) as const),
  }));
  const entries = await entriesOf(source);
  const head = await source.database.get('meta', 'head');
  source.close();
  await deleteRecord('real');

  const request = indexedDB.open(databaseName('real'), 1);
  request.addEventListener('upgradeneeded', () => layVersion1(request.result));
  await settled(request);
  const writing = request.result.transaction(['entries', 'meta'], 'readwrite');
  for (const entry of entries) writing.objectStore('entries').add(entry);
  writing.objectStore('meta').add(head, 'head');
  await settled(writing);
  request.result.close();

  const record = await opened();
  expect(await entriesOf(record)).toEqual(entries);
  expect(record.device).toBe(entries[0]?.device);
  await append(record, stamp, names(await kept(record)));
  expect(verifyChain(await entriesOf(record))).toMatchObject({ whole: true, entries: 3 });
});
