/** Which entries are about a thing, and how they stand when they are read from the disk. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { linesAbout, type Thing } from '../../../src/ledger/entries-about';
import { toldIn, toldLines, writtenWhen } from '../../../src/ledger/told-lines';
import { anyRecord } from './any-record';
import { grams, id, litres, Scribe } from './scribe';

const batch = id('b0', 1);
const stream = id('50', 1);
const [first, second] = [id('c0', 1), id('c0', 2)];
const ofBatch: Thing = { is: 'batch', id: batch };
const ofFirst: Thing = { is: 'container', id: first };
const ofSecond: Thing = { is: 'container', id: second };

function opened(scribe: Scribe, containerId: string, code: string) {
  scribe.write({
    kind: 'container-opened',
    v: 1,
    containerId,
    code,
    vessel: 'jerrican',
    capacity: litres('10'),
    material: 'HDPE',
    cap: 'vented',
    openedOn: '2026-03-02',
  });
}

function placedWrongly() {
  const scribe = new Scribe();
  opened(scribe, first, 'C-01');
  opened(scribe, second, 'C-02');
  scribe.write({
    kind: 'batch-opened',
    v: 1,
    batchId: batch,
    code: 'B-01',
    feed: { capacitors: 'mixed', era: 'unknown', mass: grams('500') },
  });
  scribe.write({
    kind: 'stream-logged',
    v: 1,
    streamId: stream,
    batchId: batch,
    stepId: null,
    stream: 'wash-water',
    liquid: { volume: litres('2'), findings: [], freeAcid: [] },
  });
  const body = {
    kind: 'stream-placed',
    v: 1,
    streamId: stream,
    containerId: first,
    amount: litres('2'),
  } as const;
  const placed = scribe.write(body);
  const corrected = scribe.write({
    kind: 'entry-corrected',
    v: 1,
    corrects: placed.id,
    body: { ...body, containerId: second },
    reason: 'It was C-02',
  });
  return { scribe, placed, corrected };
}

const idsOf = (scribe: Scribe, thing: Thing) => linesAbout(scribe.state, thing).map(({ entry }) => entry.id);

describe('the history of a thing', () => {
  test('has what was said of it, and what is said of it since a correction', () => {
    const { scribe, placed, corrected } = placedWrongly();
    const [openedFirst, openedSecond, openedBatch, logged] = scribe.entries.map((entry) => entry.id);
    expect(idsOf(scribe, ofFirst)).toEqual([openedFirst, logged, placed.id, corrected.id]);
    expect(idsOf(scribe, ofSecond)).toEqual([openedSecond, logged, placed.id, corrected.id]);
    expect(idsOf(scribe, ofBatch)).toEqual([openedBatch, logged, placed.id, corrected.id]);
  });

  test('of a container has what was told of the wastes that were put in, and not where else they went', () => {
    const scribe = new Scribe();
    opened(scribe, first, 'C-01');
    opened(scribe, second, 'C-02');
    const body = {
      kind: 'stream-logged' as const,
      v: 1 as const,
      streamId: stream,
      batchId: null,
      stepId: null,
      stream: 'wash-water' as const,
      liquid: { volume: litres('2'), findings: [], freeAcid: [] },
    };
    const logged = scribe.write(body);
    const other = scribe.write({ ...body, streamId: id('50', 2) });
    const corrects = (reason: string) => ({
      kind: 'entry-corrected' as const,
      v: 1 as const,
      corrects: logged.id,
      body,
      reason,
    });
    const before = scribe.write(corrects('before it was put in'));
    const amount = litres('1');
    const place = { kind: 'stream-placed', v: 1, streamId: stream, amount } as const;
    const placed = scribe.write({ ...place, containerId: first });
    const elsewhere = scribe.write({ ...place, containerId: second });
    const after = scribe.write(corrects('after it was put in'));
    const tested = scribe.write({
      kind: 'stream-tested',
      v: 1,
      streamId: stream,
      findings: [],
      freeAcid: [],
    });
    const told = idsOf(scribe, ofFirst);
    for (const one of [logged, before, placed, after, tested]) expect(told).toContain(one.id);
    for (const one of [other, elsewhere]) expect(told).not.toContain(one.id);
  });

  test('has what undid a correction', () => {
    const { scribe, corrected } = placedWrongly();
    const undone = scribe.write({
      kind: 'entry-withdrawn',
      v: 1,
      withdraws: corrected.id,
      reason: 'C-01 after all',
    });
    for (const thing of [ofFirst, ofSecond, ofBatch]) expect(idsOf(scribe, thing).at(-1)).toBe(undone.id);
    const line = toldIn(scribe.state, linesAbout(scribe.state, ofFirst)).find(
      ({ changes }) => changes.length > 0,
    );
    expect(line).toMatchObject({
      standing: 'as-written',
      changes: [{ standing: 'withdrawn', entry: { id: corrected.id } }],
    });
  });

  test('has doses of a treatment that ran in it, and none of another', () => {
    const scribe = new Scribe();
    opened(scribe, first, 'C-01');
    opened(scribe, second, 'C-02');
    const treatment = (n: number, containerId: string) =>
      scribe.write({
        kind: 'treatment-begun',
        v: 1,
        treatmentId: id('70', n),
        containerId,
        clearance: null,
        stages: [{ agent: 'hydrated-lime' }],
        allowed: 'yes',
      });
    treatment(1, first);
    treatment(2, second);
    const ended = (n: number) =>
      scribe.write({ kind: 'treatment-ended', v: 1, treatmentId: id('70', n), outcome: 'stopped' });
    const [one, other] = [ended(1), ended(2)];
    expect(idsOf(scribe, ofFirst)).toContain(one.id);
    expect(idsOf(scribe, ofFirst)).not.toContain(other.id);
    expect(idsOf(scribe, { is: 'treatment', id: id('70', 2) })).toContain(other.id);
  });
});

describe('lines read from the disk', () => {
  test('stand as those of the whole record, whatever part of it is read', () => {
    fc.assert(
      fc.property(anyRecord, fc.array(fc.boolean(), { minLength: 1, maxLength: 40 }), (entries, keep) => {
        const scribe = new Scribe();
        scribe.entries.push(...entries);
        const { state } = scribe;
        const part = state.history.filter((_, i) => keep[i % keep.length]);
        const changes = state.log.filter(
          ({ body }) => body.kind === 'entry-corrected' || body.kind === 'entry-withdrawn',
        );
        expect(
          toldLines(
            part.map(({ entry }) => entry),
            changes,
          ),
        ).toEqual(toldIn(state, part));
      }),
    );
  });
});

test.each([
  [0, 0, 'as-it-happened'],
  [60, 60, 'as-it-happened'],
  [61, 60, 'later'],
  [60, 61, 'before'],
] as const)('written at minute %i, happened at minute %i: %s', (written, happened, when) => {
  const scribe = new Scribe();
  const entry = scribe.write(
    { kind: 'person-added', v: 1, personId: id('9', 1), name: 'Ana' },
    written,
    happened,
  );
  expect(writtenWhen(entry)).toBe(when);
});
