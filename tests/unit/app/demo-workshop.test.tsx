import 'fake-indexeddb/auto';
import { beforeEach, describe, expect, test } from 'vitest';
import { layDemo } from '../../../src/app/demo-workshop';
import { openBook } from '../../../src/app/open-book';
import { shellOf } from '../../../src/app/shell';
import { batchClosure } from '../../../src/ledger/batch-closure';
import { candidatesOf } from '../../../src/ledger/container-candidates';
import { dues } from '../../../src/ledger/due';
import { Body } from '../../../src/ledger/entries/body';
import { flags } from '../../../src/ledger/flags';
import { applyAll } from '../../../src/ledger/fold';
import { differencesOf } from '../../../src/ledger/hand-over-differences';
import { verifyChain } from '../../../src/ledger/verify';
import { walkDue, walkOrder } from '../../../src/ledger/walks';
import { checklists } from '../../../src/safety/checklists';
import { dayField } from '../../../src/safety/stated-time';
import { ventilationCheck } from '../../../src/safety/ventilation/check';
import { portionTaken } from '../../../src/safety/ventilation/rounded';
import { entryTitle } from '../../../src/screens/record/entry-words';
import {
  changesBetween,
  correctable,
  leavesOf,
  type Path,
  withValues,
} from '../../../src/screens/record/leaves';
import { leafText, partText, worthSaying } from '../../../src/screens/record/part-words';
import { deleteRecord } from '../../../src/storage/database';
import { databaseName } from '../../../src/storage/database-name';

const morning = '2026-11-24T09:30:00.000Z';

async function opened(name: 'demo' | 'real') {
  const book = await openBook(name);
  if (!book.ok) throw new Error(book.failure.code);
  return book.value;
}

async function laidAt(now: string) {
  const book = await opened('demo');
  const { person, station } = await layDemo(book.perform, now);
  book.close();
  return { person, station, state: book.state.value };
}

beforeEach(async () => {
  await deleteRecord('demo');
  localStorage.clear();
});

