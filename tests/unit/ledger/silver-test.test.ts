import { describe, expect, test } from 'vitest';
import type { IntentionOf } from '../../../src/ledger/intention';
import { silverChecksOf } from '../../../src/ledger/silver-checks-of';
import {
  ammoniaClock,
  destroyWithin,
  gateOf,
  holdsOnly,
  minutesAnswer,
} from '../../../src/ledger/silver-test';
import { emptyState } from '../../../src/ledger/state';
import type { StreamKind } from '../../../src/safety/stream-kind';
import { at, grams, id, litres, Scribe } from './scribe';

function withBatch() {
  const scribe = new Scribe();
  const [entry] = scribe.does({
    do: 'open-batch',
    feed: { capacitors: 'mixed', era: 'unknown', mass: grams('500') },
  });
  const body = entry?.body;
  const batchId = body?.kind === 'batch-opened' ? body.batchId : '';
  const cleared: IntentionOf<'finish-checklist'> = {
    do: 'finish-checklist',
    runId: id('12', 1),
    step: 'ammonia-test',
    batchId,
    checklist: { id: 'spot-test-ammonia', version: '2', hash: 'a'.repeat(64), title: 'Ammonia spot test' },
    outcome: 'cleared',
    startedAt: at(2),
    finishedAt: at(5),
    validUntil: at(65),
    answers: [{ item: 'am-vessel', ask: 'What holds it?', kind: 'choice', answer: 'plate', at: at(4) }],
  };
  const asking = (minutes: number) => ({ batchId, who: null, at: at(minutes) });
  return { scribe, batchId, cleared, asking };
}

describe('whether a test may go on', () => {
  test('shut without the list, shut with a clearance that has begun nothing, open once the step runs', () => {
    const { scribe, batchId, cleared, asking } = withBatch();
    const gate = (minutes: number) => gateOf(scribe.state, 'ammonia-test', asking(minutes));
    expect(gate(3)).toMatchObject({ open: false, list: { id: 'spot-test-ammonia' }, clearance: null });
    const [list] = scribe.does(cleared, 5);
    expect(gate(6)).toMatchObject({ open: false, clearance: { entryId: list?.id } });
    expect(gate(66)).toMatchObject({ open: false, clearance: null });
    scribe.does({ do: 'start-step', step: 'ammonia-test', batchId, clearance: list?.id ?? '' }, 7);
    expect(gate(8)).toMatchObject({ open: true });
    expect(gateOf(scribe.state, 'chloride-test', asking(8))).toMatchObject({ open: false });
    expect(gateOf(scribe.state, 'ammonia-test', { ...asking(8), batchId: id('77', 7) })).toMatchObject({
      open: false,
    });
  });

  test('open on a step that is told to have happened without a clearance, and shut when it has ended', () => {
    const { scribe, batchId, asking } = withBatch();
    scribe.does({ do: 'log-step-happened', step: 'chloride-test', batchId, clearance: null });
    const gate = gateOf(scribe.state, 'chloride-test', asking(9));
    expect(gate).toMatchObject({ open: true });
    const stepId = gate?.open ? gate.step.body.stepId : '';
    scribe.does({ do: 'end-step', stepId });
    expect(gateOf(scribe.state, 'chloride-test', asking(10))).toMatchObject({ open: false });
  });
});

test('the minutes until the ammonia is destroyed are those of the list', () => {
  expect(destroyWithin(emptyState)).toBe(15);
});

test('the minutes that the ammonia stood answer the list behind its step, once, and stop it where they are too many', () => {
  for (const [minutes, stopped] of [
    [15, undefined],
    [16, true],
  ] as const) {
    const { scribe, batchId, cleared } = withBatch();
    const [list] = scribe.does(cleared, 5);
    scribe.does({ do: 'start-step', step: 'ammonia-test', batchId, clearance: list?.id ?? '' }, 7);
    const answer = () => {
      const [step] = scribe.state.steps.values();
      return step && minutesAnswer(scribe.state, step, { minutes, from: at(8), at: at(8 + minutes) });
    };
    const first = answer();
    expect(first).toMatchObject({
      do: 'answer-checklist-later',
      checklist: list?.id,
      answer: { item: 'am-time', answer: String(minutes), unit: 'min' },
    });
    expect(first?.answer.stopped).toBe(stopped);
    if (first) scribe.does(first, 30);
    if (stopped === undefined) expect(answer()).toBeNull();
  }
});

