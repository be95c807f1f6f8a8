/** What the app knows and a person need not say: the station, the ventilation, the plan, the workshop's own range. */
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { type Choice, StationKind } from '../../../src/safety/checklist-item';
import {
  answer,
  answerAgain,
  back,
  begin,
  movedTo,
  resume,
  type Standing,
  standing,
} from '../../../src/safety/checklist-run';
import type { Checklist } from '../../../src/safety/checklist-schema';
import { checklists } from '../../../src/safety/checklists';
import { inThisRun, workedOutFrom } from '../../../src/safety/in-this-run';
import { changedList } from '../../../src/safety/own-lists';
import { type Context, type Given, Run } from '../../../src/safety/run-schema';
import { hoodAmiss } from '../../../src/safety/ventilation/in-list';
import { reasonWords } from '../../../src/safety/ventilation/words';
import { context, goodAnswer, listNamed, must, past, runAt, T0 } from './build-run';
import { hood as hoodOf, today } from './ventilation-told';

const at = (kind: StationKind, name = 'Hood by the window'): Context => ({
  ...context,
  place: { id: 'station', name, kind },
});
const hood = at('ducted-hood');
const needsStation = [...checklists.values()].filter(({ station }) => station).map(({ id }) => id);

describe('the station', () => {
  it.each(needsStation)('is not asked by %s where the app knows it; the ribbon is', (id) => {
    const now = standing(begin(listNamed(id), hood, T0));
    expect(now).toMatchObject({ state: 'next', item: { id: 'sta-ribbon' }, number: 2 });
    expect(now.run.answered).toMatchObject([
      { item: 'sta-place', answer: 'ducted hood, fan on', byApp: 'Hood by the window', verdict: 'in-order' },
    ]);
    expect(Run.safeParse(structuredClone(now.run)).success).toBe(true);
  });

  it('outdoors asks for the wind instead', () => {
    expect(standing(begin(listNamed('filtration'), at('outdoors'), T0))).toMatchObject({
      state: 'next',
      item: { id: 'sta-wind' },
    });
  });

  it.each(['ductless-hood', 'room'] as const)(
    'of the kind %s stops every list at once, with its doors',
    (kind) => {
      for (const id of needsStation) {
        const now = standing(begin(listNamed(id), at(kind), T0));
        if (now.state !== 'stopped') throw new Error(id);
        expect(now.doors[0]?.do).toBe('Work at a measured ducted hood or outdoors. Then answer again.');
      }
    },
  );

  describe('a hood that is described', () => {
    const described = (told: Parameters<typeof hoodOf>[0], speed = '0.50', on = today) => {
      const amiss = hoodAmiss(hoodOf(told, speed), on);
      return {
        ...context,
        place: { id: 'station', name: 'Hood', kind: 'ducted-hood', ...(amiss ? { amiss } : {}) },
      } as const;
    };
    const stands = (id: string, of: Context) => standing(begin(listNamed(id), of, T0));

    it.each(needsStation)(
      'and too slow when it was measured stops %s, and does so again however often it is tapped',
      (id) => {
        const stopped = stands(id, described({}, '0.39'));
        expect(stopped).toMatchObject({
          state: 'stopped',
          answered: { reason: reasonWords['face-too-slow'] },
        });
        if (stopped.state !== 'stopped') throw new Error(stopped.state);
        expect(stopped.doors[0]?.leads).toBe('answer-again');
        const open = must(answerAgain(stopped.run));
        const tapped = answer(open, { kind: 'choice', answer: 'ducted hood, fan on' }, past(5));
        expect(must(tapped).state).toBe('stopped');
      },
    );

    it.each([
      [
        'measured 13 months ago',
        { face: { speed: { value: '0.50', unit: 'm/s' }, measuredOn: '2025-10-29' } },
        'reading-too-old',
      ],
      ['measured before the fan was changed', { changedOn: '2026-10-01' }, 'reading-before-change'],
      ['never measured', { face: undefined }, 'face-not-measured'],
    ] as const)('and %s goes on with the ribbon, and that stays told', (_, told, why) => {
      const now = stands('filtration', described(told));
      expect(now).toMatchObject({ state: 'next', item: { id: 'sta-ribbon' } });
      expect(now.run.answered).toMatchObject([{ verdict: 'noted', reason: reasonWords[why] }]);
    });

    it('and too fast stops, though the reading is old as well', () => {
      expect(stands('filtration', described({}, '0.61', '2028-01-01')).state).toBe('stopped');
    });

    it('and counted on is in order', () => {
      expect(hoodAmiss(hoodOf(), today)).toBeUndefined();
      expect(hoodAmiss({ is: 'outdoors' }, today)).toBeUndefined();
    });
  });

  it('is asked where the app does not know it', () => {
    expect(standing(begin(listNamed('filtration'), context, T0))).toMatchObject({
      item: { id: 'sta-place' },
    });
  });

  it('is no matter of a list that needs none', () => {
    expect(begin(listNamed('hand-over'), at('room'), T0).answered).toEqual([]);
  });

  it('cannot be talked away: the place is chosen first, and the list begins again with the stop told', () => {
    const list = listNamed('filtration');
    const open = must(answerAgain(begin(list, at('room', 'Garage'), T0)));
    const elsewhere: Given = { kind: 'choice', answer: 'ducted hood, fan on' };
    expect(answer(open, elsewhere, past(5))).toMatchObject({ failure: { code: 'another-station' } });
    const stopped = begin(list, at('room', 'Garage'), T0);
    const moved = movedTo(stopped, { id: 'hood', name: 'Hood', kind: 'ducted-hood' }, past(60));
    expect(standing(moved)).toMatchObject({ state: 'next', item: { id: 'sta-ribbon' } });
    expect(moved.context.place?.name).toBe('Hood');
    expect(moved.overcome).toMatchObject([
      { item: 'sta-place', answer: 'indoors, no hood', byApp: 'Garage' },
    ]);
  });

  it('is left with all that the app knows beside it', () => {
    const bounds = { 'fill-limit': { max: '80', from: 'the local rule' } };
    const moved = movedTo(begin(listNamed('filtration'), { ...hood, bounds }, T0), undefined, past(5));
    expect(moved.context).toEqual({ person: hood.person, batchId: hood.batchId, bounds });
  });

  it('has an answer in the question for every kind there is', () => {
    const place = listNamed('filtration').items.find(({ id }) => id === 'sta-place');
    if (place?.kind !== 'choice') throw new Error('a choice');
    expect(place.choices.map(({ station }) => station).sort()).toEqual([...StationKind.options].sort());
  });

  it('that the app answered is not taken back by a finger that slipped', () => {
    const first = begin(listNamed('filtration'), hood, T0);
    expect(back(first)).toMatchObject({ failure: { code: 'nothing-to-undo' } });
    const second = must(answer(first, { kind: 'choice', answer: 'pulls in everywhere' }, past(5))).run;
    expect(must(back(second))).toEqual(first);
  });
});

