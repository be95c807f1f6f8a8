/** Walks along the containers: what is to be seen and in which order, by when, and what is found stays until it is closed. */
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { clearancesHolding } from '../../../src/ledger/clearance';
import type { BodyOf, PlainBody } from '../../../src/ledger/entries/body';
import { linesAbout } from '../../../src/ledger/entries-about';
import { flags } from '../../../src/ledger/flags';
import { applyAll } from '../../../src/ledger/fold';
import { answersOfList } from '../../../src/ledger/last-gone-through';
import { lastReading } from '../../../src/ledger/last-reading';
import { finishedWalk, foundOf, inspectedIntention } from '../../../src/ledger/seen-on-walk';
import { requiredBefore } from '../../../src/ledger/step-offers';
import {
  findingsAt,
  isToSee,
  lastSeen,
  lastWalk,
  lookDue,
  looksOf,
  notSeenSince,
  stillToSee,
  walkDue,
  walkList,
  walkOrder,
  walkUnderWay,
} from '../../../src/ledger/walks';
import { answeredAs } from '../../../src/safety/checklist-run';
import type { Answered, Given } from '../../../src/safety/run-schema';
import { goodAnswer, listNamed } from '../safety/build-run';
import { anyRecord } from './any-record';
import { at, can, id, litres, pour, Scribe, tip, wash } from './scribe';

const list = listNamed('container-inspection');
const paris = 'Europe/Paris';
const walkId = id('3a', 1);
const [looked] = looksOf(list, 'container');

/** Minutes after the first morning of a moment. */
const minutesAt = (iso: string): number => (Date.parse(iso) - Date.parse(at(0))) / 60_000;

const answered = (look: string, given: Given, when = at(0)): Answered => {
  const item = list.items.find((one) => one.id === look);
  const told = item && answeredAs({ list, context: { person: '', batchId: null } }, item, given, when, when);
  if (!told?.ok) throw new Error(`no answer to ${look}`);
  return told.value;
};

/** So many cans, each with a litre of wash water in it, from the first morning on. */
function shelf(
  cans: number,
  change: (n: number) => Partial<BodyOf<'container-opened'>> = () => ({}),
): Scribe {
  const scribe = new Scribe();
  for (let n = 1; n <= cans; n++) scribe.write({ ...can(n), ...change(n) }, n);
  scribe.write(wash(1, '9'), 20);
  for (let n = 1; n <= cans; n++) scribe.write(pour(1, n, '1'), 20 + n);
  return scribe;
}

const codes = (scribe: Scribe): string[] => walkOrder(scribe.state).map(({ body }) => body.code);

const sees = (scribe: Scribe, can: number, minutes: number, found: readonly Answered[] = [], of = walkId) =>
  scribe.does(
    inspectedIntention(list, {
      walkId: of,
      containerId: id('c0', can),
      found: found.map((one, n) => foundOf(one, id('f1', can * 10 + n))),
      startedAt: at(minutes),
    }),
    minutes,
  );

type End = {
  readonly notSeen?: readonly number[];
  readonly place?: readonly Answered[];
  readonly of?: string;
};

function ends(scribe: Scribe, minutes: number, { notSeen = [], place = [], of = walkId }: End = {}) {
  const seen = scribe.state.walks.get(of)?.inspected ?? [];
  return scribe.does(
    finishedWalk(list, {
      walkId: of,
      startedAt: at(minutes),
      containerIds: seen.map(({ body }) => body.containerId),
      notSeen: notSeen.map((n) => ({ containerId: id('c0', n), why: 'behind others' })),
      place,
      found: place.filter(({ verdict }) => verdict !== 'in-order').map((one, n) => foundOf(one, id('f9', n))),
    }),
    minutes,
  );
}

/** A whole walk over these cans. */
function walked(scribe: Scribe, cans: readonly number[], minutes: number, end: End = {}): void {
  for (const n of cans) sees(scribe, n, minutes, [], end.of);
  ends(scribe, minutes, end);
}

/** The list over all containers at once, as it was before walks had entries of their own. */
const oldList = (minutes: number, outcome: 'cleared' | 'stopped' = 'cleared'): PlainBody => ({
  kind: 'checklist-finished',
  v: 1,
  runId: id('12', minutes),
  step: 'inspection',
  batchId: null,
  checklist: { id: list.id, version: '2', hash: 'a'.repeat(64), title: 'Weekly container walk' },
  outcome,
  startedAt: at(minutes),
  finishedAt: at(minutes),
  validUntil: outcome === 'cleared' ? at(minutes + 168 * 60) : null,
  answers: [
    {
      item: 'insp-temp',
      ask: 'Store temperature',
      kind: 'reading',
      answer: '11',
      unit: '°C',
      at: at(minutes),
    },
  ],
});

