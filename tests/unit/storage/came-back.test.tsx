/** What was given up and a backup brought back is no longer named; what is not there still is. */
import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Entry } from '../../../src/ledger/entries/entry';
import { hashOf } from '../../../src/ledger/seal';
import { forgetMarker, markersBefore, noteAlsoWithout, type Without } from '../../../src/storage/marker';
import type { OpenRecord } from '../../../src/storage/record';
import { goneOnWithout, troubleAtOpen } from '../../../src/storage/trouble';
import { anotherPhone, monday, opened, person, says } from './backup/invented-record';

let record: OpenRecord;
let written: readonly Entry[];

beforeEach(async () => {
  await anotherPhone();
  record = await opened();
  written = await says(record, ...['Ana', 'Ben', 'Cleo', 'Dora'].map(person));
});
afterEach(async () => {
  forgetMarker('real');
  await anotherPhone();
});

const at = (counter: number): Entry => written[counter - 1] as Entry;
const headOf = ({ device, counter, hash }: Entry) => ({ device, counter, hash });
const asEntry = ({ id, device, counter, hash }: Entry): Without => ({
  what: 'entry',
  at: monday,
  id,
  hash,
  device,
  counter,
});

/** What is still named of it once the record is opened. */
async function named(...without: readonly Without[]) {
  noteAlsoWithout('real', without);
  const trouble = await troubleAtOpen(record, Promise.resolve([]));
  expect(trouble.ok).toBe(true);
  return goneOnWithout('real');
}

const lose = (...counters: readonly number[]) =>
  Promise.all(counters.map((counter) => record.database.delete('entries', at(counter).id)));

describe('entries that were missing between others', () => {
  const gap = () => ({ what: 'missing', at: monday, device: at(2).device, from: 2, to: 3 }) satisfies Without;

  test('stay named as far as they are not there, until all of them are', async () => {
    await lose(2, 3);
    expect(await named(gap())).toEqual([gap()]);
    await record.database.add('entries', at(3));
    expect(await named()).toEqual([{ ...gap(), to: 2 }]);
    await record.database.add('entries', at(2));
    expect(await named()).toEqual([]);
    expect(markersBefore('real').at(-1)).toContain('"missing"');
  });

  test('are named on both sides of what came back', async () => {
    written = [...written, ...(await says(record, ...['Enno', 'Fia'].map(person)))];
    await lose(2, 3, 4, 5);
    const wide = { ...gap(), to: 5 };
    expect(await named(wide)).toEqual([wide]);
    await record.database.add('entries', at(4));
    expect(await named()).toEqual([gap(), { ...gap(), from: 5, to: 5 }]);
  });
});

describe('the end of a chain that was lost', () => {
  const lost = () => ({ what: 'lost', at: monday, entries: 2, heads: [headOf(at(4))] }) satisfies Without;
  const head: Without = { what: 'head', at: monday };
  const record_: Without = { what: 'record', at: monday, entries: 7 };

  test('stays named until all of it is there, and takes the note of the last entry along', async () => {
    await lose(3, 4);
    expect(await named(lost(), head, record_)).toHaveLength(3);
    await record.database.add('entries', at(4));
    const { device } = at(3);
    expect(await named()).toEqual([{ what: 'missing', at: monday, device, from: 3, to: 3 }, record_]);
    await record.database.add('entries', at(3));
    // Of a whole record nobody knows what was in it.
    expect(await named()).toEqual([record_]);
  });

  test('stays named as far as it is not there', async () => {
    await lose(3, 4);
    expect(await named(lost(), head)).toEqual([lost(), head]);
    await record.database.add('entries', at(3));
    expect(await named()).toEqual([{ ...lost(), entries: 1 }, head]);
  });

  test('stays named as it was where nothing of it is there, of two chains together too', async () => {
    await lose(3, 4);
    const other = { device: '0d000000-0000-7000-8000-000000000009', counter: 7, hash: 'f'.repeat(64) };
    const both: Without = { what: 'lost', at: monday, entries: 9, heads: [headOf(at(4)), other] };
    expect(await named(both)).toEqual([both]);
    await record.database.add('entries', at(3));
    expect(await named()).toEqual([
      { ...lost(), entries: 1 },
      { ...both, entries: 7, heads: [other] },
    ]);
    await record.database.add('entries', at(4));
    // The note of the last entry goes with the last of the ends.
    expect(await named(head)).toEqual([{ ...both, entries: 7, heads: [other] }, head]);
  });

  test('is not named a second time where an entry before it was given up as well', async () => {
    await lose(2, 4);
    const gap: Without = { what: 'missing', at: monday, device: at(2).device, from: 2, to: 2 };
    const two = { ...lost(), entries: 3 };
    expect(await named(gap, two)).toEqual([gap, { ...lost(), entries: 1 }]);
  });

  test('leaves the note of a last entry that was lost at another time', async () => {
    const earlier: Without = { what: 'head', at: '2026-03-01T08:00:00.000Z' };
    expect(await named(earlier, lost(), head)).toEqual([earlier]);
  });
});

describe('an entry that was damaged', () => {
  test('stays named while it is, and not once it is whole in its place', async () => {
    await record.database.put('entries', { ...at(2), zone: 'Europe/Pariss' });
    expect(await named(asEntry(at(2)))).toHaveLength(1);
    await record.database.put('entries', at(2));
    expect(await named()).toEqual([]);
  });

  test('stays named where its place was damaged, though another stands whole in it', async () => {
    const moved = { ...at(2), counter: 9 };
    await record.database.put('entries', moved);
    const { hash: _, ...rest } = { ...at(3), id: '0190b3b0-0000-7000-8000-00000000e009', counter: 9 };
    await record.database.delete('entries', moved.id);
    await record.database.put('entries', { ...rest, hash: hashOf(rest) });
    await record.database.put('entries', { ...moved, counter: 10 });
    expect(await named(asEntry(moved))).toHaveLength(1);
  });

  test('stays named where it does not follow the one before it', async () => {
    const { hash: _, ...changed } = { ...at(1), zone: 'Europe/Rome' };
    await record.database.put('entries', { ...changed, hash: hashOf(changed) });
    expect(await named(asEntry(at(2)))).toHaveLength(1);
    await record.database.put('entries', at(1));
    expect(await named()).toEqual([]);
  });
});
