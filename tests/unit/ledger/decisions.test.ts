import { describe, expect, test } from 'vitest';
import { clearancesHolding } from '../../../src/ledger/clearance';
import { flags } from '../../../src/ledger/flags';
import type { Intention, IntentionOf } from '../../../src/ledger/intention';
import type { Decided } from '../../../src/ledger/refusal';
import { workshopLists } from '../../../src/ledger/workshop-lists';
import { at, can, id, litres, pour, Scribe, tip, wash } from './scribe';

const ana = id('aa', 1);
const ben = id('aa', 2);

const feed = { capacitors: 'mixed', era: 'may-hold-lead', mass: { value: '1.5', unit: 'kg' } } as const;
const openBatch: Intention = { do: 'open-batch', feed };

const batchIn = (scribe: Scribe): string => {
  const [entry] = scribe.does(openBatch);
  if (entry?.body.kind !== 'batch-opened') throw new Error('a batch was opened');
  return entry.body.batchId;
};

const run = (
  batchId: string | null,
  change: Partial<IntentionOf<'finish-checklist'>> = {},
): IntentionOf<'finish-checklist'> => ({
  do: 'finish-checklist',
  runId: id('12', 1),
  step: 'leach-start',
  batchId,
  checklist: { id: 'leach-start', version: '1', hash: 'a'.repeat(64), title: 'Start the leach' },
  outcome: 'cleared',
  startedAt: at(0),
  finishedAt: at(5),
  validUntil: at(65),
  answers: [
    {
      item: 'lst-hood',
      ask: 'Read hood face speed',
      kind: 'reading',
      answer: '0.47',
      unit: 'm/s',
      at: at(4),
    },
  ],
  ...change,
});

const code = (result: Decided) => (result.ok ? 'ok' : result.refusal.code);

