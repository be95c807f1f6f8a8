import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Entry } from '../../../../src/ledger/entries/entry';
import { hashOf } from '../../../../src/ledger/seal';
import { verifyChain } from '../../../../src/ledger/verify';
import { append, watch } from '../../../../src/storage/append';
import { planRestore } from '../../../../src/storage/backup/plan-restore';
import type { Backup } from '../../../../src/storage/backup/read-backup';
import { NotTaken } from '../../../../src/storage/backup/refusal';
import { restore } from '../../../../src/storage/backup/restore';
import { readPhoto } from '../../../../src/storage/photos';
import { type OpenRecord, readAll } from '../../../../src/storage/record';
import {
  anotherPhone,
  backedUp,
  entriesIn,
  marked,
  monday,
  newId,
  opened,
  person,
  picture,
  read,
  says,
  stamp,
} from './invented-record';

beforeEach(anotherPhone);
afterEach(async () => {
  vi.restoreAllMocks();
  await anotherPhone();
});

async function planned(backup: Backup) {
  const result = await planRestore('real', backup);
  if (!result.ok) throw new Error(result.failure.code);
  return result.value;
}

const restored = async (backup: Backup) =>
  restore(backup, await planned(backup), { record: 'real', now: monday, newDevice: newId() });

/** A workshop of three entries and a photo, and its backup. */
async function workshop() {
  const record = await opened();
  await says(record, person('Ana'), person('Ben'));
  await says(record, await marked(record));
  return { record, backup: await read((await backedUp()).file) };
}

const headOf = (record: OpenRecord) => record.database.get('meta', 'head');

const sorted = (entries: readonly unknown[]) =>
  (entries as readonly Entry[]).toSorted((a, b) => (a.id < b.id ? -1 : 1));

describe('a backup on a new phone', () => {
  test('gives back every entry and every photo', async () => {
    const { record, backup } = await workshop();
    const before = await entriesIn(record);
    await anotherPhone();
    const { database } = await opened();
    await database.put('openings', { bytes: new Uint8Array(1), sha256: '', heads: [] }, 'last');
    expect((await planned(backup)).plan).toMatchObject({ here: 0, fresh: 3, files: { fresh: 1 } });
    expect(await restored(backup)).toEqual({ ok: true, entries: 3, files: 1, without: [] });
    const again = await opened();
    expect(await entriesIn(again)).toEqual(before);
    expect(await again.database.count('openings')).toBe(0);
    const [photo] = backup.files;
    expect(await readPhoto(again, photo?.sha256 ?? '')).toMatchObject({
      value: { state: 'there', bytes: picture(1) },
    });
  });

  test('is gone on with under a new name, so that the old phone can be found again', async () => {
    const { record, backup } = await workshop();
    const old = record.device;
    await says(record, person('Cleo'));
    const later = await read((await backedUp()).file);
    await anotherPhone();
    await restored(backup);
    const phone = await opened();
    expect(phone.device).not.toBe(old);
    await says(phone, person('Dan'));
    expect(await restored(later)).toMatchObject({ ok: true, entries: 1 });
    const all = (await entriesIn(phone)) as readonly Entry[];
    expect(verifyChain(all)).toMatchObject({ whole: true, entries: 5, heads: { length: 2 } });
  });

  test('is written behind what it was restored from, though the clock of the phone is behind', async () => {
    const { backup } = await workshop();
    await anotherPhone();
    await restore(backup, await planned(backup), {
      record: 'real',
      now: '2026-03-01T20:00:00.000Z',
      newDevice: newId(),
    });
    expect(await headOf(await opened())).toMatchObject({ counter: 0, hash: null, writtenAt: monday });
  });
});

