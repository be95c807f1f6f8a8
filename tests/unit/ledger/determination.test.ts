import { describe, expect, test } from 'vitest';
import { accumulationStart } from '../../../src/ledger/accumulation';
import { containerFigures } from '../../../src/ledger/container-figures';
import { lifeOf, mayBeDone } from '../../../src/ledger/container-life';
import type { PlainBody } from '../../../src/ledger/entries/body';
import { Entry } from '../../../src/ledger/entries/entry';
import { flags } from '../../../src/ledger/flags';
import { applyAll } from '../../../src/ledger/fold';
import type { Intention } from '../../../src/ledger/intention';
import { emptyPlaces } from '../../../src/ledger/places-that-fit';
import { verifyChain } from '../../../src/ledger/verify';
import { seenIn, wholeOf } from '../../../src/ledger/whole-of';
import { at, can, grams, id, litres, pour, Scribe, tip, wash } from './scribe';

const [one, two] = [id('c0', 1), id('c0', 2)];
const gramsPerLitre = (value: string) => ({ value, unit: 'g/L' }) as const;

const container = ({ state }: Scribe, containerId = one) => {
  const found = state.containers.get(containerId);
  if (!found) throw new Error('no such container');
  return found;
};

const codes = ({ state }: Scribe) => flags(state).map(({ code }) => code);

const mark = (as: 'contents-doubtful' | 'damaged' | 'emptied' | 'held', containerId = one) =>
  ({ kind: 'container-marked', v: 1, containerId, mark: as }) satisfies PlainBody;

const isWashWater: Intention = {
  do: 'determine-contents',
  containerId: one,
  stream: {
    stream: 'wash-water',
    liquid: {
      volume: litres('2.4'),
      findings: [{ by: 'strip', metal: 'Cu', concentration: { value: '500', unit: 'mg/L' } }],
      freeAcid: [],
    },
  },
  how: 'tests',
  saidBy: 'Maren',
};

/** 3 L of leach liquor of which somebody doubts, in a container of 5 L. */
function inDoubt(): Scribe {
  const scribe = new Scribe();
  scribe.write(can(1));
  scribe.write(wash(1, '3', 'leach-liquor'));
  scribe.write(pour(1, 1, '3'));
  scribe.write(mark('contents-doubtful'));
  return scribe;
}

