import { describe, expect, test } from 'vitest';
import type { BodyOf, PlainBody } from '../../../src/ledger/entries/body';
import { applyAll } from '../../../src/ledger/fold';
import { lastOfEach } from '../../../src/ledger/last-of-each';
import { at, can, id, marked, Scribe } from './scribe';

const list = (of: string) => ({ id: of, version: '1', hash: 'a'.repeat(64), title: of });

type Answer = BodyOf<'checklist-finished'>['answers'][number];

const run = (of: string, n: number, more: Partial<BodyOf<'checklist-finished'>> = {}): PlainBody => ({
  kind: 'checklist-finished',
  v: 1,
  runId: id('12', n),
  step: 'leach',
  batchId: null,
  checklist: list(of),
  outcome: 'cleared',
  startedAt: at(n),
  finishedAt: at(n),
  validUntil: null,
  answers: [],
  ...more,
});

const reading = (item: string, answer = '11'): Answer => ({
  item,
  ask: item,
  kind: 'reading',
  answer,
  unit: '°C',
  at: at(0),
});

const seen = (n: number, walk: number, ...looks: readonly string[]): PlainBody => ({
  kind: 'container-inspected',
  v: 1,
  walkId: id('3a', walk),
  containerId: id('c0', n),
  looks: [...looks],
  found: [],
  startedAt: at(0),
});

const walked = (walk: number, readings: readonly string[] = []): PlainBody => ({
  kind: 'walk-finished',
  v: 1,
  walkId: id('3a', walk),
  list: list('container-inspection'),
  startedAt: at(0),
  containerIds: [],
  notSeen: [],
  looks: [],
  readings: readings.map((look) => ({ look, value: '11', unit: '°C' })),
  found: [],
});

const hood = (n: number, station: number): PlainBody => ({
  kind: 'ventilation-checked',
  v: 1,
  checkId: id('5b', n),
  batchId: null,
  stationId: id('5a', station),
  station: { is: 'outdoors' },
  charge: { step: 'acid-dilution' },
  verdict: 'enough',
});

const printed = (n: number, paper: 'labels' | 'disposal', ...containers: readonly number[]): PlainBody => ({
  kind: 'paper-made',
  v: 1,
  paperId: id('9a', n),
  containerIds: containers.map((container) => id('c0', container)),
  contentHash: '0'.repeat(64),
  fileName: `${n}.pdf`,
  format: 'pdf',
  paper,
});

/** Places, from 0, of those that are the last of something. */
function lastOf(...bodies: readonly PlainBody[]): readonly number[] {
  const scribe = new Scribe();
  for (const body of bodies) scribe.write(body);
  const last = new Set(lastOfEach(scribe.state));
  return scribe.entries.flatMap((entry, i) => (last.has(entry.id) ? [i] : []));
}

describe('the last of each is', () => {
  test.each<readonly [string, readonly PlainBody[], readonly number[]]>([
    ['the last time of each list', [run('a', 1), run('b', 2), run('a', 3)], [1, 2]],
    [
      'the last that was stopped beside the last that cleared',
      [run('a', 1), run('a', 2, { outcome: 'stopped' })],
      [0, 1],
    ],
    [
      'the last reading of each item, whoever read it later in another run',
      [
        run('a', 1, { answers: [reading('x'), reading('y')] }),
        run('a', 2, { answers: [reading('x')] }),
        run('a', 3, { answers: [reading('x', 'not-applicable')] }),
      ],
      [0, 1, 2],
    ],
    [
      'the last walk, with as many looks as were asked on it',
      [
        can(1),
        can(2),
        seen(1, 1, 'p'),
        walked(1),
        seen(1, 2, 'p', 'q'),
        seen(2, 2, 'p'),
        seen(2, 2, 'r'),
        walked(2),
      ],
      [4, 6, 7],
    ],
    ['the last walk on which something was read', [walked(1, ['t']), walked(2)], [0, 1]],
    ['the last check of each hood', [hood(1, 1), hood(2, 2), hood(3, 1)], [1, 2]],
    ['the last paper', [can(1), printed(1, 'disposal', 1), printed(2, 'disposal', 1)], [2]],
    [
      'the last label of each container that stands here',
      [
        can(1),
        can(2),
        can(3),
        printed(1, 'labels', 1),
        printed(2, 'labels', 2),
        printed(3, 'labels', 2),
        printed(5, 'labels', 3),
        marked(3, 'gone'),
        printed(4, 'disposal', 1),
      ],
      [3, 5, 8],
    ],
  ])('%s', (_, bodies, places) => {
    expect(lastOf(...bodies)).toEqual(places);
  });

  test('that of each person', () => {
    const [maren, bo] = [new Scribe('a', id('ee', 1)), new Scribe('b', id('ee', 2))];
    maren.write(run('a', 1), 1);
    bo.write(run('a', 2), 2);
    maren.write(run('a', 3), 3);
    for (const [scribe, walk] of [
      [maren, 1],
      [bo, 2],
    ] as const)
      scribe.write(walked(walk), 4 + walk);
    const entries = [...maren.entries, ...bo.entries];
    const [first] = maren.entries;
    expect(new Set(lastOfEach(applyAll(entries)))).toEqual(
      new Set(entries.flatMap((entry) => (entry === first ? [] : entry.id))),
    );
  });
});