describe('the result of the ventilation', () => {
  const open = runAt('leach-start', 'lst-vent');
  const tell = (result: 'enough' | 'split' | 'none') =>
    answer(open, { kind: 'worked-out', result, from: '40 g in 2 lots at the hood' }, past(200));

  it('cannot be tapped', () => {
    expect(answer(open, { kind: 'choice', answer: 'the place is enough' }, past(200))).toMatchObject({
      failure: { code: 'only-worked-out' },
    });
  });
  it('is kept with what it was worked out from', () => {
    expect(must(tell('enough')).run.answered.at(-1)).toMatchObject({
      answer: 'the place is enough',
      verdict: 'in-order',
      byApp: '40 g in 2 lots at the hood',
    });
  });
  it.each(['split', 'none'] as const)('stops when it is %s', (result) => {
    expect(must(tell(result)).state).toBe('stopped');
  });
  it('brings the largest lot of the place as the limit of the first portion, and takes an earlier one away', () => {
    const bounds = { 'ventilation-portion': { max: '4.35', from: 'the check for Hood 1' } };
    const portion = (run: Run) => {
      const item = run.list.items.find(({ id }) => id === 'lst-first');
      return item && inThisRun(item, run.context);
    };
    const told = must(
      answer(open, { kind: 'worked-out', result: 'enough', from: 'check', bounds }, past(200)),
    );
    expect(portion(told.run)).toMatchObject({ min: '0', max: '4.35' });
    const earlier = { ...open, context: { ...open.context, bounds } };
    const without = must(answer(earlier, { kind: 'worked-out', result: 'enough', from: 'check' }, past(200)));
    expect(portion(without.run)).toMatchObject({ max: '10' });
    expect(without.run.context).toEqual(open.context);
  });
  it('is no answer to another question', () => {
    const gloves = runAt('leach-start', 'lst-gloves');
    expect(answer(gloves, { kind: 'worked-out', result: 'enough', from: 'x' }, past(100))).toMatchObject({
      failure: { code: 'wrong-kind' },
    });
  });
});

