import { describe, expect, test } from 'vitest';
import { containerFigures, figuresBefore } from '../../../src/ledger/container-figures';
import type { PlainBody } from '../../../src/ledger/entries/body';
import { Body } from '../../../src/ledger/entries/body';
import { type Flag, flags } from '../../../src/ledger/flags';
import type { IntentionOf } from '../../../src/ledger/intention';
import type { Decided } from '../../../src/ledger/refusal';
import { mayHaveHappened } from '../../../src/ledger/refused-plan';
import { clearanceOfList } from '../../../src/ledger/step-offers';
import { dosedIn, isNeutralised, treatmentOf } from '../../../src/ledger/treatment';
import { wasteKinds } from '../../../src/ledger/waste-kinds';
import { checklists } from '../../../src/safety/checklists';
import {
  at,
  begun,
  benchTest,
  can,
  dose,
  id,
  litres,
  potRead,
  pour,
  Scribe,
  tip,
  treatmentEnd,
  wash,
} from './scribe';

const ana = id('aa', 1);
const code = (result: Decided) => (result.ok ? 'ok' : result.refusal.code);
const inCan = id('c0', 1);
const inTub = id('c0', 2);
const t1 = id('7e', 1);

const liquor = (n: number, volume: string, copper = '10.0'): PlainBody => ({
  ...wash(n, volume, 'leach-liquor'),
  liquid: {
    volume: litres(volume),
    findings: [{ by: 'photometer', metal: 'Cu', concentration: { value: copper, unit: 'g/L' } }],
    freeAcid: [{ by: 'titration', result: { value: '0.50', unit: 'mol/L' } }],
  },
});

const ammonia = (n: number, volume: string): PlainBody => ({
  ...wash(n, volume),
  stream: 'ammonia-test-waste',
});

/** A 20 L can with 4 L of leach liquor in it. */
function filled(): Scribe {
  const scribe = new Scribe('a', ana);
  for (const body of [can(1, '20'), can(2, '20'), liquor(1, '4.00'), pour(1, 1, '4.00')]) scribe.write(body);
  return scribe;
}

const rule = (value: 'yes' | 'no', saidOn = '2026-03-01'): PlainBody => ({
  kind: 'local-rule-stated',
  v: 1,
  stated: { rule: 'treatment-allowed', value },
  saidBy: 'County office',
  saidOn,
});

const clears = (scribe: Scribe, step = 'neutralisation', batchId: string | null = null): string => {
  const list = checklists.get('neutralise-lime');
  const entry = scribe.write({
    kind: 'checklist-finished',
    v: 1,
    runId: id('12', scribe.entries.length),
    step,
    batchId,
    containerId: inCan,
    checklist: { id: list?.id ?? '', version: '1', hash: 'a'.repeat(64), title: list?.title ?? '' },
    outcome: 'cleared',
    startedAt: at(0),
    finishedAt: at(scribe.entries.length),
    validUntil: at(120),
    answers: [
      { item: 'lim-law', ask: 'Does your local rule allow this?', kind: 'choice', answer: 'yes', at: at(1) },
    ],
  });
  return entry.id;
};

const plan = (clearance: string): IntentionOf<'begin-treatment'> => {
  const { containerId, stages, targetPh } = begun(1, 1);
  return { do: 'begin-treatment', containerId, stages, targetPh, clearance };
};
const happened = (clearance: string | null): IntentionOf<'log-treatment-happened'> => ({
  ...plan(''),
  do: 'log-treatment-happened',
  clearance,
});

const flagged = (scribe: Scribe, code: Flag['code']) =>
  flags(scribe.state).filter((flag) => flag.code === code);