test('no list behind the step, nothing to answer', () => {
  const { scribe, batchId } = withBatch();
  scribe.does({ do: 'log-step-happened', step: 'ammonia-test', batchId, clearance: null });
  const [step] = scribe.state.steps.values();
  expect(step && minutesAnswer(scribe.state, step, { minutes: 3, from: at(1), at: at(4) })).toBeNull();
});

test('the clock of a test is that of its batch and hour', () => {
  const { scribe, batchId } = withBatch();
  scribe.does({ do: 'start-clock', of: 'look', due: at(30), batchId });
  scribe.does({ do: 'start-clock', of: 'ammonia-silver', due: at(20), batchId: null });
  expect(ammoniaClock(scribe.state, batchId, at(30))).toBeNull();
  expect(ammoniaClock(scribe.state, batchId, at(20))).toBeNull();
  scribe.does({ do: 'start-clock', of: 'ammonia-silver', due: at(30), batchId });
  expect(ammoniaClock(scribe.state, batchId, at(30))?.stopped).toBeNull();
  expect(ammoniaClock(scribe.state, batchId, at(31))).toBeNull();
  expect(ammoniaClock(scribe.state, batchId, null)).toBeNull();
});

test('the tests of a batch stand newest first', () => {
  const { scribe, batchId } = withBatch();
  for (const outcome of ['not-conclusive', 'silver'] as const)
    scribe.does({
      do: 'log-silver-check',
      batchId,
      looks: [{ look: 'before', seen: 'clear', at: at(1) }],
      outcome,
      streamIds: [],
    });
  expect(silverChecksOf(scribe.state, batchId).map(({ body }) => body.outcome)).toEqual([
    'silver',
    'not-conclusive',
  ]);
  expect(silverChecksOf(scribe.state, id('77', 7))).toEqual([]);
});

describe('where the waste of a test may go', () => {
  function jar(...streams: readonly StreamKind[]) {
    const { scribe, batchId } = withBatch();
    const [entry] = scribe.does({
      do: 'open-container',
      vessel: 'bottle',
      capacity: litres('1'),
      material: 'HDPE',
      cap: 'vented',
      openedOn: '2026-03-02',
    });
    const body = entry?.body;
    const containerId = body?.kind === 'container-opened' ? body.containerId : '';
    for (const stream of streams)
      scribe.does({
        do: 'log-stream',
        batchId,
        stepId: null,
        stream,
        liquid: { volume: litres('0.01'), findings: [], freeAcid: [] },
        placements: [{ containerId, amount: litres('0.01') }],
      });
    const offered = () => {
      const container = scribe.state.containers.get(containerId);
      return container !== undefined && holdsOnly(scribe.state, container, 'chloride-test-waste');
    };
    return { scribe, containerId, offered };
  }

  test.each([
    [['chloride-test-waste'], true],
    [['chloride-test-waste', 'chloride-test-waste'], true],
    [[], false],
    [['ammonia-test-waste'], false],
    [['leach-liquor'], false],
    [['chloride-test-waste', 'leach-liquor'], false],
  ] as const)('a jar that holds %j: %s', (streams, offered) => {
    expect(jar(...streams).offered()).toBe(offered);
  });

  test.each(['closed', 'contents-doubtful', 'held', 'leaving', 'gone', 'damaged'] as const)(
    'not into one that is marked %s',
    (mark) => {
      const { scribe, containerId, offered } = jar('chloride-test-waste');
      scribe.does({ do: 'mark-container', containerId, mark });
      expect(offered()).toBe(false);
    },
  );

  test('not into one that was treated', () => {
    const { scribe, containerId, offered } = jar('chloride-test-waste');
    const lime = { agent: 'hydrated-lime', targetPh: { value: '9', unit: '1' } } as const;
    scribe.does({ do: 'log-treatment-happened', containerId, stages: [lime], clearance: null });
    const [treatmentId = ''] = scribe.state.treatments.keys();
    const mass = { value: '1', unit: 'g' } as const;
    scribe.does({ do: 'log-dose', treatmentId, agent: 'hydrated-lime', mass });
    expect(offered()).toBe(false);
  });

  test('not into one that is closed, or of which nobody knows what is in it', () => {
    for (const mark of ['closed', 'contents-doubtful'] as const) {
      const { scribe, containerId, offered } = jar('chloride-test-waste');
      scribe.does({ do: 'mark-container', containerId, mark, note: 'told so' });
      expect(offered()).toBe(false);
    }
  });
});
