import Decimal from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { askedAtMost, mostAtOnePause } from '../../../src/safety/checklist-faults';
import { stopsOf } from '../../../src/safety/checklist-item';
import { answer, begin, type Standing, standing } from '../../../src/safety/checklist-run';
import { Checklist } from '../../../src/safety/checklist-schema';
import { checklists } from '../../../src/safety/checklists';
import { changedList, faultOf, OwnChange, type OwnItem } from '../../../src/safety/own-lists';
import { Run } from '../../../src/safety/run-schema';
import { context, goodAnswer, listNamed, must, past, T0 } from './build-run';

const gasMeter: OwnItem = {
  id: 'own-gas-meter',
  kind: 'reading',
  ask: 'Gas meter reads',
  look: 'Meter at the level of your chest.',
  unit: 'mg/L',
  max: '1',
  stop: true,
  reason: 'The insurer wants it.',
};
const cat: OwnItem = {
  id: 'own-cat',
  kind: 'confirm',
  ask: 'The cat is out',
  yes: 'Seen outside',
  stop: false,
  reason: 'She jumps on benches.',
};

const add = (list: string, item: OwnItem): OwnChange => ({ change: 'item-added', list, item });
const range = (item: string, limits: object, list = 'filtration'): OwnChange => ({
  change: 'range',
  list,
  item,
  ...limits,
});
const drop = (list: string, item: string, note?: string): OwnChange => ({
  change: 'item-dropped',
  list,
  item,
  ...(note === undefined ? {} : { note }),
});

const inSpill = 'spill-response-readiness';
const changed = (id: string, ...changes: OwnChange[]): Checklist => {
  const { list, lapsed } = changedList(listNamed(id), changes);
  expect(lapsed).toEqual([]);
  return list;
};
const itemIn = (list: Checklist, id: string) => list.items.find((item) => item.id === id);
const temperature = (...changes: OwnChange[]) => itemIn(changed('filtration', ...changes), 'fil-temp');

describe('a range of ours', () => {
  it('made tighter needs no word, and keeps ours beside it', () => {
    expect(temperature(range('fil-temp', { max: '25' }))).toMatchObject({
      min: '5',
      max: '25',
      range: 'tightened',
      shipped: { min: '5', max: '30' },
    });
  });
  it.each([{ max: '31' }, { min: '4' }, { min: '10', max: '30.001' }])(
    'made wider says why: %o',
    (limits) => {
      const change = range('fil-temp', limits);
      expect(faultOf(listNamed('filtration'), change)).toEqual({ code: 'note-missing', because: 'loosened' });
      expect(temperature({ ...change, note: 'heated shed' } as OwnChange)).toMatchObject({
        range: 'loosened',
        shipped: { min: '5', max: '30' },
      });
    },
  );
  it('is measured against ours, however it stood before', () => {
    const tight = changed('filtration', range('fil-temp', { max: '20' }));
    expect(faultOf(tight, range('fil-temp', { max: '28' }))).toBeNull();
    expect(faultOf(tight, range('fil-temp', { max: '35' }))).toMatchObject({ code: 'note-missing' });
  });
  it('put back to ours has no mark left, written otherwise or not said', () => {
    for (const back of [range('fil-temp', {}), range('fil-temp', { min: '5.0', max: '30.00' })]) {
      const item = temperature(range('fil-temp', { max: '20' }), back);
      expect(item).not.toHaveProperty('range');
      expect(item).not.toHaveProperty('shipped');
    }
  });
  it('must leave something between its limits', () => {
    expect(faultOf(listNamed('filtration'), range('fil-temp', { min: '40', note: 'x' }))).toEqual({
      code: 'max-not-above-min',
    });
  });
  it('is one of a reading, in the list', () => {
    expect(faultOf(listNamed('filtration'), range('fil-medium', { max: '2' }))).toMatchObject({
      code: 'not-a-reading',
    });
    expect(faultOf(listNamed('filtration'), range('lck-temp', { max: '2' }))).toMatchObject({
      code: 'no-such-item',
    });
    expect(faultOf(listNamed('leach-check'), range('fil-temp', { max: '2' }))).toMatchObject({
      code: 'another-list',
    });
  });
});

