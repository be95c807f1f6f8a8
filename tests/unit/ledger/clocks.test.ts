import { describe, expect, test } from 'vitest';
import type { IntentionOf } from '../../../src/ledger/intention';
import { at, id, Scribe } from './scribe';

const list: IntentionOf<'finish-checklist'> = {
  do: 'finish-checklist',
  runId: id('12', 1),
  step: 'readiness',
  batchId: null,
  checklist: { id: 'spill-response-readiness', version: '1', hash: 'a'.repeat(64), title: 'Ready' },
  outcome: 'cleared',
  startedAt: at(0),
  finishedAt: at(5),
  validUntil: at(725),
  second: { name: 'Oda', at: at(60) },
  answers: [{ item: 'who', ask: 'Who checks?', kind: 'choice', answer: 'named remote checker', at: at(4) }],
};

describe('somebody who rings at a stated time', () => {
  test('is waited for from the moment the list is written down until somebody says that they rang', () => {
    const scribe = new Scribe();
    scribe.does(list);
    const [clock] = scribe.state.clocks.values();
    expect(clock?.body).toMatchObject({ of: 'check-in', due: at(60), name: 'Oda' });
    expect(clock?.stopped).toBeNull();
    scribe.does({ do: 'stop-clock', clockId: clock?.body.clockId ?? '', how: 'done' });
    expect([...scribe.state.clocks.values()][0]?.stopped?.body.how).toBe('done');
  });

  test('is not waited for after a stop, or at a time that has passed', () => {
    for (const change of [
      { outcome: 'stopped', validUntil: null },
      { second: { name: 'Oda', at: at(4) } },
    ] as const) {
      const scribe = new Scribe();
      scribe.does({ ...list, ...change });
      expect(scribe.state.clocks.size).toBe(0);
    }
  });
});

test('a clock stops once, however often it is tapped', () => {
  const scribe = new Scribe();
  scribe.does({ do: 'start-clock', of: 'rinse', due: at(15), batchId: null });
  const [clockId = ''] = scribe.state.clocks.keys();
  scribe.does({ do: 'stop-clock', clockId, how: 'done' });
  expect(scribe.tries({ do: 'stop-clock', clockId, how: 'not-needed' })).toMatchObject({
    refusal: { code: 'already-written' },
  });
});

test('what is answered while a step runs belongs to the list that asked it', () => {
  const scribe = new Scribe();
  const [entry] = scribe.does(list);
  const checklist = entry?.id ?? '';
  const answer = { item: 'warm', ask: 'Temperature', kind: 'reading', answer: '38', unit: '°C', at: at(9) };
  scribe.does({ do: 'answer-checklist-later', checklist, answer });
  expect(scribe.state.checklists.get(checklist)?.later.map(({ body }) => body.answer.answer)).toEqual(['38']);
});
