import { expect, test } from 'vitest';
import { applyAll } from '../../../src/ledger/fold';
import { answersOfList } from '../../../src/ledger/last-gone-through';
import type { Checklist } from '../../../src/safety/checklist-schema';
import { checklists } from '../../../src/safety/checklists';
import { neverAmiss } from '../../../src/safety/never-amiss';
import { reopened } from './opened-again';
import { at, id, Scribe } from './scribe';

const filtration = checklists.get('filtration') as Checklist;

/** By the person of the scribe, a question in order or not. */
function goesThrough(scribe: Scribe, minutes: number, amiss = false): void {
  const answer = {
    item: 'fil-tub',
    ask: 'Tub ready',
    kind: 'confirm' as const,
    answer: 'yes',
    at: at(minutes),
  };
  scribe.write(
    {
      kind: 'checklist-finished',
      v: 1,
      runId: id('12', minutes),
      step: 'filtration',
      batchId: null,
      checklist: { id: 'filtration', version: '1', hash: 'a'.repeat(64), title: 'Filter' },
      outcome: 'cleared',
      startedAt: at(minutes),
      finishedAt: at(minutes),
      validUntil: at(minutes + 60),
      answers: [amiss ? { ...answer, reason: 'cracked' } : answer],
    },
    minutes,
  );
}

test('how often a question was in order is not counted over a time of which only the last of each person is at hand', () => {
  const [maren, bo, kim] = (['a', 'b', 'c'] as const).map(
    (letter) => new Scribe(letter, id('ee', letter.charCodeAt(0))),
  );
  if (!maren || !bo || !kim) throw new Error('three people');
  goesThrough(maren, 0);
  goesThrough(bo, 1, true);
  goesThrough(bo, 2);
  for (let n = 0; n < 10; n += 1) goesThrough(kim, 100 + n);
  const whole = applyAll([maren, bo, kim].flatMap(({ entries }) => entries));
  const opened = reopened(whole, at(100), at(100));
  expect(opened.checklists.size).toBe(12);
  const times = [whole, opened].map((state) => neverAmiss(answersOfList(state, filtration))[0]?.times);
  expect(times).toEqual([11, 10]);
});