describe('an item of the workshop', () => {
  it('is asked after ours, stops, and is marked in the answers', () => {
    const list = changed(inSpill, add(inSpill, gasMeter));
    let now: Standing = standing(begin(list, context, T0));
    for (let second = 5; now.state === 'next' && now.item.id !== 'own-gas-meter'; second += 5)
      now = must(answer(now.run, goodAnswer(now.item), past(second)));
    const over = must(answer(now.run, { kind: 'reading', written: '1.2' }, past(60)));
    if (over.state !== 'stopped') throw new Error(over.state);
    expect(over.doors[0]).toMatchObject({ leads: 'answer-again' });
    expect(over.answered).toMatchObject({ item: 'own-gas-meter', own: true, max: '1', verdict: 'stops' });
    expect(Run.safeParse(structuredClone(over.run)).success).toBe(true);
  });

  it('that does not stop offers reasons, and answers in its own words', () => {
    const list = changed(inSpill, add(inSpill, cat));
    expect(itemIn(list, 'own-cat')?.reasons).toHaveLength(4);
    expect(itemIn(list, 'own-cat')).toMatchObject({
      yes: 'Seen outside',
      own: true,
      why: 'She jumps on benches.',
    });
  });

  it('of the walk is asked of each container or once, never later, and a stop asks what was done', () => {
    const inWalk = 'container-inspection';
    const once = itemIn(changed(inWalk, add(inWalk, { ...cat, stop: true, when: 'after' })), 'own-cat');
    expect(once).toMatchObject({ of: 'place', doors: [{ leads: 'say-done' }] });
    expect(once?.when).toBeUndefined();
    const each = itemIn(changed(inWalk, add(inWalk, { ...cat, of: 'container' })), 'own-cat');
    expect(each?.of).toBe('container');
    const elsewhere = itemIn(changed(inSpill, add(inSpill, { ...cat, of: 'container' })), 'own-cat');
    expect(elsewhere?.of).toBeUndefined();
  });

  it('is refused where nine are asked, until an own one is dropped or it is asked later', () => {
    const full = changed(inSpill, add(inSpill, cat));
    expect(askedAtMost(full.items, undefined)).toBe(mostAtOnePause);
    expect(faultOf(full, add(inSpill, gasMeter))).toEqual({ code: 'over-nine', asked: 9 });
    expect(faultOf(full, add(inSpill, { ...gasMeter, when: 'after' }))).toBeNull();
    expect(
      faultOf(changed(inSpill, add(inSpill, cat), drop(inSpill, 'own-cat')), add(inSpill, gasMeter)),
    ).toBeNull();
  });

  it.each<[string, Partial<OwnItem>, string]>([
    ['a question of ten words', { ask: 'a b c d e f g h i j' }, 'ask-over-nine-words'],
    ['thirteen words to look at', { look: 'a b c d e f g h i j k l m' }, 'look-over-twelve-words'],
    ['limits the wrong way round', { min: '2' }, 'max-not-above-min'],
  ])('is refused with %s', (_, wrong, code) => {
    const item = { ...gasMeter, ...wrong } as OwnItem;
    expect(faultOf(listNamed(inSpill), add(inSpill, item))).toEqual({
      code: 'item-not-in-order',
      faults: [code],
    });
  });

  it('without a limit, or with the same id again, is refused', () => {
    const { max: _, ...open } = gasMeter as typeof gasMeter & { max: string };
    expect(faultOf(listNamed(inSpill), add(inSpill, open as OwnItem))).toEqual({
      code: 'item-not-in-order',
      faults: ['no-limit'],
    });
    expect(faultOf(changed(inSpill, add(inSpill, cat)), add(inSpill, cat))).toEqual({
      code: 'id-taken',
      item: 'own-cat',
    });
  });

  it('falls away; one that stops says why, and ours never does', () => {
    const list = changed(inSpill, add(inSpill, gasMeter));
    expect(faultOf(list, drop(inSpill, 'own-gas-meter'))).toEqual({
      code: 'note-missing',
      because: 'stop-dropped',
    });
    expect(
      itemIn(
        changed(inSpill, add(inSpill, gasMeter), drop(inSpill, 'own-gas-meter', 'sold')),
        'own-gas-meter',
      ),
    ).toBeUndefined();
    expect(faultOf(list, drop(inSpill, 'rdy-fit', 'boring'))).toEqual({
      code: 'not-an-own-item',
      item: 'rdy-fit',
    });
  });

  it('has a range of its own that needs no note', () => {
    const list = changed(inSpill, add(inSpill, gasMeter), range('own-gas-meter', { max: '3' }, inSpill));
    const item = itemIn(list, 'own-gas-meter');
    expect(item).toMatchObject({ max: '3' });
    expect(item).not.toHaveProperty('range');
  });
});