describe('the base of the plan', () => {
  const lime = listNamed('neutralise-lime');
  const item = lime.items.find(({ id }) => id === 'lim-base');
  if (item?.kind !== 'choice') throw new Error('a choice');
  const bags: readonly Choice[] = item.choices;

  function taking(bag: string, bases?: readonly string[]): Standing {
    const plan = bases ? { planBases: { bases: [...bases], from: 'the plan of C-07' } } : {};
    let now = standing(begin(lime, { ...context, ...plan }, T0));
    for (let second = 5; now.state === 'next'; second += 5) {
      if (now.item.id === 'lim-base')
        return must(answer(now.run, { kind: 'choice', answer: bag }, past(second)));
      now = must(answer(now.run, goodAnswer(now.item), past(second)));
    }
    throw new Error('the base was not asked');
  }

  test('takes its own bag and stops at every other, whatever the plan', () => {
    for (const { base } of bags)
      for (const { answer: bag, base: taken } of bags) {
        if (base === undefined) continue;
        expect(taking(bag, [base]).state, `${bag} for ${base}`).toBe(taken === base ? 'next' : 'stopped');
      }
  });
  test('of two stages takes either bag', () => {
    const stages = ['limestone', 'hydrated-lime'];
    expect(taking('limestone', stages).state).toBe('next');
    expect(taking('hydrated lime', stages).state).toBe('next');
    expect(taking('soda ash', stages).state).toBe('stopped');
  });
  test('unknown: only hydrated lime goes in', () => {
    const taken = bags.filter(({ answer: bag }) => taking(bag).state === 'next');
    expect(taken.map(({ answer: bag }) => bag)).toEqual(['hydrated lime']);
  });
  test('is kept with the answer', () => {
    const [last] = taking('limestone', ['limestone']).run.answered.slice(-1);
    expect(last).toMatchObject({ answer: 'limestone', from: 'the plan of C-07' });
  });
  test('wrong: the bag is fetched, or a plan made with this one', () => {
    const now = taking('caustic soda', ['limestone']);
    if (now.state !== 'stopped') throw new Error(now.state);
    expect(now.doors.map((door) => door.do)).toEqual([
      'Fetch the base of the plan. Then answer again.',
      'Wants this one? Make a plan with it first.',
    ]);
  });
});

describe('a limit that the app works out', () => {
  const limits = (known: Context, list = listNamed('neutralise-lime'), id = 'lim-room') => {
    let now = standing(begin(list, known, T0));
    for (let second = 5; now.state === 'next'; second += 5) {
      if (now.item.id === id && now.item.kind === 'reading') return { min: now.item.min, max: now.item.max };
      now = must(answer(now.run, goodAnswer(now.item), past(second)));
    }
    throw new Error(`${id} was not asked`);
  };
  const fill = (max: string): Context => ({ ...context, bounds: { 'fill-for-base': { max, from: 'plan' } } });

  it('comes before the careful one of the list, which holds where nothing is known', () => {
    expect(limits(context)).toEqual({ min: '0', max: '33' });
    expect(limits(fill('50'))).toEqual({ min: '0', max: '50' });
    expect(limits(fill('12'))).toEqual({ min: '0', max: '12' });
  });

  const own = (max: string) =>
    changedList(listNamed('neutralise-lime'), [
      { change: 'range', list: 'neutralise-lime', item: 'lim-room', max, note: 'tall bucket' },
    ]).list;

  it('is narrowed by a tighter range of the workshop, and widened by none', () => {
    expect(limits(fill('50'), own('25'))).toEqual({ min: '0', max: '25' });
    expect(limits(fill('20'), own('25'))).toEqual({ min: '0', max: '20' });
    expect(limits(fill('50'), own('90'))).toEqual({ min: '0', max: '50' });
    expect(limits(context, own('90'))).toEqual({ min: '0', max: '90' });
  });

  it('is told to come from the plan only where the plan decides, and not the range of the workshop', () => {
    const from = (max: string, list: Checklist) => {
      const item = list.items.find(({ id }) => id === 'lim-room');
      return item && workedOutFrom(item, fill(max));
    };
    expect(from('20', own('25'))).toBe('plan');
    expect(from('50', own('25'))).toBeUndefined();
  });

  it('holds alone where it and the own range leave nothing between them', () => {
    const known: Context = {
      ...context,
      bounds: { 'fill-for-base': { min: '30', max: '40', from: 'plan' } },
    };
    expect(limits(known, own('20'))).toEqual({ min: '30', max: '40' });
  });

  it('of the pH after the base is the plan’s for the metals that are in it', () => {
    const list = listNamed('neutralise-lime');
    const known: Context = {
      ...context,
      bounds: { 'plan-ph': { min: '8.2', max: '9', from: 'plan, Cu only' } },
    };
    let now = standing(begin(list, known, T0));
    for (let second = 5; now.state === 'next'; second += 5)
      now = must(answer(now.run, goodAnswer(now.item), past(second)));
    if (now.state !== 'complete') throw new Error(now.state);
    expect(now.stillToAsk.find(({ id }) => id === 'lim-ph')).toMatchObject({ min: '8.2', max: '9' });
  });

  it('of the containers on the paper is exactly their number', () => {
    const known: Context = {
      ...context,
      bounds: { 'containers-on-paper': { min: '4', max: '4', from: 'paper of 12 May' } },
    };
    const open = (() => {
      let now = standing(begin(listNamed('hand-over'), known, T0));
      for (let second = 5; now.state === 'next' && now.item.id !== 'ho-count'; second += 5)
        now = must(answer(now.run, goodAnswer(now.item), past(second)));
      return now.run;
    })();
    const counted = (written: string) => must(answer(open, { kind: 'reading', written }, past(60))).state;
    expect([counted('3'), counted('4'), counted('5')]).toEqual(['stopped', 'next', 'stopped']);
  });
});

