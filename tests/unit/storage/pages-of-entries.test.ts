import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Entry } from '../../../src/ledger/entries/entry';
import { gathering, linesAbout } from '../../../src/ledger/entries-about';
import { joined } from '../../../src/ledger/order';
import { deleteRecord } from '../../../src/storage/database';
import { databaseName } from '../../../src/storage/database-name';
import {
  countEntries,
  findEntry,
  type HowFar,
  lookThrough,
  type PageOfEntries,
  type Place,
  pageOfEntries,
} from '../../../src/storage/pages-of-entries';
import { type OpenRecord, openRecord } from '../../../src/storage/record';
import { id, litres, Scribe } from '../ledger/scribe';

vi.stubGlobal('localStorage', { length: 0, key: () => null });

const open: OpenRecord[] = [];
afterEach(async () => {
  for (const record of open.splice(0)) record.close();
  await deleteRecord('real');
});

async function recordOf(...written: readonly (readonly unknown[])[]): Promise<OpenRecord> {
  const opened = await openRecord('real', { newId: () => id('d9', 1), onClosed: () => undefined });
  if (!opened.ok) throw new Error(opened.failure.code);
  open.push(opened.value);
  const { store, done } = opened.value.database.transaction('entries', 'readwrite');
  for (const entry of written.flat()) await store.add(entry as Entry);
  await done;
  return opened.value;
}

const value = <T>(result: { ok: true; value: T } | { ok: false; failure: unknown }): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.failure));
  return result.value;
};

const [can, other] = [id('c0', 1), id('c0', 2)];

const openedCan = (scribe: Scribe, containerId: string) =>
  scribe.write({
    kind: 'container-opened',
    v: 1,
    containerId,
    code: `C-${containerId.slice(-2)}`,
    vessel: 'jerrican',
    capacity: litres('10'),
    material: 'HDPE',
    cap: 'vented',
    openedOn: '2026-03-02',
  });

const read = (scribe: Scribe, containerId: string, minutes = scribe.entries.length) =>
  scribe.write({ kind: 'level-read', v: 1, containerId, level: litres('1') }, minutes);

/** So many looks at a can, of which one was corrected, and the correction withdrawn. */
function levels(many: number) {
  const scribe = new Scribe();
  openedCan(scribe, can);
  openedCan(scribe, other);
  const reads = Array.from({ length: many }, (_, i) => read(scribe, i % 3 === 0 ? can : other));
  const [target] = reads;
  if (!target) throw new Error('too few');
  const corrected = scribe.write({
    kind: 'entry-corrected',
    v: 1,
    corrects: target.id,
    body: { kind: 'level-read', v: 1, containerId: can, level: litres('2') },
    reason: 'Misread',
  });
  const undone = scribe.write({
    kind: 'entry-withdrawn',
    v: 1,
    withdraws: corrected.id,
    reason: 'Not misread',
  });
  return { scribe, target, corrected, undone };
}

describe('a record read page by page', () => {
  test('comes whole, the newest first, each entry once, whatever the size of a page', async () => {
    const { scribe } = levels(20);
    const another = new Scribe('b');
    // At the same minutes on another device.
    for (let n = 0; n < 9; n += 1) read(another, other, n * 2);
    const record = await recordOf(scribe.entries, another.entries);
    const wanted = joined(scribe.entries, another.entries).map((entry) => entry.id);
    for (const many of [1, 7, 33, 100]) {
      const found: string[] = [];
      let before: Place | null = null;
      do {
        const page: PageOfEntries = value(await pageOfEntries(record, before, many));
        found.push(...page.entries.map((entry) => entry.id));
        before = page.next;
      } while (before);
      expect(found.toReversed()).toEqual(wanted);
    }
    expect(value(await countEntries(record))).toBe(wanted.length);
  });

  test('brings what corrected an entry of the page and what undid that, though both stand elsewhere', async () => {
    const { scribe, target, corrected, undone } = levels(30);
    const record = await recordOf(scribe.entries);
    const newest = value(await pageOfEntries(record, null, 25));
    expect(newest.changes.map((entry) => entry.id)).toEqual([undone.id]);
    const page = value(await pageOfEntries(record, newest.next, 25));
    expect(page.next).toBeNull();
    expect(page.entries.map((entry) => entry.id)).toContain(target.id);
    expect(page.changes.map((entry) => entry.id)).toEqual([corrected.id, undone.id]);
    expect(value(await findEntry(record, target.id))).toEqual({
      entry: target,
      changes: [corrected, undone],
    });
    expect(value(await findEntry(record, id('e9', 1)))).toEqual({ entry: null, changes: [] });
  });

  test('tells what it cannot read and goes on behind it', async () => {
    const { scribe } = levels(6);
    const broken = { ...read(scribe, can), body: { kind: 'level-read', v: 1 } };
    scribe.entries.pop();
    const record = await recordOf(scribe.entries, [broken]);
    const first = value(await pageOfEntries(record, null, 1));
    expect(first).toMatchObject({ entries: [], corrupted: [{ id: broken.id }] });
    expect(value(await pageOfEntries(record, first.next, 100)).entries).toHaveLength(scribe.entries.length);
  });
});