const mark = (n: number, as: BodyOf<'container-marked'>['mark']): PlainBody => ({
  kind: 'container-marked',
  v: 1,
  containerId: id('c0', n),
  mark: as,
});

describe('what is to be seen', () => {
  test('goes place by place and tray by tray as the shelf stands, the damaged and the doubtful before all', () => {
    const places = ['north', 'south', 'north', 'south', 'north', 'north'];
    const trays = ['A', 'A', 'B', 'A', 'A', 'B'];
    const scribe = shelf(6, (n) => ({ place: places[n - 1], tray: trays[n - 1] }));
    expect(codes(scribe)).toEqual(['C-01', 'C-05', 'C-03', 'C-06', 'C-02', 'C-04']);
    scribe.write(mark(6, 'contents-doubtful'), 40);
    scribe.write(mark(4, 'damaged'), 41);
    expect(codes(scribe)).toEqual(['C-04', 'C-06', 'C-01', 'C-05', 'C-03', 'C-02']);
    // More was poured over than can 5 held: what else it was is in no log.
    scribe.write(tip(5, 3, '4'), 42);
    expect(codes(scribe)).toEqual(['C-04', 'C-03', 'C-06', 'C-01', 'C-02']);
  });

  test('is no container that is gone, and no empty one that is sound', () => {
    const scribe = shelf(2);
    scribe.write(can(3), 30);
    scribe.write(mark(1, 'gone'), 31);
    expect(codes(scribe)).toEqual(['C-02']);
    scribe.write(mark(3, 'damaged'), 32);
    expect(codes(scribe)).toEqual(['C-03', 'C-02']);
    scribe.write(mark(3, 'mended'), 33);
    expect(codes(scribe)).toEqual(['C-02']);
  });

  test('is what is empty only by the record: in doubt, or with a level read on it', () => {
    const scribe = new Scribe();
    for (const n of [1, 2, 3]) scribe.write(can(n), n);
    expect(codes(scribe)).toEqual([]);
    scribe.write(mark(1, 'contents-doubtful'), 10);
    const level = (n: number, value: string): PlainBody => ({
      kind: 'level-read',
      v: 1,
      containerId: id('c0', n),
      level: litres(value),
    });
    scribe.write(level(2, '1.5'), 11);
    scribe.write(level(3, '0'), 12);
    expect(codes(scribe)).toEqual(['C-01', 'C-02']);
  });

  test('is one from which all the water went off: what was dissolved is still there', () => {
    const scribe = shelf(1);
    scribe.write({ kind: 'water-lost', v: 1, containerId: id('c0', 1), amount: litres('99') }, 30);
    expect(scribe.state.containers.get(id('c0', 1))?.holds.volume.isZero()).toBe(true);
    expect(codes(scribe)).toEqual(['C-01']);
  });

  it('of any record: each container once, none that is gone, and nothing is left when each was seen', () => {
    fc.assert(
      fc.property(anyRecord, (entries) => {
        const state = applyAll(entries);
        const order = walkOrder(state);
        const ids = order.map(({ body }) => body.containerId);
        expect(new Set(ids).size).toBe(ids.length);
        expect([...ids].sort()).toEqual(
          [...state.containers.keys()]
            .filter((one) => {
              const container = state.containers.get(one);
              return container && isToSee(container);
            })
            .sort(),
        );
        const firstSound = order.findIndex(({ damagedSince }) => damagedSince === null);
        expect(
          order
            .slice(firstSound === -1 ? order.length : firstSound)
            .every(({ damagedSince }) => damagedSince === null),
        ).toBe(true);
        expect(order.every(({ goneSince }) => goneSince === null)).toBe(true);
        expect(stillToSee(state, id('3b', 99), ids)).toEqual([]);
        for (const [n, one] of ids.entries())
          expect(stillToSee(state, id('3b', 99), ids.slice(0, n))[0]?.body.containerId).toBe(one);
      }),
    );
  });
});

