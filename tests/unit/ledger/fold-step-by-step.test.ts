import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PlainBody } from '../../../src/ledger/entries/body';
import type { Entry } from '../../../src/ledger/entries/entry';
import { applyAll, fold, foldAll } from '../../../src/ledger/fold';
import { emptyState, type State } from '../../../src/ledger/state';
import { anyLife, lifeStreams } from './any-life';
import { anyRecord } from './any-record';
import { exactly } from './exactly';
import {
  begun,
  benchTest,
  can,
  dose,
  grams,
  id,
  litres,
  marked,
  pour,
  put,
  Scribe,
  tip,
  treatmentEnd,
  wash,
} from './scribe';
import { anyLateRecord, lent, taken, tested } from './told-late';

/** The same entries, and no object of them: nothing that is remembered of the others is known of these. */
const copied = (entries: readonly Entry[]): Entry[] => JSON.parse(JSON.stringify(entries));

/** Folds them one by one as they arrive: each state is that of all at once, and stays it while others go on from it. */
function foldsStepByStep(arriving: readonly Entry[], begin: readonly Entry[] = []): void {
  const fresh = copied([...begin, ...arriving]);
  let state = applyAll(begin);
  const older: (readonly [State, string])[] = [];
  for (const [i, entry] of arriving.entries()) {
    older.push([state, exactly(state)]);
    state = fold(state, entry);
    expect(exactly(state)).toBe(exactly(applyAll(fresh.slice(0, begin.length + i + 1))));
  }
  for (const [then, said] of older) expect(exactly(then)).toBe(said);
}

type Line = readonly [body: PlainBody, written: number, happened: number];

/** One notebook; entries arrive as they were written. */
function notebook(...lines: readonly Line[]): readonly Entry[] {
  const scribe = new Scribe();
  for (const [body, written, happened] of lines) scribe.write(body, written, happened);
  return scribe.entries;
}

/** Two cans, and 2 L and 3 L to go in. */
const began: readonly Line[] = [
  [can(1, '10'), 0, 0],
  [can(2, '10'), 0, 0],
  [wash(1, '2'), 0, 0],
  [wash(2, '3'), 0, 0],
];

const codesOf = ({ upsets }: State): readonly string[] => upsets.map(({ code }) => code);

describe('one by one it is what it is at once', () => {
  test('however late, however jumbled, and whatever is corrected or withdrawn', () => {
    fc.assert(
      fc.property(anyLateRecord, (arriving) => foldsStepByStep(arriving)),
      { numRuns: 150 },
    );
  });

  test('of any record of two devices, each of which tells in its own time', () => {
    const jumbled = fc
      .oneof(anyRecord, anyLife)
      .chain((entries) => fc.shuffledSubarray([...entries], { minLength: entries.length }));
    fc.assert(
      fc.property(jumbled, (arriving) => foldsStepByStep(arriving)),
      { numRuns: 60 },
    );
  });

  test('by handfuls as well', () => {
    fc.assert(
      fc.property(anyLateRecord, fc.array(fc.nat(6), { maxLength: 12 }), (arriving, sizes) => {
        let [state, given] = [emptyState, 0];
        for (const size of [...sizes, arriving.length]) {
          state = foldAll(state, arriving.slice(given, given + size));
          given += size;
        }
        expect(exactly(state)).toBe(exactly(applyAll(copied(arriving))));
      }),
      { numRuns: 100 },
    );
  });

  test('two ways on from one state know nothing of one another', () => {
    fc.assert(
      fc.property(anyLateRecord, fc.nat(20), fc.nat(20), (entries, cut, other) => {
        const common = entries.slice(0, cut);
        const rest = entries.slice(cut);
        const turned = [
          ...rest.slice(other % (rest.length + 1)),
          ...rest.slice(0, other % (rest.length + 1)),
        ];
        const from = applyAll(common);
        const said = exactly(from);
        const [one, two] = [rest.reduce(fold, from), turned.reduce(fold, from)];
        expect(exactly(one)).toBe(exactly(applyAll(copied(entries))));
        expect(exactly(two)).toBe(exactly(one));
        expect(exactly(from)).toBe(said);
      }),
      { numRuns: 100 },
    );
  });
});

