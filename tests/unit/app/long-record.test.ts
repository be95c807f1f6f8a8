import 'fake-indexeddb/auto';
import { v7 } from 'uuid';
import { afterEach, expect, test } from 'vitest';
import { openBook } from '../../../src/app/open-book';
import type { Entry } from '../../../src/ledger/entries/entry';
import type { Intention } from '../../../src/ledger/intention';
import { deleteRecord } from '../../../src/storage/database';
import { makeOpening } from '../../../src/storage/openings';
import { type OpenRecord, openRecord } from '../../../src/storage/record';
import { seededWorkshop } from '../../support/seeded-workshop';

const all: readonly Entry[] = [...seededWorkshop({ entries: 4500, seed: 11 })];

afterEach(() => deleteRecord('real'));

async function opened(): Promise<OpenRecord> {
  const record = await openRecord('real', { newId: v7, onClosed: () => undefined });
  if (!record.ok) throw new Error(record.failure.code);
  return record.value;
}

/** On the disk, with its opening. */
async function laid(): Promise<void> {
  const record = await opened();
  const transaction = record.database.transaction('entries', 'readwrite');
  for (const entry of all) void transaction.store.add(entry);
  await transaction.done;
  expect(await makeOpening(record, new Date().toISOString())).toMatchObject({ ok: true });
  record.close();
}

test('what names something of long ago is written down, after the whole record was read', async () => {
  await laid();
  const book = await openBook('real');
  if (!book.ok) throw new Error(book.failure.code);
  const { perform, state, close } = book.value;
  const { people, batches, earlier } = state.value;
  const old = earlier?.putAway().find(({ is }) => is === 'batch');
  expect(old && batches.has(old.id)).toBe(false);
  const who = [...people.keys()].at(-1) ?? null;
  const washOf = (batchId: string): Intention => ({
    do: 'log-stream',
    batchId,
    stepId: null,
    stream: 'wash-water',
    liquid: { volume: { value: '1', unit: 'L' }, findings: [], freeAcid: [] },
  });
  const kept = await perform(washOf(old?.id ?? ''), who);
  expect(kept).toMatchObject({ ok: true, written: [{ body: { batchId: old?.id } }] });
  expect(state.value.earlier).toBeNull();
  expect(state.value.log).toHaveLength(all.length + 1);
  // What nobody told of is refused by the whole record as well.
  expect(await perform(washOf(v7()), who)).toMatchObject({ ok: false, refusal: { code: 'unknown' } });
  close();
});

test('what cannot be read any more is found when the whole record is read, and is no more at hand', async () => {
  await laid();
  const record = await opened();
  const last = all.at(-1) as Entry;
  await record.database.put('entries', { ...last, writtenAt: 'never' });
  record.close();
  const book = await openBook('real');
  if (!book.ok) throw new Error(book.failure.code);
  const { readWhole, state, trouble, corrupted, close } = book.value;
  expect(state.value.log.map(({ id }) => id)).toContain(last.id);
  expect(await readWhole()).toMatchObject({ ok: true });
  expect(corrupted.value.map(({ id }) => id)).toEqual([last.id]);
  expect(state.value.log.map(({ id }) => id)).not.toContain(last.id);
  expect(trouble.value.map(({ code }) => code)).toEqual(['damaged']);
  close();
});

test('an entry with no place in any chain is found as well when the whole record is read', async () => {
  await laid();
  const record = await opened();
  const old = all[1000] as Entry;
  const { device: _, ...nowhere } = { ...old, id: v7() };
  await record.database.put('entries', nowhere as Entry);
  record.close();
  const book = await openBook('real');
  if (!book.ok) throw new Error(book.failure.code);
  const { readWhole, corrupted, close } = book.value;
  expect(await readWhole()).toMatchObject({ ok: true });
  expect(corrupted.value.map(({ id }) => id)).toEqual([nowhere.id]);
  close();
});

const told = async () => {
  await laid();
  const book = await openBook('real');
  if (!book.ok) throw new Error(book.failure.code);
  return book.value;
};

test('while the whole record is read the page comes to its turn, and hears how far it is', async () => {
  const { readWhole, state, close } = await told();
  const parts: number[] = [];
  let turns = 0;
  const turn = setInterval(() => {
    turns += 1;
  });
  await readWhole(({ done, of }) => {
    expect(of).toBe(all.length);
    parts.push(done);
  });
  clearInterval(turn);
  expect(parts.at(-1)).toBe(all.length);
  expect(parts.length).toBeGreaterThan(5);
  expect(parts).toEqual([...parts].sort((a, b) => a - b));
  expect(turns).toBeGreaterThan(5);
  expect(state.value.log.map(({ id }) => id)).toEqual(all.map(({ id }) => id));
  close();
});

test('who leaves the page stops the reading, unless an entry that is being written waits for it', async () => {
  const { readWhole, state, perform, close } = await told();
  const left = new AbortController();
  let last = 0;
  const leaving = readWhole(({ done }) => {
    last = done;
    left.abort();
  }, left.signal);
  expect(await leaving).toEqual({ ok: true, value: null });
  expect(last).toBeLessThan(all.length);
  expect(state.value.earlier).not.toBeNull();
  const again = new AbortController();
  const page = readWhole(() => again.abort(), again.signal);
  const old = all.find(({ body }) => body.kind === 'batch-opened') as Entry;
  expect(await perform({ do: 'withdraw-entry', withdraws: old.id, reason: 'not so' }, null)).toHaveProperty(
    'ok',
  );
  expect(await page).toEqual({ ok: true, value: null });
  expect(state.value.earlier).toBeNull();
  close();
});

test('what is written while the whole record is read is in it once', async () => {
  const { readWhole, state, perform, close } = await told();
  let isAdded: Promise<unknown> | null = null;
  await readWhole(() => {
    isAdded ??= perform({ do: 'add-person', name: 'Wies' }, null);
  });
  await isAdded;
  const named = state.value.log.filter(({ body }) => body.kind === 'person-added' && body.name === 'Wies');
  expect(named).toHaveLength(1);
  expect(state.value.log).toHaveLength(all.length + 1);
  close();
});