describe('a walk under way', () => {
  test('goes on at the container where it stopped, whoever goes on', () => {
    const scribe = shelf(3);
    expect(walkUnderWay(scribe.state, at(60))).toBeNull();
    sees(scribe, 1, 60);
    expect(walkUnderWay(scribe.state, at(61))?.walkId).toBe(walkId);
    expect(stillToSee(scribe.state, walkId, []).map(({ body }) => body.code)).toEqual(['C-02', 'C-03']);
    expect(stillToSee(scribe.state, walkId, [id('c0', 2)]).map(({ body }) => body.code)).toEqual(['C-03']);
  });

  test('is begun anew when it was left for half a day, and when it was finished', () => {
    const scribe = shelf(2);
    sees(scribe, 1, 60);
    expect(walkUnderWay(scribe.state, at(60 + 12 * 60))?.walkId).toBe(walkId);
    expect(walkUnderWay(scribe.state, at(61 + 12 * 60))).toBeNull();
    sees(scribe, 2, 62);
    ends(scribe, 63);
    expect(walkUnderWay(scribe.state, at(64))).toBeNull();
  });

  test('that was seen by mistake and taken back is to be seen again', () => {
    const scribe = shelf(2);
    const [entry] = sees(scribe, 1, 60);
    scribe.does({ do: 'withdraw-entry', withdraws: entry?.id ?? '', reason: 'tapped by mistake' }, 61);
    expect(stillToSee(scribe.state, walkId, []).map(({ body }) => body.code)).toEqual(['C-01', 'C-02']);
  });

  test('is finished once, however often the last answer was tapped', () => {
    const scribe = shelf(1);
    walked(scribe, [1], 60);
    const again = finishedWalk(list, {
      walkId,
      startedAt: at(60),
      containerIds: [],
      notSeen: [],
      place: [],
      found: [],
    });
    expect(scribe.tries(again, 61)).toMatchObject({ ok: false, refusal: { code: 'already-written' } });
  });
});

test('a list over all containers saw none that was not there yet', () => {
  const scribe = new Scribe();
  scribe.write(can(1), 1);
  scribe.write(oldList(5), 5);
  scribe.write(can(2), 10);
  const seen = [1, 2].map((n) => {
    const container = scribe.state.containers.get(id('c0', n));
    return container && lastSeen(scribe.state, container);
  });
  expect(seen).toEqual([at(5), null]);
});

describe('the last walk', () => {
  test('is the last that was finished; a list over all containers at once was one, unless it stopped', () => {
    const scribe = shelf(2);
    expect(lastWalk(scribe.state)).toBeNull();
    scribe.write(oldList(100), 100);
    expect(lastWalk(scribe.state)).toMatchObject({ at: at(100), walkId: null, notSeen: [] });
    scribe.write(oldList(200, 'stopped'), 200);
    expect(lastWalk(scribe.state)?.at).toBe(at(100));
    sees(scribe, 1, 300);
    expect(lastWalk(scribe.state)?.at).toBe(at(100));
    ends(scribe, 301, { notSeen: [2] });
    expect(lastWalk(scribe.state)).toMatchObject({ at: at(301), walkId });
  });

  test('leaves what it could not see to be seen, until somebody looks at it, or it is gone', () => {
    const scribe = shelf(3);
    walked(scribe, [1], 300, { notSeen: [2, 3] });
    const missed = () => notSeenSince(scribe.state).map(({ containerId }) => containerId);
    expect(missed()).toEqual([id('c0', 2), id('c0', 3)]);
    sees(scribe, 3, 400);
    expect(missed()).toEqual([id('c0', 2)]);
    scribe.write(mark(2, 'gone'), 401);
    expect(missed()).toEqual([]);
  });

  test('gives the reading that is shown beside the next, whichever way it was made', () => {
    const scribe = shelf(1);
    expect(lastReading(scribe.state, list.id, 'insp-temp')).toBeNull();
    scribe.write(oldList(100), 100);
    expect(lastReading(scribe.state, list.id, 'insp-temp')?.answer).toBe('11');
    walked(scribe, [1], 200, { place: [answered('insp-temp', { kind: 'reading', written: '12,5' })] });
    expect(lastReading(scribe.state, list.id, 'insp-temp')).toEqual({
      answer: '12.5',
      unit: '°C',
      at: at(200),
    });
  });

  test('is no clearance: it lets nothing begin', () => {
    const scribe = shelf(1);
    scribe.write(oldList(100), 100);
    expect(clearancesHolding(scribe.state, at(101))).toEqual([]);
  });

  test('is enough for a list that requires it, for as long as the list of the walk holds, whoever walked', () => {
    const scribe = shelf(1);
    const wanting = { ...listNamed('hand-over'), requires: [list.id] };
    const missing = (minutes: number) =>
      requiredBefore(scribe.state, wanting, { batchId: null, who: id('99', 1), at: at(minutes) }).length;
    expect(missing(100)).toBe(1);
    walked(scribe, [1], 101);
    expect(missing(102)).toBe(0);
    expect(missing(101 + 168 * 60)).toBe(0);
    expect(missing(102 + 168 * 60)).toBe(1);
  });
});

