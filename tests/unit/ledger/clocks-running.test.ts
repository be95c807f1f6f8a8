import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkInOf, listOfCheckIn, listOfLook, phoneOf } from '../../../src/ledger/clock-links';
import {
  countdown,
  knowsRinse,
  lastRinse,
  looksAwaited,
  presses,
  runningClocks,
} from '../../../src/ledger/clocks-running';
import type { ClockOf } from '../../../src/ledger/entries/clocks';
import type { IntentionOf } from '../../../src/ledger/intention';
import { shareLeft } from '../../../src/safety/time-left';
import { at, grams, id, Scribe } from './scribe';

const kinds: readonly ClockOf[] = ['rinse', 'ammonia-silver', 'check-in', 'purge', 'look'];

/** Clocks as [kind, begun, due] in minutes after eight. */
function told(...clocks: readonly (readonly [ClockOf, number, number])[]): Scribe {
  const scribe = new Scribe();
  for (const [of, begun, due] of clocks)
    scribe.does({ do: 'start-clock', of, due: at(due), batchId: null }, begun);
  return scribe;
}

const order = (scribe: Scribe, minutes: number) =>
  runningClocks(scribe.state, at(minutes)).map(({ clock, overdue }) => `${clock.body.of} ${overdue}`);

describe('a clock that runs', () => {
  test('has its whole time at first, half of it in the middle, none from the moment on at which it is due', () => {
    const scribe = told(['look', 0, 60]);
    const see = (minutes: number) => runningClocks(scribe.state, at(minutes))[0];
    expect([0, 30, 60, 90].map((minutes) => see(minutes)?.shareLeft)).toEqual([1, 0.5, 0, 0]);
    expect(see(60)?.overdue).toBe(true);
    const justBefore = new Date(Date.parse(at(60)) - 1).toISOString();
    expect(runningClocks(scribe.state, justBefore)[0]?.overdue).toBe(false);
  });

  test('never has more than all or less than nothing left, whatever the phone’s own clock says', () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer(), fc.integer(), (from, due, now) => {
        const minutes = [from, due, now].map((n) => at(n % 1_000_000)) as [string, string, string];
        const share = shareLeft(...minutes);
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
      }),
    );
  });

  test('is gone once it is ended, and runs again once the end is withdrawn', () => {
    const scribe = told(['purge', 0, 20]);
    const [clockId = ''] = scribe.state.clocks.keys();
    const [stop] = scribe.does({ do: 'stop-clock', clockId, how: 'done' });
    expect(runningClocks(scribe.state, at(30))).toEqual([]);
    scribe.does({ do: 'withdraw-entry', withdraws: stop?.id ?? '', reason: 'By mistake.' });
    expect(order(scribe, 30)).toEqual(['purge true']);
    scribe.does({ do: 'stop-clock', clockId, how: 'done' });
    expect(runningClocks(scribe.state, at(31))).toEqual([]);
  });
});

describe('the most pressing clock', () => {
  test('is the one of somebody under water, before all that is overdue', () => {
    const scribe = told(['ammonia-silver', 0, 15], ['check-in', 0, 20], ['rinse', 20, 35]);
    expect(order(scribe, 25)).toEqual(['rinse false', 'ammonia-silver true', 'check-in true']);
  });

  test('is, once due, what explodes when it is left, then who may lie there; the rest by the hour', () => {
    const scribe = told(
      ['purge', 0, 10],
      ['look', 0, 11],
      ['rinse', 0, 12],
      ['check-in', 0, 13],
      ['ammonia-silver', 0, 14],
      ['look', 0, 90],
      ['purge', 0, 80],
    );
    expect(order(scribe, 20)).toEqual([
      'ammonia-silver true',
      'check-in true',
      'rinse true',
      'look true',
      'purge true',
      'purge false',
      'look false',
    ]);
  });

  test('stands before everything that is not overdue, in any record, and every clock stands there once', () => {
    const clock = fc.tuple(fc.constantFrom(...kinds), fc.nat(100), fc.nat(200));
    fc.assert(
      fc.property(fc.array(clock, { maxLength: 8 }), fc.nat(200), (clocks, minutes) => {
        const running = runningClocks(told(...clocks).state, at(minutes));
        expect(running).toHaveLength(clocks.length);
        expect(running.map(presses).toSorted((a, b) => Number(b) - Number(a))).toEqual(running.map(presses));
        const waiting = running.filter((one) => !presses(one)).map((one) => one.clock.body.due);
        expect(waiting.toSorted()).toEqual(waiting);
      }),
    );
  });
});

