import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Item } from '../../../src/safety/checklist-item';
import {
  answer,
  answerAgain,
  answerLater,
  back,
  begin,
  resume,
  type Standing,
  secondIn,
  standing,
  toldIn,
} from '../../../src/safety/checklist-run';
import type { Checklist } from '../../../src/safety/checklist-schema';
import { checklists } from '../../../src/safety/checklists';
import { hourPassed, namedFor } from '../../../src/safety/named-time';
import { type Given, Run } from '../../../src/safety/run-schema';
import { context, goodAnswer, listNamed, must, past, runAt, T0, walk } from './build-run';

const say = (id: string, item: string, given: Given) => answer(runAt(id, item), given, past(60));
const reading = (written: string, reason?: string): Given => ({
  kind: 'reading',
  written,
  ...(reason === undefined ? {} : { reason }),
});

describe('going through a list', () => {
  it.each([...checklists.keys()])('%s is complete when every question before the step is in order', (id) => {
    const now = walk(id);
    expect(now.state).toBe('complete');
    expect(now.run.answered.every(({ verdict }) => verdict === 'in-order')).toBe(true);
    expect(Run.safeParse(structuredClone(now.run)).success).toBe(true);
  });

  it('tells how far one is', () => {
    const now = walk('filtration', 'fil-medium');
    expect(now).toMatchObject({ state: 'next', number: 5, of: 9 });
  });

  it('keeps what was asked, what was said, and when', () => {
    const last = must(
      say('filtration', 'fil-medium', { kind: 'choice', answer: 'glass fibre' }),
    ).run.answered.at(-1);
    expect(last).toMatchObject({
      item: 'fil-medium',
      ask: 'What is the filter?',
      look: 'Look in the funnel, not at the box.',
      answer: 'glass fibre',
      verdict: 'in-order',
      at: past(60),
    });
  });
});

describe('a stop', () => {
  const paper: Given = { kind: 'choice', answer: 'paper, stronger acid' };

  it('ends the questions and shows what makes it right', () => {
    const now = must(say('filtration', 'fil-medium', paper));
    if (now.state !== 'stopped') throw new Error(now.state);
    expect(now.doors.map((door) => door.do)).toEqual([
      'Fit glass fibre, PP or PTFE. Then answer again.',
      'Leave it covered. Filter later.',
    ]);
    expect(answer(now.run, goodAnswer(now.item), past(61))).toMatchObject({
      failure: { code: 'run-stopped' },
    });
  });

  it('shows only the doors of the answer given', () => {
    const now = must(say('filtration', 'sta-ribbon', { kind: 'choice', answer: 'no ribbon fitted' }));
    if (now.state !== 'stopped') throw new Error(now.state);
    expect(now.doors.map((door) => door.do)).toEqual([
      'Tape a thin ribbon to the sash. Then answer again.',
      'Close the acid. Set up outdoors instead.',
    ]);
  });

  it.each([
    ['0.4', 'Pour it into clean water, fan on. Read the pH. Then answer again.'],
    ['7', 'Check the strip; look for cloudiness. Then answer again.'],
  ])('of a reading shows the doors of its side: pH %s', (written, door) => {
    const now = must(say('cementation', 'cem-acid', reading(written)));
    if (now.state !== 'stopped') throw new Error(now.state);
    expect(now.doors[0]?.do).toBe(door);
    expect(now.doors).toHaveLength(2);
  });

  it('opens the emergency card of its item', () => {
    expect(must(say('leach-check', 'lck-colour', { kind: 'choice', answer: 'brown' }))).toMatchObject({
      state: 'stopped',
      card: 'runaway-fume',
    });
  });

  it('is a "no" to a question that stops', () => {
    expect(must(say('leach-check', 'lck-tray', { kind: 'confirm', yes: false })).state).toBe('stopped');
  });

  it('made right is answered again, and stays told', () => {
    const stopped = must(say('filtration', 'fil-medium', paper)).run;
    const open = must(answerAgain(stopped));
    const now = must(answer(open, { kind: 'choice', answer: 'PP or PTFE' }, past(120)));
    expect(now).toMatchObject({ state: 'next', number: 6 });
    expect(now.run.answered.at(-1)?.answer).toBe('PP or PTFE');
    expect(toldIn(now.run).map((one) => one.answer)).toContain('paper, stronger acid');
  });

  it('taken back at once leaves no trace: the finger slipped', () => {
    const before = runAt('filtration', 'fil-medium');
    const stopped = must(answer(before, paper, past(60))).run;
    expect(must(back(stopped))).toEqual(before);
  });
});

