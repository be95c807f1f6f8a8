import { screen } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import type { PaperMade } from '../../../src/ledger/entries/papers';
import { applyAll } from '../../../src/ledger/fold';
import type { FoundRow } from '../../../src/ledger/found-rows';
import type { State, Told } from '../../../src/ledger/state';
import { statementAtOnce } from '../../../src/screens/papers/use-statement';
import type { Shell } from '../../../src/screens/shell';
import { open, user } from '../../support/hand';
import { notAllHere } from '../../support/long-record';
import { workshopInMemory } from '../../support/shell-in-memory';
import { openCan } from '../../support/waste-in-cans';

const batch = '00000000-0000-7000-8000-00000000bbbb';

const container = '00000000-0000-7000-8000-00000000cccc';
const handOver = '00000000-0000-7000-8000-00000000dddd';
const paper = '00000000-0000-7000-8000-00000000aaaa';
/** Of nothing that anybody told of, or that there is a row of. */
const other = '00000000-0000-7000-8000-00000000eeee';

const over = { from: '2019-03-02T08:00:00.000Z', to: '2019-06-02T08:00:00.000Z', metals: [], words: [] };

const rows: readonly FoundRow[] = [
  { ...over, is: 'batch', id: batch, code: 'B-3' },
  { ...over, is: 'container', id: container, code: 'C-04' },
  { ...over, is: 'hand-over', id: handOver, code: 'N 7' },
  { ...over, is: 'paper', id: paper, code: 'set.zip' },
];

/** A long record, of which nothing from before April is at hand. */
const earlier = notAllHere({
  entries: 90_000,
  from: '2026-04-01T08:00:00.000Z',
  putAway: () => rows,
});

async function longRecord() {
  const workshop = await workshopInMemory();
  const { state } = workshop;
  state.value = { ...state.value, earlier };
  const shell: Shell = {
    ...workshop.shell,
    readWhole: async () => {
      state.value = applyAll(state.value.log);
      return { ok: true, value: null };
    },
  };
  return { ...workshop, shell };
}

const whole = 'Read the whole record?';
const notWhole = /^(?!Read the whole record)/;

const titled = (name: string | RegExp) =>
  screen.findByRole('heading', { level: 1, name }, { timeout: 10_000 });