describe('told late', () => {
  test.each([
    ['closed', 'added-while-closed'],
    ['held', 'added-while-held'],
    ['gone', 'added-while-gone'],
  ] as const)('that it was %s before something went in', (mark, code) => {
    const entries = notebook(...began, [pour(1, 1, '1'), 10, 10], [marked(1, mark), 11, 5]);
    foldsStepByStep(entries);
    expect(codesOf(entries.reduce(fold, emptyState))).toEqual([code]);
  });

  test('that it was handed over before something went in, and that it came back before that', () => {
    const entries = notebook(...began, [pour(1, 1, '1'), 10, 10], [taken(1, 1), 11, 5], [lent(1, 1), 12, 7]);
    foldsStepByStep(entries);
    expect(codesOf(entries.slice(0, -1).reduce(fold, emptyState))).toEqual(['added-while-gone']);
    expect(codesOf(entries.reduce(fold, emptyState))).toEqual([]);
  });

  test('that nobody knew what was in it in the minute in which too much was taken out', () => {
    const entries = notebook(
      ...began,
      [pour(1, 1, '1'), 5, 5],
      [tip(1, 2, '2'), 10, 10],
      [marked(1, 'contents-doubtful'), 11, 10],
      [marked(1, 'emptied'), 12, 7],
    );
    foldsStepByStep(entries);
    expect(codesOf(entries.slice(0, -2).reduce(fold, emptyState))).toEqual(['more-taken-than-held']);
    expect(codesOf(entries.reduce(fold, emptyState))).toEqual([]);
  });

  test('that somebody doubted what was in it before somebody said what it was: it is as old as the doubt', () => {
    const entries = notebook(
      ...began,
      [{ ...can(3), openedOn: '2026-03-02' }, 1, 1],
      [
        {
          kind: 'contents-determined',
          v: 1,
          containerId: id('c0', 3),
          streamId: id('50', 2),
          how: 'tests',
          saidBy: 'Maren',
        },
        10,
        10,
      ],
      [marked(3, 'contents-doubtful'), 11, 4],
    );
    foldsStepByStep(entries);
    const state = entries.reduce(fold, emptyState);
    expect(state.containers.get(id('c0', 3))?.firstWasteIn).toBe(entries.at(-1)?.happenedAt);
  });

  test('how heavy a litre is of what was weighed when it went in', () => {
    const entries = notebook(
      ...began,
      [put(1, 1, '1100'), 5, 5],
      [tested(1, '1.1'), 9, 9],
      [tested(1, '1.0'), 10, 8],
    );
    foldsStepByStep(entries);
    const held = entries.reduce(fold, emptyState).containers.get(id('c0', 1))?.holds;
    expect(held?.volume.toFixed()).toBe('1');
  });

  test('a dose, or another end, of a treatment that had reached its end: the first end treated nothing then', () => {
    const entries = notebook(
      ...began,
      [pour(1, 1, '2'), 1, 1],
      [benchTest(1), 2, 2],
      [begun(1, 1), 5, 5],
      [treatmentEnd(1), 8, 8],
      [pour(2, 1, '1'), 9, 9],
      [dose(1, '20'), 10, 10],
      [treatmentEnd(1, 'stopped'), 12, 12],
      [pour(2, 1, '1'), 13, 11],
    );
    foldsStepByStep(entries);
    const told = (upTo: number) =>
      entries
        .slice(0, upTo)
        .reduce(fold, emptyState)
        .containers.get(id('c0', 1))
        ?.contents.map(({ streamId, treatedBy }) => [streamId, treatedBy.length]);
    expect(told(9)).toEqual([
      [id('50', 1), 1],
      [id('50', 2), 0],
    ]);
    expect(told(10)).toEqual([
      [id('50', 1), 1],
      [id('50', 2), 1],
    ]);
  });

  test('that the treatment was of another container', () => {
    const scribe = new Scribe();
    for (const [body, minute, happened] of began) scribe.write(body, minute, happened);
    for (const body of [pour(1, 1, '2'), pour(2, 2, '2')]) scribe.write(body, 1, 1);
    const first = scribe.write(begun(1, 1), 5);
    scribe.write(dose(1, '20'), 6);
    scribe.write(
      { kind: 'entry-corrected', v: 1, corrects: first.id, body: begun(1, 2), reason: 'the other can' },
      7,
    );
    foldsStepByStep(scribe.entries);
    expect(scribe.state.containers.get(id('c0', 2))?.contents[0]?.treatedBy).toEqual([id('7e', 1)]);
  });

  test('of things that happenings named before: a container, a waste and a treatment', () => {
    foldsStepByStep(
      notebook(
        [pour(1, 1, '1'), 5, 5],
        [dose(1, '20'), 6, 6],
        [tip(1, 2, '0.5'), 7, 7],
        [wash(1, '2'), 8, 8],
        [can(2), 9, 9],
        [begun(1, 1), 10, 4],
        [can(1), 11, 11],
      ),
    );
  });
});

