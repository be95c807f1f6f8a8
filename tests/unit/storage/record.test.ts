import 'fake-indexeddb/auto';
import * as fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Body } from '../../../src/ledger/entries/body';
import type { Entry } from '../../../src/ledger/entries/entry';
import { verifyChain } from '../../../src/ledger/verify';
import { append, catchUp, type Stamp, watch } from '../../../src/storage/append';
import { deleteRecord } from '../../../src/storage/database';
import { databaseName } from '../../../src/storage/database-name';
import { type OpenRecord, openRecord, readAll } from '../../../src/storage/record';

let ids = 0;
const newId = () => `0190b3b0-0000-7000-8000-${(++ids).toString(16).padStart(12, '0')}`;
const stamp: Stamp = { now: '2026-03-02T08:00:00.000Z', zone: 'Europe/Paris', who: null, newId };
const person = (name: string): Body => ({ kind: 'person-added', v: 1, personId: newId(), name });
const says =
  (...names: string[]) =>
  () =>
    ({ ok: true, bodies: names.map(person) }) as const;

const open: OpenRecord[] = [];

async function opened(name: 'real' | 'demo' = 'real', onClosed = () => {}): Promise<OpenRecord> {
  const result = await openRecord(name, { newId, onClosed });
  if (!result.ok) throw new Error(result.failure.code);
  open.push(result.value);
  return result.value;
}

async function all(record: OpenRecord): Promise<readonly Entry[]> {
  const read = await readAll(record);
  if (!read.ok) throw new Error(read.failure.code);
  return read.value.entries;
}

const written = (result: Awaited<ReturnType<typeof append>>): readonly Entry[] => {
  if (!('written' in result)) throw new Error(JSON.stringify(result));
  return result.written;
};

beforeEach(() => {
  ids = 0;
});

afterEach(async () => {
  vi.restoreAllMocks();
  for (const record of open.splice(0)) record.close();
  await deleteRecord('real');
  await deleteRecord('demo');
});

/** Devices whose names begin alike, or sort around each other, with how far each goes and how far it is known. */
const chains = fc.uniqueArray(
  fc.record({
    device: fc.constantFrom('', 'a', 'a0', 'aa', 'b', 'b\uffff', 'é', '\u{1f600}', 'Z'),
    counters: fc.uniqueArray(fc.integer({ min: 1, max: 9 }), { maxLength: 5 }),
    seen: fc.option(fc.integer({ min: 0, max: 10 }), { nil: undefined }),
  }),
  { selector: ({ device }) => device, maxLength: 6 },
);

test('catching up gives what lies beyond the counters seen, of known devices and of others', async () => {
  await fc.assert(
    fc.asyncProperty(chains, async (all) => {
      const record = await opened('demo');
      const transaction = record.database.transaction('entries', 'readwrite');
      const beyond: string[] = [];
      for (const { device, counters, seen } of all) {
        if (seen !== undefined) record.seen.set(device, seen);
        for (const counter of counters) {
          const id = `${device} ${counter}`;
          void transaction.store.add({ id, device, counter, writtenAt: '' } as Entry);
          if (counter > (seen ?? 0)) beyond.push(id);
        }
      }
      await transaction.done;
      // They are no entries, which is told of each: no matter here.
      const news = await catchUp(record);
      expect(news.ok && news.value.corrupted.map(({ id }) => id).toSorted()).toEqual(beyond.toSorted());
      record.close();
      await deleteRecord('demo');
    }),
  );
});