describe('the next walk is due', () => {
  const rule = (days: string): PlainBody => ({
    kind: 'local-rule-stated',
    v: 1,
    stated: { rule: 'inspection-days', value: { value: days, unit: 'days' } },
    saidBy: 'County',
    saidOn: '2026-03-01',
  });

  test('never while there is nothing to see', () => {
    const scribe = new Scribe();
    scribe.write(can(1), 1);
    expect(walkDue(scribe.state, at(60), paris)).toBeNull();
  });

  test('seven days after the first waste, after the last walk, or as many as the workshop’s authority has said', () => {
    const scribe = shelf(1);
    expect(walkDue(scribe.state, at(60), paris)).toEqual({
      due: '2026-03-09',
      daysLeft: 7,
      days: 7,
      stated: false,
      containerId: id('c0', 1),
    });
    walked(scribe, [1], minutesAt('2026-03-05T10:00:00.000Z'));
    expect(walkDue(scribe.state, '2026-03-14T10:00:00.000Z', paris)).toMatchObject({
      due: '2026-03-12',
      daysLeft: -2,
    });
    scribe.write(rule('3'), minutesAt('2026-03-06T10:00:00.000Z'));
    expect(walkDue(scribe.state, '2026-03-07T10:00:00.000Z', paris)).toMatchObject({
      due: '2026-03-08',
      daysLeft: 1,
      days: 3,
      stated: true,
    });
  });

  test('by the calendar where the workshop is: an hour before midnight is another day elsewhere, summer time or not', () => {
    const scribe = shelf(1);
    // 28 March half past midnight in Paris, two days before its clocks go forward; half past four on the 27th in Los Angeles.
    walked(scribe, [1], minutesAt('2026-03-27T23:30:00.000Z'));
    const now = '2026-04-03T22:30:00.000Z';
    expect(walkDue(scribe.state, now, paris)).toMatchObject({ due: '2026-04-04', daysLeft: 0 });
    expect(walkDue(scribe.state, now, 'America/Los_Angeles')).toMatchObject({
      due: '2026-04-03',
      daysLeft: 0,
    });
    expect(walkDue(scribe.state, '2026-04-04T22:00:00.000Z', paris)).toMatchObject({ daysLeft: -1 });
    expect(walkDue(scribe.state, now, '+330')).toMatchObject({ due: '2026-04-04', daysLeft: 0 });
  });

  test('for the container that waits longest; one that could not be seen waits by itself', () => {
    const scribe = shelf(3);
    walked(scribe, [1, 2, 3], minutesAt('2026-03-05T10:00:00.000Z'));
    const later = id('3a', 2);
    walked(scribe, [1, 3], minutesAt('2026-03-10T10:00:00.000Z'), { of: later, notSeen: [2] });
    const now = '2026-03-11T10:00:00.000Z';
    expect(walkDue(scribe.state, now, paris)?.due).toBe('2026-03-17');
    const missed = scribe.state.containers.get(id('c0', 2));
    expect(missed && lookDue(scribe.state, missed, now, paris)?.due).toBe('2026-03-12');
    // Nobody went on with a walk that saw only one: the others are due as they were.
    sees(scribe, 1, minutesAt('2026-03-11T11:00:00.000Z'), [], id('3a', 3));
    expect(walkDue(scribe.state, now, paris)).toMatchObject({ due: '2026-03-17', containerId: id('c0', 3) });
  });

  test('after waste that came in since: a walk past an empty container saw none of it', () => {
    const scribe = shelf(2);
    scribe.write(can(3), minutesAt('2026-03-03T08:00:00.000Z'));
    scribe.write(oldList(minutesAt('2026-03-04T08:00:00.000Z')), minutesAt('2026-03-04T08:00:00.000Z'));
    scribe.write(pour(1, 3, '1'), minutesAt('2026-03-06T08:00:00.000Z'));
    expect(walkDue(scribe.state, at(60), paris)?.due).toBe('2026-03-11');
    const third = scribe.state.containers.get(id('c0', 3));
    expect(third && lookDue(scribe.state, third, at(60), paris)?.due).toBe('2026-03-13');
  });
});