describe('the whole record looked through', () => {
  const looked = async (record: OpenRecord, signal = new AbortController().signal) => {
    const told: HowFar[] = [];
    const { takes, missed } = gathering({ is: 'container', id: can });
    const found = value(await lookThrough(record, { takes, missed, tell: (far) => told.push(far), signal }));
    return { ...found, told };
  };

  test('gives what the whole state has of a container, over many chunks, and says how far it is', async () => {
    const { scribe } = levels(700);
    const record = await recordOf(scribe.entries);
    const { entries, changes, told } = await looked(record);
    expect(entries.map((entry) => entry.id)).toEqual(
      linesAbout(scribe.state, { is: 'container', id: can }).map(({ entry }) => entry.id),
    );
    expect(changes).toHaveLength(2);
    expect(told.length).toBeGreaterThan(2);
    expect(told.at(-1)).toEqual({ done: 704, of: 704 });
  });

  test('finds what another device wrote before this one told of it', async () => {
    const scribe = new Scribe('b');
    const begun = scribe.write(
      {
        kind: 'treatment-begun',
        v: 1,
        treatmentId: id('70', 1),
        containerId: can,
        stages: [{ agent: 'hydrated-lime' }],
        clearance: null,
        allowed: 'yes',
      },
      50,
    );
    // Its clock is slow.
    const another = new Scribe('a');
    const ended = another.write(
      { kind: 'treatment-ended', v: 1, treatmentId: id('70', 1), outcome: 'stopped' },
      40,
    );
    const { entries } = await looked(await recordOf(scribe.entries, another.entries));
    expect(entries.map((entry) => entry.id)).toEqual([ended.id, begun.id]);
  });

  test('is about an entry that only its correction makes so', async () => {
    const scribe = new Scribe();
    const wrong = read(scribe, other);
    const corrected = scribe.write({
      kind: 'entry-corrected',
      v: 1,
      corrects: wrong.id,
      body: { kind: 'level-read', v: 1, containerId: can, level: litres('1') },
      reason: 'The other one',
    });
    const { entries } = await looked(await recordOf(scribe.entries));
    expect(entries.map((entry) => entry.id)).toEqual([wrong.id, corrected.id]);
  });

  test('passes what cannot be read, and stops when it is told to', async () => {
    const { scribe } = levels(600);
    const broken = { ...read(scribe, can), body: { kind: 'from-nowhere', v: 1 } };
    scribe.entries.pop();
    const record = await recordOf(scribe.entries, [broken]);
    expect((await looked(record)).entries.length).toBeGreaterThan(200);
    const stopped = await looked(record, AbortSignal.abort());
    expect(stopped.entries).toEqual([]);
  });
});

test('a record of the version before has its corrections found, too', async () => {
  const { scribe, target, corrected, undone } = levels(3);
  const old = await openDB(databaseName('real'), 2, {
    upgrade: (db) => {
      const entries = db.createObjectStore('entries', { keyPath: 'id' });
      entries.createIndex('in-order', ['writtenAt', 'device', 'counter']);
      entries.createIndex('by-device', ['device', 'counter'], { unique: true });
      db.createObjectStore('meta');
      db.createObjectStore('photos', { keyPath: 'hash' }).createIndex('by-kept', 'keptAt');
    },
  });
  for (const entry of scribe.entries) await old.add('entries', entry);
  old.close();
  const record = await recordOf();
  expect(value(await findEntry(record, target.id)).changes).toEqual([corrected, undone]);
});
