import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../../src/ledger/entries/entry';
import { flags } from '../../../src/ledger/flags';
import { applyAll, fold } from '../../../src/ledger/fold';
import { entriesIn, openingOf, placeInRecord } from '../../../src/ledger/opening';
import { openingFrom, openingText } from '../../../src/ledger/opening-text';
import { pressing } from '../../../src/ledger/pressing';
import { codeOfBatch } from '../../../src/ledger/put-away';
import type { ContainerState, State } from '../../../src/ledger/state';
import { seededWorkshop } from '../../support/seeded-workshop';
import { anyLife } from './any-life';
import { anyRecord } from './any-record';
import { dayBefore, flagsAtHand, reopened } from './opened-again';
import { at, can, id, pour, Scribe, tip, wash } from './scribe';

const zone = 'Europe/Berlin';
const later = at(60);

const person = { kind: 'person-added', v: 1, personId: id('ee', 1), name: 'Marne' } as const;
const corrects = { kind: 'entry-corrected', v: 1, corrects: id('ea', 1), reason: 'misread' } as const;

const nearWorkLimit = {
  kind: 'local-rule-stated',
  v: 1,
  stated: { rule: 'near-work-limit', value: { value: '5', unit: 'L' } },
  saidBy: 'Collector',
  saidOn: '2026-03-02',
} as const;

/** What a container that stands has of longer ago than it was last empty is not at hand. */
const soFar = [
  'movements',
  'inspections',
  'levels',
  'marks',
  'benchTests',
  'treatmentIds',
  'answers',
  'reports',
];

const withoutOld = (container: ContainerState) =>
  Object.fromEntries(Object.entries(container).filter(([key]) => !soFar.includes(key)));

const hereIn = (state: State) =>
  [...state.containers.values()].filter(({ goneSince }) => goneSince === null).map(withoutOld);

/** Wastes, treatments and batches that are at hand are as in the whole record, to the last of them. */
function expectSameThings(state: State, whole: State): void {
  for (const kind of ['streams', 'treatments', 'batches'] as const)
    for (const [id, thing] of state[kind]) expect(thing).toEqual(whole[kind].get(id));
  expect(hereIn(state)).toEqual(hereIn(whole));
}

describe('an opening of a long record', () => {
  const all = [...seededWorkshop({ entries: 6000, seed: 7 })];
  const now = (all.at(-1) as Entry).writtenAt;
  const [first, rest] = [all.slice(0, 5700), all.slice(5700)];
  const from = dayBefore(now, 60);
  /** Nobody thinks again later than a month after. */
  const until = dayBefore(now, 45);

  test('tells the same as the whole record of all that stands, runs, is due or wrong', () => {
    const opened = reopened(applyAll(first), from, until);
    expect(opened.log.length).toBeLessThan(first.length * 0.8);
    const state = rest.reduce(fold, opened);
    const whole = applyAll(all);
    expect(state.earlier?.reachedBehind).toBe(false);
    expectSameThings(state, whole);
    expect(flags(state)).toEqual(flagsAtHand(whole, state));
    const isNoFlag = ({ what }: { readonly what: string }): boolean => what !== 'flag';
    expect(pressing(state, now, zone).filter(isNoFlag)).toEqual(pressing(whole, now, zone).filter(isNoFlag));
  });

  test('knows how many entries there are, and the place of each at hand', () => {
    const state = rest.reduce(fold, reopened(applyAll(first), from, until));
    expect(entriesIn(state)).toBe(all.length);
    const places = new Map(applyAll(all).log.map(({ id }, i) => [id, i + 1]));
    expect(state.log.map((_, i) => placeInRecord(state, i))).toEqual(
      state.log.map(({ id }) => places.get(id)),
    );
  });

  test('an opening of what an opening began is one of the whole record', () => {
    const middle = all
      .slice(5000, 5700)
      .reduce(fold, reopened(applyAll(all.slice(0, 5000)), dayBefore(now, 130), dayBefore(now, 99)));
    expect(middle.earlier?.reachedBehind).toBe(false);
    const again = rest.reduce(fold, reopened(middle, from, until));
    const once = rest.reduce(fold, reopened(applyAll(first), from, until));
    expect(flags(again)).toEqual(flags(once));
    expect(hereIn(again)).toEqual(hereIn(once));
    expect(entriesIn(again)).toBe(all.length);
  });
});