describe('somebody says what is in a container', () => {
  test('and all that is in it is this from then on, as old as the oldest that was in it', () => {
    const scribe = inDoubt();
    scribe.does(isWashWater, 30);
    const { holds, contents, determined, firstWasteIn, movements } = container(scribe);
    expect(holds.volume.toFixed()).toBe('2.4');
    expect(contents.map(({ streamId }) => scribe.state.streams.get(streamId ?? '')?.body.stream)).toEqual([
      'wash-water',
    ]);
    expect(determined?.body).toMatchObject({ how: 'tests', saidBy: 'Maren' });
    expect(firstWasteIn).toBe(at(2));
    expect(movements.map(({ purpose }) => purpose)).toEqual(['placed', 'determined']);
    const copper = containerFigures(scribe.state, one).metals.find(({ metal }) => metal === 'Cu');
    expect(copper?.all?.value.toNumber()).toBeCloseTo(1.2, 6);
  });

  test('nothing may be added before it, and something after it', () => {
    const scribe = inDoubt();
    scribe.write(wash(2, '1'));
    // So little that no property of what is there goes by it.
    const more: Intention = {
      do: 'place-stream',
      streamId: id('50', 2),
      containerId: one,
      amount: litres('0.1'),
    };
    expect(scribe.tries(more)).toMatchObject({ ok: false, refusal: { code: 'contents-doubtful' } });
    expect(codes(scribe)).toContain('contents-doubtful');
    scribe.does(isWashWater, 30);
    expect(codes(scribe)).not.toContain('contents-doubtful');
    expect(lifeOf(scribe.state, container(scribe)).is).toBe('filling');
    expect(scribe.tries(more)).toMatchObject({ ok: true });
  });

  test('what was in no log is told of by it too', () => {
    const scribe = new Scribe();
    scribe.write(can(1));
    scribe.write(can(2));
    scribe.write(tip(2, 1, '2'));
    expect(lifeOf(scribe.state, container(scribe)).is).toBe('not-determined');
    scribe.write(wash(1, '1'));
    const more = {
      do: 'place-stream',
      streamId: id('50', 1),
      containerId: one,
      amount: litres('1'),
    } as const;
    expect(scribe.tries(more)).toMatchObject({ ok: false, refusal: { code: 'contents-unaccounted' } });
    scribe.does(isWashWater, 30);
    expect(lifeOf(scribe.state, container(scribe)).is).toBe('filling');
  });

  test('a doubt that comes after it is a doubt again, in the same minute too', () => {
    for (const minutes of [30, 40]) {
      const scribe = inDoubt();
      scribe.does(isWashWater, 30);
      scribe.write(mark('contents-doubtful'), minutes);
      expect(container(scribe).doubtfulSince).toBe(at(minutes));
    }
  });

  test('and the doubt is there again when that was withdrawn', () => {
    const scribe = inDoubt();
    const [, said] = scribe.does(isWashWater, 30);
    scribe.does({ do: 'withdraw-entry', withdraws: said?.id ?? '', reason: 'another container' }, 40);
    expect(container(scribe).doubtfulSince).toBe(at(3));
    expect(container(scribe).holds.volume.toFixed()).toBe('3');
  });

  test('what was found is as old as the day on which nobody knew what it was', () => {
    const scribe = new Scribe();
    scribe.write(can(1));
    scribe.write(mark('contents-doubtful'));
    expect(accumulationStart(scribe.state, container(scribe))).toBe(at(1));
    scribe.does(isWashWater, 30);
    expect(container(scribe).firstWasteIn).toBe(at(1));
    expect(accumulationStart(scribe.state, container(scribe))).toBe(at(1));
  });

  test('a doubt does not make younger what was in it, and what came in later does not make it younger either', () => {
    expect(accumulationStart(inDoubt().state, container(inDoubt()))).toBe(at(2));
    const scribe = new Scribe();
    scribe.write(can(1));
    scribe.write(mark('contents-doubtful'));
    scribe.write(wash(1, '3'));
    scribe.write(pour(1, 1, '3'));
    expect(accumulationStart(scribe.state, container(scribe))).toBe(at(1));
  });

  test('a doubt told twice, as on two devices, is as old as the first', () => {
    const scribe = inDoubt();
    scribe.write(mark('contents-doubtful'), 40);
    expect(container(scribe).doubtfulSince).toBe(at(3));
  });
});

describe('a class or code that somebody accepted', () => {
  const accepted = {
    kind: 'candidate-answered',
    v: 1,
    containerId: one,
    scheme: 'rcra',
    code: 'D002',
    answer: 'accepted',
    saidBy: 'Collector',
    saidOn: '2026-03-02',
  } satisfies PlainBody;

  const answered = (): Scribe => {
    const scribe = new Scribe();
    scribe.write(can(1));
    scribe.write(wash(1, '4'));
    scribe.write(pour(1, 1, '2'));
    scribe.write(accepted, 10);
    return scribe;
  };

  test.each([
    ['more waste came in', pour(1, 1, '1')],
    ['all of it went out', tip(1, null, '2')],
  ])('is stale once %s', (_, body) => {
    const scribe = answered();
    expect(codes(scribe)).not.toContain('answer-stale');
    scribe.write(body, 20);
    expect(container(scribe).answers[0]?.staleSince).toBe(at(20));
    expect(codes(scribe)).toContain('answer-stale');
    scribe.write(accepted, 30);
    expect(codes(scribe)).not.toContain('answer-stale');
  });

  test('is stale once somebody says that it is something else', () => {
    const scribe = answered();
    scribe.does(isWashWater, 20);
    expect(codes(scribe)).toContain('answer-stale');
  });

  test('is stale for what came in after the day on which it was said, however late it is written down', () => {
    const scribe = answered();
    const days = (n: number): number => n * 24 * 60;
    scribe.write(pour(1, 1, '1'), days(3));
    scribe.write(accepted, days(4));
    expect(codes(scribe)).toContain('answer-stale');
    scribe.write({ ...accepted, saidOn: '2026-03-05' }, days(5));
    expect(codes(scribe)).not.toContain('answer-stale');
  });

  test('is stale once water went off, where somebody said that it is not there', () => {
    const scribe = answered();
    scribe.write({ ...accepted, answer: 'refused' }, 19);
    scribe.write(tip(1, null, '0.5'), 20);
    expect(container(scribe).answers[0]?.staleSince).toBeNull();
    scribe.write({ kind: 'water-lost', v: 1, containerId: one, amount: litres('0.5') }, 21);
    expect(container(scribe).answers[0]?.staleSince).toBe(at(21));
  });

  test('stands when a part went out, and when water went off', () => {
    const scribe = answered();
    scribe.write(tip(1, null, '0.5'), 20);
    scribe.write({ kind: 'water-lost', v: 1, containerId: one, amount: litres('0.5') }, 21);
    expect(container(scribe).answers[0]?.staleSince).toBeNull();
  });
});

