import { screen, waitFor, within } from '@testing-library/preact';
import { expect, test } from 'vitest';
import type { FoundRow } from '../../../src/ledger/found-rows';
import type { Shell } from '../../../src/screens/shell';
import { open, user } from '../../support/hand';
import { notAllHere } from '../../support/long-record';
import { workshopInMemory } from '../../support/shell-in-memory';

const canOf = (code: string) =>
  ({
    do: 'open-container',
    code,
    vessel: 'jerrican',
    capacity: { value: '10', unit: 'L' },
    material: 'HDPE',
    cap: 'vented',
    openedOn: '2026-05-12',
  }) as const;

async function finder(shell: Shell) {
  open(shell, 'find');
  return (await screen.findByLabelText('What do you look for?')) as HTMLInputElement;
}

const found = () =>
  within(screen.getByRole('list', { name: 'Find' }))
    .getAllByRole('link')
    .map((link) => [link.textContent?.slice(0, 4).replace('\u2011', '-'), link.getAttribute('href')]);

test('a container is found by typing, with its page', async () => {
  const { shell, does } = await workshopInMemory();
  const { body } = await does(canOf('C-07'));
  await does(canOf('C-08'));
  await user.type(await finder(shell), 'c07');
  await waitFor(() => expect(screen.getByRole('status').textContent).toBe('1 found'));
  expect(found()).toEqual([
    ['C-07', `#/containers/${body.kind === 'container-opened' ? body.containerId : ''}`],
  ]);
  await user.type(screen.getByLabelText('What do you look for?'), ' silver');
  expect(await screen.findByText('Nothing is found by this')).toBeTruthy();
  expect(screen.queryByRole('list', { name: 'Find' })).toBeNull();
});

test('what is written while the page stands open is found as well', async () => {
  const { shell, does } = await workshopInMemory();
  await user.type(await finder(shell), 'c-09');
  expect(await screen.findByText('Nothing is found by this')).toBeTruthy();
  await does(canOf('C-09'));
  await waitFor(() => expect(found()).toHaveLength(1), { timeout: 10_000 });
});

test('things that the phone holds no more are found by their rows, and lead to their history', async () => {
  const { shell, state } = await workshopInMemory();
  const gone: FoundRow = {
    is: 'container',
    id: '00000000-0000-7000-8000-00000000ffff',
    code: 'C-03',
    from: '2019-03-02T08:00:00.000Z',
    to: '2019-06-02T08:00:00.000Z',
    metals: ['Ag'],
    words: ['wash-water', 'Fenwater'],
  };
  const earlier = notAllHere({ putAway: () => [gone] });
  state.value = { ...state.value, earlier };
  await user.type(await finder(shell), 'fenwater silver 2019');
  await waitFor(() => expect(found()).toEqual([['C-03', `#/containers/${gone.id}/history`]]));
  open(shell, `containers/${gone.id}/history`);
  expect(await screen.findByRole('heading', { level: 1, name: /^C.03: history/ })).toBeTruthy();
  open(shell, 'containers');
  expect((await screen.findByRole('link', { name: /^1 more from long ago/ })).getAttribute('href')).toBe(
    '#/find',
  );
});

test('a long list begins with a few rows and comes to all of them, each once', async () => {
  const { shell, does } = await workshopInMemory();
  for (let n = 10; n < 60; n += 1) await does(canOf(`C-${n}`));
  open(shell, 'containers');
  const rows = () => within(screen.getByRole('list', { name: 'Containers' })).getAllByRole('link');
  expect(rows().length).toBeLessThan(20);
  await waitFor(() => expect(rows()).toHaveLength(50), { timeout: 10_000 });
  expect(new Set(rows().map((row) => row.getAttribute('href'))).size).toBe(50);
});
