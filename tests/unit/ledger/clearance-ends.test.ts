/** What ends a clearance before its time: a later stop, a beginning, another base than the list was gone through for. */
import { describe, expect, test } from 'vitest';
import { askedLater, listBehind } from '../../../src/ledger/asked-later';
import { clearancesHolding } from '../../../src/ledger/clearance';
import { finishedRun } from '../../../src/ledger/finished-run';
import { flags } from '../../../src/ledger/flags';
import type { IntentionOf } from '../../../src/ledger/intention';
import type { Decided } from '../../../src/ledger/refusal';
import { clearanceOfList, requiredBefore } from '../../../src/ledger/step-offers';
import { readinessOf } from '../../../src/ledger/treatment-begin';
import { answer, begin, standing } from '../../../src/safety/checklist-run';
import { namedFor } from '../../../src/safety/named-time';
import type { Context, Given, Run } from '../../../src/safety/run-schema';
import { context, goodAnswer, listNamed, must, past, T0, walk } from '../safety/build-run';
import { at, begun, can, id, pour, Scribe, tip, wash } from './scribe';

const ana = id('aa', 1);
const code = (result: Decided) => (result.ok ? 'ok' : result.refusal.code);
const feed = { capacitors: 'mixed', era: 'may-hold-lead', mass: { value: '1.5', unit: 'kg' } } as const;
const ofFilter = listNamed('filtration');

type Finished = IntentionOf<'finish-checklist'>;

const finished = (n: number, minutes: number, change: Partial<Finished> = {}): Finished => ({
  do: 'finish-checklist',
  runId: id('12', n),
  step: 'filtration',
  batchId: null,
  checklist: { id: 'filtration', version: '1', hash: 'a'.repeat(64), title: 'Filter the leach liquor' },
  outcome: 'cleared',
  startedAt: at(0),
  finishedAt: at(minutes),
  validUntil: at(minutes + 120),
  answers: [{ item: 'fil-medium', ask: 'Which filter?', kind: 'choice', answer: 'glass fibre', at: at(1) }],
  ...change,
});
const stopped = { outcome: 'stopped', validUntil: null } as const;

function withBatch() {
  const scribe = new Scribe('a', ana);
  scribe.does({ do: 'open-batch', feed });
  const [batchId = ''] = scribe.state.batches.keys();
  const clears = (n: number, minutes: number, change: Partial<Finished> = {}): string =>
    scribe.does(finished(n, minutes, { batchId, ...change }), minutes)[0]?.id ?? '';
  const start = (clearance: string) =>
    ({ do: 'start-step', step: 'filtration', batchId, clearance }) as const;
  const held = (minutes: number) =>
    clearanceOfList(scribe.state, ofFilter, { batchId, who: ana, at: at(minutes) })?.entryId ?? null;
  return { scribe, batchId, clears, start, held };
}

describe('a clearance', () => {
  test('ends when the same list stops later, and the list after that clears again', () => {
    const { scribe, clears, start, held } = withBatch();
    const first = clears(1, 5);
    expect(held(20)).toBe(first);
    clears(2, 10, stopped);
    expect(code(scribe.tries(start(first), 20))).toBe('clearance-stopped');
    expect(held(20)).toBeNull();
    expect(clearancesHolding(scribe.state, at(20))).toEqual([]);
    const again = clears(3, 15);
    expect(code(scribe.tries(start(again), 20))).toBe('ok');
    expect(held(20)).toBe(again);
    expect(clearancesHolding(scribe.state, at(20)).map(({ entryId }) => entryId)).toEqual([again]);
  });

  test('is told no more once its step was begun on it', () => {
    const { scribe, clears, start } = withBatch();
    const first = clears(1, 5);
    expect(clearancesHolding(scribe.state, at(20)).map(({ entryId }) => entryId)).toEqual([first]);
    scribe.does(start(first), 10);
    expect(clearancesHolding(scribe.state, at(20))).toEqual([]);
  });

  test('holds on when another batch or another list stops, and a stop before it', () => {
    const { scribe, clears, start } = withBatch();
    clears(1, 3, stopped);
    const clearance = clears(2, 5);
    clears(3, 6, { ...stopped, batchId: null });
    clears(4, 7, { ...stopped, checklist: { ...finished(4, 7).checklist, id: 'leach-start' } });
    expect(code(scribe.tries(start(clearance), 20))).toBe('ok');
  });

  test('that was broken off after the step had begun is no flag on the step', () => {
    const { scribe, clears, start } = withBatch();
    scribe.does(start(clears(1, 5)), 6);
    clears(2, 10, stopped);
    expect(flags(scribe.state).map((flag) => flag.code)).not.toContain('clearance-does-not-hold');
  });

  test('lets one step begin, and no second one', () => {
    const { scribe, clears, start } = withBatch();
    const clearance = clears(1, 5);
    scribe.does(start(clearance), 6);
    expect(code(scribe.tries(start(clearance), 7))).toBe('clearance-used');
  });
});