describe('a record on a device', () => {
  test('keeps its entries and its device over a restart', async () => {
    const first = await opened();
    await append(first, stamp, says('Ana', 'Ben'));
    first.close();
    const again = await opened();
    expect(again.device).toBe(first.device);
    expect((await all(again)).map(({ counter }) => counter)).toEqual([1, 2]);
    await append(again, stamp, says('Cleo'));
    expect(verifyChain(await all(again))).toMatchObject({ whole: true, entries: 3 });
  });

  test('two tabs that write at the same time make one unbroken chain', async () => {
    const [left, right] = [await opened(), await opened()];
    const results = await Promise.all([append(left, stamp, says('Ana')), append(right, stamp, says('Ben'))]);
    expect(results.flatMap(written).map(({ counter }) => counter)).toEqual([1, 2]);
    expect(verifyChain(await all(left))).toMatchObject({ whole: true, entries: 2 });
  });

  test('a decision is taken on what another tab has written in the meantime', async () => {
    const [left, right] = [await opened(), await opened()];
    await append(left, stamp, says('Ana'));
    const heard: (readonly Entry[])[] = [];
    const result = await append(right, stamp, (fresh) => {
      heard.push(fresh);
      return { ok: false, refusal: 'taken' };
    });
    expect(heard[0]).toHaveLength(1);
    expect(result).toMatchObject({ ok: false, refusal: 'taken', fresh: heard[0] });
    expect(await all(left)).toHaveLength(1);
    await append(right, stamp, (fresh) => {
      heard.push(fresh);
      return { ok: true, bodies: [] };
    });
    expect(heard[1]).toEqual([]);
  });

  test('entries of several devices are handed over, each device from where it was known', async () => {
    const record = await opened();
    await append(record, stamp, says('Ana'));
    const [own] = await all(record);
    if (!own) throw new Error('one was written');
    const others = ['00000000-0000-7000-8000-000000000001', 'ffffffff-0000-7000-8000-000000000001'];
    for (const device of others) await record.database.add('entries', { ...own, id: newId(), device });
    const news = await catchUp(record);
    expect(news.ok && news.value.entries.map(({ device }) => device)).toEqual(others);
    expect(await catchUp(record)).toMatchObject({ ok: true, value: { entries: [] } });
  });

  test('written-at does not run backwards when the clock of the phone is set back', async () => {
    const record = await opened();
    await append(record, stamp, says('Ana'));
    const earlier = '2026-03-01T08:00:00.000Z';
    const [entry] = written(await append(record, { ...stamp, now: earlier }, says('Ben')));
    expect(entry).toMatchObject({ writtenAt: stamp.now, happenedAt: earlier });
  });

  test('another tab hears of a new entry once', async () => {
    const [left, right] = [await opened(), await opened()];
    const heard = new Promise<readonly Entry[]>((resolve) => {
      watch(right, (news) => resolve(news.ok ? news.value.entries : []));
    });
    const sent = written(await append(left, stamp, says('Ana')));
    expect(await heard).toEqual(sent);
    expect(await catchUp(right)).toMatchObject({ value: { entries: [] } });
  });
});

describe('a write that fails', () => {
  test('on a full disk is not acknowledged, and nothing of it is kept', async () => {
    const record = await opened();
    await append(record, stamp, says('Ana'));
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    const result = await append(record, stamp, says('Ben'));
    expect(result).toEqual({ ok: false, failure: { code: 'disk-full' } });
    vi.restoreAllMocks();
    expect(await all(record)).toHaveLength(1);
    expect(written(await append(record, stamp, says('Cleo')))[0]).toMatchObject({ counter: 2 });
    expect(verifyChain(await all(record))).toMatchObject({ whole: true });
  });

  test('at the very end, after every request went well, is not acknowledged either', async () => {
    const record = await opened();
    const put = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...given) {
      const request = put.apply(this, given);
      request.addEventListener('success', () => this.transaction.abort());
      return request;
    });
    const result = await append(record, stamp, says('Ana'));
    expect(result).toMatchObject({ ok: false, failure: { code: 'store-failed', name: 'AbortError' } });
    vi.restoreAllMocks();
    expect(await all(record)).toEqual([]);
  });

  test('because the record was closed says so', async () => {
    const record = await opened();
    record.close();
    expect(await append(record, stamp, says('Ana'))).toEqual({ ok: false, failure: { code: 'closed' } });
    expect(await readAll(record)).toEqual({ ok: false, failure: { code: 'closed' } });
  });

  test('because of a fault in our own program is thrown, and nothing is kept', async () => {
    const record = await opened();
    const fault = append(record, stamp, () => {
      throw new Error('fault');
    });
    await expect(fault).rejects.toThrow('fault');
    expect(await all(record)).toEqual([]);
  });

  test('a write asks for the disk, not for a buffer', async () => {
    const record = await opened();
    const transaction = vi.spyOn(IDBDatabase.prototype, 'transaction');
    await append(record, stamp, says('Ana'));
    expect(transaction).toHaveBeenCalledWith(['entries', 'meta', 'photos'], 'readwrite', {
      durability: 'strict',
    });
  });
});