describe('a page that needs more of a long record than is at hand', () => {
  test('asks before it reads, and stands there then', async () => {
    const { shell } = await longRecord();
    open(shell, 'due/months');
    await titled(whole);
    await user.click(screen.getByRole('button', { name: /Read all of it/ }));
    await titled('Month by month');
  });

  test.each([
    ['the page of a batch that is put away', `batches/${batch}`, whole],
    ['logging a waste of it', `batches/${batch}/log`, whole],
    ['its history, which is read entry by entry', `batches/${batch}/history`, /^B.3: history/],
    ['a batch that nobody told of', `batches/${other}`, 'Batches'],
    ['the page of a container that is put away', `containers/${container}`, whole],
    ['reading its level', `containers/${container}/level`, whole],
    ['what it is on a walk', `walk/${container}`, whole],
    ['its history', `containers/${container}/history`, /^C.04: history/],
    ['a container that nobody told of', `containers/${other}`, 'Containers'],
    ['the page of a hand-over that is put away', `hand-overs/${handOver}`, whole],
    ['filing its proof', `hand-overs/${handOver}/proof`, whole],
    ['a treatment that is not at hand', `treatment/${other}`, whole],
    ['a waste that is not', `streams/${other}`, whole],
    ['a finding that is not', `findings/${other}`, whole],
    ['a list gone through long ago', `clearance/${other}`, whole],
    ['a list for a batch that is put away', `check/${batch}/leach-start`, whole],
    ['one for a container that is', `check/container-${container}/neutralise-lime`, whole],
    ['one for a step that is not at hand', `check/late-${other}/leach-start`, whole],
    ['one for a batch that nobody told of', `check/${other}/leach-start`, /not in the record/],
    ['one for the whole place', 'check/-/spill-response-readiness', notWhole],
    ['air for a batch that is put away', `ventilation/${batch}/leach-start`, whole],
    ['the end of a walk that is not at hand', `walk/done/${other}`, whole],
    ['handing over a container that is put away', `hand-overs/new/${container}`, whole],
    ['handing over what is on a paper that is', `hand-overs/new/${paper}`, whole],
    ['handing over what stands here', 'hand-overs/new', notWhole],
    ['a set made of that paper', `papers/new/${paper}`, whole],
    ['its signature', `papers/new/${paper}/sign`, whole],
    ['a set that is chosen by hand', 'papers/new/chosen', notWhole],
    ['a new container to pour one that is put away into', `containers/new/from/${container}`, whole],
    ['one instead of it', `containers/new/instead/${container}`, whole],
    ['a month before all is at hand', 'due/months/2026-03', whole],
    ['the month in which all begins to be at hand', 'due/months/2026-04', whole],
    ['a month after that', 'due/months/2026-05', /May 2026/],
    ['what is due', 'due', 'Dates and amounts'],
  ])('%s', async (_, page, title) => {
    const { shell } = await longRecord();
    open(shell, page);
    await titled(title);
  });

  test('what is at hand stands there at once', async () => {
    const { shell, batch: here } = await longRecord();
    open(shell, `batches/${here}`);
    await titled(/^Batch/);
    open(shell, `batches/${here}/log/wash-water`);
    await titled(/^Wash water/);
  });

  test('a container that is gone since before, and at hand for what came out of it', async () => {
    const { shell, state, does } = await longRecord();
    const id = await openCan({ does });
    open(shell, `containers/${id}`);
    await titled(/C.\d/);
    const gone = state.value.containers.get(id);
    if (!gone) throw new Error('no such container');
    const containers = new Map([[id, { ...gone, goneSince: '2026-01-05T08:00:00.000Z' }]]);
    state.value = { ...state.value, earlier, containers };
    open(shell, `containers/${id}`);
    await titled(whole);
  });

  test.each([
    ['since all is at hand', '2026-04-02T08:00:00.000Z', notWhole],
    ['before that', '2026-03-31T08:00:00.000Z', whole],
  ])('the end of a walk that began %s', async (_, startedAt, title) => {
    const { shell, state } = await longRecord();
    const list = { id: 'container-inspection', version: '2', hash: '0'.repeat(64), title: 'Walk' };
    const body = { startedAt, list, containerIds: [], notSeen: [], looks: [], readings: [], found: [] };
    const finished = { entryId: other, at: '2026-04-02T09:00:00.000Z', who: null, body };
    const walks = new Map([[other, { walkId: other, inspected: [], finished }]]);
    state.value = { ...state.value, earlier, walks: walks as unknown as State['walks'] };
    open(shell, `walk/done/${other}`);
    await titled(title);
  });

  test('a set made anew of a paper that is at hand, while a container on it is not', async () => {
    const { shell, state, does } = await longRecord();
    const { body } = await does({
      do: 'record-paper',
      containerIds: [await openCan({ does })],
      paper: 'disposal',
      fileName: 'set.pdf',
      contentHash: 'a'.repeat(64),
      format: 'pdf',
    });
    const paperId = body.kind === 'paper-made' ? body.paperId : '';
    state.value = { ...state.value, earlier };
    open(shell, `papers/new/${paperId}`);
    await titled(notWhole);
    const told = state.value.papers.get(paperId) as Told<PaperMade>;
    const without = { ...told, body: { ...told.body, containerIds: [container] } };
    state.value = { ...state.value, papers: new Map([[paperId, without]]) };
    await titled(whole);
  });

  test('what to do at once is asked for nothing', async () => {
    const { shell } = await longRecord();
    open(shell, `sos/ammonia-silver/then/${container}`);
    expect(screen.queryByRole('heading', { name: whole })).toBeNull();
  });
});

test('the generator states it by all entries, at hand or not', async () => {
  const { state } = await longRecord();
  expect(statementAtOnce(state.value, 1)[0]).toContain(`entry ${90_000 + state.value.log.length}.`);
});

describe('a label of a container that is put away', () => {
  test('is read, and its page asked for', async () => {
    const { shell, path } = await longRecord();
    open(shell, 'scan');
    await titled('Scan a label');
    await user.type(screen.getByLabelText('Code on the label'), 'c4');
    await user.click(screen.getByRole('button', { name: 'Open it' }));
    expect(path.value).toEqual(['containers', container]);
  });

  test('may look like one that stands here', async () => {
    const { shell, does, state } = await longRecord();
    await does({
      do: 'open-container',
      code: 'C-4',
      vessel: 'jerrican',
      capacity: { value: '5', unit: 'L' },
      material: 'HDPE',
      cap: 'vented',
      openedOn: '2026-05-01',
    });
    state.value = { ...state.value, earlier };
    open(shell, 'scan');
    await titled('Scan a label');
    await user.type(screen.getByLabelText('Code on the label'), 'c 4');
    await user.click(screen.getByRole('button', { name: 'Open it' }));
    await screen.findByText('More than one looks like that. Which one is it?');
    expect(screen.getByRole('link', { name: /^C.04.*Gone long ago/ }).getAttribute('href')).toBe(
      `#/containers/${container}`,
    );
  });
});