describe('a reading at its limits', () => {
  it.each([
    ['0', 'in-order'],
    ['0.0', 'in-order'],
    ['45', 'in-order'],
    ['45,0', 'in-order'],
    ['44.9', 'in-order'],
    ['45.1', 'stops'],
    ['45.000001', 'stops'],
    ['-0.1', 'stops'],
    ['−1', 'stops'],
  ])('of 0 to 45 °C: %s is %s', (written, verdict) => {
    expect(must(say('leach-check', 'lck-temp', reading(written))).run.answered.at(-1)?.verdict).toBe(verdict);
  });

  it.each([
    ['0.05', 'in-order'],
    ['0.049', 'stops'],
    ['0.04', 'stops'],
    ['1', 'in-order'],
    ['1.01', 'stops'],
  ])('of 0.05 to 1 mL: %s is %s', (written, verdict) => {
    expect(must(say('spot-test-ammonia', 'am-drop', reading(written))).run.answered.at(-1)?.verdict).toBe(
      verdict,
    );
  });

  it('with only a lower limit has no upper one: waste may stand quiet for months', () => {
    expect(must(say('waste-transfer', 'wt-quiet', reading('3000'))).state).toBe('next');
    expect(must(say('waste-transfer', 'wt-quiet', reading('23.9'))).state).toBe('stopped');
  });

  it('keeps the digits as written, with a point', () => {
    expect(must(say('leach-check', 'lck-temp', reading(' 31,50 '))).run.answered.at(-1)).toMatchObject({
      answer: '31.50',
      unit: '°C',
    });
  });

  it('that is no number is refused and asked again', () => {
    expect(say('leach-check', 'lck-temp', reading('warm'))).toMatchObject({
      failure: { code: 'not-a-reading' },
    });
    expect(say('leach-check', 'lck-temp', reading('-'))).toMatchObject({
      failure: { code: 'not-a-reading' },
    });
  });

  it.each(['1111', '-300'])('of %s °C is a slip of the finger: refused, and asked again', (written) => {
    expect(say('leach-check', 'lck-temp', reading(written))).toMatchObject({
      failure: { code: 'impossible-reading' },
    });
  });

  it('is held against the limit worked out for this run, which is kept with it', () => {
    const bounds = { 'neutraliser-for-acid': { min: '2.5', from: '2 L of 65 % acid' } };
    let now = standing(begin(listNamed('spill-response-readiness'), { ...context, bounds }, T0));
    while (now.state === 'next' && now.item.id !== 'rdy-kit')
      now = must(answer(now.run, goodAnswer(now.item), T0));
    expect(must(answer(now.run, reading('2.5'), T0)).state).toBe('next');
    const under = must(answer(now.run, reading('2.4'), T0));
    expect(under.state).toBe('stopped');
    expect(under.run.answered.at(-1)).toMatchObject({ min: '2.5', from: '2 L of 65 % acid' });
  });
});

describe('an answer that is not in order and does not stop', () => {
  it('needs a reason, offers some, and stays visible', () => {
    const asked = say('filtration', 'fil-temp', reading('31'));
    expect(asked).toMatchObject({ ok: false, failure: { code: 'reason-missing' } });
    if (asked.ok || asked.failure.code !== 'reason-missing') throw new Error('no reason asked');
    expect(asked.failure.reasons).toContain('cooling while I set up');
    expect(say('filtration', 'fil-temp', reading('31', '  '))).toMatchObject({
      failure: { code: 'reason-missing' },
    });
    const now = must(say('filtration', 'fil-temp', reading('31', 'cooling while I set up')));
    expect(now.state).toBe('next');
    expect(now.run.answered.at(-1)).toMatchObject({ verdict: 'noted', reason: 'cooling while I set up' });
  });

  it('may be a choice: strong hydrochloric acid', () => {
    expect(say('spot-test-chloride', 'cl-acid', { kind: 'choice', answer: 'concentrated' })).toMatchObject({
      failure: { code: 'reason-missing' },
    });
  });
});

