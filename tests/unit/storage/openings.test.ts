import 'fake-indexeddb/auto';
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { addDays } from 'date-fns';
import { openDB } from 'idb';
import { v7 } from 'uuid';
import { afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Entry } from '../../../src/ledger/entries/entry';
import { flags } from '../../../src/ledger/flags';
import { applyAll } from '../../../src/ledger/fold';
import { entriesIn } from '../../../src/ledger/opening';
import type { State } from '../../../src/ledger/state';
import { append } from '../../../src/storage/append';
import { deleteRecord } from '../../../src/storage/database';
import { databaseName } from '../../../src/storage/database-name';
import { noteOpening } from '../../../src/storage/opening-note';
import { makeOpening, readAtHand } from '../../../src/storage/openings';
import { readEarly, takeEarly } from '../../../src/storage/read-early';
import { type OpenRecord, openRecord } from '../../../src/storage/record';
import { seededWorkshop } from '../../support/seeded-workshop';

/** Half a year of a busy workshop that rested since: most of it is over. */
const pace = { entries: 4500, seed: 11 };
const all: Entry[] = [];
let now = '';

beforeAll(() => {
  all.push(...seededWorkshop(pace));
  now = addDays(new Date((all.at(-1) as Entry).writtenAt), 40).toISOString();
});

afterEach(() => deleteRecord('real'));

async function opened(): Promise<OpenRecord> {
  const record = await openRecord('real', { newId: v7, onClosed: () => undefined });
  if (!record.ok) throw new Error(record.failure.code);
  return record.value;
}

async function holding(entries: readonly Entry[]): Promise<OpenRecord> {
  const record = await opened();
  const transaction = record.database.transaction('entries', 'readwrite');
  for (const entry of entries) void transaction.store.add(entry);
  await transaction.done;
  return record;
}

const atHand = async (record: OpenRecord) => {
  const read = await readAtHand(record);
  if (!read.ok) throw new Error(read.failure.code);
  return read.value?.state ?? null;
};

const storedIn = async (record: OpenRecord) => {
  const stored = await record.database.get('openings', 'last');
  if (!stored) throw new Error('no opening is kept');
  return stored;
};

