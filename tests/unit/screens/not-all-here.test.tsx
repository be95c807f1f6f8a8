/** Lists of a long record hold what is at hand, and say where the rest is. */
import { screen } from '@testing-library/preact';
import { expect, test } from 'vitest';
import type { FoundRow } from '../../../src/ledger/found-rows';
import type { State } from '../../../src/ledger/state';
import { open } from '../../support/hand';
import { notAllHere } from '../../support/long-record';
import { workshopInMemory } from '../../support/shell-in-memory';
import { hood } from './at-the-bench';

const gone: FoundRow = {
  is: 'container',
  id: '00000000-0000-7000-8000-00000000cccc',
  code: 'C-04',
  from: '2019-03-02T08:00:00.000Z',
  to: '2019-06-02T08:00:00.000Z',
  metals: [],
  words: [],
};

const earlier = notAllHere({ from: '2026-04-01T08:00:00.000Z', putAway: () => [gone] });

const workshop = async () => {
  const memory = await workshopInMemory();
  await memory.does({
    do: 'record-paper',
    containerIds: [],
    paper: 'labels',
    fileName: 'labels.pdf',
    contentHash: 'a'.repeat(64),
    format: 'pdf',
  });
  return memory;
};

const older = /^Not all from before 1.Apr/;

test('papers that were made', async () => {
  const { shell, state } = await workshop();
  open(shell, 'papers');
  await screen.findByText(/labels\.pdf/);
  expect(screen.queryByText(older)).toBeNull();
  state.value = { ...state.value, earlier };
  open(shell, 'papers');
  await screen.findByText(older);
  expect(screen.getByRole('link', { name: older }).getAttribute('href')).toBe('#/record/history');
});

test('containers whose records are kept', async () => {
  const { shell, state } = await workshop();
  state.value = { ...state.value, earlier };
  open(shell, 'due');
  await screen.findByRole('link', { name: /^1 more from long ago/ });
});

test('what was always in order when a list was gone through', async () => {
  const { shell, state } = await workshop();
  state.value = { ...state.value, earlier };
  open(shell, 'record/lists/leach-start');
  await screen.findByRole('link', { name: older });
});

test('what was worked out for a working place', async () => {
  const { shell, state, does } = await workshop();
  const { body } = await does({ do: 'add-station', name: 'Hood', station: hood });
  const stationId = body.kind === 'station-described' ? body.stationId : '';
  const check = { checkId: 'one', stationId, batchId: null, verdict: 'enough' };
  const told = { entryId: 'one', at: '2026-05-11T08:00:00.000Z', who: null, body: check };
  const ventilationChecks = new Map([['one', told]]) as unknown as State['ventilationChecks'];
  state.value = { ...state.value, ventilationChecks, earlier };
  open(shell, `record/stations/${stationId}`);
  await screen.findByRole('link', { name: older });
});