/** What a person and a day do to a run. */
const acts = fc.array(
  fc.record({
    act: fc.constantFrom('good', 'good', 'good', 'bad', 'back', 'again', 'away', 'move'),
    pick: fc.nat(1000),
    seconds: fc.nat(900),
  }),
  { maxLength: 60 },
);

const badAnswer = (item: Parameters<typeof goodAnswer>[0], pick: number): Given => {
  const reason = 'because';
  if (item.kind === 'confirm') return { kind: 'confirm', yes: false, reason };
  if (item.kind === 'reading') return { kind: 'reading', written: '99999', reason };
  if (item.answeredBy)
    return { kind: 'worked-out', result: pick % 2 === 0 ? 'split' : 'none', from: 'check' };
  const choice = item.choices[pick % item.choices.length];
  return { kind: 'choice', answer: choice?.answer ?? '', reason, who: { name: 'Bo', at: past(3600) } };
};

test('whatever happens, a list is complete only with every question in its place and no stop among the answers', () => {
  fc.assert(
    fc.property(fc.constantFrom(...checklists.keys()), fc.boolean(), acts, (id, known, all) => {
      let clock = 0;
      let run = begin(listNamed(id), known ? hood : context, T0);
      for (const { act, pick, seconds } of all) {
        clock += seconds;
        const arrived = resume(run, past(clock));
        run = arrived.run;
        const now = standing(run);
        if (act === 'move') run = movedTo(run, { id: 'out', name: 'Yard', kind: 'outdoors' }, past(clock));
        else if (act === 'back') {
          const undone = back(run);
          if (undone.ok) run = { ...undone.value, openedAt: past(clock) };
        } else if (act === 'again') {
          const again = answerAgain(run);
          if (again.ok) run = again.value;
        } else if (now.state === 'next' && act !== 'away') {
          const given = act === 'good' ? goodAnswer(now.item) : badAnswer(now.item, pick);
          const told = answer(run, given, past(clock));
          if (told.ok) run = told.value.run;
        }
        const after = standing(run);
        const stops = run.answered.filter(({ verdict }) => verdict === 'stops');
        expect(stops.length).toBe(after.state === 'stopped' ? 1 : 0);
        expect(new Set(run.answered.map(({ item }) => item)).size).toBe(run.answered.length);
        if (after.state !== 'complete') continue;
        const said = new Map(run.answered.map((one) => [one.item, one.answer]));
        for (const { id: item, when, onlyIf } of run.list.items)
          if (when === undefined && (!onlyIf || said.get(onlyIf.item) === onlyIf.answer))
            expect(said.has(item), item).toBe(true);
      }
      expect(Run.safeParse(structuredClone(run)).success).toBe(true);
    }),
    { numRuns: 150 },
  );
});
