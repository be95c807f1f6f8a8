/** The invented workshop of the bench is a record like any other: otherwise its times would tell of nothing. */
import { expect, test } from 'vitest';
import { Entry } from '../../src/ledger/entries/entry';
import { flags } from '../../src/ledger/flags';
import { applyAll } from '../../src/ledger/fold';
import { compareEntries } from '../../src/ledger/order';
import { photosNamed } from '../../src/ledger/photos-named';
import { verifyChain } from '../../src/ledger/verify';
import { photoHash } from '../../src/storage/photos';
import { pictureType } from '../../src/storage/picture-type';
import { photo, seededWorkshop } from '../support/seeded-workshop';

const until = '2026-11-30';
const entries = [...seededWorkshop({ entries: 2000, until })];

test('as many entries as asked for, each by the schema, in order, on two devices whose chains are whole', () => {
  expect(entries).toHaveLength(2000);
  expect(entries.filter((entry) => !Entry.safeParse(entry).success)).toEqual([]);
  expect(entries.toSorted(compareEntries)).toEqual(entries);
  expect(entries.map(({ id }) => id).toSorted()).toEqual(entries.map(({ id }) => id));
  expect(new Set(entries.map(({ device }) => device)).size).toBe(2);
  expect(verifyChain(entries)).toMatchObject({ whole: true });
});

test('they end on the day that was asked for, and some happened before they were written', () => {
  expect(entries.at(-1)?.writtenAt.slice(0, 10)).toBe(until);
  const late = entries.filter(({ writtenAt, happenedAt }) => happenedAt < writtenAt).length;
  expect(late / entries.length).toBeGreaterThan(0.01);
  expect(late / entries.length).toBeLessThan(0.1);
});

test('the same for one seed, another for another', () => {
  const hashes = (seed: number) => [...seededWorkshop({ entries: 200, seed, until })].map(({ hash }) => hash);
  expect(hashes(7)).toEqual(hashes(7));
  expect(hashes(7)).not.toEqual(hashes(8));
});

test('what it adds up to has no trouble, and every sort of thing in it', () => {
  const state = applyAll(entries);
  expect([...state.troubles, ...state.upsets]).toEqual([]);
  const standing = [...state.containers.values()].filter(({ goneSince }) => goneSince === null);
  expect(standing.length).toBeGreaterThan(20);
  expect(state.containers.size).toBeGreaterThan(standing.length);
  expect(state.batches.size).toBeGreaterThan(15);
  expect([...state.treatments.values()].filter(({ ended }) => ended === null)).toHaveLength(1);
  expect(state.handOvers.size).toBeGreaterThan(0);
  expect(new Set(entries.map(({ body }) => body.kind)).size).toBeGreaterThan(38);
});

test('as little is wrong with it as with a real one, and no list that anything was begun on', () => {
  const state = applyAll(entries);
  const wrong = flags(state).filter(({ code }) => code !== 'treatment-running');
  expect(wrong.length).toBeLessThan(10);
  expect(wrong.filter(({ code }) => code.endsWith('clearance-does-not-hold'))).toEqual([]);
});

test('a treatment is begun on a list that was gone through for its container and the bases of its plan', () => {
  const { treatments, checklists } = applyAll(entries);
  expect(treatments.size).toBeGreaterThan(2);
  for (const { at, who, body } of treatments.values()) {
    const list = checklists.get(body.clearance ?? '');
    expect(list).toMatchObject({ who, body: { containerId: body.containerId, outcome: 'cleared' } });
    expect(new Set(list?.body.bases)).toEqual(new Set(body.stages.map(({ agent }) => agent)));
    expect(String(list?.body.validUntil) >= at).toBe(true);
    const [room] = list?.body.answers.filter(({ item }) => item === 'lim-room') ?? [];
    expect(Number(room?.answer)).toBeGreaterThan(0);
  }
});

test('each photo is named once, by the hash of a picture that can be made again', () => {
  const named = entries.flatMap(({ body }) => (body.kind === 'entry-corrected' ? [] : photosNamed(body)));
  expect(named.length).toBeGreaterThan(20);
  for (const [n, { hash, bytes }] of named.entries()) {
    const picture = photo(n);
    expect({ hash: photoHash(picture), bytes: picture.length }).toEqual({ hash, bytes });
    expect(pictureType(picture)).toBe('image/jpeg');
  }
});
