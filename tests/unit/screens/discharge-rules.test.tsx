import { screen, waitFor, within } from '@testing-library/preact';
import { expect, test } from 'vitest';
import '../../../src/screens/treatment/which-ph';
import { open, user } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';
import { disposalState } from '../paperwork/disposal-state';

async function said(): Promise<void> {
  await user.type(screen.getByLabelText('Who said so'), 'Water board');
  await user.type(screen.getByLabelText('When'), '2026-05-12');
}

const keep = () => user.click(screen.getByRole('button', { name: 'Keep this rule' }));

test('a limit is entered metal after metal with a comma, listed, and corrected under its name', async () => {
  const { shell, state, path } = await workshopInMemory();
  const list = open(shell, 'record/rules');
  expect(screen.getByRole('link', { name: /Most of each metal/ }).getAttribute('href')).toBe(
    '#/record/rules/discharge-limits',
  );
  list.unmount();
  const form = open(shell, 'record/rules/discharge-limits');
  await said();
  await keep();
  expect(screen.getByText('Choose a metal and write its limit.')).toBeTruthy();
  await user.selectOptions(screen.getByLabelText('Which metal?'), 'Copper');
  await user.type(screen.getByLabelText('Copper, at most'), '0,5');
  await user.selectOptions(screen.getByLabelText('Another metal'), 'Nickel');
  await user.type(screen.getByLabelText('Nickel, at most'), '1');
  await keep();
  await waitFor(() => expect(path.value).toEqual(['record', 'rules']));
  const kept = state.value.rules.get('discharge-limits');
  expect(kept?.body).toMatchObject({
    stated: { value: { Cu: { value: '0.5', unit: 'mg/L' }, Ni: { value: '1', unit: 'mg/L' } } },
    saidBy: 'Water board',
  });
  form.unmount();
  const after = open(shell, 'record/rules');
  expect(screen.getByText(/Copper 0[.,]5\smg\/L, nickel 1\smg\/L; Water board said so/)).toBeTruthy();
  after.unmount();
  const entry = state.value.log.at(-1);
  open(shell, `record/entry/${entry?.id}/correct`);
  expect(screen.getByLabelText('Copper, at most')).toBeTruthy();
});

test('a pH of a discharge has a lowest end below its highest', async () => {
  const { shell, state } = await workshopInMemory();
  open(shell, 'record/rules/discharge-ph');
  await said();
  await user.type(screen.getByLabelText('Lowest pH'), '9.5');
  await user.type(screen.getByLabelText('Highest pH'), '6.5');
  await keep();
  expect(screen.getByText('The lowest pH must be below the highest.')).toBeTruthy();
  expect(state.value.rules.size).toBe(0);
  await user.clear(screen.getByLabelText('Highest pH'));
  await user.type(screen.getByLabelText('Highest pH'), '10.5');
  await keep();
  await waitFor(() =>
    expect(state.value.rules.get('discharge-ph')?.body.stated.value).toEqual({
      low: { value: '9.5', unit: '1' },
      high: { value: '10.5', unit: '1' },
    }),
  );
});

test('the record counts each rule that its list shows', async () => {
  const { shell, does } = await workshopInMemory();
  const list = open(shell, 'record/rules');
  const links = within(screen.getByRole('main')).getAllByRole('link');
  const shown = links.filter((link) => link.getAttribute('href')?.startsWith('#/record/rules/')).length;
  list.unmount();
  await does({
    do: 'state-local-rule',
    stated: {
      rule: 'discharge-ph',
      value: { low: { value: '6.5', unit: '1' }, high: { value: '9.5', unit: '1' } },
    },
    saidBy: 'Water board',
    saidOn: '2026-05-12',
  });
  open(shell, 'record');
  expect(screen.getByText(`1 of ${shown} entered`)).toBeTruthy();
});

test('the page of the pH leads to the form of the limits that are not entered', async () => {
  const { shell, barren } = await disposalState();
  open(shell, `containers/${barren}/treatment/ph`);
  const link = await screen.findByRole('link', { name: /Your limits are not entered/ }, { timeout: 10_000 });
  expect(link.getAttribute('href')).toBe('#/record/rules/discharge-limits');
});
