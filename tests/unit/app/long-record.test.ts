import 'fake-indexeddb/auto';
import { v7 } from 'uuid';
import { expect, test } from 'vitest';
import { openBook } from '../../../src/app/open-book';
import type { Entry } from '../../../src/ledger/entries/entry';
import type { Intention } from '../../../src/ledger/intention';
import { makeOpening } from '../../../src/storage/openings';
import { openRecord } from '../../../src/storage/record';
import { seededWorkshop } from '../../support/seeded-workshop';

test('what names something of long ago is written down, after the whole record was read', async () => {
  const all: readonly Entry[] = [...seededWorkshop({ entries: 4500, seed: 11 })];
  const record = await openRecord('real', { newId: v7, onClosed: () => undefined });
  if (!record.ok) throw new Error(record.failure.code);
  const transaction = record.value.database.transaction('entries', 'readwrite');
  for (const entry of all) void transaction.store.add(entry);
  await transaction.done;
  expect(await makeOpening(record.value, new Date().toISOString())).toMatchObject({ ok: true });
  record.value.close();

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
