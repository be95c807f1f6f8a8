/** What changed in a list since it was last gone through, and which of its questions never tell anything. */
import { describe, expect, it, test } from 'vitest';
import { toldIn } from '../../../src/safety/checklist-run';
import type { Checklist } from '../../../src/safety/checklist-schema';
import { checklists } from '../../../src/safety/checklists';
import { type AskedBefore, changesSince } from '../../../src/safety/list-changes';
import { type AnswerKept, neverAmiss } from '../../../src/safety/never-amiss';
import { listNamed, walk } from './build-run';

/** What the record keeps of a run that went through. */
const kept = (id: string): AskedBefore[] =>
  toldIn(walk(id).run).map(({ item, ask, answer, min, max }) => ({ item, ask, answer, min, max }));

const without = (asked: readonly AskedBefore[], item: string): AskedBefore[] =>
  asked.filter((one) => one.item !== item);

describe('since a list was last gone through', () => {
  it.each([...checklists.keys()])('nothing of %s is other when nothing was changed', (id) => {
    expect(changesSince(kept(id), listNamed(id))).toEqual([]);
  });

  const filtration = listNamed('filtration');
  const asked = kept('filtration');

  it('a question is new, in its place', () => {
    expect(changesSince(without(asked, 'fil-rinse'), filtration)).toEqual([
      { item: 'fil-rinse', ask: 'What is in the rinse bottle?', own: false, is: 'new' },
    ]);
  });
  it('a question is reworded', () => {
    const before = asked.map((one) => (one.item === 'fil-medium' ? { ...one, ask: 'Filter?' } : one));
    expect(changesSince(before, filtration)).toEqual([
      { item: 'fil-medium', ask: 'What is the filter?', own: false, is: 'reworded', before: 'Filter?' },
    ]);
  });
  it('a question is gone, and an own one says so', () => {
    const before = [
      ...asked,
      { item: 'fil-hood', ask: 'Read hood face speed' },
      { item: 'own-cat', ask: 'The cat is out' },
    ];
    expect(changesSince(before, filtration)).toEqual([
      { item: 'fil-hood', ask: 'Read hood face speed', own: false, is: 'gone' },
      { item: 'own-cat', ask: 'The cat is out', own: true, is: 'gone' },
    ]);
  });
  it('a range is another: by its value, not by how it is written', () => {
    const as = (max: string) =>
      changesSince(
        asked.map((one) => (one.item === 'fil-temp' ? { ...one, max } : one)),
        filtration,
      );
    expect(as('30.0')).toEqual([]);
    expect(as('35')).toEqual([
      {
        item: 'fil-temp',
        ask: 'Liquor temperature',
        own: false,
        is: 'range',
        before: { min: '5', max: '35' },
        now: { min: '5', max: '30' },
      },
    ]);
  });
  it('nothing is said of a range that was not kept, nor of one worked out anew each time', () => {
    expect(
      changesSince(
        asked.map(({ item, ask, answer }) => ({ item, ask, answer })),
        filtration,
      ),
    ).toEqual([]);
    const portion = kept('leach-start').map((one) =>
      one.item === 'lst-first' ? { ...one, max: '4.2' } : one,
    );
    expect(changesSince(portion, listNamed('leach-start'))).toEqual([]);
  });
  it('questions of another answer are not called new: staying asks nothing of leaving', () => {
    const check = listNamed('leach-check');
    expect(changesSince(kept('leach-check'), check)).toEqual([]);
    const left = kept('leach-check').map((one) =>
      one.item === 'lck-stay' ? { ...one, answer: 'leaving' } : one,
    );
    expect(changesSince(left, check).map(({ item, is }) => [item, is])).toEqual([
      ['lck-quiet', 'new'],
      ['lck-sign', 'new'],
      ['lck-call', 'new'],
    ]);
  });
  it('the questions of a first version of the app are told as what they were', () => {
    const first: AskedBefore[] = [
      { item: 'fil-hood', ask: 'Read hood face speed' },
      { item: 'fil-gloves', ask: 'Which gloves are on?' },
    ];
    const told = changesSince(first, filtration);
    expect(told.filter(({ is }) => is === 'gone')).toHaveLength(1);
    expect(told.map(({ item }) => item)).toContain('sta-place');
    expect(told.map(({ item }) => item)).not.toContain('fil-gloves');
  });
});

describe('questions that never tell anything', () => {
  const run = (...over: Partial<AnswerKept>[]): AnswerKept[] => [
    { item: 'tray', ask: 'Tray is dry', answer: 'dry to the corners', ...over[0] },
    { item: 'ph', ask: 'pH now', answer: '9.8', ...over[1] },
  ];
  const times = (count: number, one: AnswerKept[]): AnswerKept[][] =>
    Array.from({ length: count }, () => one);

  it('are told after ten runs in a row, not after nine', () => {
    expect(neverAmiss(times(9, run()))).toEqual([]);
    expect(neverAmiss(times(10, run())).map(({ item, times: count }) => [item, count])).toEqual([
      ['tray', 10],
      ['ph', 10],
    ]);
  });
  it.each<[string, Partial<AnswerKept>]>([
    ['a stop', { answer: 'no', stopped: true }],
    ['a no with a reason', { answer: 'no', reason: 'tray ordered' }],
  ])('are counted from the last %s', (_, amiss) => {
    const runs = [...times(10, run()), run(amiss), ...times(9, run())];
    expect(neverAmiss(runs).map(({ item }) => item)).toEqual(['ph']);
    expect(neverAmiss([...runs, run()]).map(({ item }) => item)).toEqual(['tray', 'ph']);
  });
  it('are counted from a stop made right in the same run', () => {
    const mended = [{ item: 'tray', ask: 'Tray is dry', answer: 'no', stopped: true }, ...run()];
    expect(neverAmiss([...times(10, run()), mended]).map(({ item }) => item)).toEqual(['ph']);
  });
  it('do not count runs in which they did not apply, and are not told when they are asked no more', () => {
    const apart = run({ answer: 'not-applicable', reason: 'working outdoors' });
    expect(neverAmiss([...times(9, run()), apart]).map(({ item }) => item)).toEqual(['ph']);
    expect(neverAmiss([...times(10, run()), run().slice(1)]).map(({ item }) => item)).toEqual(['ph']);
  });
});

test('a list that nobody has gone through has nothing to review', () => {
  expect(neverAmiss([])).toEqual([]);
  const list: Checklist = listNamed('filtration');
  expect(changesSince([], list).every(({ is }) => is === 'new')).toBe(true);
});