describe('not applicable', () => {
  it('is taken with its reason where the list allows it', () => {
    const reason = 'one kind of waste only';
    const now = must(say('hand-over', 'ho-apart', { kind: 'not-applicable', reason }));
    expect(now.run.answered.at(-1)).toMatchObject({ verdict: 'not-applicable', reason });
  });
  it('is refused without a reason, and where it always applies', () => {
    expect(say('hand-over', 'ho-apart', { kind: 'not-applicable', reason: ' ' })).toMatchObject({
      failure: { code: 'reason-missing' },
    });
    expect(say('filtration', 'fil-face', { kind: 'not-applicable', reason: 'hot day' })).toMatchObject({
      failure: { code: 'not-applicable-refused' },
    });
  });
});

describe('the second person', () => {
  const remote = (who?: { name: string; at?: string }): Given => ({
    kind: 'choice',
    answer: 'named remote checker',
    ...(who ? { who } : {}),
  });
  it('has a name and, from afar, a time', () => {
    expect(say('leach-start', 'lst-with', remote())).toMatchObject({ failure: { code: 'name-missing' } });
    expect(say('leach-start', 'lst-with', remote({ name: 'Tobias' }))).toMatchObject({
      failure: { code: 'time-missing' },
    });
    const now = must(say('leach-start', 'lst-with', remote({ name: ' Tobias ', at: past(3600) })));
    expect(secondIn(now.run)).toEqual({ name: 'Tobias', at: past(3600) });
  });
  it('is missing: the leach does not start', () => {
    expect(must(say('leach-start', 'lst-with', { kind: 'choice', answer: 'nobody' })).state).toBe('stopped');
  });
});

describe('whoever rings at a stated hour', () => {
  it('says nothing any more from that hour on, until another is stated', () => {
    const { run } = walk('leach-start');
    expect(hourPassed(run, past(3599))).toBeNull();
    expect(hourPassed(run, past(3600))).toMatchObject({ item: 'lst-with', who: { name: 'Tobias' } });
    expect(hourPassed(namedFor(run, 'lst-with', past(7200)), past(3600))).toBeNull();
    expect(hourPassed(walk('filtration').run, past(86_400))).toBeNull();
  });
});

describe('leaving the leach alone', () => {
  const at = (stay: string) => must(say('leach-check', 'lck-stay', { kind: 'choice', answer: stay }));
  it('asks three more questions than staying', () => {
    expect(at('staying').state).toBe('complete');
    expect(at('staying').run.answered).toHaveLength(7);
    expect(at('leaving')).toMatchObject({ state: 'next', item: { id: 'lck-quiet' }, of: 10 });
  });
});

describe('during and after the step', () => {
  const run = walk('spot-test-ammonia').run;
  it('questions do not hold up the clearance, and are told as still to ask', () => {
    const now = standing(run);
    if (now.state !== 'complete') throw new Error(now.state);
    expect(now.stillToAsk.map(({ id }) => id)).toEqual(['am-time', 'am-dead']);
  });
  it('a stop says what to do now, and the question stays', () => {
    const late = must(answerLater(run, 'am-time', reading('16'), past(1000)));
    expect(late).toMatchObject({ state: 'stopped', card: 'ammonia-silver' });
    const now = must(answerLater(late.run, 'am-dead', reading('2'), past(1100)));
    if (now.state !== 'complete') throw new Error(now.state);
    expect(now.stillToAsk.map(({ id }) => id)).toEqual(['am-time']);
    expect(toldIn(now.run).at(-1)?.item).toBe('am-dead');
  });
  it('are not asked before the list is complete, nor are the questions before it again', () => {
    expect(answerLater(begin(run.list, context, T0), 'am-time', reading('3'), T0)).toMatchObject({
      failure: { code: 'not-complete' },
    });
    expect(answerLater(run, 'am-drop', reading('1'), T0)).toMatchObject({
      failure: { code: 'no-such-item' },
    });
  });
});