describe('the clearance of a treatment', () => {
  function filled() {
    const scribe = new Scribe('a', ana);
    for (const body of [can(1, '20'), wash(1, '4.00'), pour(1, 1, '4.00')]) scribe.write(body);
    scribe.write({
      kind: 'local-rule-stated',
      v: 1,
      stated: { rule: 'treatment-allowed', value: 'yes' },
      saidBy: 'County office',
      saidOn: '2026-03-01',
    });
    const clears = (bases?: string[]): string =>
      scribe.does(
        finished(scribe.entries.length, 5, {
          step: 'neutralisation',
          containerId: id('c0', 1),
          checklist: { ...finished(1, 5).checklist, id: 'neutralise-lime' },
          ...(bases ? { bases } : {}),
        }),
        5,
      )[0]?.id ?? '';
    const { containerId, stages, targetPh } = begun(1, 1);
    const plan = (clearance: string) =>
      ({ do: 'begin-treatment', containerId, stages, targetPh, clearance }) as const;
    return { scribe, clears, plan, containerId };
  }

  test('holds for the bases of the list, and for no other', () => {
    const { scribe, clears, plan, containerId } = filled();
    const lime = clears(['hydrated-lime']);
    expect(scribe.tries(plan(lime), 8)).toMatchObject({
      refusal: { code: 'clearance-for-another-base', details: { base: 'limestone' } },
    });
    const ready = (bases: string[]) => readinessOf(scribe.state, containerId, { who: ana, at: at(8), bases });
    expect(ready(['hydrated-lime']).clearance?.entryId).toBe(lime);
    expect(ready(['limestone', 'hydrated-lime'])).toMatchObject({
      clearance: null,
      cleared: { code: 'clearance-for-another-base' },
    });
    expect(code(scribe.tries(plan(clears(['limestone', 'hydrated-lime'])), 8))).toBe('ok');
    expect(code(scribe.tries(plan(clears()), 8))).toBe('ok');
  });

  test('holds for the container that the list was gone through at, and for no other', () => {
    const { scribe, clears, plan, containerId } = filled();
    for (const body of [can(2, '20'), wash(2, '4.00'), pour(2, 2, '4.00')]) scribe.write(body);
    const clearance = clears();
    const other = { ...plan(clearance), containerId: id('c0', 2) };
    expect(scribe.tries(other, 8)).toMatchObject({
      refusal: { code: 'clearance-for-another-container', details: { containerId } },
    });
    expect(code(scribe.tries(plan(clearance), 8))).toBe('ok');
  });

  test('ends when more is put into the container, and not when some is taken out', () => {
    const { scribe, clears, plan } = filled();
    for (const body of [can(2, '20'), wash(2, '1.00')]) scribe.write(body, 3);
    const clearance = clears();
    scribe.write(tip(1, 2, '0.50'), 6);
    expect(code(scribe.tries(plan(clearance), 7))).toBe('ok');
    scribe.write(pour(2, 1, '0.50'), 8);
    expect(code(scribe.tries(plan(clearance), 7))).toBe('ok');
    expect(code(scribe.tries(plan(clearance), 8))).toBe('clearance-for-other-contents');
    expect(code(scribe.tries({ ...plan(clearance), do: 'log-treatment-happened' }, 9))).toBe('ok');
  });

  test('begun with another base all the same is flagged with the reason', () => {
    const { scribe, clears, plan } = filled();
    scribe.does({ ...plan(clears(['hydrated-lime'])), do: 'log-treatment-happened' }, 8);
    expect(flags(scribe.state)).toContainEqual(
      expect.objectContaining({
        code: 'treatment-clearance-does-not-hold',
        why: 'clearance-for-another-base',
      }),
    );
  });
});

