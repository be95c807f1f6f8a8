import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nothing } from '../../../src/ledger/amounts';
import { type LifeName, lifeOf, mayBeDone } from '../../../src/ledger/container-life';
import { fillingFault } from '../../../src/ledger/decisions/containers';
import type { ContainerMarked } from '../../../src/ledger/entries/containers';
import { notDetermined } from '../../../src/ledger/not-determined';
import { at, can, grams, id, litres, pour, Scribe, tip, wash } from './scribe';

type Mark = ContainerMarked['mark'];

const one = id('c0', 1);
const mark = (as: Mark) => ({ kind: 'container-marked', v: 1, containerId: one, mark: as }) as const;

/** A container of 5 L with so much wash water in it, and these marks. */
function withMarks(volume: string, ...marks: readonly Mark[]): Scribe {
  const scribe = new Scribe();
  scribe.write(can(1));
  scribe.write(wash(1, volume));
  if (volume !== '0') scribe.write(pour(1, 1, volume));
  for (const as of marks) scribe.write(mark(as));
  return scribe;
}

function lifeIn({ state }: Scribe, containerId = one) {
  const container = state.containers.get(containerId);
  if (!container) throw new Error('no such container');
  return lifeOf(state, container);
}

function doingsIn({ state }: Scribe) {
  const container = state.containers.get(one);
  if (!container) throw new Error('no such container');
  return mayBeDone(state, container);
}

/** As the brief of a container's life lists them: each covers all that stand after it. */
const covers: readonly (readonly [LifeName, Mark])[] = [
  ['gone', 'gone'],
  ['damaged', 'damaged'],
  ['not-determined', 'contents-doubtful'],
  ['held', 'held'],
  ['leaving', 'leaving'],
  ['closed', 'closed'],
];

test('one from which all the water went off is not determined since then', () => {
  const scribe = new Scribe();
  for (const body of [can(1), wash(1, '2'), pour(1, 1, '2')]) scribe.write(body);
  scribe.write({ kind: 'water-lost', v: 1, containerId: id('c0', 1), amount: litres('2') }, 30);
  const container = scribe.state.containers.get(id('c0', 1));
  expect(container && lifeOf(scribe.state, container)).toEqual({ is: 'not-determined', since: at(30) });
});

test('what is told to be none is none: no place and no tray any more, and the rest as it was', () => {
  const scribe = new Scribe();
  scribe.write({ ...can(1), place: 'North wall', tray: 'A' });
  const containerId = id('c0', 1);
  scribe.does({ do: 'change-container', containerId, tray: null, cap: 'tight' });
  const { tray, place, cap } = scribe.state.containers.get(containerId)?.body ?? {};
  expect([tray, place, cap]).toEqual([undefined, 'North wall', 'tight']);
});

describe('the life of a container', () => {
  test('is the first of all that were marked, in whichever order they were', () => {
    const marked = fc.shuffledSubarray(covers.map(([, as]) => as));
    fc.assert(
      fc.property(marked, fc.constantFrom('1', '4.5'), (marks, volume) => {
        const first = covers.find(([, as]) => marks.includes(as))?.[0];
        expect(lifeIn(withMarks(volume, ...marks)).is).toBe(first ?? (volume === '1' ? 'filling' : 'full'));
      }),
    );
  });

  test.each([
    ['gone', 'came-back'],
    ['damaged', 'mended'],
    ['contents-doubtful', 'contents-known'],
    ['held', 'let-go'],
    ['leaving', 'staying'],
    ['closed', 'reopened'],
  ] as const)('%s lasts until it is undone by %s, and begins anew', (as, undone) => {
    const scribe = withMarks('1', as);
    expect(lifeIn(scribe)).toMatchObject({ since: at(3) });
    scribe.write(mark(undone));
    expect(lifeIn(scribe)).toEqual({ is: 'filling', since: at(2) });
    scribe.write(mark(as), 20);
    expect(lifeIn(scribe)).toMatchObject({ since: at(20) });
  });

  test.each([
    ['4.499', 'filling'],
    ['4.500', 'full'],
    ['4.501', 'full'],
  ])('%s L of 5 L with the careful limit of 90 %: %s', (volume, is) => {
    expect(lifeIn(withMarks(volume)).is).toBe(is);
  });

  test('it is full since it last came to its limit', () => {
    const scribe = withMarks('4.6');
    scribe.write(tip(1, null, '0.5'), 10);
    scribe.write(wash(2, '0.5'), 11);
    scribe.write(pour(2, 1, '0.45'), 12);
    scribe.write(tip(1, null, '0.01'), 13);
    expect(lifeIn(scribe)).toEqual({ is: 'full', since: at(12) });
  });

  test('it is opened until something goes in, emptied when all is out, in use again with the next', () => {
    const scribe = withMarks('0');
    expect(lifeIn(scribe)).toEqual({ is: 'opened', since: at(0) });
    scribe.write(wash(2, '3'), 5);
    scribe.write(pour(2, 1, '2'), 6);
    expect(lifeIn(scribe)).toEqual({ is: 'filling', since: at(6) });
    scribe.write(tip(1, null, '2'), 7);
    expect(lifeIn(scribe)).toEqual({ is: 'emptied', since: at(7) });
    scribe.write(pour(2, 1, '1'), 8);
    expect(lifeIn(scribe)).toEqual({ is: 'filling', since: at(8) });
  });

  test('somebody who says that it is empty is believed until something goes in', () => {
    const scribe = withMarks('2', 'emptied');
    expect(lifeIn(scribe)).toEqual({ is: 'emptied', since: at(3) });
    scribe.write(wash(2, '1'));
    scribe.write(pour(2, 1, '1'), 9);
    expect(lifeIn(scribe).is).toBe('filling');
  });

  test('something in it that no logged waste accounts for is not determined, since it came in', () => {
    const scribe = withMarks('1');
    scribe.write(pour(9, 1, '0.2'), 8);
    expect(lifeIn(scribe)).toEqual({ is: 'not-determined', since: at(8) });
    const other = new Scribe();
    other.write(can(1));
    other.write(can(2));
    other.write(tip(2, 1, '1'));
    expect(lifeIn(other)).toEqual({ is: 'not-determined', since: null });
  });
});