describe('a planned step', () => {
  const cleared = (change: Partial<IntentionOf<'finish-checklist'>> = {}) => {
    const scribe = new Scribe('a', ana);
    const batchId = batchIn(scribe);
    const [entry] = scribe.does(run(batchId, change));
    return {
      scribe,
      start: { do: 'start-step', step: 'leach-start', batchId, clearance: entry?.id ?? '' } as const,
    };
  };

  test('begins on a clearance for it until the last moment, and not a minute later', () => {
    const { scribe, start } = cleared();
    expect(code(scribe.tries(start, 65))).toBe('ok');
    expect(code(scribe.tries(start, 66))).toBe('clearance-expired');
  });

  test('does not begin without a clearance, on one for another step or batch, or on a stopped one', () => {
    const { scribe, start } = cleared();
    expect(code(scribe.tries({ ...start, clearance: id('e9', 1) }))).toBe('no-clearance');
    expect(code(scribe.tries({ ...start, step: 'filtration' }))).toBe('clearance-for-another-step');
    expect(code(scribe.tries({ ...start, batchId: null }))).toBe('clearance-for-another-batch');
    const stopped = cleared({ outcome: 'stopped', validUntil: null });
    expect(code(stopped.scribe.tries(stopped.start))).toBe('clearance-stopped');
  });

  test("does not begin on another person's clearance", () => {
    const { scribe, start } = cleared();
    const other = new Scribe('a', ben);
    other.entries.push(...scribe.entries);
    expect(code(other.tries(start))).toBe('clearance-of-another-person');
  });

  test('does not begin at another place than the list was gone through at', () => {
    const scribe = new Scribe('a', ana);
    for (const name of ['Hood by the window', 'Yard'])
      scribe.does({ do: 'add-station', name, station: { is: 'outdoors' } });
    const [hood = '', yard = ''] = scribe.state.stations.keys();
    const batchId = batchIn(scribe);
    const [entry] = scribe.does(run(batchId, { stationId: hood, place: 'Hood by the window' }));
    const start = { do: 'start-step', step: 'leach-start', batchId, clearance: entry?.id ?? '' } as const;
    expect(code(scribe.tries({ ...start, stationId: yard }))).toBe('clearance-for-another-place');
    expect(code(scribe.tries({ ...start, stationId: hood }))).toBe('ok');
  });

  test('does not begin with another strength of acid than when the list was gone through, however it is written', () => {
    const charge = (batchId: string, value: string) => ({
      do: 'log-charge' as const,
      batchId,
      charge: { what: 'acid' as const, volume: litres('0.5'), strength: { value, unit: '%' as const } },
    });
    const scribe = new Scribe('a', ana);
    const batchId = batchIn(scribe);
    scribe.does(charge(batchId, '25'), 1);
    const [entry] = scribe.does(run(batchId), 5);
    const start = { do: 'start-step', step: 'leach-start', batchId, clearance: entry?.id ?? '' } as const;
    scribe.does(charge(batchId, '25.0'), 6);
    expect(code(scribe.tries(start, 8))).toBe('ok');
    scribe.does(charge(batchId, '65'), 7);
    expect(code(scribe.tries(start, 8))).toBe('clearance-for-other-acid');
  });

  test('does not begin with stronger acid than its air was checked for when the list was gone through', () => {
    const scribe = new Scribe('a', ana);
    const batchId = batchIn(scribe);
    scribe.does({ do: 'add-station', name: 'Yard', station: { is: 'outdoors' } });
    const [stationId = ''] = scribe.state.stations.keys();
    const check = (value: string) => ({
      do: 'log-ventilation-check' as const,
      batchId,
      stationId,
      charge: {
        step: 'leach' as const,
        metals: { known: 'total' as const, mass: { value: '8', unit: 'g' as const } },
        acid: { volume: litres('0.4'), strength: { value, unit: 'mol/L' as const } },
        release: { value: '2', unit: 'h' as const },
        limit: 'niosh-15-min' as const,
      },
      verdict: 'enough' as const,
    });
    scribe.does(check('7.9'), 2);
    const [entry] = scribe.does(run(batchId, { step: 'leach' }), 5);
    const start = { do: 'start-step', step: 'leach', batchId, clearance: entry?.id ?? '' } as const;
    expect(code(scribe.tries(start, 6))).toBe('ok');
    scribe.does(check('7.90'), 6);
    expect(code(scribe.tries(start, 7))).toBe('ok');
    expect(clearancesHolding(scribe.state, at(7)).map(({ entryId }) => entryId)).toEqual([entry?.id]);
    scribe.does(check('10'), 7);
    expect(code(scribe.tries(start, 8))).toBe('clearance-for-other-acid');
    expect(clearancesHolding(scribe.state, at(8))).toEqual([]);
  });

  test('does not begin on a list that was gone through when the step had begun already', () => {
    const scribe = new Scribe('a', ana);
    const batchId = batchIn(scribe);
    scribe.does({ do: 'log-step-happened', step: 'leach-start', batchId, clearance: null });
    const [stepId = ''] = scribe.state.steps.keys();
    const [entry] = scribe.does(run(batchId, { late: { stepId }, validUntil: null }));
    const start = { do: 'start-step', step: 'leach-start', batchId, clearance: entry?.id ?? '' } as const;
    expect(code(scribe.tries(start))).toBe('clearance-late');
    expect(flags(scribe.state)).toContainEqual(
      expect.objectContaining({ code: 'step-without-clearance', lateListAt: entry?.happenedAt }),
    );
  });

  test('a step that happened without a clearance is written down and flagged', () => {
    const scribe = new Scribe('a', ana);
    const batchId = batchIn(scribe);
    scribe.does({ do: 'log-step-happened', step: 'leach-start', batchId, clearance: null });
    expect(flags(scribe.state)).toContainEqual(
      expect.objectContaining({ code: 'step-without-clearance', step: 'leach-start' }),
    );
    expect(scribe.state.batches.get(batchId)?.steps).toHaveLength(1);
  });

  test('a step logged as begun after its clearance had expired is flagged with the reason', () => {
    const { scribe, start } = cleared();
    scribe.does({ ...start, do: 'log-step-happened' }, 70);
    expect(flags(scribe.state)).toContainEqual(
      expect.objectContaining({ code: 'clearance-does-not-hold', why: 'clearance-expired' }),
    );
  });

  test('ends once', () => {
    const { scribe, start } = cleared();
    scribe.does(start);
    const [stepId = ''] = scribe.state.steps.keys();
    scribe.does({ do: 'end-step', stepId });
    expect(code(scribe.tries({ do: 'end-step', stepId }))).toBe('already-ended');
  });

  test('a checklist tapped finished twice is written once', () => {
    const { scribe, start } = cleared();
    expect(code(scribe.tries(run(start.batchId)))).toBe('already-written');
  });
});