describe('the invented workshop', () => {
  test.each([morning, '2026-03-01T00:05:00.000Z', '2026-12-31T23:59:59.000Z'])(
    'is whole and lies in the past when it is laid at %s',
    async (now) => {
      const { person, state } = await laidAt(now);
      expect(verifyChain(state.log)).toMatchObject({ whole: true, entries: state.log.length });
      expect(state.log.length).toBeGreaterThan(60);
      expect(state.log.filter(({ body }) => !Body.safeParse(body).success)).toEqual([]);
      expect(state.log.filter(({ happenedAt }) => happenedAt > now)).toEqual([]);
      expect(state.people.get(person ?? '')?.body.name).toBe('Ines Halvard');
    },
  );

  test('has one can too full, two in doubt, two readings that disagree, rules half entered, and nothing else wrong', async () => {
    const { state } = await laidAt(morning);
    const codes = new Map([...state.containers].map(([id, { body }]) => [id, body.code]));
    expect(flags(state).map(({ code, about }) => [code, codes.get(about.containerId ?? '')])).toEqual([
      ['over-fill-limit', 'C-03'],
      ['contents-doubtful', 'C-04'],
      ['contents-doubtful', 'C-08'],
      ['evidence-disagrees', undefined],
      ['local-rules-missing', undefined],
      ['treatment-for-planning-only', undefined],
      ['nothing-fit-for-drain', undefined],
    ]);
    expect([...state.rules.keys()]).toEqual(['storage-days', 'inspection-days', 'proof-days']);
  });

  test('has one code that its collector agreed to, for what is in the can now, and no other word', async () => {
    const { state } = await laidAt(morning);
    const said = [...state.containers.values()].flatMap(({ body: { code }, answers }) =>
      answers.map((one) => [code, one.body.code, one.body.saidBy, one.staleSince]),
    );
    expect(said).toEqual([['C-02', '11 02 07*', 'Fenwater Collection', null]]);
    const container = [...state.containers.values()].find(({ body }) => body.code === 'C-02');
    const all = container && candidatesOf(state, container);
    if (!all || typeof all === 'string') throw new Error('no candidates');
    expect(all.wasteList?.candidates[0]?.code, 'the rules propose it first').toBe('11 02 07*');
  });

  test('has one can that a collector took, signed by both, whose proof is due within the week', async () => {
    const { state } = await laidAt(morning);
    const [load, ...more] = state.handOvers.values();
    if (!load) throw new Error('nothing was handed over');
    expect(more).toEqual([]);
    expect(Object.keys(load.body.signatures).toSorted()).toEqual(['collector', 'generator']);
    expect(differencesOf(state, load).map(({ standing }) => standing)).toEqual(['under']);
    const proofs = dues(state, morning, 'Europe/Paris').filter(({ kind }) => kind === 'proof');
    expect(proofs).toMatchObject([{ handOverId: load.body.handOverId, daysLeft: 4, near: true }]);
  });

  test('has a ventilation check of the batch in the leach that comes out as it was written down', async () => {
    const { state } = await laidAt(morning);
    const [check] = [...state.ventilationChecks.values()];
    if (!check) throw new Error('no check');
    const { station, charge, verdict, portion, batchId } = check.body;
    const result = ventilationCheck({ station, charge, on: dayField(check.at) });
    expect([result.verdict, portionTaken(result)]).toEqual([verdict, portion]);
    expect(state.batches.get(batchId ?? '')?.body.code).toBe('B-03');
  });

  test('has a hood and a yard, and every list that needs a place was gone through at the hood', async () => {
    const { station, state } = await laidAt(morning);
    expect([...state.stations.values()].map(({ body }) => body.station.is)).toEqual([
      'ducted-hood',
      'outdoors',
    ]);
    const placed = [...state.checklists.values()].filter(
      ({ body }) => checklists.get(body.checklist.id)?.station,
    );
    expect(placed.length).toBeGreaterThan(5);
    for (const { body } of placed) expect(body).toMatchObject({ stationId: station, place: 'Shed hood' });
    expect([...state.steps.values()].some(({ body }) => body.stationId === station)).toBe(true);
  });

  test('was walked along a while ago: every container that held waste then was seen, and what was found is closed', async () => {
    const { state } = await laidAt(morning);
    const [walk] = [...state.walks.values()];
    const at = walk?.finished?.at ?? '';
    const then = applyAll(state.log.filter(({ happenedAt }) => happenedAt < at));
    const toSee = walkOrder(then).map(({ body }) => body.code);
    const seen = walk?.inspected.map(({ body }) => state.containers.get(body.containerId)?.body.code);
    expect(seen?.toSorted()).toEqual(toSee.toSorted());
    expect([...state.findings.values()].map(({ closed }) => closed !== null)).toEqual([true]);
    expect(walkDue(state, morning, 'Europe/Paris')).toMatchObject({ due: '2026-11-22', stated: true });
  });

  test('keeps the ammonia waste in a bottle on a tray of its own', async () => {
    const { state } = await laidAt(morning);
    const holding = [...state.containers.values()].filter(({ contents }) =>
      contents.some(
        ({ streamId }) => state.streams.get(streamId ?? '')?.body.stream === 'ammonia-test-waste',
      ),
    );
    expect(holding.map(({ body }) => [body.vessel, body.tray])).toEqual([['bottle', 'ammonia tray']]);
    const trays = [...state.containers.values()].filter(({ body }) => body.tray === 'ammonia tray');
    expect(trays).toHaveLength(1);
  });

  test('has words for every entry and for all that each says, and no bare identifier', async () => {
    const { state } = await laidAt(morning);
    const said = state.log.flatMap(({ body }) => [
      entryTitle(state, body, '.'),
      ...leavesOf(body)
        .filter((leaf) => worthSaying(body, leaf))
        .flatMap((leaf) => [partText(body, leaf.path), leafText(state, leaf, '.')]),
    ]);
    expect(said.filter((text) => /\?|undefined|[0-9a-f]{8}-|[a-z]{2}[A-Z]|^$/.test(text))).toEqual([]);
  });

  test('can be corrected wherever it can be: putting the same values back changes nothing', async () => {
    const { state } = await laidAt(morning);
    for (const { body } of state.log) {
      if (body.kind === 'entry-corrected' || body.kind === 'entry-withdrawn') continue;
      const same = correctable(body).map((part): [Path, unknown] => [
        part.path,
        part.is === 'quantity' ? { value: part.value, unit: part.unit } : part.value,
      ]);
      const again = withValues(body, new Map(same));
      expect(changesBetween(body, again)).toEqual([]);
    }
  });

  test('is entered through the shell, and removed without a trace', async () => {
    const real = await opened('real');
    const shell = shellOf(real);
    await shell.demo.enter();
    const demo = await opened('demo');
    const inside = shellOf(demo);
    expect(inside.person.value).not.toBeNull();
    inside.draft.keep('workshop', { name: 'half' });
    expect(await inside.demo.remove()).toBeNull();
    const left = (await indexedDB.databases()).map(({ name }) => name);
    expect(left).not.toContain(databaseName('demo'));
    expect(left).toContain(databaseName('real'));
    expect(Object.keys(localStorage).filter((key) => key.includes('demo'))).toEqual([]);
    expect(Object.values({ ...localStorage })).not.toContain('demo');
    expect(real.state.value.log).toEqual([]);
    real.close();
  });
});

describe('the account of the first invented batch', () => {
  test('closes in volume, copper and acid; of silver somebody wrote down too little', async () => {
    const { state } = await laidAt(morning);
    const [first] = state.batches.values();
    const { volume, copper, acid, silver } = first
      ? batchClosure(state, first)
      : expect.fail('no batch was laid');
    expect([volume, copper, acid].map(({ verdict }) => verdict)).toEqual(['closes', 'closes', 'closes']);
    expect(silver.verdict).toBe('cannot-be-told');
    expect(silver.missing.map(({ what }) => what)).toEqual(['silver', 'silver']);
  });
});
