/** A backup of a record that goes on without something: said before it is brought in, and carried over. */
import 'fake-indexeddb/auto';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Entry } from '../../../../src/ledger/entries/entry';
import { hashOf } from '../../../../src/ledger/seal';
import { aboutBackup } from '../../../../src/storage/backup/about-backup';
import { planRestore } from '../../../../src/storage/backup/plan-restore';
import type { Backup } from '../../../../src/storage/backup/read-backup';
import { restore } from '../../../../src/storage/backup/restore';
import { forgetMarker, noteAlsoWithout, type Without } from '../../../../src/storage/marker';
import type { OpenRecord } from '../../../../src/storage/record';
import { checkSoundness } from '../../../../src/storage/soundness';
import { goneOnWithout, troubleFrom } from '../../../../src/storage/trouble';
import {
  anotherPhone,
  backedUp,
  entriesIn,
  monday,
  newId,
  opened,
  person,
  read,
  says,
} from './invented-record';

beforeEach(anotherPhone);
afterEach(async () => {
  forgetMarker('real');
  await anotherPhone();
});

async function planned(backup: Backup) {
  const result = await planRestore('real', backup);
  if (!result.ok) throw new Error(result.failure.code);
  return result.value;
}

const restored = async (backup: Backup) =>
  restore(backup, await planned(backup), { record: 'real', now: monday, newDevice: newId() });

async function workshop() {
  const record = await opened();
  await says(record, person('Ana'), person('Ben'), person('Cleo'));
  return { record, backup: await read((await backedUp()).file) };
}

/** Three entries, of which the second was lost, and its backup. */
async function withGap() {
  const { record, backup: whole } = await workshop();
  const all = (await entriesIn(record)) as readonly Entry[];
  const second = all.find(({ counter }) => counter === 2) as Entry;
  await record.database.delete('entries', second.id);
  return { record, whole, second, device: record.device };
}

const gapOf = (device: string) => ({ device, from: 2, to: 2 });

/** What a look at everything finds that nobody has decided on. */
async function troubleLeft(record: OpenRecord) {
  const found = await checkSoundness(record.database);
  if (!found.ok) throw new Error(found.failure.code);
  return troubleFrom(found.value.wrong, found.value.untold, goneOnWithout('real'));
}

test('says before anything is done what the record will lack, and has nothing untold in it after', async () => {
  const { device } = await withGap();
  const backup = await read((await backedUp()).file);
  await anotherPhone();
  expect((await planned(backup)).plan).toMatchObject({
    fresh: 2,
    lacks: { gaps: [gapOf(device)], unfit: [] },
  });
  const result = await restored(backup);
  const without = [{ what: 'missing', at: monday, ...gapOf(device) }] as const;
  expect(result).toEqual({ ok: true, entries: 2, files: 0, without });
  expect(noteAlsoWithout('real', without)).toBe(true);
  expect(await troubleLeft(await opened())).toEqual([]);
  // Noted once, however often it is brought in.
  noteAlsoWithout('real', [{ ...without[0], at: '2026-03-09T08:00:00.000Z' }]);
  expect(goneOnWithout('real')).toEqual(without);
});

test('tells as well what was lost where no gap shows it', async () => {
  await workshop();
  const lost: Without = { what: 'lost', at: monday, entries: 5, heads: [] };
  const head = { what: 'head', at: monday } as const;
  const backup = await read((await backedUp(null, [lost, head])).file);
  expect(aboutBackup(backup).without).toEqual([lost]);
  await anotherPhone();
  expect((await planned(backup)).plan.lacks).toEqual({ gaps: [], unfit: [] });
  expect(await restored(backup)).toMatchObject({ without: [lost] });
});

test('lacks nothing where the entry is here, and nothing once another backup has brought it', async () => {
  const { record, whole, second } = await withGap();
  const backup = await read((await backedUp()).file);
  // What lacks here already is told without any backup.
  expect((await planned(backup)).plan.lacks.gaps).toEqual([]);
  await record.database.add('entries', second);
  expect((await planned(backup)).plan.lacks.gaps).toEqual([]);
  await anotherPhone();
  await restored(backup);
  expect((await planned(whole)).plan).toMatchObject({ fresh: 1, lacks: { gaps: [] } });
  expect(await restored(whole)).toMatchObject({ entries: 1, without: [] });
  expect(await troubleLeft(await opened())).toEqual([]);
});

test('whose chain does not hold says which entry does not follow, and has nothing untold in it after', async () => {
  const { record } = await workshop();
  const all = (await entriesIn(record)) as readonly Entry[];
  const [first, second] = all as [Entry, Entry];
  const { hash: _, ...changed } = { ...first, zone: 'Europe/Rome' };
  await record.database.put('entries', { ...changed, hash: hashOf(changed) });
  const backup = await read((await backedUp()).file);
  await anotherPhone();
  expect((await planned(backup)).plan.lacks).toMatchObject({ gaps: [], unfit: [{ id: second.id }] });
  const result = await restored(backup);
  if (!result.ok) throw new Error(result.failure.code);
  noteAlsoWithout('real', result.without);
  expect(await troubleLeft(await opened())).toEqual([]);
});