describe('a backup of the phone itself', () => {
  test('changes nothing when nothing was lost', async () => {
    const { record, backup } = await workshop();
    const [entries, head] = [await entriesIn(record), await headOf(record)];
    expect((await planned(backup)).plan).toMatchObject({ fresh: 0, alreadyHere: 3, mended: 0 });
    expect(await restored(backup)).toEqual({ ok: true, entries: 0, files: 0, without: [] });
    expect([await entriesIn(record), await headOf(record)]).toEqual([entries, head]);
  });

  test('mends what was damaged, and what was changed and sealed anew, and the phone takes a new name', async () => {
    const { record, backup } = await workshop();
    const whole = await entriesIn(record);
    const [first, second] = whole as [Entry, Entry];
    await record.database.put('entries', { ...first, zone: 'Europe/Rome' });
    const { hash: _, ...forged } = { ...second, body: person('Somebody else') };
    await record.database.put('entries', { ...forged, hash: hashOf(forged) });
    await record.database.put('photos', {
      hash: backup.files[0]?.sha256 ?? '',
      bytes: picture(9),
      keptAt: monday,
    });
    expect((await planned(backup)).plan).toMatchObject({
      fresh: 0,
      alreadyHere: 1,
      mended: 2,
      conflicts: [],
      files: { mended: 1 },
    });
    expect(await restored(backup)).toMatchObject({ ok: true, entries: 2, files: 1 });
    expect(await entriesIn(record)).toEqual(whole);
    expect(await headOf(record)).toMatchObject({ counter: 0, hash: null });
    expect((await headOf(record))?.device).not.toBe(record.device);
    expect(await readPhoto(record, backup.files[0]?.sha256 ?? '')).toMatchObject({
      value: { state: 'there' },
    });
  });

  test('brings back what its end lacks, and the phone takes a new name', async () => {
    const { record, backup } = await workshop();
    const whole = await entriesIn(record);
    await record.database.delete('entries', (whole.at(-1) as Entry).id);
    await restored(backup);
    expect(await entriesIn(record)).toEqual(whole);
    expect((await headOf(record))?.device).not.toBe(record.device);
  });
});

describe('a backup that does not go with the record', () => {
  const refused = async (backup: Backup, record: OpenRecord) => {
    const before = await entriesIn(record);
    const { plan } = await planned(backup);
    expect(await restored(backup)).toEqual({ ok: false, failure: { code: 'conflicts' } });
    expect(await entriesIn(record)).toEqual(before);
    return plan.conflicts;
  };

  /** Two phones that both went on from one backup under one name, as none of ours does. */
  test('because two phones wrote as one is refused, and says which entry it is', async () => {
    const { record } = await workshop();
    const head = await headOf(record);
    await says(record, person('Cleo'));
    const later = await read((await backedUp()).file);
    const cleo = (await entriesIn(record)).at(-1) as Entry;
    await record.database.delete('entries', cleo.id);
    if (head) await record.database.put('meta', head, 'head');
    await says(record, person('Dan'));
    expect(await refused(later, record)).toEqual([
      { why: 'same-place', id: cleo.id, device: cleo.device, counter: 4 },
    ]);
  });

  test('because one id stands for two entries is refused', async () => {
    const { record, backup } = await workshop();
    const first = (await entriesIn(record))[0] as Entry;
    const { hash: _, ...other } = { ...first, device: newId(), counter: 1 };
    await record.database.put('entries', { ...other, hash: hashOf(other) });
    expect(await refused(backup, record)).toMatchObject([{ why: 'same-id', id: first.id }]);
  });

  test('because it is of the invented workshop is refused', async () => {
    const { record, backup } = await workshop();
    const result = await planRestore('demo', backup);
    expect(result).toMatchObject({ value: { plan: { otherRecord: true } } });
    expect(await entriesIn(record)).toHaveLength(3);
  });
});

