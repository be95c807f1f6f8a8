/** What is kept of what is long over, by name; that it tells the same as the whole record is tried in `opening*.test.ts`. */
import { expect, test } from 'vitest';
import type { Body, PlainBody } from '../../../src/ledger/entries/body';
import { stillMatter } from '../../../src/ledger/still-matters';
import { at, begun, can, dose, grams, id, marked, pour, Scribe, tip, treatmentEnd, wash } from './scribe';

const later = at(600);

/** Places, from 0, of the entries that are kept of a record that ended long before. */
function keptOf(...bodies: readonly Body[]): readonly number[] {
  const scribe = new Scribe();
  for (const body of bodies) scribe.write(body);
  const { log } = stillMatter(scribe.state, later);
  return scribe.entries.flatMap((entry, i) => (log.some(({ id }) => id === entry.id) ? [i] : []));
}

const batch = (n: number): PlainBody => ({
  kind: 'batch-opened',
  v: 1,
  batchId: id('ba', n),
  code: `B-${n}`,
  feed: { capacitors: 'unknown', era: 'unknown', mass: grams('500') },
});

/** The nth entry. */
const nth = (n: number): string => id('ea', n + 1);

const inspected = (walk: number, found: boolean): PlainBody => ({
  kind: 'container-inspected',
  v: 1,
  walkId: id('3a', walk),
  containerId: id('c0', 1),
  looks: ['insp-shape'],
  found: found ? [{ findingId: id('f1', walk), look: 'insp-shape', ask: 'Shape', answer: 'sucked in' }] : [],
  startedAt: at(0),
});

const walked = (walk: number, found: boolean): PlainBody => ({
  kind: 'walk-finished',
  v: 1,
  walkId: id('3a', walk),
  list: { id: 'walk-round', version: '1', hash: 'a'.repeat(64), title: 'Walk round' },
  startedAt: at(0),
  containerIds: [],
  notSeen: [],
  looks: ['insp-eyewash'],
  readings: [],
  found: found ? [{ findingId: id('f1', walk), look: 'insp-eyewash', ask: 'Eyewash', answer: 'rusty' }] : [],
});

const closed = (n: number): PlainBody => ({
  kind: 'finding-closed',
  v: 1,
  findingId: id('f1', n),
  done: 'vent freed',
});

/** A sludge that holds liquor of the first waste. */
const sludge: PlainBody = {
  kind: 'stream-logged',
  v: 1,
  streamId: id('50', 2),
  batchId: null,
  stepId: null,
  stream: 'hydroxide-sludge',
  solid: {
    wetMass: grams('300'),
    moisture: { by: 'not-determined' },
    holds: { liquor: id('50', 1) },
  },
};

const gone = [marked(1, 'gone'), marked(1, 'proof-filed')];
const withdrawn = (n: number): Body => ({
  kind: 'entry-withdrawn',
  v: 1,
  withdraws: nth(n),
  reason: 'misread',
});

test.each<readonly [string, readonly Body[], readonly number[]]>([
  ['all that is in a container that stands', [can(1), wash(1, '2'), pour(1, 1, '1')], [0, 1, 2]],
  ['nothing of one that is gone, with its proof', [can(1), wash(1, '1'), pour(1, 1, '1'), ...gone], []],
  [
    'all of one of which the proof is awaited',
    [can(1), wash(1, '1'), pour(1, 1, '1'), marked(1, 'gone')],
    [0, 1, 2, 3],
  ],
  [
    'not what was in it before it was last empty',
    [can(1), wash(1, '1'), wash(2, '1'), pour(1, 1, '1'), tip(1, null, '1'), pour(2, 1, '1')],
    [0, 2, 4, 5],
  ],
  [
    'but all since a doubt that still holds, and what was in it then',
    [
      can(1),
      wash(1, '1'),
      wash(2, '1'),
      pour(1, 1, '1'),
      marked(1, 'contents-doubtful'),
      tip(1, null, '1'),
      pour(2, 1, '1'),
    ],
    [0, 1, 2, 3, 4, 5, 6],
  ],
  [
    'what a source held when it was poured over, though that is gone',
    [
      can(1),
      can(2),
      wash(1, '1'),
      wash(2, '1'),
      pour(2, 1, '1'),
      tip(1, null, '1'),
      pour(1, 1, '1'),
      tip(1, 2, '1'),
      ...gone,
    ],
    [0, 1, 2, 5, 6, 7, 8, 9],
  ],
  ['a waste that stands in no container, in part', [can(1), wash(1, '2'), pour(1, 1, '1'), ...gone], [1, 2]],
  [
    'the liquor that a solid holds, though all of that is gone',
    [
      can(1),
      can(2),
      wash(1, '1'),
      pour(1, 1, '1'),
      sludge,
      { ...pour(2, 2, '1'), amount: grams('300') },
      ...gone,
    ],
    [1, 2, 3, 4, 5],
  ],
  [
    'the last treatment in a container that was emptied since, with what was in it then',
    [
      can(1),
      wash(1, '1'),
      pour(1, 1, '1'),
      begun(1, 1),
      dose(1, '20'),
      treatmentEnd(1),
      begun(2, 1),
      treatmentEnd(2, 'stopped'),
      tip(1, null, '1'),
    ],
    [0, 1, 2, 3, 4, 5, 6, 7, 8],
  ],
  [
    'what was found and is not closed, and the last look',
    [can(1), inspected(1, true), inspected(2, true), inspected(3, false), inspected(4, false), closed(2)],
    [0, 1, 4],
  ],
  [
    'what was found at a place and is not closed, and the last walk',
    [walked(1, true), walked(2, true), walked(3, false), walked(4, false), closed(2)],
    [0, 3],
  ],
  ['the newest batch', [batch(1), batch(2)], [1]],
  [
    'with what is kept what withdrew it, and what it withdrew',
    [can(1), marked(1, 'closed'), withdrawn(1), withdrawn(2)],
    [0, 1, 2, 3],
  ],
  [
    'what names a container that nobody tells of any more, where something came of it',
    [can(1), can(2), wash(1, '1'), pour(1, 1, '1'), tip(1, 2, '1'), withdrawn(0)],
    [0, 1, 2, 3, 4, 5],
  ],
])('%s', (_, bodies, places) => {
  expect(keptOf(...bodies)).toEqual(places);
});

test('what was withdrawn of late is kept with what withdrew it', () => {
  const scribe = new Scribe();
  for (const body of [can(1), marked(1, 'closed'), marked(1, 'reopened'), marked(1, 'closed')])
    scribe.write(body);
  scribe.write(withdrawn(1), 700);
  expect(stillMatter(scribe.state, later).log.map(({ id }) => id)).toEqual([0, 1, 2, 3, 4].map(nth));
});
