import 'fake-indexeddb/auto';
import { deleteDB, openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Body } from '../../../src/ledger/entries/body';
import type { Entry } from '../../../src/ledger/entries/entry';
import { seal } from '../../../src/ledger/seal';
import { append, catchUp, type Stamp } from '../../../src/storage/append';
import { deleteRecord } from '../../../src/storage/database';
import { databaseName } from '../../../src/storage/database-name';
import { goOnWithout } from '../../../src/storage/go-on';
import { markersBefore, noteAlsoWithout, noteHeads, readMarker } from '../../../src/storage/marker';
import { type OpenRecord, openRecord, readAll } from '../../../src/storage/record';
import { checkSoundness } from '../../../src/storage/soundness';
import {
  decidedBy,
  goneOnWithout,
  type Trouble,
  troubleAfterCheck,
  troubleAtOpen,
  troubleFrom,
} from '../../../src/storage/trouble';

let ids = 0;
const newId = () => `0190b3b0-0000-7000-8000-${(++ids).toString(16).padStart(12, '0')}`;
const stamp: Stamp = { now: '2026-03-02T08:00:00.000Z', zone: 'Europe/Paris', who: null, newId };
const later = '2026-03-05T08:00:00.000Z';
const person = (name: string): Body => ({ kind: 'person-added', v: 1, personId: newId(), name });

const open: OpenRecord[] = [];

async function opened(): Promise<OpenRecord> {
  const result = await openRecord('real', { newId, onClosed: () => {} });
  if (!result.ok) throw new Error(result.failure.code);
  open.push(result.value);
  return result.value;
}

async function troubleOf(record: OpenRecord): Promise<readonly Trouble[]> {
  const read = await readAll(record);
  if (!read.ok) throw new Error(read.failure.code);
  const trouble = await troubleAtOpen(record, Promise.resolve(read.value.corrupted));
  if (!trouble.ok) throw new Error(trouble.failure.code);
  return trouble.value;
}

async function write(record: OpenRecord, ...names: readonly string[]): Promise<readonly Entry[]> {
  const result = await append(record, stamp, () => ({ ok: true, bodies: names.map(person) }));
  if (!('written' in result)) throw new Error(JSON.stringify(result));
  noteHeads('real', result.written);
  return result.written;
}

const counters = async (record: OpenRecord) =>
  (await record.database.getAllKeysFromIndex('entries', 'by-device')).length;

/** A record of three entries, shut. */
let written: readonly Entry[] = [];

beforeEach(async () => {
  ids = 0;
  const record = await opened();
  expect(await troubleOf(record)).toEqual([]);
  written = await write(record, 'Ana', 'Ben', 'Cleo');
  record.close();
});

afterEach(async () => {
  vi.restoreAllMocks();
  for (const record of open.splice(0)) record.close();
  await deleteRecord('real');
});

const third = () => written[2] as Entry;
const headOf = ({ device, counter, hash }: Entry) => ({ device, counter, hash });

describe('a record that is as the marker tells', () => {
  test('is whole, and the marker tells how far it goes', async () => {
    expect(await troubleOf(await opened())).toEqual([]);
    expect(readMarker('real')).toEqual({
      state: 'there',
      marker: {
        v: 1,
        entries: 3,
        heads: [headOf(third())],
        writtenAt: stamp.now,
        lastBackup: null,
        without: [],
      },
    });
  });

  test('is whole where the marker lags behind, and brings it up: an entry is on the disk before the marker', async () => {
    const first = written[0] as Entry;
    localStorage.setItem(
      'leesbook:marker:real',
      JSON.stringify({
        v: 1,
        entries: 1,
        heads: [headOf(first)],
        writtenAt: null,
        lastBackup: null,
        without: [],
      }),
    );
    expect(await troubleOf(await opened())).toEqual([]);
    expect(readMarker('real')).toMatchObject({ marker: { entries: 3, heads: [headOf(third())] } });
  });

  test('is taken as it is where there is no marker, and has one from then on', async () => {
    localStorage.clear();
    expect(await troubleOf(await opened())).toEqual([]);
    expect(readMarker('real')).toMatchObject({ marker: { entries: 3 } });
  });

  test('opens where localStorage is blocked', async () => {
    vi.spyOn(globalThis, 'localStorage', 'get').mockImplementation(() => {
      throw new DOMException('no', 'SecurityError');
    });
    expect(await troubleOf(await opened())).toEqual([]);
    expect(readMarker('real')).toEqual({ state: 'blocked' });
  });
});

