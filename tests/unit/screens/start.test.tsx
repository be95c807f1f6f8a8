import { screen, waitFor } from '@testing-library/preact';
import { describe, expect, test, vi } from 'vitest';
import type { Shell } from '../../../src/screens/shell';
import { open, tap, user } from '../../support/hand';
import { shellInMemory } from '../../support/shell-in-memory';

async function fillWorkshop() {
  await user.type(screen.getByLabelText('Name of the workshop'), 'Weir Yard shed');
  await user.type(screen.getByLabelText('Address'), 'Weir Yard 6, Ostermill');
  await user.type(screen.getByLabelText('Emergency number'), '112');
}

describe('the first start', () => {
  test('opens the invented workshop by its second door', async () => {
    const { shell } = shellInMemory();
    const enter = vi.fn(async () => undefined);
    open({ ...shell, demo: { ...shell.demo, enter } }, 'start');
    await user.click(screen.getByRole('button', { name: /Look round an invented workshop first/ }));
    expect(enter).toHaveBeenCalledOnce();
  });

  test('leads whoever has a backup to where it is brought back', () => {
    open(shellInMemory().shell, 'start');
    const door = screen.getByRole('link', { name: /I have a backup/ });
    expect(door.getAttribute('href')).toBe('#/record/restore');
  });

  test('says at each field what is missing, and goes to the first of them', async () => {
    const { shell, state } = shellInMemory();
    open(shell, 'start/workshop');
    await tap('Keep, go on');
    for (const label of ['Name of the workshop', 'Address', 'Emergency number'])
      expect(screen.getByLabelText(label).getAttribute('aria-invalid')).toBe('true');
    const first = screen.getByLabelText('Name of the workshop');
    await waitFor(() => expect(document.activeElement).toBe(first));
    expect(state.value.workshop).toBeNull();
  });

  test.each(['ring Joe', '11'])('refuses “%s” as a number to dial', async (number) => {
    const { shell, state } = shellInMemory();
    open(shell, 'start/workshop');
    await fillWorkshop();
    await user.clear(screen.getByLabelText('Emergency number'));
    await user.type(screen.getByLabelText('Emergency number'), number);
    await tap('Keep, go on');
    expect(screen.getByText(/Digits are missing/)).toBeTruthy();
    expect(state.value.workshop).toBeNull();
  });

  test('a collector without a way to reach it is asked for one', async () => {
    const { shell, state } = shellInMemory();
    open(shell, 'start/workshop');
    await fillWorkshop();
    await user.type(screen.getByLabelText('Licensed collector'), 'Fenwater');
    await tap('Keep, go on');
    expect(screen.getByText('Write how to reach it too.')).toBeTruthy();
    await user.type(screen.getByLabelText('How to reach the collector'), '01632 960 077');
    await tap('Keep, go on');
    await waitFor(() => expect(state.value.workshop?.body.collector?.name).toBe('Fenwater'));
  });

  test('a half-filled workshop survives a reload, and is gone once it is kept', async () => {
    const { shell, state, path, drafts } = shellInMemory();
    const before = open(shell, 'start/workshop');
    await fillWorkshop();
    before.unmount();
    open(shell, 'start/workshop');
    expect(screen.getByLabelText<HTMLTextAreaElement>('Address').value).toBe('Weir Yard 6, Ostermill');
    await tap('Keep, go on');
    await waitFor(() => expect(path.value).toEqual(['start', 'people']));
    expect(state.value.workshop?.body.name).toBe('Weir Yard shed');
    expect([...drafts.keys()]).toEqual([]);
  });

  test('the first of the people holds the phone; an empty line writes nobody', async () => {
    const { shell, state, path, person } = shellInMemory();
    open(shell, 'start/people');
    await tap('Keep, go on');
    expect(screen.getByText('Write something here.')).toBeTruthy();
    await user.type(screen.getByLabelText('Your name'), 'Maren');
    await tap('One more person');
    await user.type(screen.getByLabelText('Name of person 2'), 'Tobias');
    await tap('One more person');
    await tap('Keep, go on');
    await waitFor(() => expect(path.value).toEqual(['start', 'rules']));
    expect([...state.value.people.values()].map(({ body }) => body.name)).toEqual(['Maren', 'Tobias']);
    expect(state.value.people.get(person.value ?? '')?.body.name).toBe('Maren');
  });

  test('a phone without a name is not lost', async () => {
    const { shell, state } = shellInMemory();
    open(shell, 'start/people');
    await user.type(screen.getByLabelText('Your name'), 'Maren');
    await tap('One more person');
    await user.type(screen.getByLabelText('Phone of person 2'), '01632 960 134');
    await tap('Keep, go on');
    expect(screen.getByLabelText('Name of person 2').getAttribute('aria-invalid')).toBe('true');
    expect(state.value.people.size).toBe(0);
  });

  test('a disk that fills between two people loses nobody, says so, and writes nobody twice', async () => {
    const { shell, state, breakStore } = shellInMemory();
    const perform: Shell['perform'] = async (...told) => {
      const performed = await shell.perform(...told);
      if (state.value.people.size === 1) breakStore({ code: 'disk-full' });
      return performed;
    };
    open({ ...shell, perform }, 'start/people');
    await user.type(screen.getByLabelText('Your name'), 'Maren');
    await tap('One more person');
    await user.type(screen.getByLabelText('Name of person 2'), 'Tobias');
    await tap('Keep, go on');
    expect((await screen.findByRole('alert')).textContent).toContain('The phone is full');
    expect(screen.getByLabelText<HTMLInputElement>('Your name').value).toBe('Tobias');
    breakStore(null);
    await tap('Keep, go on');
    await waitFor(() => expect(state.value.people.size).toBe(2));
    expect([...state.value.people.values()].map(({ body }) => body.name)).toEqual(['Maren', 'Tobias']);
  });

  test('tells what follows while no local rule is entered, with both ways on', () => {
    const { shell } = shellInMemory();
    open(shell, 'start/rules');
    expect(screen.getByText('Nothing is called fit for a drain.')).toBeTruthy();
    expect(screen.getByRole('link', { name: /Enter them now/ }).getAttribute('href')).toBe('#/record/rules');
    expect(screen.getByRole('link', { name: /Later/ }).getAttribute('href')).toBe('#/today');
  });
});
