import { screen } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import { applyAll } from '../../../src/ledger/fold';
import type { FoundRow } from '../../../src/ledger/found-rows';
import { statementAtOnce } from '../../../src/screens/papers/use-statement';
import type { Shell } from '../../../src/screens/shell';
import { open, user } from '../../support/hand';
import { notAllHere } from '../../support/long-record';
import { workshopInMemory } from '../../support/shell-in-memory';
import { openCan } from '../../support/waste-in-cans';

const batch = '00000000-0000-7000-8000-00000000bbbb';

const container = '00000000-0000-7000-8000-00000000cccc';
const handOver = '00000000-0000-7000-8000-00000000dddd';
/** Of nothing that anybody told of, or that there is a row of. */
const other = '00000000-0000-7000-8000-00000000eeee';

const over = { from: '2019-03-02T08:00:00.000Z', to: '2019-06-02T08:00:00.000Z', metals: [], words: [] };

const rows: readonly FoundRow[] = [
  { ...over, is: 'batch', id: batch, code: 'B-3' },
  { ...over, is: 'container', id: container, code: 'C-04' },
  { ...over, is: 'hand-over', id: handOver, code: 'N 7' },
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