describe('a planned treatment', () => {
  test('begins where it is allowed, on known contents, on a clearance in date', () => {
    const scribe = filled();
    scribe.write(rule('yes'));
    scribe.does(plan(clears(scribe)));
    const [treatment] = scribe.state.treatments.values();
    expect(treatment?.body).toMatchObject({ containerId: inCan, allowed: 'yes' });
    expect(scribe.state.containers.get(inCan)?.treatmentIds).toEqual([treatment?.body.treatmentId]);
    expect(
      flags(scribe.state)
        .map(({ code }) => code)
        .filter((one) => one.startsWith('treatment')),
    ).toEqual(['treatment-running']);
  });

  test.each([
    ['damaged', 'mended', 'container-damaged'],
    ['held', 'let-go', 'container-held'],
    ['leaving', 'staying', 'container-leaving'],
    ['gone', 'came-back', 'container-gone'],
  ] as const)('is refused in a container that is %s, until it is %s', (as, undone, code) => {
    const scribe = filled();
    scribe.write(rule('yes'));
    const marked = (mark: typeof as | typeof undone) =>
      scribe.write({ kind: 'container-marked', v: 1, containerId: inCan, mark });
    marked(as);
    expect(scribe.tries(plan(clears(scribe)))).toMatchObject({ ok: false, refusal: { code } });
    marked(undone);
    expect(scribe.tries(plan(clears(scribe))).ok).toBe(true);
  });

  test('is refused where the local rules say no or nothing, and is written down when it happened', () => {
    const scribe = filled();
    const clearance = clears(scribe);
    const open = scribe.tries(plan(clearance));
    expect(open).toMatchObject({
      ok: false,
      refusal: { code: 'treatment-not-allowed', details: { because: 'not-stated' } },
    });
    expect(!open.ok && mayHaveHappened(open.refusal)).toBe(true);
    scribe.write(rule('no'));
    expect(scribe.tries(plan(clearance))).toMatchObject({
      refusal: { code: 'treatment-not-allowed', details: { because: 'not-allowed' } },
    });
    scribe.does(happened(clearance));
    expect(flagged(scribe, 'treatment-not-allowed')).toMatchObject([
      { because: 'not-allowed', about: { containerId: inCan } },
    ]);
  });

  test('that happened was allowed when the rule was said in time and entered late, and not when it was said later', () => {
    const scribe = filled();
    scribe.does(happened(clears(scribe)));
    expect(flagged(scribe, 'treatment-not-allowed')).toMatchObject([{ because: 'not-stated' }]);
    const late = scribe.write(rule('yes', '2026-03-03'));
    expect(flagged(scribe, 'treatment-not-allowed')).toHaveLength(1);
    scribe.write({
      kind: 'entry-corrected',
      v: 1,
      corrects: late.id,
      body: rule('yes', '2026-03-02'),
      reason: 'x',
    });
    expect(flagged(scribe, 'treatment-not-allowed')).toEqual([]);
  });

  test('does not begin without a clearance, on one for another step or batch, or after its end', () => {
    const scribe = filled();
    scribe.write(rule('yes'));
    expect(code(scribe.tries(plan(id('e9', 9))))).toBe('no-clearance');
    expect(code(scribe.tries(plan(clears(scribe, 'leach'))))).toBe('clearance-for-another-step');
    scribe.does({
      do: 'open-batch',
      feed: { capacitors: 'mixed', era: 'unknown', mass: { value: '1', unit: 'kg' } },
    });
    const [batch = ''] = scribe.state.batches.keys();
    expect(code(scribe.tries(plan(clears(scribe, 'neutralisation', batch))))).toBe(
      'clearance-for-another-batch',
    );
    const clearance = clears(scribe);
    expect(code(scribe.tries(plan(clearance), 120))).toBe('ok');
    expect(code(scribe.tries(plan(clearance), 121))).toBe('clearance-expired');
  });

  test('that happened without a clearance, or on one that had run out, is flagged', () => {
    const scribe = filled();
    scribe.write(rule('yes'));
    scribe.does(happened(null));
    expect(flagged(scribe, 'treatment-without-clearance')).toHaveLength(1);
    const other = filled();
    other.write(rule('yes'));
    other.does(happened(clears(other)), 121);
    expect(flagged(other, 'treatment-clearance-does-not-hold')).toMatchObject([{ why: 'clearance-expired' }]);
  });

  test('uses up its clearance', () => {
    const scribe = filled();
    scribe.write(rule('yes'));
    const clearance = clears(scribe);
    const list = checklists.get('neutralise-lime');
    const held = () =>
      list && clearanceOfList(scribe.state, list, { batchId: null, who: ana, at: at(20) })?.entryId;
    expect(held()).toBe(clearance);
    scribe.does(plan(clearance));
    expect(held()).toBeUndefined();
  });

  test('is refused where ammonia waste is inside, whoever allows it, and raises the alarm when it happened', () => {
    const scribe = filled();
    scribe.write(rule('yes'));
    for (const body of [ammonia(2, '0.05'), pour(2, 1, '0.05')]) scribe.write(body);
    const clearance = clears(scribe);
    expect(scribe.tries(plan(clearance))).toMatchObject({
      refusal: {
        code: 'must-not-be-treated',
        details: { by: 'NH3-BASE', there: 'ammonia-test-waste', added: 'limestone' },
      },
    });
    const [entry] = scribe.does(happened(clearance));
    expect(flagged(scribe, 'ammonia-in-treatment')).toMatchObject([{ pressing: 'now', baseAdded: false }]);
    const treatmentId = entry?.body.kind === 'treatment-begun' ? entry.body.treatmentId : '';
    scribe.does({ do: 'log-dose', treatmentId, agent: 'iron', mass: { value: '10', unit: 'g' } });
    expect(flagged(scribe, 'ammonia-in-treatment')).toMatchObject([{ baseAdded: false }]);
    scribe.does({ do: 'log-dose', treatmentId, agent: 'hydrated-lime', mass: { value: '100', unit: 'g' } });
    expect(flagged(scribe, 'ammonia-in-treatment')).toMatchObject([{ pressing: 'now', baseAdded: true }]);
  });

  test.each([
    ['contents-doubtful', { kind: 'container-marked', v: 1, containerId: inCan, mark: 'contents-doubtful' }],
    ['container-closed', { kind: 'container-marked', v: 1, containerId: inCan, mark: 'closed' }],
    ['contents-unaccounted', tip(2, 1, '1.00')],
    ['nothing-to-treat', tip(1, null, '4.00')],
    ['treatment-running', begun(7, 1)],
  ] as const)('is refused: %s', (refusal, body) => {
    const scribe = filled();
    scribe.write(rule('yes'));
    const clearance = clears(scribe);
    expect(code(scribe.tries(plan(clearance)))).toBe('ok');
    scribe.write(body);
    expect(code(scribe.tries(plan(clearance)))).toBe(refusal);
    expect(code(scribe.tries(happened(clearance)))).toBe('ok');
  });

  test('keeps waste from being put in while it runs, and is flagged where some was', () => {
    const scribe = filled();
    for (const body of [begun(1, 1), liquor(2, '1.00')]) scribe.write(body);
    const { kind: _, v: __, ...placing } = pour(2, 1, '1.00');
    expect(code(scribe.tries({ do: 'place-stream', ...placing }))).toBe('treatment-running');
    expect(flagged(scribe, 'added-during-treatment')).toEqual([]);
    scribe.does({ do: 'log-placement-happened', ...placing });
    expect(flagged(scribe, 'added-during-treatment')).toMatchObject([{ about: { treatmentId: t1 } }]);
    scribe.does({ do: 'end-treatment', treatmentId: t1, outcome: 'stopped' });
    expect(code(scribe.tries({ do: 'place-stream', ...placing }))).toBe('ok');
  });

  test('ends once', () => {
    const scribe = filled();
    scribe.write(begun(1, 1));
    const end = { do: 'end-treatment', treatmentId: t1, outcome: 'stopped', reason: 'foamed' } as const;
    scribe.does(end);
    expect(code(scribe.tries(end))).toBe('treatment-ended');
  });
});

