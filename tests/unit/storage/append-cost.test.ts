import 'fake-indexeddb/auto';
import { afterEach, expect, test } from 'vitest';
import type { Body } from '../../../src/ledger/entries/body';
import { append, catchUp, type Stamp } from '../../../src/storage/append';
import { deleteRecord } from '../../../src/storage/database';
import { type OpenRecord, openRecord, readAll } from '../../../src/storage/record';

let ids = 0;
const newId = () => `0190b3b0-0000-7000-8000-${(++ids).toString(16).padStart(12, '0')}`;
const stamp: Stamp = { now: '2026-03-02T08:00:00.000Z', zone: 'Europe/Paris', who: null, newId };
const person = (name: string): Body => ({ kind: 'person-added', v: 1, personId: newId(), name });

afterEach(async () => {
  await deleteRecord('real');
});

async function recordOf(entries: number): Promise<OpenRecord> {
  const opened = await openRecord('real', { newId, onClosed: () => {} });
  if (!opened.ok) throw new Error(opened.failure.code);
  const bodies = Array.from({ length: entries }, (_, n) => person(`Person ${n}`));
  await append(opened.value, stamp, () => ({ ok: true, bodies }));
  return opened.value;
}

const asking = [
  'get',
  'getKey',
  'getAll',
  'getAllKeys',
  'count',
  'openCursor',
  'openKeyCursor',
  'put',
  'add',
];

const rowsIn = (result: unknown): number =>
  Array.isArray(result) ? result.length : result === undefined || result === null ? 0 : 1;

/** Requests made of the store, and rows that came back, until `does` has its answer. */
async function askedBy(does: () => Promise<unknown>): Promise<{ requests: number; rows: number }> {
  const asked = { requests: 0, rows: 0 };
  const undo: (() => void)[] = [];
  for (const source of [IDBObjectStore.prototype, IDBIndex.prototype] as unknown as Record<string, unknown>[])
    for (const name of asking) {
      const real = source[name] as ((...given: unknown[]) => IDBRequest) | undefined;
      if (!real) continue;
      undo.push(() => {
        source[name] = real;
      });
      source[name] = function (this: unknown, ...given: unknown[]) {
        const request = real.apply(this, given);
        asked.requests += 1;
        request.addEventListener('success', () => {
          asked.rows += rowsIn(request.result);
        });
        return request;
      };
    }
  await does();
  for (const one of undo) one();
  return asked;
}

const photo = { hash: 'a'.repeat(64), type: 'image/jpeg', bytes: 7 } as const;
const corrects = (id: string): Body => ({
  kind: 'entry-corrected',
  v: 1,
  corrects: id,
  body: { kind: 'container-marked', v: 1, containerId: newId(), mark: 'closed', photos: [photo] },
  reason: 'misread',
});

async function costOf(entries: number) {
  const record = await recordOf(entries);
  const read = await readAll(record);
  const [first] = read.ok ? read.value.entries : [];
  const adding = await askedBy(() => append(record, stamp, () => ({ ok: true, bodies: [person('Ana')] })));
  const refused = await askedBy(() => append(record, stamp, () => ({ ok: false, refusal: 'taken' })));
  const photoMissing = await askedBy(() =>
    append(record, stamp, () => ({ ok: true, bodies: [corrects(first?.id ?? '')] })),
  );
  const catchingUp = await askedBy(() => catchUp(record));
  record.close();
  return { adding, refused, photoMissing, catchingUp };
}

test('an append asks as much of the store at ten thousand entries as at a hundred', async () => {
  const few = await costOf(100);
  await deleteRecord('real');
  expect(few.adding.requests).toBeGreaterThan(0);
  expect(few.adding.rows).toBeLessThan(10);
  expect(few.photoMissing.rows).toBeGreaterThan(0);
  expect(await costOf(10_000)).toEqual(few);
});