describe('an interrupted list', () => {
  // Opened at 0 s; four answers, the last at 20 s; the fifth question has been open since.
  const run = runAt('filtration', 'fil-medium');
  const glass: Given = { kind: 'choice', answer: 'glass fibre' };

  it('goes on after ten minutes to the second', () => {
    expect(resume(run, past(20 + 600))).toEqual({ how: 'go-on', run });
    expect(answer(run, glass, past(20 + 600)).ok).toBe(true);
  });

  it('asks to look again after more than ten minutes, with the last two answers', () => {
    const now = past(20 + 22 * 60);
    expect(answer(run, glass, now)).toMatchObject({ failure: { code: 'interrupted', minutes: 22 } });
    expect(answer(run, glass, past(20 + 600.001))).toMatchObject({ failure: { code: 'interrupted' } });
    const again = resume(run, now);
    if (again.how !== 'look-again') throw new Error(again.how);
    expect(again.minutes).toBe(22);
    expect(again.said.map(({ item }) => item)).toEqual(['fil-gloves', 'fil-face']);
    expect(again.run.breaks).toEqual([{ from: past(20), to: now }]);
    const next = must(answer(again.run, glass, past(20 + 22 * 60 + 5)));
    expect(next).toMatchObject({ state: 'next', number: 6 });
  });

  it('starts afresh once its first answers are as old as it is valid', () => {
    expect(resume(run, past(2 * 3600 - 0.001)).how).toBe('look-again');
    const now = past(2 * 3600);
    expect(answer(run, glass, now)).toMatchObject({ failure: { code: 'out-of-date' } });
    expect(resume(run, now)).toMatchObject({
      how: 'restart',
      run: { answered: [], begunAt: now, openedAt: now },
    });
  });

  it('that stopped waits for what makes it right, then asks to look again', () => {
    const stopped = must(answer(run, { kind: 'choice', answer: 'cotton or cloth' }, past(20))).run;
    const later = past(20 + 1800);
    expect(resume(stopped, later).how).toBe('go-on');
    const open = must(answerAgain(stopped));
    expect(answer(open, glass, later)).toMatchObject({ failure: { code: 'interrupted' } });
    expect(resume(open, later).how).toBe('look-again');
    // As old as the list, what was answered before the stop is not seen now either.
    expect(resume(stopped, past(2 * 3600))).toMatchObject({ how: 'restart', run: { answered: [] } });
  });

  it('that is complete is left alone', () => {
    const { run: whole } = walk('filtration');
    expect(resume(whole, past(86_400))).toEqual({ how: 'go-on', run: whole });
  });
});

describe('tapping without looking', () => {
  // No list of ours asks five confirmations in a row; this one does.
  const hasty: Checklist = {
    ...listNamed('hand-over'),
    secondPerson: false,
    items: listNamed('container-inspection')
      .items.filter(({ kind }) => kind === 'confirm')
      .concat(listNamed('hand-over').items.filter(({ id }) => id === 'ho-label')),
  };
  const quickly = (seconds: number) => {
    let now: Standing = standing(begin(hasty, context, T0));
    const flags: boolean[] = [];
    for (let n = 1; now.state === 'next'; n++) {
      now = must(answer(now.run, { kind: 'confirm', yes: true }, past(n * seconds)));
      if (now.state !== 'stopped') flags.push(now.tooQuick);
    }
    return { flags, run: now.run };
  };
  it('is noticed at the third confirmation in a row under 0.8 s, and kept', () => {
    const { flags, run } = quickly(0.799);
    expect(flags).toEqual([false, false, true, false, false]);
    expect(run.answered.filter(({ quick }) => quick)).toHaveLength(5);
  });
  it('is not seen at 0.8 s', () => {
    expect(quickly(0.8).flags).not.toContain(true);
  });
});