describe('a newer shape of the record, while an older app has it open', () => {
  test('waits with an answer, and is told once the older one is gone', async () => {
    const older = indexedDB.open(databaseName('real'), 2);
    older.addEventListener('upgradeneeded', () => {
      const entries = older.result.createObjectStore('entries', { keyPath: 'id' });
      entries.createIndex('in-order', ['writtenAt', 'device', 'counter']);
      entries.createIndex('by-device', ['device', 'counter'], { unique: true });
      older.result.createObjectStore('meta');
      older.result.createObjectStore('photos', { keyPath: 'hash' }).createIndex('by-kept', 'keptAt');
    });
    await new Promise((resolve) => older.addEventListener('success', resolve));
    const free = new Promise<void>((resolve) => {
      void openRecord('real', { newId, onClosed: () => {}, onFree: resolve }).then((answer) => {
        expect(answer).toEqual({ ok: false, failure: { code: 'blocked' } });
        older.result.close();
      });
    });
    await free;
    const record = await opened();
    expect(written(await append(record, stamp, says('Ana')))).toHaveLength(1);
  });

  test('takes it from one that lets go, which is told that it was closed', async () => {
    const closed = vi.fn();
    const record = await opened('real', closed);
    const newer = indexedDB.open(databaseName('real'), 99);
    await new Promise((resolve) => newer.addEventListener('success', resolve));
    expect(closed).toHaveBeenCalledOnce();
    expect(await append(record, stamp, says('Ana'))).toEqual({ ok: false, failure: { code: 'closed' } });
    newer.result.close();
  });
});

describe('what cannot be read', () => {
  test('an entry that does not fit is kept and reported, the others are read', async () => {
    const record = await opened();
    await append(record, stamp, says('Ana', 'Ben'));
    const [first] = await all(record);
    const damaged = { ...first, body: { kind: 'person-added', v: 1 } } as unknown as Entry;
    await record.database.put('entries', damaged);
    const read = await readAll(record);
    expect(read).toMatchObject({ ok: true, value: { corrupted: [{ id: first?.id, raw: damaged }] } });
    expect(read.ok && read.value.entries).toHaveLength(1);
    expect(await record.database.count('entries')).toBe(2);
  });

  test('a record of a newer version of the app is not touched', async () => {
    const newer = indexedDB.open(databaseName('real'), 99);
    await new Promise((resolve) => newer.addEventListener('success', resolve));
    newer.result.close();
    expect(await openRecord('real', { newId, onClosed: () => {} })).toEqual({
      ok: false,
      failure: { code: 'newer-version' },
    });
  });
});

describe('the demo', () => {
  test('shares nothing with the real record and goes without a trace', async () => {
    const [real, demo] = [await opened('real'), await opened('demo')];
    await append(real, stamp, says('Ana'));
    await append(demo, stamp, says('Demo', 'Demo'));
    expect(demo.device).not.toBe(real.device);
    expect(await deleteRecord('demo')).toEqual({ ok: true, value: null });
    expect((await indexedDB.databases()).map(({ name }) => name)).toEqual([databaseName('real')]);
    expect(await all(real)).toHaveLength(1);
  });

  test('takes its half-filled forms and its marker along', async () => {
    const removeItem = vi.fn();
    const keys = ['leesbook:draft:demo:f', 'leesbook:draft:real:f'];
    vi.stubGlobal('localStorage', { length: 2, key: (place: number) => keys[place], removeItem });
    await deleteRecord('demo');
    vi.unstubAllGlobals();
    expect(removeItem.mock.calls).toEqual([
      ['leesbook:draft:demo:f'],
      ['leesbook:marker:demo'],
      ['leesbook:marker:demo:before'],
      ['leesbook:opening:demo'],
    ]);
  });

  test('when it is removed in one tab, the other tab is told that it is closed', async () => {
    const closed = vi.fn();
    const demo = await opened('demo', closed);
    await deleteRecord('demo');
    expect(closed).toHaveBeenCalledOnce();
    expect(await append(demo, stamp, says('x'))).toEqual({ ok: false, failure: { code: 'closed' } });
  });

  test('a tab that does not let go makes removing it answer blocked', async () => {
    const stubborn = indexedDB.open(databaseName('demo'));
    await new Promise((resolve) => stubborn.addEventListener('success', resolve));
    expect(await deleteRecord('demo')).toEqual({ ok: false, failure: { code: 'blocked' } });
    stubborn.result.close();
  });
});