describe('out of a container that broke', () => {
  const moveAll = (to = two): Intention => ({ do: 'move-all', fromContainerId: one, toContainerId: to });

  test('all of it goes over at once, volume and mass, and it is empty from then on', () => {
    const scribe = new Scribe();
    scribe.write(can(1));
    scribe.write(can(2));
    scribe.write({
      ...wash(1, '1.25'),
      stream: 'treated-slurry',
      solid: {
        wetMass: grams('300'),
        moisture: { by: 'not-determined' },
        holds: { liquor: 'not-determined' },
      },
    });
    scribe.write(pour(1, 1, '1.25'));
    scribe.write({ ...pour(1, 1, '1'), amount: grams('300') });
    scribe.write(mark('damaged'));
    scribe.does(moveAll(), 20);
    expect(container(scribe).holds).toMatchObject({});
    expect(container(scribe).contents).toEqual([]);
    expect(container(scribe).marks.at(-1)?.body.mark).toBe('emptied');
    const { holds, firstWasteIn } = container(scribe, two);
    expect([holds.volume.toFixed(), holds.mass.toFixed()]).toEqual(['1.25', '300']);
    expect(firstWasteIn).toBe(at(3));
    expect(codes(scribe)).not.toContain('container-damaged');
  });

  test('the doubt goes with what it is about, and out of what is empty', () => {
    const scribe = inDoubt();
    scribe.write(can(2));
    scribe.write(mark('damaged'));
    expect(codes(scribe)).toContain('container-damaged');
    scribe.does(moveAll(), 20);
    expect(container(scribe).doubtfulSince).toBeNull();
    expect(codes(scribe)).not.toContain('container-damaged');
    expect(codes(scribe)).not.toContain('more-taken-than-held');
    expect(lifeOf(scribe.state, container(scribe, two)).is).toBe('not-determined');
    expect(container(scribe, two).holds.volume.toFixed()).toBe('3');
  });

  test('what was found, and only read, is as pressing, and gone once it is moved over', () => {
    const scribe = new Scribe();
    scribe.write(can(1));
    scribe.write(can(2));
    scribe.write(mark('contents-doubtful'));
    scribe.write({ kind: 'level-read', v: 1, containerId: one, level: litres('3.5') });
    scribe.write(mark('damaged'));
    const told = flags(scribe.state).filter(({ about }) => about.containerId === one);
    expect(told).toContainEqual(expect.objectContaining({ code: 'container-damaged', pressing: 'now' }));
    expect(told).toContainEqual(expect.objectContaining({ code: 'contents-doubtful', damaged: true }));
    scribe.does(moveAll(), 20);
    expect(container(scribe).doubtfulSince).toBeNull();
    expect(seenIn(container(scribe))).toEqual([]);
    expect(seenIn(container(scribe, two))).toEqual([litres('3.5')]);
    expect(codes(scribe)).not.toContain('container-damaged');
    expect(codes(scribe)).not.toContain('more-taken-than-held');
  });

  test('the doubt stays where the record still holds something, whatever was said of emptying', () => {
    const scribe = new Scribe();
    scribe.write(can(1));
    scribe.write(wash(1, '3'));
    scribe.write(pour(1, 1, '3'));
    scribe.write(mark('contents-doubtful'));
    scribe.write(mark('emptied'));
    expect(container(scribe).doubtfulSince).not.toBeNull();
  });

  test('the doubt goes too with what was poured over already', () => {
    const scribe = inDoubt();
    scribe.write(can(2));
    const poured = { fromContainerId: one, amount: litres('1'), purpose: 'transfer' } as const;
    scribe.does({ do: 'log-move-happened', ...poured, toContainerId: null }, 20);
    scribe.does({ do: 'log-move-happened', ...poured, toContainerId: two }, 21);
    expect(container(scribe, two).doubtfulSince).toBe(at(21));
  });

  test('what nobody knows does not go to what somebody knows', () => {
    const scribe = inDoubt();
    scribe.write(can(2));
    scribe.write(wash(2, '1'));
    scribe.write(pour(2, 2, '1'));
    scribe.write(mark('damaged'));
    expect(scribe.tries(moveAll())).toMatchObject({ ok: false });
    expect(emptyPlaces(scribe.state, container(scribe))).toEqual([]);
  });

  test('as much as was read on one that was found, and no entry is called wrong for it', () => {
    const scribe = new Scribe();
    scribe.write(can(2));
    const [opened] = scribe.does({
      do: 'open-container',
      vessel: 'jerrican',
      capacity: litres('5'),
      material: 'other',
      cap: 'vented',
      openedOn: '2026-03-02',
      doubt: { doubt: 'found' },
      level: litres('3.5'),
    });
    const from = opened?.body.kind === 'container-opened' ? opened.body.containerId : '';
    scribe.write(mark('damaged', from), 10);
    scribe.does({ do: 'move-all', fromContainerId: from, toContainerId: two }, 20);
    expect(container(scribe, two).holds.volume.toFixed()).toBe('3.5');
    expect(lifeOf(scribe.state, container(scribe, two)).is).toBe('not-determined');
    expect(codes(scribe)).not.toContain('more-taken-than-held');
    // Known contents are followed as strictly as ever.
    scribe.write(can(3));
    scribe.write(tip(3, null, '1'), 30);
    expect(codes(scribe)).toContain('more-taken-than-held');
  });

  test('of one that was read and of which some went out since, what is left', () => {
    const scribe = new Scribe();
    scribe.write(can(1));
    scribe.write(mark('contents-doubtful'));
    scribe.write({ kind: 'level-read', v: 1, containerId: one, level: litres('3.5') });
    scribe.write(tip(1, null, '0.5'));
    expect(wholeOf(container(scribe))).toEqual([litres('3')]);
    scribe.write(tip(1, null, '3'));
    expect(wholeOf(container(scribe))).toEqual([]);
    scribe.write(mark('damaged'));
    expect(mayBeDone(scribe.state, container(scribe))).not.toContain('move-all');
    scribe.write({ kind: 'level-read', v: 1, containerId: one, level: litres('1.2') });
    expect(wholeOf(container(scribe))).toEqual([litres('1.2')]);
  });

  test('places are named that are sound, empty and large enough, for the unknown neither tight nor glass', () => {
    const scribe = inDoubt();
    scribe.write(mark('damaged'));
    const make = (n: number, made: Partial<ReturnType<typeof can>>): void => {
      scribe.write({ ...can(n), ...made } as ReturnType<typeof can>);
    };
    make(2, { capacity: litres('3') });
    make(3, { cap: 'tight' });
    make(4, { material: 'glass' as 'HDPE' });
    make(5, { capacity: litres('10') });
    make(6, {});
    make(7, {});
    scribe.write(mark('held', id('c0', 7)));
    expect(emptyPlaces(scribe.state, container(scribe)).map(({ body }) => body.code)).toEqual([
      'C-06',
      'C-05',
    ]);
  });
});