describe('a record that is gone', () => {
  test('is not made anew: the answer says so, and no database is left behind', async () => {
    await deleteDB(databaseName('real'));
    const result = await openRecord('real', { newId, onClosed: () => {} });
    expect(result).toEqual({ ok: false, failure: { code: 'vanished' } });
    expect(await indexedDB.databases()).toEqual([]);
  });

  test('is noticed as well where the marker itself cannot be read', async () => {
    await deleteDB(databaseName('real'));
    localStorage.setItem('leesbook:marker:real', '{"v":1,"entr');
    const result = await openRecord('real', { newId, onClosed: () => {} });
    expect(result).toEqual({ ok: false, failure: { code: 'vanished' } });
  });

  test('is noticed as well where somebody opened its database by name when it was gone, and can be begun anew', async () => {
    await deleteDB(databaseName('real'));
    (await openDB(databaseName('real'))).close();
    expect(await openRecord('real', { newId, onClosed: () => {} })).toEqual({
      ok: false,
      failure: { code: 'vanished' },
    });
    expect(await goOnWithout('real', [{ code: 'gone' }], { newId, now: later })).toMatchObject({ ok: true });
    expect(await write(await opened(), 'Dora')).toMatchObject([{ counter: 1 }]);
  });

  test('with its database still there but emptied is gone too, and gets no new device', async () => {
    const before = await opened();
    await before.database.clear('entries');
    await before.database.clear('meta');
    before.close();
    const record = await opened();
    expect(await troubleOf(record)).toEqual([{ code: 'gone' }]);
    expect(await record.database.count('meta')).toBe(0);
  });

  test('gives way to a new one when somebody decides so; what was known stays for ever', async () => {
    await deleteDB(databaseName('real'));
    expect(await goOnWithout('real', [{ code: 'gone' }], { newId, now: later })).toEqual({
      ok: true,
      value: null,
    });
    const record = await opened();
    expect(await troubleOf(record)).toEqual([]);
    expect(record.device).not.toBe(third().device);
    const [entry] = await write(record, 'Dora');
    expect(entry).toMatchObject({ counter: 1, previous: null });
    expect(readMarker('real')).toMatchObject({
      marker: { entries: 1, without: [{ what: 'record', at: later, entries: 3 }] },
    });
    expect(markersBefore('real').map((text) => JSON.parse(text))).toMatchObject([
      { entries: 3, heads: [headOf(third())] },
    ]);
  });
});

