/** Local rules: taken over one by one from a starting point, or written; never filled in by themselves. */
import { screen, waitFor } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import { neededRules } from '../../../src/ledger/flags';
import { ruleGroups } from '../../../src/screens/record/rule-words';
import { open, tap, user } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';

describe('a starting point', () => {
  test('fills the lines with its text and its day when it is taken over, and is written only when kept', async () => {
    const { shell, state } = await workshopInMemory();
    open(shell, 'record/rules/storage-days');
    expect((screen.getByLabelText('How long may waste stay?') as HTMLInputElement).value).toBe('');
    await tap(/^Take over 90/);
    expect((screen.getByLabelText('How long may waste stay?') as HTMLInputElement).value).toBe('90');
    expect((screen.getByLabelText('Who said so') as HTMLInputElement).value).toContain('40 CFR 262.17');
    expect(state.value.rules.size).toBe(0);
    await tap('Keep this rule');
    await waitFor(() => expect(state.value.rules.size).toBe(1));
    expect(state.value.rules.get('storage-days')?.body).toMatchObject({
      stated: { value: { value: '90', unit: 'days' } },
      takenFrom: { start: 'us-federal', read: 'verified' },
    });
  });

  test('is no source any more once another value is written in its place', async () => {
    const { shell, state } = await workshopInMemory();
    open(shell, 'record/rules/storage-days');
    await tap(/^Take over 90/);
    const field = screen.getByLabelText('How long may waste stay?');
    await user.clear(field);
    await user.type(field, '60');
    const who = screen.getByLabelText('Who said so');
    await user.clear(who);
    await user.type(who, 'County office');
    await tap('Keep this rule');
    await waitFor(() => expect(state.value.rules.size).toBe(1));
    expect(state.value.rules.get('storage-days')?.body.takenFrom).toBeUndefined();
    expect(state.value.rules.get('storage-days')?.body.saidBy).toBe('County office');
  });

  test('says where it is from memory', async () => {
    const { shell } = await workshopInMemory();
    open(shell, 'record/rules/storage-days');
    expect(screen.getAllByText(/from memory, not checked against its source/).length).toBe(2);
  });
});

describe('rules of other kinds', () => {
  test('laws are ticked, several at once', async () => {
    const { shell, state } = await workshopInMemory();
    open(shell, 'record/rules/laws');
    await user.click(screen.getByLabelText('California, besides federal'));
    await user.click(screen.getByLabelText('United States, federal'));
    await user.type(screen.getByLabelText('Who said so'), 'County office');
    await user.type(screen.getByLabelText('When'), '2026-05-12');
    await tap('Keep this rule');
    await waitFor(() => expect(state.value.rules.size).toBe(1));
    expect(state.value.rules.get('laws')?.body.stated.value).toEqual(['us-federal', 'us-california']);
  });

  test('a month is limited in kilograms or pounds, days are whole', async () => {
    const { shell, state } = await workshopInMemory();
    const page = open(shell, 'record/rules/month-limit');
    await user.type(screen.getByLabelText('How much may a month make?'), '220.5');
    await user.selectOptions(screen.getByRole('combobox'), 'lb');
    await user.type(screen.getByLabelText('Who said so'), 'County office');
    await user.type(screen.getByLabelText('When'), '2026-05-12');
    await tap('Keep this rule');
    await waitFor(() => expect(state.value.rules.size).toBe(1));
    expect(state.value.rules.get('month-limit')?.body.stated.value).toEqual({ value: '220.5', unit: 'lb' });
    page.unmount();
    open(shell, 'record/rules/proof-days');
    await user.type(screen.getByLabelText('In how many days must the proof be here?'), '30.5');
    await tap('Keep this rule');
    expect(screen.getByText('Write a whole number.')).toBeTruthy();
    expect(state.value.rules.size).toBe(1);
  });

  test('a number that no authority can have said is refused where it is typed', async () => {
    const { shell, state } = await workshopInMemory();
    open(shell, 'record/rules/storage-days');
    await user.type(screen.getByLabelText('How long may waste stay?'), '99999999');
    await user.type(screen.getByLabelText('Who said so'), 'County office');
    await user.type(screen.getByLabelText('When'), '2026-05-12');
    await tap('Keep this rule');
    expect(screen.getByText('At most 36525 days. Check the number and its unit.')).toBeTruthy();
    expect(state.value.rules.size).toBe(0);
  });

  test('each that is needed has its row, and what holds while it is not entered', async () => {
    const { shell } = await workshopInMemory();
    open(shell, 'record/rules');
    const shown = ruleGroups.flatMap(({ rules }) => rules);
    for (const rule of neededRules) expect(shown).toContain(rule);
    expect(screen.getAllByText(/^Not entered\. \S/).length).toBeGreaterThanOrEqual(shown.length);
  });
});