describe('what happened in a treatment', () => {
  test('is kept in the order in which it happened, whenever it was written', () => {
    const scribe = filled();
    scribe.write(begun(1, 1), 10);
    scribe.write(dose(1, '300'), 40, 30);
    scribe.write(potRead(1, '4.2'), 41, 31);
    scribe.write(dose(1, '200'), 42, 20);
    scribe.write(potRead(1, '2.1'), 43, 21);
    const treatment = scribe.state.treatments.get(t1);
    expect(treatment?.doses.map(({ body }) => body.mass.value)).toEqual(['200', '300']);
    expect(treatment?.readings.map(({ body }) => body.ph?.value.value)).toEqual(['2.1', '4.2']);
    expect(treatment && [...dosedIn(treatment)].map(([agent, mass]) => [agent, mass.toFixed()])).toEqual([
      ['hydrated-lime', '500'],
    ]);
    expect(flagged(scribe, 'treatment-running')).toMatchObject([{ since: at(10), lastReadingAt: at(31) }]);
  });

  test('a dose before it began or after it ended is counted and flagged', () => {
    const scribe = filled();
    scribe.write(begun(1, 1), 10);
    scribe.write(dose(1, '1'), 11);
    scribe.write(treatmentEnd(1), 12);
    expect(flagged(scribe, 'dose-outside-treatment')).toEqual([]);
    const early = scribe.write(dose(1, '2'), 13, 9);
    const late = scribe.write(dose(1, '3'), 14);
    expect(flagged(scribe, 'dose-outside-treatment').map(({ about }) => about.entryId)).toEqual([
      early.id,
      late.id,
    ]);
    expect(scribe.state.treatments.get(t1)?.doses).toHaveLength(3);
  });

  test('iron alone on ammonia waste is no alarm any more once it has ended', () => {
    const scribe = filled();
    for (const body of [ammonia(2, '0.05'), pour(2, 1, '0.05'), begun(1, 1), dose(1, '5', 'iron')])
      scribe.write(body);
    expect(flagged(scribe, 'ammonia-in-treatment')).toHaveLength(1);
    scribe.write(treatmentEnd(1, 'stopped'));
    expect(flagged(scribe, 'ammonia-in-treatment')).toEqual([]);
  });

  test('of two ends the one that happened last counts', () => {
    const scribe = filled();
    scribe.write(begun(1, 1), 10);
    scribe.write(treatmentEnd(1, 'reached'), 30, 25);
    scribe.write(treatmentEnd(1, 'stopped'), 31, 20);
    expect(scribe.state.treatments.get(t1)?.ended).toMatchObject({
      at: at(25),
      body: { outcome: 'reached' },
    });
  });

  test('two that run in one container at once are flagged, one after the other are not', () => {
    const scribe = filled();
    for (const body of [begun(1, 1), treatmentEnd(1), begun(2, 1)]) scribe.write(body);
    expect(flagged(scribe, 'treatment-while-another-runs')).toEqual([]);
    scribe.write(begun(3, 1));
    expect(flagged(scribe, 'treatment-while-another-runs')).toMatchObject([
      { about: { treatmentId: id('7e', 3) } },
    ]);
  });

  test('told of a treatment that nobody told of is kept and flagged', () => {
    const scribe = filled();
    scribe.write(dose(9, '5'));
    expect(flagged(scribe, 'entry-does-not-add-up')).toMatchObject([{ why: 'refers-to-unknown' }]);
    expect(containerFigures(scribe.state, inCan).acid.figure).toBeDefined();
  });

  test('is corrected and withdrawn like everything else', () => {
    const scribe = filled();
    scribe.write(begun(1, 1));
    const entry = scribe.write(dose(1, '300'));
    const other = { ...begun(1, 1), treatmentId: id('7e', 5) };
    const [first] = scribe.state.history.filter(({ entry: { body } }) => body.kind === 'treatment-begun');
    expect(
      code(scribe.tries({ do: 'correct-entry', corrects: first?.entry.id ?? '', body: other, reason: 'x' })),
    ).toBe('another-subject');
    scribe.does({ do: 'correct-entry', corrects: entry.id, body: dose(1, '30'), reason: 'misread' });
    expect(scribe.state.treatments.get(t1)?.doses[0]?.body.mass.value).toBe('30');
    scribe.does({ do: 'withdraw-entry', withdraws: entry.id, reason: 'spilt beside it' });
    expect(scribe.state.treatments.get(t1)?.doses).toEqual([]);
    expect(containerFigures(scribe.state, inCan).acid.figure).toBeDefined();
  });

  test('a reading of nothing is no reading', () => {
    const { ph: _, ...empty } = potRead(1, '7');
    expect(Body.safeParse(empty).success).toBe(false);
    expect(Body.safeParse({ ...empty, findings: [] }).success).toBe(false);
    expect(Body.safeParse({ ...empty, temperature: { value: '41', unit: '°C' } }).success).toBe(true);
    const recovered = { by: 'weighing', metal: 'Cu', mass: { value: '1', unit: 'g' } };
    expect(Body.safeParse({ ...empty, findings: [recovered] }).success).toBe(false);
  });
});