test('the walk round is of the whole place: it stands before the list of a container too, and is stopped for it as well', () => {
  const { scribe } = withBatch();
  const lime = listNamed('neutralise-lime');
  const before = (minutes: number) =>
    requiredBefore(scribe.state, lime, {
      batchId: null,
      containerId: id('c0', 1),
      who: ana,
      at: at(minutes),
    }).map((list) => list.id);
  const walks = (n: number, minutes: number, change: Partial<Finished> = {}) =>
    scribe.does(
      finished(n, minutes, {
        step: 'readiness',
        checklist: { ...finished(1, 5).checklist, id: 'spill-response-readiness' },
        ...change,
      }),
      minutes,
    );
  expect(before(4)).toEqual(['spill-response-readiness']);
  walks(1, 5);
  expect(before(10)).toEqual([]);
  walks(2, 11, stopped);
  expect(before(12)).toEqual(['spill-response-readiness']);
});

describe('what is asked while a step runs', () => {
  const ofTest = (change: Partial<Finished>): Partial<Finished> => ({
    ...stopped,
    step: 'ammonia-test',
    checklist: { ...finished(1, 5).checklist, id: 'spot-test-ammonia' },
    ...change,
  });

  test('is not asked after a stop, and is asked all the same where a late list stopped: the ammonia stands', () => {
    const { scribe, batchId, clears } = withBatch();
    expect(askedLater(scribe.state, clears(1, 5, ofTest({})))).toBeNull();
    scribe.does({ do: 'log-step-happened', step: 'ammonia-test', batchId, clearance: null }, 6);
    const [stepId = ''] = scribe.state.steps.keys();
    const late = clears(2, 7, ofTest({ late: { stepId } }));
    const step = scribe.state.steps.get(stepId);
    expect(step && listBehind(step)).toBe(late);
    expect(askedLater(scribe.state, late)?.open.map((item) => item.id)).toEqual(['am-time', 'am-dead']);
  });
});

describe('a list that was gone through', () => {
  const lime = (of: Partial<Context>) =>
    finishedRun(id('12', 1), begin(listNamed('neutralise-lime'), { ...context, ...of }, T0), T0);

  const until = (run: Run, at: string) => finishedRun(id('12', 1), run, at).validUntil;

  test('clears from its last answer, however late it is written down', () => {
    const { run } = walk('filtration');
    expect(run.openedAt).toBe(past(45));
    // T0 is 10:18:00; two hours, on the whole minute.
    expect(until(run, past(50))).toBe('2026-05-12T12:18:00.000Z');
    expect(until(run, past(3000))).toBe('2026-05-12T12:18:00.000Z');
  });

  test('is cut to the hour of return where one leaves, and to no hour at which somebody only rings', () => {
    let leaving = standing(walk('leach-check', 'lck-stay').run);
    for (let second = 60; leaving.state === 'next'; second += 5) {
      const given: Given =
        leaving.item.id === 'lck-stay' ? { kind: 'choice', answer: 'leaving' } : goodAnswer(leaving.item);
      leaving = must(answer(leaving.run, given, past(second)));
    }
    // Tobias comes an hour after T0; the list holds four hours.
    expect(until(leaving.run, past(120))).toBe('2026-05-12T11:18:00.000Z');
    const ringing = namedFor(walk('leach-start').run, 'lst-with', past(1200));
    expect(until(ringing, past(120))).toBe('2026-05-12T11:18:00.000Z');
  });

  test('keeps the bases of the plan; without a plan those that are in order as the list stands', () => {
    const bases = ['limestone', 'hydrated-lime'];
    expect(lime({ planBases: { bases, from: 'the plan' } }).bases?.toSorted()).toEqual(bases.toSorted());
    expect(lime({}).bases).toEqual(['hydrated-lime']);
    const { run } = standing(walk('filtration').run);
    expect(finishedRun(id('12', 1), run, T0).bases).toBeUndefined();
  });
});
