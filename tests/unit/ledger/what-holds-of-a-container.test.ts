import { describe, expect, test } from 'vitest';
import type { PlainBody } from '../../../src/ledger/entries/body';
import { ContainerMarked } from '../../../src/ledger/entries/containers';
import { lastEmpty, marksThatCount, putInBehind } from '../../../src/ledger/what-holds-of-a-container';
import { at, can, id, marked, pour, Scribe, tip, wash } from './scribe';

const never = '\uffff';

/** A minute apart, from eight. */
function madeOf(...bodies: readonly PlainBody[]) {
  const scribe = new Scribe();
  for (const body of bodies) scribe.write(body);
  const container = scribe.state.containers.get(id('c0', 1));
  if (!container) throw new Error('no container');
  return { state: scribe.state, container, ids: scribe.entries.map((entry) => entry.id) };
}

const filled = [can(1), can(2), wash(1, '4'), pour(1, 1, '1')];
const dried = {
  kind: 'water-lost',
  v: 1,
  containerId: id('c0', 1),
  amount: { value: '1', unit: 'L' },
} as const;
const read = {
  kind: 'level-read',
  v: 1,
  containerId: id('c0', 1),
  level: { value: '2', unit: 'L' },
} as const;

describe('when a container was last empty', () => {
  test.each<readonly [string, readonly PlainBody[], string]>([
    ['never, while anything is in it', filled, ''],
    ['when all of it was poured out', [...filled, tip(1, 2, '1'), pour(1, 1, '1')], at(4)],
    ['the last time of several', [...filled, tip(1, 2, '1'), pour(1, 1, '1'), tip(1, 2, '1')], at(6)],
    ['not when the water went off: what was dissolved in it is there', [...filled, dried], ''],
    [
      'before it was read that something is in it which the record does not have',
      [...filled, tip(1, 2, '1'), read, pour(1, 1, '1'), tip(1, 2, '1')],
      at(4),
    ],
    [
      'after that, once somebody says that it is empty',
      [...filled, tip(1, 2, '1'), read, pour(1, 1, '1'), tip(1, 2, '1'), marked(1, 'emptied')],
      at(7),
    ],
  ])('%s', (_, bodies, moment) => {
    expect(lastEmpty(madeOf(...bodies).container, never)).toBe(moment);
  });

  test('is asked of a moment, and what happened then has not yet', () => {
    const { container } = madeOf(...filled, tip(1, 2, '1'), pour(1, 1, '1'), tip(1, 2, '1'));
    expect([at(4), at(5), at(6), at(7)].map((moment) => lastEmpty(container, moment))).toEqual([
      '',
      at(4),
      at(4),
      at(6),
    ]);
  });
});

describe('marks that count', () => {
  const marks = ContainerMarked.shape.mark.options;
  const opposites: Partial<Record<(typeof marks)[number], (typeof marks)[number]>> = {
    closed: 'reopened',
    held: 'let-go',
    leaving: 'staying',
    gone: 'came-back',
    damaged: 'mended',
    'contents-doubtful': 'contents-known',
  };

  test.each(Object.entries(opposites))('%s counts until %s is said, which counts then', (mark, undone) => {
    const told = [...filled, marked(1, mark as (typeof marks)[number])];
    const holding = madeOf(...told);
    expect(marksThatCount(holding.container)).toEqual([holding.ids[4]]);
    const ended = madeOf(...told, marked(1, undone as (typeof marks)[number]));
    expect(marksThatCount(ended.container)).toEqual([ended.ids[5]]);
  });

  test('that it is empty counts, and a proof of what is gone', () => {
    const { container, ids } = madeOf(
      ...filled,
      marked(1, 'emptied'),
      marked(1, 'gone'),
      marked(1, 'proof-filed'),
    );
    expect(new Set(marksThatCount(container))).toEqual(new Set(ids.slice(4)));
  });

  test('every mark is one that holds, or one that ends another', () => {
    const told = new Set([...Object.entries(opposites).flat(), 'emptied', 'proof-filed']);
    expect(told).toEqual(new Set(marks));
  });
});

describe('what was put in behind what is in it', () => {
  test('is there since it was last empty, and in what it came from until it came', () => {
    const { state, ids } = madeOf(
      can(1),
      can(2),
      wash(1, '9'),
      pour(1, 1, '1'),
      tip(1, null, '1'),
      pour(1, 2, '1'),
      tip(2, null, '1'),
      pour(1, 2, '1'),
      tip(2, 1, '1'),
      pour(1, 2, '1'),
    );
    expect(putInBehind(state, id('c0', 1))).toEqual(new Set([ids[8], ids[7]]));
    expect(putInBehind(state, id('c0', 2))).toEqual(new Set([ids[9]]));
  });

  test('ends where one was poured into the other and back', () => {
    const { state, ids } = madeOf(
      can(1),
      can(2),
      wash(1, '9'),
      pour(1, 1, '2'),
      tip(1, 2, '1'),
      tip(2, 1, '1'),
    );
    expect(putInBehind(state, id('c0', 1))).toEqual(new Set([ids[3], ids[4], ids[5]]));
  });
});