describe('codes', () => {
  test('the next code follows the highest number, not the count', () => {
    const scribe = new Scribe();
    scribe.does({ ...openBatch, code: 'B-17' } as Intention);
    scribe.does({ ...openBatch, code: 'Spring' } as Intention);
    const [entry] = scribe.does(openBatch);
    expect(entry?.body).toMatchObject({ code: 'B-18' });
  });

  test('the first batch is B-01', () => {
    expect(new Scribe().does(openBatch)[0]?.body).toMatchObject({ code: 'B-01' });
  });

  test('a code that is on another label is refused, in small letters too', () => {
    const scribe = new Scribe();
    scribe.does({ ...openBatch, code: 'B-17' } as Intention);
    expect(scribe.tries({ ...openBatch, code: ' b-17' } as Intention)).toEqual({
      ok: false,
      refusal: { code: 'code-taken', details: { taken: 'B-17' }, field: 'code' },
    });
  });
});

describe('what goes into a container', () => {
  const { kind: _k, v: _v, ...placement } = pour(1, 1, '1');
  const place = (volume: string): Intention => ({ do: 'place-stream', ...placement, amount: litres(volume) });
  const shelf = () => {
    const scribe = new Scribe();
    for (const body of [can(1), can(2), wash(1, '9'), pour(1, 1, '4')]) scribe.write(body);
    return scribe;
  };

  test('a plan up to the fill limit is allowed, beyond it refused, beyond the brim refused as that', () => {
    expect(code(shelf().tries(place('0.5')))).toBe('ok');
    expect(shelf().tries(place('0.501'))).toEqual({
      ok: false,
      refusal: {
        code: 'over-fill-limit',
        details: { containerId: id('c0', 1), wouldHold: '4.501', limit: '4.5' },
        field: 'amount',
      },
    });
    expect(code(shelf().tries(place('1.001')))).toBe('over-capacity');
  });

  test('what was poured in beyond the brim is written down all the same', () => {
    const scribe = shelf();
    scribe.does({ do: 'log-placement-happened', ...placement, amount: litres('2') });
    expect(flags(scribe.state)[0]).toMatchObject({ code: 'over-capacity', holds: '6', capacity: '5' });
  });

  test('nothing is planned into a container that is closed or whose contents are doubtful', () => {
    for (const [mark, refusal] of [
      ['closed', 'container-closed'],
      ['contents-doubtful', 'contents-doubtful'],
    ] as const) {
      const scribe = shelf();
      scribe.does({ do: 'mark-container', containerId: id('c0', 1), mark });
      expect(code(scribe.tries(place('0.1')))).toBe(refusal);
      expect(code(scribe.tries({ do: 'log-placement-happened', ...placement }))).toBe('ok');
    }
  });

  test('doubtful contents are not planned into another container, but may be taken off the shelf', () => {
    const scribe = shelf();
    scribe.does({ do: 'mark-container', containerId: id('c0', 1), mark: 'contents-doubtful' });
    const { kind: _, v: _1, ...moving } = tip(1, 2, '1');
    expect(code(scribe.tries({ do: 'move-contents', ...moving }))).toBe('contents-doubtful');
    expect(code(scribe.tries({ do: 'move-contents', ...moving, toContainerId: null }))).toBe('ok');
    expect(code(scribe.tries({ do: 'move-contents', ...moving, toContainerId: id('c0', 1) }))).toBe(
      'same-container',
    );
  });

  test('nor is what no logged waste accounts for', () => {
    const scribe = shelf();
    scribe.write(can(3));
    scribe.write(tip(2, 1, '0.10'));
    const { kind: _, v: _1, ...moving } = tip(1, 3, '1');
    expect(scribe.tries({ do: 'move-contents', ...moving })).toMatchObject({
      refusal: { code: 'contents-unaccounted', details: { containerId: id('c0', 1) } },
    });
    expect(code(scribe.tries({ do: 'move-contents', ...moving, toContainerId: null }))).toBe('ok');
    expect(code(scribe.tries({ do: 'log-move-happened', ...moving }))).toBe('ok');
  });

  test('a stream is logged and placed in one go', () => {
    const scribe = shelf();
    const { kind: _, v: _1, streamId: _2, ...stream } = wash(1, '2');
    const entries = scribe.does({
      do: 'log-stream',
      ...stream,
      placements: [{ containerId: id('c0', 2), amount: litres('2') }],
    });
    expect(entries.map(({ body }) => body.kind)).toEqual(['stream-logged', 'stream-placed']);
    expect(scribe.state.containers.get(id('c0', 2))?.holds.volume.toFixed()).toBe('2');
  });

  test('a thing that nobody has told of is refused with its field', () => {
    const result = shelf().tries({ do: 'log-placement-happened', ...placement, containerId: id('c0', 9) });
    expect(result).toMatchObject({
      refusal: { code: 'unknown', details: { to: 'container' }, field: 'containerId' },
    });
  });
});