describe('a change in the record', () => {
  it.each([
    add(inSpill, gasMeter),
    add(inSpill, cat),
    range('fil-temp', { min: '4', note: 'cold shed' }),
    drop(inSpill, 'own-cat'),
  ])('is read again: %o', (change) => {
    expect(OwnChange.parse(JSON.parse(JSON.stringify(change)))).toEqual(change);
  });
  it.each<[string, unknown]>([
    ['an id that could be one of ours', add(inSpill, { ...cat, id: 'rdy-cat' })],
    ['ours to be dropped', drop(inSpill, 'rdy-fit')],
    ['a limit that is no digits', range('fil-temp', { max: 'warm' })],
    ['an item without its reason', add(inSpill, { ...cat, reason: ' ' })],
  ])('is refused with %s', (_, change) => {
    expect(OwnChange.safeParse(change).success).toBe(false);
  });
  it('that a newer list has no place for is told, and the others hold', () => {
    const shipped = listNamed('filtration');
    const newer = { ...shipped, items: shipped.items.filter(({ id }) => id !== 'fil-temp') };
    const gone = range('fil-temp', { max: '20' });
    const { list, lapsed } = changedList(newer, [gone, add('filtration', { ...cat, when: 'after' })]);
    expect(lapsed).toEqual([{ change: gone, fault: { code: 'no-such-item', item: 'fil-temp' } }]);
    expect(itemIn(list, 'own-cat')).toBeDefined();
  });
  it('of another list is passed over without a word', () => {
    expect(changedList(listNamed('filtration'), [add(inSpill, cat)])).toEqual({
      list: listNamed('filtration'),
      lapsed: [],
    });
  });
});

/** Changes of any kind to one list, in order or not. */
const someChanges = (list: Checklist): fc.Arbitrary<OwnChange[]> => {
  const item = fc.constantFrom(...list.items.map(({ id }) => id), 'own-0', 'own-1', 'own-2');
  const limit = fc.option(fc.integer({ min: -50, max: 2000 }).map(String), { nil: undefined });
  const note = fc.option(fc.constant('because'), { nil: undefined });
  const own = fc.record({
    n: fc.nat(2),
    stop: fc.boolean(),
    when: fc.constantFrom(undefined, 'during' as const, 'after' as const),
  });
  return fc.array(
    fc.oneof(
      fc
        .record({ item, min: limit, max: limit, note })
        .map((told) => ({ change: 'range' as const, list: list.id, ...told })),
      fc.record({ item, note }).map((told) => ({ change: 'item-dropped' as const, list: list.id, ...told })),
      own.map(({ n, stop, when }) =>
        add(list.id, { ...cat, id: `own-${n}`, stop, ...(when ? { when } : {}) }),
      ),
    ),
    { maxLength: 12 },
  );
};

test('whatever a workshop changes, every question of ours stays with its stops, and the list stays in order', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...checklists.values()).chain((list) => fc.tuple(fc.constant(list), someChanges(list))),
      ([shipped, changes]) => {
        const { list, lapsed } = changedList(shipped, changes);
        expect(Checklist.safeParse(list).success).toBe(true);
        expect(list.items.filter(({ own }) => !own).map(({ id }) => id)).toEqual(
          shipped.items.map(({ id }) => id),
        );
        for (const ours of shipped.items) {
          const now = itemIn(list, ours.id);
          if (!now) throw new Error(ours.id);
          expect(stopsOf(now)).toEqual(expect.arrayContaining([...stopsOf(ours)]));
          if (ours.kind !== 'reading' || now.kind !== 'reading') continue;
          const wider =
            (ours.max !== undefined && new Decimal(now.max ?? 'Infinity').gt(ours.max)) ||
            (ours.min !== undefined && new Decimal(now.min ?? '-Infinity').lt(ours.min));
          expect(now.range === 'loosened').toBe(wider);
          if (now.range)
            expect(now.shipped).toEqual({
              ...(ours.min ? { min: ours.min } : {}),
              ...(ours.max ? { max: ours.max } : {}),
            });
          if (!wider) continue;
          // Somebody said why.
          const last = changes.findLast(
            (one) =>
              one.change === 'range' && one.item === ours.id && !lapsed.some(({ change }) => change === one),
          );
          expect(last).toMatchObject({ note: 'because' });
        }
      },
    ),
    { numRuns: 200 },
  );
});