describe('what was told before an opening', () => {
  /** Tipped out by more than it held, and filled anew with a second waste, all on one day. */
  function spilt(): Scribe {
    const scribe = new Scribe();
    const told = [
      person,
      can(1, '10'),
      can(2, '10'),
      wash(1, '1'),
      wash(2, '3'),
      pour(1, 1, '1'),
      tip(1, 2, '2'),
    ];
    for (const [minute, body] of told.entries()) scribe.write(body, minute, minute);
    return scribe;
  }

  test('stays wrong where it was wrong', () => {
    const whole = applyAll(spilt().entries);
    expect(flags(whole).map(({ code }) => code)).toContain('more-taken-than-held');
    expect(flags(reopened(whole, later, later))).toEqual(flags(whole));
  });

  test('a step that was begun without its list stays visible, of a batch that is put away', () => {
    const scribe = new Scribe();
    const feed = {
      capacitors: 'mixed' as const,
      era: 'unknown' as const,
      mass: { value: '500', unit: 'g' as const },
    };
    for (const n of [1, 2])
      scribe.write({ kind: 'batch-opened', v: 1, batchId: id('b0', n), code: `B-${n}`, feed }, n, n);
    const stepId = id('57', 1);
    scribe.write(
      { kind: 'step-started', v: 1, stepId, step: 'leach', batchId: id('b0', 1), clearance: null },
      3,
      3,
    );
    scribe.write({ kind: 'step-ended', v: 1, stepId }, 4, 4);
    const opened = reopened(scribe.state, later, later);
    expect([...opened.batches.keys()]).toEqual([id('b0', 2)]);
    expect(flags(opened).map(({ code }) => code)).toContain('step-without-clearance');
    expect(codeOfBatch(opened, id('b0', 1))).toBe('B-1');
  });

  test.each([
    ['a movement that came before another', [pour(2, 1, '1'), 90, 4]],
    ['an entry of a time of which not all is at hand', [{ ...person, personId: id('ee', 2) }, 90, 1]],
    ['a correction of an entry of that time', [{ ...corrects, body: { ...person, name: 'Maren' } }, 90, 90]],
    ['a thing that nobody told of', [pour(3, 1, '1'), 90, 90]],
    ['another limit beside the work', [nearWorkLimit, 90, 90]],
  ] as const)('is reached behind by %s', (_, [body, written, happened]) => {
    const scribe = spilt();
    const opened = reopened(applyAll(scribe.entries), at(2), later);
    const named = 'corrects' in body ? { ...body, corrects: scribe.entries[0]?.id ?? '' } : body;
    const state = fold(opened, scribe.write(named, written, happened));
    expect(state.earlier?.reachedBehind).toBe(true);
  });

  test('is reached behind by what is told now of something put away, though an entry at hand names it', () => {
    const scribe = new Scribe();
    const ids = [id('c0', 1), id('c0', 2)];
    const load = {
      kind: 'handed-over' as const,
      v: 1 as const,
      handOverId: id('40', 1),
      collector: { name: 'Fen Carriers' },
      containers: ids.map((containerId) => ({ containerId })),
      signatures: {},
    };
    const rejected = { kind: 'load-rejected', v: 1, handOverId: load.handOverId, why: 'leaked' } as const;
    const proof = { kind: 'proof-filed', v: 1, handOverId: load.handOverId } as const;
    const told = [can(1), can(2), can(3), wash(1, '2'), wash(2, '1'), pour(1, 1, '2'), pour(2, 2, '1')];
    // The first is at hand for what came out of it, the second is not.
    for (const body of [...told, tip(1, 3, '1'), load, { ...proof, containerIds: ids }]) scribe.write(body);
    const opened = reopened(scribe.state, later, later);
    expect(opened.handOvers.size).toBe(0);
    expect([...opened.containers.keys()]).toEqual([id('c0', 1), id('c0', 3)]);
    const back = scribe.write({ ...rejected, containerIds: [id('c0', 2)] }, 90, 90);
    expect(fold(opened, back).earlier?.reachedBehind).toBe(true);
  });

  test('is not reached behind by what is told of now, nor by what nobody told of even then', () => {
    const scribe = spilt();
    scribe.write(pour(3, 1, '1'), 10, 10);
    const opened = reopened(applyAll(scribe.entries), later, later);
    expect(fold(opened, scribe.write(pour(2, 1, '1'), 90, 90)).earlier?.reachedBehind).toBe(false);
  });
});