describe('contents that were treated', () => {
  test('keep their load until something is added, and are open from the first dose on', () => {
    const scribe = filled();
    scribe.write(begun(1, 1));
    expect(containerFigures(scribe.state, inCan)).toMatchObject({ noBase: null });
    scribe.write(dose(1, '0'));
    expect(containerFigures(scribe.state, inCan).acid.figure?.value.toNumber()).toBeCloseTo(2, 9);
    expect(treatmentOf(scribe.state, inCan)?.behind).toEqual([]);
    scribe.write(dose(1, '100'));
    const now = containerFigures(scribe.state, inCan);
    expect(now).toMatchObject({ noBase: 'treated', acid: { openIn: [t1] }, nitrate: { openIn: [t1] } });
    expect(now.acid.figure).toBeUndefined();
    expect(now.metals.filter(({ all }) => all)).toEqual([]);
    expect(now.density).toBeUndefined();
    expect(now.bases.size).toBe(0);
    expect(now.load?.volume.value.toNumber()).toBe(4);
  });

  test('are told as they were before the first dose, for the plan and the curve', () => {
    const scribe = filled();
    scribe.write(begun(1, 1));
    const [before, lime] = [figuresBefore(scribe.state, t1), containerFigures(scribe.state, inCan)].map((f) =>
      f.bases.get('hydrated-lime')?.needed.mass.value.toFixed(6),
    );
    expect(before).toBe(lime);
    scribe.write(dose(1, '100'));
    scribe.write(dose(1, '50'));
    expect(figuresBefore(scribe.state, t1).bases.get('hydrated-lime')?.needed.mass.value.toFixed(6)).toBe(
      lime,
    );
    expect(scribe.state.treatments.get(t1)?.treated).toMatchObject([
      { streamId: id('50', 1), treatedBy: [] },
    ]);
  });

  test('that reached their end with no dose told were treated all the same; those that stopped were not', () => {
    const [reached, stopped] = [filled(), filled()];
    for (const body of [begun(1, 1), treatmentEnd(1, 'reached')]) reached.write(body);
    for (const body of [begun(1, 1), treatmentEnd(1, 'stopped')]) stopped.write(body);
    expect(containerFigures(reached.state, inCan).noBase).toBe('treated');
    expect(figuresBefore(reached.state, t1).acid.figure?.value.toNumber()).toBeCloseTo(2, 9);
    expect(containerFigures(stopped.state, inCan).noBase).toBeNull();
    expect(treatmentOf(stopped.state, inCan)).toBeNull();
  });

  test('stay treated in the next container, and open what they are mixed with', () => {
    const scribe = filled();
    for (const body of [begun(1, 1), dose(1, '100'), treatmentEnd(1), liquor(2, '1.00'), pour(2, 2, '1.00')])
      scribe.write(body);
    expect(containerFigures(scribe.state, inTub).acid.openIn).toEqual([]);
    scribe.write(potRead(1, '9.2'));
    expect(treatmentOf(scribe.state, inCan)?.ph?.body.ph.value.value).toBe('9.2');
    scribe.write(tip(1, 2, '3.00'));
    const tub = containerFigures(scribe.state, inTub);
    expect(tub.noBase).toBe('treated');
    expect(tub.acid.openIn).toEqual([t1]);
    expect(tub.metals.find(({ metal }) => metal === 'Cu')).toMatchObject({ openIn: [t1] });
    expect(treatmentOf(scribe.state, inTub)).toMatchObject({ running: null, untreatedToo: true, ph: null });
    expect(treatmentOf(scribe.state, inTub)?.behind.map(({ body }) => body.treatmentId)).toEqual([t1]);
  });

  test('leave the container as it was once it is emptied', () => {
    const scribe = filled();
    for (const body of [begun(1, 1), dose(1, '100'), treatmentEnd(1), tip(1, null, '4.00')])
      scribe.write(body);
    expect(treatmentOf(scribe.state, inCan)).toBeNull();
    for (const body of [liquor(2, '1.00'), pour(2, 1, '1.00')]) scribe.write(body);
    expect(containerFigures(scribe.state, inCan)).toMatchObject({ noBase: null, acid: { openIn: [] } });
  });

  test('are known again by what was measured in the pot since, until the next dose', () => {
    const scribe = filled();
    const strip = { by: 'strip', metal: 'Cu', concentration: { value: '5', unit: 'mg/L' } } as const;
    for (const body of [begun(1, 1), dose(1, '300'), potRead(1, '9.2', { findings: [strip] })])
      scribe.write(body);
    const copper = () => containerFigures(scribe.state, inCan).metals.find(({ metal }) => metal === 'Cu');
    expect(copper()?.all?.value.toNumber()).toBeCloseTo(0.02, 9);
    expect(containerFigures(scribe.state, inCan)).toMatchObject({ noBase: 'treated' });
    expect(containerFigures(scribe.state, inCan).density).toBeUndefined();
    expect(
      containerFigures(scribe.state, inCan).metals.find(({ metal }) => metal === 'Ni')?.all,
    ).toBeUndefined();
    scribe.write(dose(1, '10'));
    expect(copper()?.all).toBeUndefined();
  });

  test('are slurry, and acid too until 7 or more was read after the last dose and the end was reached', () => {
    const kinds = (...bodies: readonly PlainBody[]) => {
      const scribe = filled();
      for (const body of [begun(1, 1), ...bodies]) scribe.write(body);
      return wasteKinds(scribe.state, inCan).kinds;
    };
    const acid = ['treated-slurry', 'leach-liquor'];
    expect(kinds()).toEqual(['leach-liquor']);
    expect(kinds(dose(1, '1'))).toEqual(acid);
    expect(kinds(dose(1, '1'), potRead(1, '9.2'))).toEqual(acid);
    expect(kinds(dose(1, '1'), potRead(1, '9.2'), treatmentEnd(1, 'stopped'))).toEqual(acid);
    expect(kinds(dose(1, '1'), potRead(1, '6.9'), treatmentEnd(1))).toEqual(acid);
    expect(kinds(potRead(1, '9.2'), dose(1, '1'), treatmentEnd(1))).toEqual(acid);
    expect(kinds(dose(1, '1'), treatmentEnd(1))).toEqual(acid);
    expect(kinds(dose(1, '1'), potRead(1, '7'), treatmentEnd(1))).toEqual(['treated-slurry']);
  });

  test('keep the dangers of test waste', () => {
    const scribe = filled();
    for (const body of [
      ammonia(2, '0.05'),
      pour(2, 1, '0.05'),
      begun(1, 1),
      dose(1, '1'),
      potRead(1, '9'),
      treatmentEnd(1),
    ])
      scribe.write(body);
    expect(isNeutralised(scribe.state.treatments.get(t1) ?? (undefined as never))).toBe(true);
    expect(wasteKinds(scribe.state, inCan).kinds).toEqual(['treated-slurry', 'ammonia-test-waste']);
    expect(containerFigures(scribe.state, inCan).noBase).toBe('ammonia');
    expect(flagged(scribe, 'ammonia-in-treatment')).toMatchObject([{ baseAdded: true }]);
  });

  test('with untreated liquor of the same log beside them still count it', () => {
    const scribe = new Scribe();
    for (const body of [
      can(1),
      liquor(1, '4.00'),
      pour(1, 1, '2.00'),
      begun(1, 1),
      dose(1, '1'),
      treatmentEnd(1),
      pour(1, 1, '2.00'),
    ])
      scribe.write(body);
    const parts = scribe.state.containers.get(inCan)?.contents;
    expect(parts?.map(({ treatedBy, volume }) => [treatedBy, volume.toFixed()])).toEqual([
      [[t1], '2'],
      [[], '2'],
    ]);
    expect(wasteKinds(scribe.state, inCan).kinds).toEqual(['treated-slurry', 'leach-liquor']);
  });
});