describe('what is written', () => {
  test('texts are trimmed, and an empty one is refused with its place', () => {
    const scribe = new Scribe();
    const [entry] = scribe.does({ do: 'add-person', name: '  Ana ' });
    expect(entry?.body).toMatchObject({ name: 'Ana' });
    expect(scribe.tries({ do: 'add-person', name: '  ' })).toMatchObject({
      refusal: { code: 'does-not-fit', field: 'name' },
    });
  });

  test('a stream with neither liquid nor solid is refused', () => {
    const { kind: _, v: _1, streamId: _2, liquid: _3, ...stream } = wash(1, '2');
    expect(code(new Scribe().tries({ do: 'log-stream', ...stream }))).toBe('does-not-fit');
  });

  test('a person who left and comes back is one of the people again', () => {
    const scribe = new Scribe();
    scribe.does({ do: 'add-person', name: 'Ana' });
    const [personId = ''] = scribe.state.people.keys();
    scribe.does({ do: 'person-leaves', personId });
    expect(scribe.state.people.get(personId)?.leftAt).toBe(at(1));
    scribe.does({ do: 'change-person', personId, name: 'Ana B.' });
    expect(scribe.state.people.get(personId)).toMatchObject({ leftAt: null, body: { name: 'Ana B.' } });
  });

  test('a later word of the authority on the same rule takes the place of the earlier one', () => {
    const scribe = new Scribe();
    for (const value of ['90', '180'])
      scribe.does({
        do: 'state-local-rule',
        stated: { rule: 'storage-days', value: { value, unit: 'days' } },
        saidBy: 'office',
        saidOn: '2026-03-01',
      });
    expect(scribe.state.rules.get('storage-days')?.body.stated.value).toEqual({ value: '180', unit: 'days' });
  });
});