describe('what was told of late of long ago', () => {
  test('a batch whose name was corrected is at hand with all of it', () => {
    const scribe = new Scribe();
    const batch = (code: string) => ({
      kind: 'batch-opened' as const,
      v: 1 as const,
      batchId: id('b0', 1),
      code,
      feed: {
        capacitors: 'mixed' as const,
        era: 'unknown' as const,
        mass: { value: '500', unit: 'g' as const },
      },
    });
    const first = scribe.write(batch('B-1'), 0, 0);
    scribe.write({ ...wash(1, '1'), batchId: id('b0', 1) }, 1, 1);
    scribe.write({ ...batch('B-2'), batchId: id('b0', 2) }, 2, 2);
    scribe.write(
      { kind: 'entry-corrected', v: 1, corrects: first.id, reason: 'misread', body: batch('B-7') },
      90,
      0,
    );
    const opened = reopened(scribe.state, later, later);
    expect(opened.batches.get(id('b0', 1))).toEqual(scribe.state.batches.get(id('b0', 1)));
    expect(opened.batches.get(id('b0', 1))?.streamIds).toHaveLength(1);
  });

  test('a load of which only a container is at hand is a row to find it by', () => {
    const scribe = new Scribe();
    const load = {
      kind: 'handed-over' as const,
      v: 1 as const,
      handOverId: id('40', 1),
      collector: { name: 'Fen Carriers' },
      containers: [{ containerId: id('c0', 1) }, { containerId: id('c0', 2) }],
      signatures: {},
    };
    const proof = {
      kind: 'proof-filed' as const,
      v: 1 as const,
      handOverId: id('40', 1),
      containerIds: [id('c0', 1), id('c0', 2)],
    };
    for (const body of [can(1), can(2), can(3), wash(1, '2'), pour(1, 1, '2'), tip(1, 3, '1'), load, proof])
      scribe.write(body);
    const opened = reopened(scribe.state, later, later);
    expect(opened.containers.get(id('c0', 1))?.goneSince).not.toBeNull();
    expect(opened.handOvers.size).toBe(0);
    expect(opened.earlier?.putAway().map((row) => row.id)).toContain(id('40', 1));
    expect(fold(opened, scribe.write({ ...load, handOverId: id('40', 2) }, 90, 90)).handOvers.size).toBe(1);
  });
});

describe('whatever was written', () => {
  const runs = { numRuns: 150 };
  const records = fc.oneof(anyRecord, anyLife).filter((entries) => entries.length > 0);

  test('an opening in the middle changes nothing that is told, or says that it was reached behind', () => {
    let held = 0;
    fc.assert(
      fc.property(records, fc.double({ min: 0, max: 1, noNaN: true }), fc.nat(3), (entries, share, back) => {
        const log = applyAll(entries).log;
        const cut = Math.floor(share * log.length);
        const at = log[Math.max(0, cut - 1)]?.writtenAt ?? '';
        const from = dayBefore(at, back);
        const state = log.slice(cut).reduce(fold, reopened(applyAll(log.slice(0, cut)), from, from));
        if (state.earlier?.reachedBehind) return;
        held += 1;
        const whole = applyAll(entries);
        expectSameThings(state, whole);
        expect(flags(state)).toEqual(flagsAtHand(whole, state));
      }),
      runs,
    );
    expect(held).toBeGreaterThan(runs.numRuns / 5);
  });

  test('an opening keeps every letter, and is text of ASCII alone', () => {
    const scribe = new Scribe();
    scribe.write({ kind: 'person-added', v: 1, personId: id('ee', 1), name: 'Åsa “Ö” 𝛼 \\u00e5' });
    const opening = openingOf(scribe.state, { from: '', until: '' });
    const text = openingText(opening, 'one');
    expect(text).toMatch(/^[ -~]+$/);
    expect(openingFrom(JSON.parse(text), 'one')?.log).toEqual(opening.log);
  });

  test('what another version told, or no opening at all, is no opening', () => {
    const json = JSON.parse(openingText(openingOf(applyAll([]), { from: '', until: '' }), 'one'));
    expect(openingFrom(json, 'one')).not.toBeNull();
    expect(openingFrom(json, 'another')).toBeNull();
    expect(openingFrom({ ...json, version: json.version - 1 }, 'one')).toBeNull();
    expect(openingFrom({ ...json, carried: json.carried.slice(1) }, 'one')).toBeNull();
    for (const other of [null, 1, 'text', []]) expect(openingFrom(other, 'one')).toBeNull();
  });
});