describe('a record that is shorter than the marker tells', () => {
  test('is noticed, with how many are missing, and the marker is left as it was', async () => {
    const before = await opened();
    await before.database.delete('entries', third().id);
    await before.database.delete('entries', (written[1] as Entry).id);
    before.close();
    const trouble = await troubleOf(await opened());
    expect(trouble).toEqual([
      { code: 'shorter', missing: [headOf(third())], entries: 2 },
      { code: 'damaged', wrong: [{ what: 'head', why: 'not-its-last-entry' }], count: 1 },
    ]);
    expect(readMarker('real')).toMatchObject({ marker: { entries: 3 } });
  });

  test('also where an older copy of the whole database was put back, head and all', async () => {
    const before = await opened();
    await before.database.delete('entries', third().id);
    const second = written[1] as Entry;
    await before.database.put('meta', { ...headOf(second), writtenAt: second.writtenAt }, 'head');
    before.close();
    expect(await troubleOf(await opened())).toEqual([
      { code: 'shorter', missing: [headOf(third())], entries: 1 },
    ]);
  });

  test('also where another entry stands in the place of the last', async () => {
    const before = await opened();
    const { hash: _, ...rest } = third();
    const another = seal({ ...rest, happenedAt: '2026-03-01T08:00:00.000Z' });
    await before.database.put('entries', another);
    await before.database.put('meta', { ...headOf(another), writtenAt: another.writtenAt }, 'head');
    before.close();
    expect(await troubleOf(await opened())).toMatchObject([{ code: 'shorter', entries: 0 }]);
  });

  test('is whole again once the missing ones are back', async () => {
    const before = await opened();
    await before.database.delete('entries', third().id);
    await before.database.add('entries', third());
    before.close();
    expect(await troubleOf(await opened())).toEqual([]);
  });

  test('goes on under a new name of the device, and takes the lost ones back when a backup brings them', async () => {
    const before = await opened();
    await before.database.delete('entries', third().id);
    before.close();
    const broken = await opened();
    const trouble = await troubleOf(broken);
    broken.close();
    await goOnWithout('real', trouble, { newId, now: later });
    const record = await opened();
    expect(await troubleOf(record)).toEqual([]);
    const [entry] = await write(record, 'Dora');
    expect(entry).toMatchObject({ counter: 1, previous: null });
    expect(readMarker('real')).toMatchObject({
      marker: {
        entries: 3,
        without: [
          { what: 'lost', entries: 1, heads: [headOf(third())] },
          { what: 'head', at: later },
        ],
      },
    });
    await record.database.add('entries', third());
    expect(await checkSoundness(record.database)).toMatchObject({
      ok: true,
      value: { entries: 4, wrong: [] },
    });
  });

  test('what is written after going on sorts behind what was there, also where the clock was set back', async () => {
    const before = await opened();
    await before.database.delete('entries', third().id);
    before.close();
    const broken = await opened();
    const trouble = await troubleOf(broken);
    broken.close();
    await goOnWithout('real', trouble, { newId, now: later });
    const record = await opened();
    await readAll(record);
    const early = { ...stamp, now: '2020-01-01T00:00:00.000Z' };
    const result = await append(record, early, () => ({ ok: true, bodies: [person('Dora')] }));
    expect('written' in result && result.written[0]?.writtenAt).toBe(stamp.now);
  });
});