describe('a restore that fails', () => {
  test('at the last entry leaves nothing behind: no entry, no photo', async () => {
    const { backup } = await workshop();
    await anotherPhone();
    const record = await opened();
    const head = await headOf(record);
    const add = IDBObjectStore.prototype.add;
    let added = 0;
    vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(function (this: IDBObjectStore, ...given) {
      added += 1;
      if (added === 3) throw new DOMException('full', 'QuotaExceededError');
      return add.apply(this, given);
    });
    expect(await restored(backup)).toEqual({ ok: false, failure: { code: 'disk-full' } });
    vi.restoreAllMocks();
    expect(added).toBe(3);
    expect(await entriesIn(record)).toEqual([]);
    expect(await record.database.count('photos')).toBe(0);
    expect(await headOf(record)).toEqual(head);
  });

  test.each([
    ['gone', () => new DOMException('', 'NotFoundError')],
    ['written over', () => new DOMException('', 'NotReadableError')],
    ['written over, and handed over all the same', () => new NotTaken({ code: 'part-differs', name: 'x' })],
  ])('because its file is %s since the plan changes nothing, and says so', async (_, error) => {
    const { backup } = await workshop();
    await anotherPhone();
    const record = await opened();
    const gone = { ...backup, file: () => Promise.reject(error()) };
    expect(await restored(gone)).toEqual({ ok: false, failure: { code: 'file-changed' } });
    expect(await entriesIn(record)).toEqual([]);
    expect(await record.database.count('photos')).toBe(0);
  });

  test('because something was written since the plan changes nothing, and says so', async () => {
    const { record, backup } = await workshop();
    const all = (await entriesIn(record)) as readonly Entry[];
    await anotherPhone();
    const plan = await planned(backup);
    const phone = await opened();
    for (const entry of all.slice(2)) await phone.database.add('entries', entry);
    expect(await restore(backup, plan, { record: 'real', now: monday, newDevice: newId() })).toEqual({
      ok: false,
      failure: { code: 'changed-meanwhile' },
    });
    expect(await entriesIn(phone)).toEqual(all.slice(2));
    // The photo stays: an entry that another tab brought in names it.
    expect(await phone.database.count('photos')).toBe(1);
  });
});

test('other tabs see what was brought in', async () => {
  const { backup } = await workshop();
  await anotherPhone();
  const tab = await opened();
  const heard = new Promise<readonly Entry[]>((resolve) => {
    watch(tab, (news) => resolve(news.ok ? news.value.entries : []));
  });
  await restored(backup);
  expect(sorted(await heard)).toEqual(sorted([...backup.entries()]));
});

describe('a page that was open meanwhile', () => {
  const news = (tab: OpenRecord) =>
    new Promise<Parameters<Parameters<typeof watch>[1]>[0]>((resolve) => {
      watch(tab, resolve);
    });

  test.each([
    [
      'the last of another device is mended',
      (whole: readonly Entry[], tab: OpenRecord) =>
        tab.database.put('entries', { ...(whole[2] as Entry), zone: 'Europe/Rome' }),
    ],
    [
      'one that was missing before others comes back',
      (whole: readonly Entry[], tab: OpenRecord) => tab.database.delete('entries', (whole[1] as Entry).id),
    ],
  ])('is told that it must begin anew, and writes nothing before, where %s', async (_, harm) => {
    const { record, backup } = await workshop();
    const whole = (await entriesIn(record)) as readonly Entry[];
    await anotherPhone();
    await restored(backup);
    const tab = await opened();
    await says(tab, person('Dan'));
    await harm(whole, tab);
    const heard = news(tab);
    await restored(backup);
    expect(await heard).toEqual({ ok: false, failure: { code: 'outdated' } });
    const before = await entriesIn(tab);
    expect(await append(tab, stamp, () => ({ ok: true, bodies: [person('Enno')] }))).toEqual({
      ok: false,
      failure: { code: 'outdated' },
    });
    expect(await entriesIn(tab)).toEqual(before);
    await says(await opened(), person('Enno'));
  });

  test('takes what comes in behind no end of a chain, and goes on', async () => {
    const { record, backup } = await workshop();
    await says(record, person('Cleo'));
    const more = await read((await backedUp()).file);
    await anotherPhone();
    await restored(backup);
    const tab = await opened();
    await readAll(tab);
    const heard = news(tab);
    await restored(more);
    expect(await heard).toMatchObject({ ok: true, value: { entries: [{ counter: 4 }] } });
    await says(tab, person('Dan'));
  });
});