describe('a waste whose volume was wrong', () => {
  /** 2.0 L logged, these amounts of it placed; then it was 2.6 L. */
  function corrected(...placed: readonly string[]): Scribe {
    const scribe = new Scribe();
    scribe.write(can(1));
    scribe.write(can(2));
    const { id: corrects } = scribe.write(wash(1, '2.0'));
    placed.forEach((amount, n) => {
      scribe.write(pour(1, n + 1, amount));
    });
    scribe.does({ do: 'correct-entry', corrects, body: wash(1, '2.6'), reason: 'misread' }, 20);
    return scribe;
  }

  test('was wrong in the one container that all of it went into', () => {
    const scribe = corrected('2.0');
    expect(container(scribe).holds.volume.toFixed()).toBe('2.6');
    expect(codes(scribe)).not.toContain('stream-not-placed');
  });

  test.each([[['1.5']], [['1.0', '1.0']], [['2.0', '0.5']]])(
    'stays as it was placed where %j of it was',
    (placed) => {
      const scribe = corrected(...placed);
      expect(container(scribe).holds.volume.toFixed()).toBe(Number(placed[0]).toString());
      expect(codes(scribe)).toContain('stream-not-placed');
    },
  );
});

describe('evidence that was found later', () => {
  const liquor = {
    ...wash(1, '2.0', 'leach-liquor'),
    liquid: {
      volume: litres('2.00'),
      findings: [{ by: 'assumed', metal: 'Cu', low: gramsPerLitre('2'), high: gramsPerLitre('30') }],
      freeAcid: [],
    },
  } satisfies PlainBody;

  const copper = ({ state }: Scribe) =>
    containerFigures(state, one).metals.find(({ metal }) => metal === 'Cu')?.all;

  test('stands beside what was known, and the range of the container narrows', () => {
    const scribe = new Scribe();
    scribe.write(can(1));
    scribe.write(liquor);
    scribe.write(pour(1, 1, '2.0'));
    const wide = copper(scribe);
    scribe.does({
      do: 'log-stream-test',
      streamId: id('50', 1),
      findings: [{ by: 'assay', metal: 'Cu', concentration: gramsPerLitre('11.8') }],
      freeAcid: [{ by: 'titration', result: { value: '1.31', unit: 'mol/L' } }],
    });
    const narrow = copper(scribe);
    const width = (figure: typeof wide) => figure?.high.minus(figure.low).toNumber() ?? Number.NaN;
    expect(width(narrow)).toBeLessThan(width(wide) / 2);
    expect(narrow?.value.toNumber()).toBeCloseTo(23.6, 6);
    expect(scribe.state.streams.get(id('50', 1))?.body.liquid?.findings.map(({ by }) => by)).toEqual([
      'assumed',
      'assay',
    ]);
    expect(containerFigures(scribe.state, one).acid.figure?.value.toNumber()).toBeCloseTo(2.62, 6);
  });
});

test('a record as it was written before there were areas, photos, levels and doubts is read as it was', () => {
  const scribe = inDoubt();
  scribe.write(tip(1, null, '0.5'));
  const stored = JSON.parse(JSON.stringify(scribe.entries)) as unknown[];
  for (const text of ['area', 'photos', 'doubt"', 'saidBy'])
    expect(JSON.stringify(stored), `${text} is of later`).not.toContain(text);
  const read = stored.map((raw) => Entry.parse(raw));
  expect(verifyChain(read)).toMatchObject({ whole: true, entries: 5 });
  const found = applyAll(read).containers.get(one);
  expect(found).toMatchObject({ levels: [], changes: [], doubtfulSince: at(3) });
  expect(found?.holds.volume.toFixed()).toBe('2.5');
});