describe('a record with something damaged in it', () => {
  test('is noticed at opening where an entry cannot be read', async () => {
    const before = await opened();
    const damaged = { ...third(), body: { kind: 'person-added', v: 1 } } as unknown as Entry;
    await before.database.put('entries', damaged);
    before.close();
    expect(await troubleOf(await opened())).toMatchObject([
      {
        code: 'damaged',
        count: 1,
        wrong: [{ what: 'entry', id: third().id, counter: 3, why: { code: 'schema' } }],
      },
    ]);
  });

  test('is noticed where the head is not there, and no new one is laid over it, marker or none', async () => {
    const before = await opened();
    await before.database.delete('meta', 'head');
    before.close();
    for (const forget of [() => undefined, () => localStorage.clear()]) {
      forget();
      const record = await opened();
      expect(await troubleOf(record)).toEqual([
        { code: 'damaged', wrong: [{ what: 'head', why: 'missing' }], count: 1 },
      ]);
      expect(await record.database.count('meta')).toBe(0);
      record.close();
    }
  });

  test.each([
    ['text', 'garbage'],
    ['nothing', null],
    ['another shape', { device: 7, counter: 'x' }],
  ])(
    'is noticed where %s stands in place of the head: it opens, and what stands there stays',
    async (_, kept) => {
      const before = await opened();
      await before.database.put('meta', kept as never, 'head');
      before.close();
      const record = await opened();
      expect(await troubleOf(record)).toEqual([
        { code: 'damaged', wrong: [{ what: 'head', why: 'missing' }], count: 1 },
      ]);
      expect(await record.database.get('meta', 'head')).toEqual(kept);
      expect(await catchUp(record)).toMatchObject({ ok: true, value: { entries: [] } });
    },
  );

  test.each([
    ['the head', () => headOf(third())],
    ['that of a device that has written nothing yet', () => ({ device: newId(), counter: 0, hash: null })],
  ])('is noticed where %s would date what is written next by an hour that no entry has', async (_, head) => {
    const before = await opened();
    await before.database.put('meta', { ...head(), writtenAt: '2099-01-01T00:00:00.000Z' }, 'head');
    before.close();
    expect(await troubleOf(await opened())).toEqual([
      { code: 'damaged', wrong: [{ what: 'head', why: 'not-its-last-entry' }], count: 1 },
    ]);
  });

  test('is noticed at opening where the last entry of a chain does not fit its hash, one that was slipped in too', async () => {
    const before = await opened();
    const slippedIn = { ...(written[1] as Entry), id: newId(), device: newId() };
    await before.database.put('entries', { ...third(), zone: 'Europe/Pariss' });
    await before.database.put('entries', slippedIn);
    before.close();
    expect(await troubleOf(await opened())).toMatchObject([
      {
        code: 'damaged',
        count: 2,
        wrong: [
          { id: third().id, why: { code: 'hash-differs' } },
          { id: slippedIn.id, why: { code: 'hash-differs' } },
        ],
      },
    ]);
    expect(readMarker('real')).toMatchObject({ marker: { entries: 3, heads: [headOf(third())] } });
  });

  test('goes on without one entry: that one stays, is known for ever, and any other is told anew', async () => {
    const record = await opened();
    await record.database.put('entries', { ...(written[1] as Entry), zone: 'Europe/Pariss' });
    const wrongOf = async () => {
      const checked = await checkSoundness(record.database);
      if (!checked.ok) throw new Error(checked.failure.code);
      const marker = readMarker('real');
      const without = marker.state === 'there' ? marker.marker.without : [];
      return troubleFrom(checked.value.wrong, checked.value.untold, without);
    };
    const trouble = await wrongOf();
    expect(trouble).toMatchObject([{ code: 'damaged', count: 1, wrong: [{ counter: 2 }] }]);
    await goOnWithout('real', trouble, { newId, now: later });
    expect(await wrongOf()).toEqual([]);
    expect(await counters(record)).toBe(3);
    expect((await write(record, 'Dora'))[0]).toMatchObject({ device: third().device, counter: 4 });
    await record.database.put('entries', { ...third(), zone: 'Europe/Pariss' });
    expect(await wrongOf()).toMatchObject([{ code: 'damaged', count: 1, wrong: [{ counter: 3 }] }]);
  });

  test('names what was not decided on, however much was before it', async () => {
    const record = await opened();
    const many = await write(record, ...Array.from({ length: 150 }, (_, n) => `Person ${n}`));
    for (const entry of many) await record.database.put('entries', { ...entry, zone: 'x/y' });
    const wrongOf = async () => {
      const checked = await checkSoundness(
        record.database,
        () => undefined,
        decidedBy(goneOnWithout('real')),
      );
      if (!checked.ok) throw new Error(checked.failure.code);
      return troubleAfterCheck([], checked.value, goneOnWithout('real'));
    };
    const first = await wrongOf();
    expect(first).toMatchObject([{ code: 'damaged', count: 150 }]);
    await goOnWithout('real', first, { newId, now: later });
    expect(goneOnWithout('real')).toHaveLength(100);
    const second = await wrongOf();
    expect(second).toMatchObject([
      { code: 'damaged', count: 50, wrong: many.slice(100).map(({ id }) => ({ id })) },
    ]);
    await goOnWithout('real', second, { newId, now: later });
    expect(await wrongOf()).toEqual([]);
  });

  test('does not hide damaged entries behind many of a later version, or decided ones', () => {
    const damaged = troubleFrom([], { damaged: 7, later: 0 }, []);
    expect(damaged).toEqual([{ code: 'damaged', wrong: [], count: 7 }]);
  });

  test('nor those of a later version behind many that are damaged', () => {
    expect(troubleFrom([], { damaged: 0, later: 3 }, [])).toEqual([{ code: 'later-version', entries: 3 }]);
  });

  test('counts what was given up before no more, once the whole record is given up', async () => {
    noteAlsoWithout('real', [{ what: 'missing', at: later, device: third().device, from: 2, to: 2 }]);
    await goOnWithout('real', [{ code: 'gone' }], { newId, now: later });
    expect(goneOnWithout('real').at(-1)).toEqual({ what: 'record', at: later, entries: 2 });
  });

  test('goes on without one that is missing between others: how many is known, and any other gap is told anew', async () => {
    const record = await opened();
    await write(record, 'Dora', 'Enno', 'Fia');
    const all = (await record.database.getAllFromIndex('entries', 'by-device')) as readonly Entry[];
    const wrongOf = async () => {
      const checked = await checkSoundness(record.database);
      if (!checked.ok) throw new Error(checked.failure.code);
      return troubleFrom(checked.value.wrong, checked.value.untold, goneOnWithout('real'));
    };
    for (const lost of all.slice(1, 3)) await record.database.delete('entries', lost.id);
    await goOnWithout('real', await wrongOf(), { newId, now: later });
    expect(goneOnWithout('real')).toEqual([
      { what: 'missing', at: later, device: third().device, from: 2, to: 3 },
    ]);
    expect(await wrongOf()).toEqual([]);
    // One of the two comes back: what still lacks was given up already.
    await record.database.put('entries', all[2] as Entry);
    expect(await wrongOf()).toEqual([]);
    await record.database.delete('entries', (all[4] as Entry).id);
    expect(await wrongOf()).toMatchObject([{ code: 'damaged', count: 1, wrong: [{ counter: 6 }] }]);
  });

  test('a damaged photo alone does not keep anybody from writing', () => {
    expect(troubleFrom([{ what: 'photo', hash: 'f'.repeat(64) }], { damaged: 0, later: 0 }, [])).toEqual([]);
  });

  test('entries of a later version are told apart from damaged ones', async () => {
    const before = await opened();
    const { hash: _, ...rest } = third();
    const body = { kind: 'robot-added', v: 1 } as unknown as Body;
    const newer = seal({ ...rest, id: newId(), counter: 4, previous: third().hash, body });
    await before.database.add('entries', newer);
    await before.database.put('meta', { ...headOf(newer), writtenAt: newer.writtenAt }, 'head');
    before.close();
    expect(await troubleOf(await opened())).toEqual([{ code: 'later-version', entries: 1 }]);
  });
});

test('the invented record takes its marker with it', async () => {
  noteHeads('demo', written);
  await deleteRecord('demo');
  expect(Object.keys(localStorage).filter((key) => key.includes('demo'))).toEqual([]);
});

test('the marker goes back by nothing that is noted late, as by a tab that was behind', () => {
  const before = readMarker('real');
  expect(noteHeads('real', [written[0] as Entry])).toBe(true);
  expect(readMarker('real')).toEqual(before);
});

test('the marker is as long after ten thousand entries as after one', async () => {
  const lengths = [1, 10_000].map((counter) => {
    noteHeads('real', [{ ...headOf(third()), counter, writtenAt: stamp.now }]);
    return localStorage.getItem('leesbook:marker:real')?.length ?? 0;
  });
  expect((lengths[1] ?? 0) - (lengths[0] ?? 0)).toBeLessThan(12);
});