describe('arriving before what came first', () => {
  test('a container of another device stands where it was opened', () => {
    const [one, other] = [new Scribe('a'), new Scribe('b')];
    const [second, third] = [one.write(can(2), 5), one.write(can(3), 6)];
    const first = other.write(can(1), 1);
    foldsStepByStep([second, third, first]);
    expect([...[second, third, first].reduce(fold, emptyState).containers.keys()]).toEqual(
      [1, 2, 3].map((n) => id('c0', n)),
    );
  });

  test.each(['entry-corrected', 'entry-withdrawn'] as const)(
    'the %s of a device whose clock is behind counts once what it names has come',
    (kind) => {
      const [one, behind] = [new Scribe('a'), new Scribe('b')];
      const opened = [one.write(can(1), 0), one.write(wash(1, '2'), 1)];
      const wrong = one.write(pour(1, 1, '2'), 30);
      const change =
        kind === 'entry-corrected'
          ? ({ kind, v: 1, corrects: wrong.id, body: pour(1, 1, '1'), reason: 'misread' } as const)
          : ({ kind, v: 1, withdraws: wrong.id, reason: 'did not happen' } as const);
      const arriving = [...opened, behind.write(change, 10), wrong];
      foldsStepByStep(arriving);
      const held = arriving.reduce(fold, emptyState).containers.get(id('c0', 1))?.holds.volume.toFixed();
      expect(held).toBe(kind === 'entry-corrected' ? '1' : '0');
    },
  );
});

describe('told twice', () => {
  test('the very same entry changes nothing: it is the same state', () => {
    const entries = notebook(...began, [pour(1, 1, '1'), 5, 5], [tip(1, 2, '0.5'), 6, 6]);
    const state = applyAll(entries);
    for (const entry of copied(entries)) expect(fold(state, entry)).toBe(state);
    expect(foldAll(state, copied(entries))).toBe(state);
  });

  test('of two entries that claim one id the first in order is kept, whichever arrives first', () => {
    const [one, other, third] = [new Scribe('a'), new Scribe('a'), new Scribe('b')];
    const first = one.write(wash(1, '1'), 1);
    const claims = other.write(wash(1, '2'), 9);
    const between = third.write(can(1), 5);
    for (const arriving of [
      [first, claims, between],
      [first, between, claims],
      [claims, between, first],
      [between, claims, first],
    ]) {
      foldsStepByStep(arriving);
      expect(arriving.reduce(fold, emptyState).log).toEqual([first, between]);
      expect(foldAll(emptyState, arriving).log).toEqual([first, between]);
    }
    expect(foldAll(applyAll([between]), [first, claims]).log).toEqual([first, between]);
    expect(foldAll(applyAll([first]), [between, claims]).log).toEqual([first, between]);
  });
});

test('an older state stays what it was, of all that can befall a container', () => {
  const lines: Line[] = [
    ...lifeStreams.map((body): Line => [body, 0, 0]),
    [can(1, '10'), 0, 0],
    [can(2, '10'), 0, 0],
    [pour(1, 1, '1'), 1, 1],
    [benchTest(1), 2, 2],
    [{ kind: 'level-read', v: 1, containerId: id('c0', 1), level: litres('1') }, 3, 3],
    [{ kind: 'water-lost', v: 1, containerId: id('c0', 1), amount: litres('0.1') }, 4, 4],
    [tip(1, 2, '0.2'), 5, 5],
    [put(3, 1, '100'), 6, 6],
    [begun(1, 1), 7, 7],
    [dose(1, '20'), 8, 8],
    [treatmentEnd(1), 9, 9],
    [tip(2, null, '0.2'), 10, 10],
    [
      {
        kind: 'contents-determined',
        v: 1,
        containerId: id('c0', 1),
        streamId: id('50', 3),
        how: 'tests',
        saidBy: 'Maren',
      },
      11,
      11,
    ],
    [{ ...tip(1, 2, '0'), amount: grams('100') }, 12, 12],
  ];
  foldsStepByStep(notebook(...lines));
});