/** Any answer, good or bad, that the item can take. */
const someAnswer = (item: Item, pick: number): Given => {
  const reason = 'because';
  if (item.naReasons && pick % 7 === 0) return { kind: 'not-applicable', reason };
  if (item.kind === 'confirm') return { kind: 'confirm', yes: pick % 5 !== 0, reason };
  if (item.kind === 'reading')
    return reading(
      String(pick % 4 === 0 ? pick % (item.unit === 'pH' ? 15 : 300) : (item.min ?? item.max)),
      reason,
    );
  const choice = item.choices[pick % item.choices.length];
  if (choice?.result) return { kind: 'worked-out', result: choice.result, from: 'the ventilation check' };
  return { kind: 'choice', answer: choice?.answer ?? '', reason, who: { name: 'Tobias', at: past(3600) } };
};

const anyList = fc.constantFrom(...checklists.keys());
const picks = fc.array(fc.nat(1000), { minLength: 12, maxLength: 12 });

/** Answers until the list ends; after a stop it goes through the door while `doors` lasts. */
function played(id: string, choices: readonly number[], doors: number): Standing {
  let left = doors;
  let now = standing(begin(listNamed(id), context, T0));
  let second = 0;
  for (const pick of choices) {
    if (now.state === 'complete') break;
    if (now.state === 'stopped') {
      if (left-- <= 0) break;
      now = standing(must(answerAgain(now.run)));
      continue;
    }
    now = must(answer(now.run, someAnswer(now.item, pick), past(++second)));
  }
  while (now.state === 'next') now = must(answer(now.run, goodAnswer(now.item), past(++second)));
  return now;
}

describe('whatever is answered', () => {
  it('a list ends in exactly one of stopped and complete, and takes no further answer there', () => {
    fc.assert(
      fc.property(anyList, picks, fc.nat(3), (id, choices, doors) => {
        const end = played(id, choices, doors);
        expect(['stopped', 'complete']).toContain(end.state);
        expect(answer(end.run, { kind: 'confirm', yes: true }, past(100))).toMatchObject({
          failure: { code: end.state === 'stopped' ? 'run-stopped' : 'run-complete' },
        });
      }),
    );
  });

  it('a list is complete only when no answer stops and no question before the step is left', () => {
    fc.assert(
      fc.property(anyList, picks, fc.nat(6), (id, choices, doors) => {
        const { state, run } = played(id, choices, doors);
        const stops = run.answered.filter(({ verdict }) => verdict === 'stops').length;
        expect(stops).toBe(state === 'complete' ? 0 : 1);
        if (state !== 'complete') return;
        const said = new Map(run.answered.map((one) => [one.item, one.answer]));
        for (const item of run.list.items) {
          const wanted =
            item.when === undefined && (!item.onlyIf || said.get(item.onlyIf.item) === item.onlyIf.answer);
          expect(said.has(item.id), item.id).toBe(wanted);
        }
      }),
    );
  });

  it('taking back an answer and giving it again makes the same run', () => {
    fc.assert(
      fc.property(anyList, picks, fc.nat(3), (id, choices, doors) => {
        const { run } = played(id, choices, doors);
        const last = run.answered.at(-1);
        // What the app has answered falls away with the person's own answer before it.
        if (!last || last.byApp !== undefined) return;
        const given: Given =
          last.verdict === 'not-applicable'
            ? { kind: 'not-applicable', reason: last.reason ?? '' }
            : last.kind === 'confirm'
              ? {
                  kind: 'confirm',
                  yes: last.answer !== 'no',
                  ...(last.reason ? { reason: last.reason } : {}),
                }
              : last.kind === 'reading'
                ? reading(last.answer, last.reason)
                : {
                    kind: 'choice',
                    answer: last.answer,
                    ...(last.reason ? { reason: last.reason } : {}),
                    ...(last.who ? { who: last.who } : {}),
                  };
        expect(must(answer(must(back(run)), given, last.at)).run).toEqual(run);
      }),
    );
  });
});