describe('a bench test', () => {
  const stale = (scribe: Scribe) =>
    scribe.state.containers.get(inCan)?.benchTests.map(({ staleSince }) => staleSince);

  test('holds for what was sampled, also after some was taken out', () => {
    const scribe = filled();
    scribe.write(benchTest(1), 10);
    scribe.write(tip(1, null, '1.00'), 11);
    expect(stale(scribe)).toEqual([null]);
  });

  test.each([
    ['waste was poured in', [pour(1, 1, '1.00')]],
    ['something came over from another container', [tip(2, 1, '1.00')]],
    ['a dose went in', [begun(1, 1), dose(1, '5')]],
    ['it was emptied', [tip(1, null, '4.00')]],
  ] as const)('is stale since %s, and one made later is not', (_, bodies) => {
    const scribe = filled();
    scribe.write(benchTest(1), 10);
    for (const body of bodies) scribe.write(body, 20);
    scribe.write(benchTest(1), 30);
    expect(stale(scribe)).toEqual([at(20), null]);
  });

  test('that was made before and written down after is stale as well', () => {
    const scribe = filled();
    scribe.write(pour(1, 1, '1.00'), 20);
    scribe.write(benchTest(1), 30, 10);
    expect(stale(scribe)).toEqual([at(20)]);
  });
});

test('the last statement of a price counts', () => {
  const scribe = new Scribe();
  const price = (value: string, unit = 'EUR') =>
    ({ do: 'state-price', what: 'collection-per-litre', amount: { value, unit } }) as const;
  scribe.does(price('1.90'));
  scribe.does(price('2.10'));
  expect(scribe.state.prices.get('collection-per-litre')?.body.amount).toEqual({
    value: '2.10',
    unit: 'EUR',
  });
  expect(code(scribe.tries(price('2.10', 'euro')))).toBe('does-not-fit');
});
