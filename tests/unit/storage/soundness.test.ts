import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Body } from '../../../src/ledger/entries/body';
import type { Entry } from '../../../src/ledger/entries/entry';
import { seal } from '../../../src/ledger/seal';
import { append, type Stamp } from '../../../src/storage/append';
import { deleteRecord } from '../../../src/storage/database';
import { headsMissing, headsOnDisk } from '../../../src/storage/device-heads';
import { keepPhoto } from '../../../src/storage/photos';
import { type OpenRecord, openRecord } from '../../../src/storage/record';
import { type CheckProgress, checkSoundness } from '../../../src/storage/soundness';

let ids = 0;
const newId = () => `0190b3b0-0000-7000-8000-${(++ids).toString(16).padStart(12, '0')}`;
const stamp: Stamp = { now: '2026-03-02T08:00:00.000Z', zone: 'Europe/Paris', who: null, newId };
const person = (n: number): Body => ({ kind: 'person-added', v: 1, personId: newId(), name: `Person ${n}` });

let record: OpenRecord;

const write = async (count: number): Promise<readonly Entry[]> => {
  const bodies = Array.from({ length: count }, (_, n) => person(n));
  const result = await append(record, stamp, () => ({ ok: true, bodies }));
  if (!('written' in result)) throw new Error(JSON.stringify(result));
  return result.written;
};

const entryAt = async (counter: number): Promise<Entry> => {
  const entry = await record.database.getFromIndex('entries', 'by-device', [record.device, counter]);
  if (!entry) throw new Error('no such entry');
  return entry;
};

const sound = async (tell?: (progress: CheckProgress) => void) => {
  const checked = await checkSoundness(record.database, tell);
  if (!checked.ok) throw new Error(checked.failure.code);
  return checked.value;
};

const picture = (last: number) => new Uint8Array([0xff, 0xd8, 0xff, last]);

beforeEach(async () => {
  ids = 0;
  const opened = await openRecord('real', { newId, onClosed: () => {} });
  if (!opened.ok) throw new Error(opened.failure.code);
  record = opened.value;
});

afterEach(async () => {
  record.close();
  await deleteRecord('real');
});

describe('a record as it was written', () => {
  test('is whole, of several devices and over several chunks, and the check tells how far it is', async () => {
    const written = await write(1203);
    const other = '0d000000-0000-7000-8000-000000000001';
    const { hash: _, ...first } = written[0] as Entry;
    const elsewhere = seal({ ...first, id: newId(), device: other });
    await record.database.add('entries', elsewhere);
    await keepPhoto(record, picture(1), stamp.now);
    const told: CheckProgress[] = [];
    expect(await sound((progress) => told.push(progress))).toEqual({
      entries: 1204,
      photos: 1,
      heads: [
        { device: record.device, counter: 1203, hash: written.at(-1)?.hash },
        { device: other, counter: 1, hash: elsewhere.hash },
      ].sort((a, b) => (a.device < b.device ? -1 : 1)),
      wrong: [],
      wrongCount: 0,
      untold: { damaged: 0, later: 0, photo: 0 },
      photosElsewhere: 0,
    });
    expect(told.map(({ done }) => done)).toEqual([200, 400, 600, 800, 1000, 1200, 1204, 1205]);
    expect(told.every(({ of }) => of === 1205)).toBe(true);
  });

  test('is whole with nothing in it', async () => {
    expect(await sound()).toMatchObject({ entries: 0, photos: 0, heads: [], wrong: [] });
  });
});