describe('an entry that was wrong', () => {
  const logged = () => {
    const scribe = new Scribe();
    const stream = scribe.write(wash(1, '3.4'));
    return { scribe, stream };
  };
  const volume = (scribe: Scribe) => scribe.state.streams.get(id('50', 1))?.amount.volume.toFixed();

  test('is corrected twice: the last correction counts, all versions stay', () => {
    const { scribe, stream } = logged();
    scribe.does({ do: 'correct-entry', corrects: stream.id, body: wash(1, '4.3'), reason: 'digits swapped' });
    scribe.does({ do: 'correct-entry', corrects: stream.id, body: wash(1, '4.4'), reason: 'misread' });
    expect(volume(scribe)).toBe('4.4');
    const [line] = scribe.state.history;
    expect(line).toMatchObject({
      standing: 'corrected',
      entry: { body: wash(1, '3.4') },
      body: wash(1, '4.4'),
    });
    expect(line?.changedBy).toHaveLength(2);
  });

  test('a correction that is withdrawn gives back the version before it', () => {
    const { scribe, stream } = logged();
    scribe.does({ do: 'correct-entry', corrects: stream.id, body: wash(1, '4.3'), reason: 'x' });
    const [second] = scribe.does({
      do: 'correct-entry',
      corrects: stream.id,
      body: wash(1, '4.4'),
      reason: 'x',
    });
    scribe.does({ do: 'withdraw-entry', withdraws: second?.id ?? '', reason: 'was right' });
    expect(volume(scribe)).toBe('4.3');
  });

  test('that did not happen is gone from the shelf, not from the history, and can be brought back', () => {
    const { scribe, stream } = logged();
    const [gone] = scribe.does({ do: 'withdraw-entry', withdraws: stream.id, reason: 'another day' });
    expect(scribe.state.streams.size).toBe(0);
    expect(scribe.state.history[0]).toMatchObject({ standing: 'withdrawn', body: null });
    expect(code(scribe.tries({ do: 'withdraw-entry', withdraws: stream.id, reason: 'again' }))).toBe(
      'already-withdrawn',
    );
    scribe.does({ do: 'withdraw-entry', withdraws: gone?.id ?? '', reason: 'it did' });
    expect(volume(scribe)).toBe('3.4');
  });

  test('can have its time put right', () => {
    const { scribe, stream } = logged();
    const happenedAt = at(-600);
    scribe.does({
      do: 'correct-entry',
      corrects: stream.id,
      body: wash(1, '3.4'),
      happenedAt,
      reason: 'last night',
    });
    expect(scribe.state.streams.get(id('50', 1))?.at).toBe(happenedAt);
  });

  test('is not corrected when it is unknown, of another kind, about another thing, or a correction itself', () => {
    const { scribe, stream } = logged();
    const correct = (corrects: string, body: IntentionOf<'correct-entry'>['body']) =>
      code(scribe.tries({ do: 'correct-entry', corrects, body, reason: 'x' }));
    expect(correct(id('e9', 1), wash(1, '1'))).toBe('unknown');
    expect(correct(stream.id, can(1))).toBe('another-kind');
    expect(correct(stream.id, wash(2, '1'))).toBe('another-subject');
    const [correction] = scribe.does({
      do: 'correct-entry',
      corrects: stream.id,
      body: wash(1, '1'),
      reason: 'x',
    });
    expect(correct(correction?.id ?? '', wash(1, '1'))).toBe('not-correctable');
  });

  test('a correction of another kind, come from elsewhere, changes nothing and is flagged', () => {
    const { scribe, stream } = logged();
    scribe.write({ kind: 'entry-corrected', v: 1, corrects: stream.id, body: can(1), reason: 'x' });
    expect(volume(scribe)).toBe('3.4');
    expect(scribe.state.containers.size).toBe(0);
    expect(flags(scribe.state)).toContainEqual(expect.objectContaining({ why: 'corrects-another-kind' }));
  });

  test('a ring of withdrawals, which no honest record holds, withdraws nothing', () => {
    const { scribe } = logged();
    scribe.write({ kind: 'entry-withdrawn', v: 1, withdraws: id('ea', 3), reason: 'x' });
    scribe.write({ kind: 'entry-withdrawn', v: 1, withdraws: id('ea', 2), reason: 'x' });
    expect(volume(scribe)).toBe('3.4');
  });
});

describe("a workshop's own lists", () => {
  const tighter = {
    do: 'change-list',
    change: { change: 'range', list: 'leach-start', item: 'lst-first', max: '5' },
  } as const;

  test('ask with a tightened range from then on', () => {
    const scribe = new Scribe('a', ana);
    scribe.does(tighter);
    const item = workshopLists(scribe.state)
      .get('leach-start')
      ?.items.find(({ id }) => id === 'lst-first');
    expect(item).toMatchObject({ max: '5', range: 'tightened' });
  });

  test('are not loosened without a note, and change no list that there is not', () => {
    const scribe = new Scribe('a', ana);
    const wider = { ...tighter, change: { ...tighter.change, max: '500' } };
    expect(scribe.tries(wider)).toMatchObject({
      refusal: { code: 'list-change-not-in-order', details: { fault: { code: 'note-missing' } } },
    });
    expect(code(scribe.tries({ ...wider, change: { ...wider.change, note: 'larger hood' } }))).toBe('ok');
    expect(code(scribe.tries({ ...tighter, change: { ...tighter.change, list: 'baking' } }))).toBe('unknown');
  });
});