describe('what may be done with a container', () => {
  const refusedFor: ReadonlySet<string> = new Set([
    'container-gone',
    'container-damaged',
    'container-held',
    'container-leaving',
    'container-closed',
    'contents-doubtful',
    'contents-unaccounted',
  ]);

  test('putting in is offered just where no plan would be refused for what it is', () => {
    const marked = fc.shuffledSubarray(covers.map(([, as]) => as));
    fc.assert(
      fc.property(marked, fc.constantFrom('0', '1'), (marks, volume) => {
        const scribe = withMarks(volume, ...marks);
        const fault = fillingFault(scribe.state, one, { added: nothing, side: [], field: 'to' });
        expect(doingsIn(scribe).includes('put-in')).toBe(!refusedFor.has(fault?.code ?? ''));
      }),
    );
  });

  test('whatever was marked can be undone, while it is here; what is gone can only come back', () => {
    const undone: Readonly<Partial<Record<Mark, Mark>>> = {
      damaged: 'mended',
      held: 'let-go',
      leaving: 'staying',
      closed: 'reopened',
      'contents-doubtful': 'contents-known',
    };
    const marked = fc.shuffledSubarray(covers.map(([, as]) => as));
    fc.assert(
      fc.property(marked, (marks) => {
        const doings = doingsIn(withMarks('1', ...marks));
        if (marks.includes('gone')) expect(doings).toEqual(['proof-filed', 'came-back']);
        else
          for (const as of marks) {
            expect(doings).toContain(undone[as]);
            expect(doings).not.toContain(as);
          }
      }),
    );
  });

  test.each([
    [[], 'put-in'],
    [['contents-doubtful'], 'say-what-it-is'],
    [['contents-doubtful', 'damaged'], 'move-all'],
    [['held'], 'let-go'],
    [['leaving'], 'hand-over'],
    [['gone'], 'proof-filed'],
    [['gone', 'proof-filed'], 'came-back'],
    [['damaged', 'emptied'], 'move-all'],
  ] as const)('after %j the likeliest is %s', (marks, first) => {
    expect(doingsIn(withMarks('1', ...marks))[0]).toBe(first);
  });

  test('a broken one with nothing in it has nothing to be moved', () => {
    expect(doingsIn(withMarks('0', 'damaged'))).not.toContain('move-all');
  });

  test('what nobody logged cannot be called known again by saying so', () => {
    const scribe = withMarks('1', 'contents-doubtful');
    expect(doingsIn(scribe)).toContain('contents-known');
    scribe.write(pour(9, 1, '0.2'));
    expect(doingsIn(scribe)).not.toContain('contents-known');
    expect(doingsIn(scribe)).toContain('say-what-it-is');
  });
});

describe('contents that nobody knows', () => {
  test('are told apart from known ones, and from a weight of solids', () => {
    expect(notDetermined(withMarks('1').state, one)).toBeNull();
    const scribe = new Scribe();
    scribe.does({
      do: 'open-container',
      vessel: 'tub',
      capacity: litres('12'),
      material: 'other',
      cap: 'lid',
      openedOn: '2026-03-02',
      doubt: { doubt: 'found', note: 'no label' },
      level: grams('800'),
    });
    const [found] = [...scribe.state.containers.values()];
    const asked = notDetermined(scribe.state, found?.body.containerId ?? '');
    expect(asked?.doubt?.body).toMatchObject({ doubt: 'found', note: 'no label' });
    expect(found && lifeOf(scribe.state, found).is).toBe('not-determined');
  });

  test('nothing is opened before it was looked at, no salt goes in before pH and ammonia are known', () => {
    const tests =
      notDetermined(withMarks('1', 'contents-doubtful').state, one)?.tests.map((t) => t.test) ?? [];
    expect(tests[0]).toBe('outside');
    expect(tests.at(-1)).toBe('chloride');
    expect(tests.indexOf('ph')).toBeLessThan(tests.indexOf('ammonia'));
    expect(tests.indexOf('open-slowly')).toBeLessThan(tests.indexOf('ph'));
  });

  test('those who may know are named with how to reach them, as far as somebody wrote it down', () => {
    const scribe = withMarks('1', 'contents-doubtful');
    const asked = () =>
      new Map(notDetermined(scribe.state, one)?.ask.map(({ who, people }) => [who, people]) ?? []);
    expect([...asked().values()].flat()).toEqual([]);
    scribe.does({ do: 'add-person', name: 'Maren', phone: '01632 960 001' });
    scribe.does({
      do: 'describe-workshop',
      name: 'W',
      address: 'A',
      emergencyNumber: '112',
      collector: { name: 'Collection', contact: '01632 960 077' },
    });
    expect(asked().get('worked-here')).toEqual([{ name: 'Maren', contact: '01632 960 001' }]);
    expect(asked().get('collector')).toMatchObject([{ name: 'Collection', contact: '01632 960 077' }]);
    expect(asked().get('authority')).toEqual([]);
  });
});