describe('what is not as it was written is found', () => {
  test('one changed letter, told once and not for the entries that follow', async () => {
    await write(5);
    const entry = await entryAt(3);
    await record.database.put('entries', { ...entry, zone: 'Europe/Pariss' });
    const { wrong, wrongCount } = await sound();
    expect(wrongCount).toBe(1);
    expect(wrong).toMatchObject([
      { what: 'entry', id: entry.id, hash: entry.hash, counter: 3, why: { code: 'hash-differs' } },
    ]);
  });

  test('an entry that has not the shape of one', async () => {
    await write(3);
    const entry = await entryAt(2);
    await record.database.put('entries', { ...entry, body: { kind: 'person-added' } } as unknown as Entry);
    expect((await sound()).wrong).toMatchObject([{ id: entry.id, why: { code: 'schema' } }]);
  });

  test('one that lost its place in the chain altogether, so that no index has it', async () => {
    await write(3);
    const entry = await entryAt(2);
    await record.database.put('entries', { ...entry, counter: null } as unknown as Entry);
    const { entries, wrong } = await sound();
    expect(entries).toBe(3);
    expect(wrong.map((one) => one.what === 'entry' && [one.counter, one.why.code])).toEqual([
      [3, 'counter-gap'],
      [null, 'schema'],
    ]);
  });

  test('one taken out of the middle, and one put in its place', async () => {
    await write(4);
    const [second, third] = [await entryAt(2), await entryAt(3)];
    await record.database.delete('entries', second.id);
    expect((await sound()).wrong).toMatchObject([{ counter: 3, why: { code: 'counter-gap', expected: 2 } }]);
    const { hash: _, ...rest } = second;
    await record.database.add('entries', seal({ ...rest, happenedAt: '2026-03-01T08:00:00.000Z' }));
    expect((await sound()).wrong).toMatchObject([
      { id: third.id, why: { code: 'previous-does-not-match', stated: second.hash } },
    ]);
  });

  test('the last ones taken out, by what this device would go on from', async () => {
    await write(4);
    await record.database.delete('entries', (await entryAt(4)).id);
    expect((await sound()).wrong).toEqual([{ what: 'head', why: 'not-its-last-entry' }]);
    await record.database.delete('meta', 'head');
    expect((await sound()).wrong).toEqual([{ what: 'head', why: 'missing' }]);
  });

  test('a photo with other bytes; one that lies elsewhere is told apart', async () => {
    const kept = await keepPhoto(record, picture(1), stamp.now);
    if (!kept.ok) throw new Error(kept.failure.code);
    await record.database.put('photos', { hash: kept.value, bytes: picture(2), keptAt: stamp.now });
    const elsewhere = 'e'.repeat(64);
    const photos = [{ hash: elsewhere, type: 'image/jpeg' as const, bytes: 4 }];
    const body: Body = {
      kind: 'container-marked',
      v: 1,
      containerId: newId(),
      mark: 'contents-doubtful',
      photos,
    };
    const [first] = await write(1);
    if (!first) throw new Error('one was written');
    const { hash: _, ...rest } = first;
    const device = '0d000000-0000-7000-8000-000000000001';
    await record.database.add('entries', seal({ ...rest, id: newId(), device, body }));
    const { wrong, photosElsewhere } = await sound();
    expect(wrong).toEqual([{ what: 'photo', hash: kept.value }]);
    expect(photosElsewhere).toBe(1);
  });

  test('of a record that is wrong throughout only the first are told, and all are counted', async () => {
    for (const entry of await write(150)) await record.database.put('entries', { ...entry, zone: 'x/y' });
    const { wrong, wrongCount, untold } = await sound();
    expect([wrong.length, wrongCount, untold]).toEqual([100, 150, { damaged: 50, later: 0, photo: 0 }]);
  });
});

test('the ends of the chains are found without reading what lies before', async () => {
  expect(await headsOnDisk(record.database)).toEqual([]);
  const written = await write(3);
  const last = { device: record.device, counter: 3, hash: written[2]?.hash, writtenAt: stamp.now };
  expect(await headsOnDisk(record.database)).toEqual([last]);
  const heads = written.map(({ device, counter, hash }) => ({ device, counter, hash }));
  expect(await headsMissing(record.database, heads)).toEqual([]);
  const cut = [{ device: record.device, counter: 4, hash: 'f'.repeat(64) }];
  const another = [{ device: record.device, counter: 2, hash: 'f'.repeat(64) }];
  expect(await headsMissing(record.database, cut)).toEqual(cut);
  expect(await headsMissing(record.database, another)).toEqual(another);
});