test('a countdown ends with 0:01, and starts with the whole time', () => {
  expect(countdown(at(15), at(0))).toEqual({ minutes: 15, seconds: 0 });
  const ms = (n: number) => new Date(Date.parse(at(15)) - n).toISOString();
  expect(countdown(at(15), ms(61_000))).toEqual({ minutes: 1, seconds: 1 });
  expect(countdown(at(15), ms(1))).toEqual({ minutes: 0, seconds: 1 });
  expect(countdown(at(15), at(15))).toBeNull();
});

test('the card counts the rinse begun last', () => {
  const scribe = told(['rinse', 0, 15], ['rinse', 5, 20], ['look', 6, 90]);
  expect(lastRinse(scribe.state, at(10))?.clock.at).toBe(at(5));
  expect(knowsRinse(scribe.state, at(5))).toBe(true);
  expect(knowsRinse(scribe.state, at(6))).toBe(false);
});

const list = (n: number, second: { name: string; at?: string }): IntentionOf<'finish-checklist'> => ({
  do: 'finish-checklist',
  runId: id('12', n),
  step: 'leach',
  batchId: null,
  checklist: { id: 'leach-start', version: '1', hash: 'a'.repeat(64), title: 'Start the leach' },
  outcome: 'cleared',
  startedAt: at(0),
  finishedAt: at(5),
  validUntil: at(65),
  second,
  answers: [{ item: 'who', ask: 'Who checks?', kind: 'choice', answer: 'named remote checker', at: at(4) }],
});

describe('what a clock belongs to', () => {
  test('is the very list that named the person and the time, told at that moment', () => {
    const scribe = new Scribe();
    scribe.does(list(1, { name: 'Oda', at: at(30) }), 5);
    scribe.does(list(2, { name: 'Oda', at: at(30) }), 9);
    scribe.does(list(3, { name: 'Oda', at: at(40) }), 9);
    scribe.does(list(4, { name: 'Odd', at: at(40) }), 9);
    scribe.does(list(5, { name: 'Oda' }), 9);
    const { clocks, checklists } = scribe.state;
    const found = [...checklists.values()].map((told) => checkInOf(scribe.state, told)?.entryId);
    expect(found).toEqual([...[...clocks.values()].map(({ entryId }) => entryId), undefined]);
    const lists = [...clocks.values()].map((clock) => listOfCheckIn(scribe.state, clock)?.entryId);
    expect(lists).toEqual([...checklists.keys()].slice(0, 4));
  });

  test('is, for a person, the number of somebody of that name who is still here', () => {
    const scribe = new Scribe();
    const [entry] = scribe.does({ do: 'add-person', name: 'Oda', phone: '+47 22 00 00 01' });
    expect(phoneOf(scribe.state, 'Oda')).toBe('+47 22 00 00 01');
    expect(phoneOf(scribe.state, 'Odd')).toBeNull();
    const personId = entry?.body.kind === 'person-added' ? entry.body.personId : '';
    scribe.does({ do: 'person-leaves', personId });
    expect(phoneOf(scribe.state, 'Oda')).toBeNull();
  });

  test('is, for a look, its batch, and the list that goes with the step that runs there', () => {
    const scribe = new Scribe();
    const [opened] = scribe.does({
      do: 'open-batch',
      feed: { capacitors: 'mixed', era: 'lead-free', mass: grams('500') },
    });
    const batchId = opened?.body.kind === 'batch-opened' ? opened.body.batchId : '';
    expect(listOfLook(scribe.state, batchId)).toBeNull();
    scribe.does({ do: 'log-step-happened', step: 'leach', batchId, clearance: null });
    expect(listOfLook(scribe.state, batchId)?.id).toBe('leach-check');
    scribe.does({ do: 'start-clock', of: 'look', due: at(90), batchId });
    expect(looksAwaited(scribe.state, batchId)).toHaveLength(1);
    expect(looksAwaited(scribe.state, id('ba', 1))).toEqual([]);
  });
});