describe('what a walk finds', () => {
  const weep = answered('insp-leak', { kind: 'choice', answer: 'weep', reason: 'old crust, dry' });
  const bulge = answered('insp-shape', { kind: 'choice', answer: 'bulged or hissing' });
  const open = (scribe: Scribe) =>
    flags(scribe.state).flatMap((flag) =>
      flag.code === 'finding-open' ? [[flag.pressing, flag.findingId]] : [],
    );

  test('is a task until somebody says what was done, and pressing where it stops', () => {
    const scribe = shelf(2);
    sees(scribe, 1, 60, [weep]);
    sees(scribe, 2, 61, [bulge]);
    expect(open(scribe)).toEqual([
      ['now', id('f1', 20)],
      ['soon', id('f1', 10)],
    ]);
    expect(findingsAt(scribe.state, id('c0', 1))[0]?.found).toEqual({
      findingId: id('f1', 10),
      look: 'insp-leak',
      ask: 'Leak or crust?',
      answer: 'weep: old crust, dry',
    });
    const close = {
      do: 'close-finding',
      findingId: id('f1', 20),
      done: 'moved out, opened by the card',
    } as const;
    scribe.does(close, 62);
    expect(open(scribe)).toEqual([['soon', id('f1', 10)]]);
    expect(linesAbout(scribe.state, { is: 'container', id: id('c0', 2) }).at(-1)?.entry.body.kind).toBe(
      'finding-closed',
    );
    expect(
      linesAbout(scribe.state, { is: 'container', id: id('c0', 1) }).map(({ entry }) => entry.body.kind),
    ).not.toContain('finding-closed');
    expect(scribe.tries(close, 63)).toMatchObject({ ok: false, refusal: { code: 'finding-closed' } });
    expect(findingsAt(scribe.state, id('c0', 2))[0]?.closed?.body.done).toBe('moved out, opened by the card');
  });

  test('of the place stands with the end of the walk, and belongs to no container', () => {
    const scribe = shelf(1);
    const eyewash = answered('insp-eye', {
      kind: 'confirm',
      yes: false,
      reason: 'water off, being repaired',
    });
    walked(scribe, [1], 60, { place: [answered('insp-apart', { kind: 'confirm', yes: true }), eyewash] });
    expect(findingsAt(scribe.state, null).map(({ found }) => found.answer)).toEqual([
      'no: water off, being repaired',
    ]);
    expect(scribe.state.walks.get(walkId)?.finished?.body.looks).toEqual(['insp-apart', 'insp-eye']);
  });

  test('stays after its container is gone; the open stand before the closed, the newest first', () => {
    const scribe = shelf(1);
    const tray = answered('insp-tray', { kind: 'confirm', yes: false, reason: 'tray ordered' });
    sees(scribe, 1, 60, [weep, bulge, tray]);
    scribe.does({ do: 'close-finding', findingId: id('f1', 11), done: 'dealt with' }, 61);
    scribe.write(mark(1, 'gone'), 62);
    expect(open(scribe)).toEqual([
      ['soon', id('f1', 10)],
      ['soon', id('f1', 12)],
    ]);
    expect(findingsAt(scribe.state, id('c0', 1)).map((one) => one.found.findingId)).toEqual([
      id('f1', 12),
      id('f1', 10),
      id('f1', 11),
    ]);
  });

  test('and what it never finds can be told of a list that was walked ten times', () => {
    const scribe = shelf(1);
    const all = looksOf(list, 'place').map((item) => answered(item.id, goodAnswer(item)));
    for (let n = 1; n <= 10; n++) {
      const of = id('3a', n);
      sees(scribe, 1, 100 * n, n === 5 ? [weep] : [], of);
      ends(scribe, 100 * n + 1, { of, place: all });
    }
    const runs = answersOfList(scribe.state, walkList(scribe.state));
    expect(runs).toHaveLength(10);
    expect(runs[0]?.map(({ item }) => item)).toEqual(list.items.map((item) => item.id));
    expect(runs[4]?.filter(({ reason }) => reason !== undefined).map(({ item }) => item)).toEqual([
      'insp-leak',
    ]);
  });
});

test('each look of the list is of a container or of the place', () => {
  expect([...looksOf(list, 'container'), ...looksOf(list, 'place')].map((item) => item.id)).toEqual(
    list.items.map((item) => item.id),
  );
  expect(looked?.id).toBe('insp-shape');
});