/** JSON as before, in which somebody has another name. */
function renamed(bytes: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer> {
  const text = new TextDecoder().decode(bytes);
  const other = text.replace(/("name":")[^"]/, '$1Z');
  expect(other).not.toBe(text);
  return new TextEncoder().encode(other);
}

describe('the opening of a long record', () => {
  test('a start reads it and what came since, and tells the same as the whole record', async () => {
    const record = await holding(all.slice(0, -50));
    expect(await makeOpening(record, now)).toEqual({
      ok: true,
      value: expect.stringMatching(/^[0-9a-f]{64}$/),
    });
    const transaction = record.database.transaction('entries', 'readwrite');
    for (const entry of all.slice(-50)) void transaction.store.add(entry);
    await transaction.done;
    record.close();
    const again = await opened();
    const state = await atHand(again);
    expect(state && entriesIn(state)).toBe(all.length);
    expect(state?.log.length).toBeLessThan(all.length);
    const told = flags(applyAll(all)).map((flag) => JSON.stringify(flag));
    expect(told).toEqual(expect.arrayContaining(flags(state as State).map((flag) => JSON.stringify(flag))));
    // It goes on from there as from a record that was read whole.
    const person = { kind: 'person-added', v: 1, personId: v7(), name: 'Ines' } as const;
    const stamp = { now: '2028-01-01T00:00:00.000Z', zone: 'Europe/Berlin', who: null, newId: v7 };
    const written = await append(again, stamp, (fresh) => {
      expect(fresh).toEqual([]);
      return { ok: true, bodies: [person] };
    });
    expect(written).toMatchObject({ ok: true, fresh: [] });
    again.close();
  });

  test('whatever is in doubt is thrown away, and the record is not touched', async () => {
    const record = await holding(all);
    await makeOpening(record, now);
    const stored = await storedIn(record);
    const doubts = [
      { ...stored, bytes: renamed(stored.bytes) },
      { ...stored, bytes: stored.bytes.slice(0, -1) },
      { ...stored, heads: stored.heads.map((head) => ({ ...head, hash: 'f'.repeat(64) })) },
      { ...stored, heads: stored.heads.map((head) => ({ ...head, counter: head.counter + 1 })) },
      // What a fault of the disk, or anybody, may leave there.
      ...['garbage', 7, null, [], {}, { ...stored, bytes: 'text' }, { ...stored, heads: undefined }],
      { ...stored, heads: [null] },
      { ...stored, heads: [{ device: null, counter: 'x', hash: '' }] },
    ];
    for (const doubt of doubts) {
      await record.database.put('openings', doubt as typeof stored, 'last');
      expect(await atHand(record)).toBeNull();
      expect(await record.database.get('openings', 'last')).toBeUndefined();
    }
    expect(await record.database.count('entries')).toBe(all.length);
    record.close();
  });

  describe('where its hash is noted apart from it', () => {
    const notes = new Map<string, string>();
    let isFull = false;
    beforeEach(() => {
      notes.clear();
      isFull = false;
      vi.stubGlobal('localStorage', {
        getItem: (key: string) => notes.get(key) ?? null,
        setItem: (key: string, value: string) => {
          if (isFull) throw new DOMException('full', 'QuotaExceededError');
          notes.set(key, value);
        },
        removeItem: (key: string) => notes.delete(key),
      });
    });
    afterEach(() => vi.unstubAllGlobals());

    async function madeAndNoted(record: OpenRecord, at = now): Promise<void> {
      const made = await makeOpening(record, at);
      noteOpening('real', (made.ok && made.value) || '');
    }

    test('one that was changed together with its own hash is thrown away', async () => {
      const record = await holding(all);
      await madeAndNoted(record);
      expect(await atHand(record)).not.toBeNull();
      const stored = await storedIn(record);
      const bytes = renamed(stored.bytes);
      await record.database.put('openings', { ...stored, bytes, sha256: bytesToHex(sha256(bytes)) }, 'last');
      expect(await atHand(record)).toBeNull();
      expect(await record.database.count('openings')).toBe(0);
      record.close();
    });

    test('the note goes with the record', async () => {
      const record = await holding(all);
      await madeAndNoted(record);
      expect(notes.size).toBe(1);
      record.close();
      await deleteRecord('real');
      expect([...notes]).toEqual([]);
    });

    test('one for whose note there is no room is gone on from, also after one that was noted', async () => {
      const record = await holding(all);
      await madeAndNoted(record);
      isFull = true;
      await record.database.delete('openings', 'last');
      await madeAndNoted(record, addDays(new Date(now), 5).toISOString());
      expect(await atHand(record)).not.toBeNull();
      record.close();
    });

    test('one that another window made after it was read early is gone on from in its place', async () => {
      const record = await holding(all);
      await madeAndNoted(record);
      const before = await storedIn(record);
      await record.database.delete('openings', 'last');
      await madeAndNoted(record, addDays(new Date(now), 200).toISOString());
      const after = await storedIn(record);
      expect(after.sha256).not.toBe(before.sha256);
      await record.database.put('openings', before, 'last');
      readEarly(databaseName('real'));
      (await openDB(databaseName('real'))).close();
      await record.database.put('openings', after, 'last');
      expect(await atHand(record)).not.toBeNull();
      expect(await record.database.count('openings')).toBe(1);
      record.close();
    });
  });

  test('what was read early is gone on from while it still holds, and is read once', async () => {
    const record = await holding(all);
    await makeOpening(record, now);
    const stored = await storedIn(record);
    /** Opened after it, this connection writes only what comes after what was read. */
    const early = async () => {
      readEarly(databaseName('real'));
      (await openDB(databaseName('real'))).close();
    };
    await early();
    const state = await atHand(record);
    expect(state && entriesIn(state)).toBe(all.length);
    expect(await takeEarly(databaseName('real'))).toBeNull();

    await early();
    expect(await takeEarly(databaseName('demo'))).toBeNull();
    await early();
    expect((await takeEarly(databaseName('real')))?.heads).toEqual(stored.heads);

    await early();
    await record.database.delete('openings', 'last');
    expect(await atHand(record)).toBeNull();

    const last = all.at(-1) as Entry;
    await record.database.put('openings', stored, 'last');
    await early();
    await record.database.delete('entries', last.id);
    expect(await atHand(record)).toBeNull();
    expect(await record.database.get('openings', 'last')).toBeUndefined();

    // One that is not as it was kept is none, early or late.
    await record.database.put('entries', last);
    await record.database.put('openings', { ...stored, bytes: renamed(stored.bytes) }, 'last');
    await early();
    expect(await takeEarly(databaseName('real'))).toBeNull();
    record.close();
  });

  test('reading early makes no record where there is none, and keeps none from being removed', async () => {
    readEarly(databaseName('real'));
    expect(await takeEarly(databaseName('real'))).toBeNull();
    expect((await indexedDB.databases()).map(({ name }) => name)).not.toContain(databaseName('real'));
    const record = await holding(all.slice(0, 3));
    readEarly(databaseName('real'));
    record.close();
    expect(await deleteRecord('real')).toEqual({ ok: true, value: null });
  });

  test('what reaches behind it has the whole record read again', async () => {
    const [early] = all.splice(2000, 1) as [Entry];
    const record = await holding(all);
    await makeOpening(record, now);
    // From another device, long after it was written.
    await record.database.add('entries', { ...early, counter: 900_000 });
    expect(await atHand(record)).toBeNull();
    expect(await record.database.get('openings', 'last')).toBeUndefined();
    record.close();
  });

  test('one of other code is thrown away', async () => {
    const record = await holding(all);
    await makeOpening(record, now);
    const { bytes, heads } = await storedIn(record);
    const text = new TextDecoder().decode(bytes).replace(/("by":")[^"]*/, '$1other');
    const other = new TextEncoder().encode(text);
    await record.database.put('openings', { bytes: other, sha256: bytesToHex(sha256(other)), heads }, 'last');
    expect(await atHand(record)).toBeNull();
    record.close();
  });

  test('a record with an entry that cannot be read has none', async () => {
    const record = await holding(all);
    await record.database.put('entries', { ...(all[7] as Entry), writtenAt: 'never' });
    await makeOpening(record, now);
    expect(await record.database.get('openings', 'last')).toBeUndefined();
    record.close();
  });

  test('none is kept that was made while a restore filled what lay behind', async () => {
    const record = await holding(all);
    // A restore gives the device another name.
    await makeOpening({ ...record, device: v7() }, now);
    expect(await record.database.get('openings', 'last')).toBeUndefined();
    record.close();
  });

  test('a short record has none', async () => {
    const record = await holding(all.slice(0, 500));
    await makeOpening(record, now);
    expect(await record.database.get('openings', 'last')).toBeUndefined();
    record.close();
  });
});
