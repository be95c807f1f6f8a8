import { act, cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/preact';
import { describe, expect, it } from 'vitest';
import { emergencyCards } from '../../../src/safety/emergency-cards';
import { minutesAfter } from '../../../src/safety/stated-time';
import { hour } from '../../../src/screens/frame';
import { ShellProvider } from '../../../src/screens/shell';
import { Sos } from '../../../src/screens/sos/sos';
import { type ShellInMemory, shellInMemory, workshopInMemory } from '../../support/shell-in-memory';

const show = (memory: ShellInMemory, card?: string): void => {
  cleanup();
  render(
    <ShellProvider value={memory.shell}>
      <Sos at={card === undefined ? {} : { card }} />
    </ShellProvider>,
  );
};

const text = (): string => document.body.textContent ?? '';

describe('the emergency card', () => {
  it('opens on the card most likely to be needed, with the others in the bar', async () => {
    const memory = await workshopInMemory();
    show(memory);
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Breathed brown fume');
    const bar = within(screen.getByRole('navigation'));
    for (const name of ['Eye, skin', 'Spill', 'Fire', 'More']) expect(bar.getByText(name)).toBeTruthy();
    expect(bar.queryByText('SOS')).toBeNull();
    fireEvent.click(bar.getByText('Spill'));
    expect(memory.path.value).toEqual(['sos', 'spill']);
  });

  it('calls the number of the workshop and gives its address and map reference to say', async () => {
    const memory = await workshopInMemory();
    show(memory);
    expect(screen.getByRole('link', { name: /^Call 112/ }).getAttribute('href')).toBe('tel:112');
    expect(text()).toContain('Call 112. Say this:');
    expect(text()).toContain('Weir Yard 6, Ostermill. Map 4471 0926.');
    expect(text()).toContain('No signal? Phone at Weir Yard 4.');
  });

  it('works before the workshop is described, and says that it is not', () => {
    show(shellInMemory());
    expect(text()).toContain('The workshop is not described yet');
    expect(screen.getByRole('link', { name: 'Call 112' }).getAttribute('href')).toBe('tel:112');
    expect(screen.getByRole('link', { name: 'Call 911' }).getAttribute('href')).toBe('tel:911');
    expect(screen.getByText('Out, upwind. Stay out.')).toBeTruthy();
  });

  it('keeps the hour that was noted over a reload and writes nothing into the record', async () => {
    const memory = await workshopInMemory();
    const lines = memory.state.value.log.length;
    show(memory, 'breathed-fume');
    await act(async () => {
      fireEvent.click(screen.getByRole('button', { name: /^Note/ }));
    });
    const noted = screen.getByRole('status').textContent ?? '';
    expect(noted).toMatch(/^Noted: \d\d:\d\d\.$/);
    await act(async () => memory.pass(3 * 60_000));
    show(memory, 'breathed-fume');
    expect(screen.getByRole('status').textContent).toBe(noted);
    expect(memory.state.value.log).toHaveLength(lines);
  });

  it.each([...emergencyCards.values()].map(({ id, title }) => [id, title]))(
    'has a page for %s with every act in order, and never says that a call gets through',
    async (id, title) => {
      show(await workshopInMemory(), id);
      expect(screen.getByRole('heading', { level: 1 }).textContent).toBe(title);
      const acts = within(screen.getByRole('list', { name: 'What to do, in this order' })).getAllByRole(
        'listitem',
      );
      expect(acts).toHaveLength(emergencyCards.get(id)?.steps.length ?? 0);
      expect(text()).not.toMatch(/will work|always work|gets through|safe|compliant/i);
    },
  );

  it('lists every card behind "More"', async () => {
    show(await workshopInMemory(), 'all');
    const rows = within(screen.getByRole('list', { name: 'Emergency cards' })).getAllByRole('button');
    expect(rows.map((row) => row.textContent)).toEqual(
      [...emergencyCards.values()].map(({ title }) => title),
    );
  });
});

describe('the rinse on the splash card', () => {
  const splashed = async () => {
    const memory = await workshopInMemory();
    memory.path.value = ['sos', 'eye-skin'];
    show(memory, 'eye-skin');
    return memory;
  };
  const tap = (name: RegExp) =>
    act(async () => {
      fireEvent.click(screen.getByRole('button', { name }));
    });
  const timer = () => screen.getByRole('timer').textContent;
  const clocks = (memory: ShellInMemory) => [...memory.state.value.clocks.values()];

  it('starts with one tap, counts by the second, and notes the hour for the doctor', async () => {
    const memory = await splashed();
    const begun = memory.now.value;
    await tap(/^Start 15 min/);
    expect(timer()).toBe('15:00');
    expect(clocks(memory).map(({ body, at }) => [body.of, body.due, at])).toEqual([
      ['rinse', minutesAfter(begun, 15), begun],
    ]);
    expect(text()).toContain(`Rinse until ${hour(minutesAfter(begun, 15))}.`);
    expect(text()).toContain(`Noted: ${hour(begun)}.`);
    await act(async () => memory.pass(61_000));
    expect(timer()).toBe('13:59');
    expect(screen.getByRole('button', { name: /^Note/ })).toBeTruthy();
  });

  it('takes two taps in a hurry for one', async () => {
    const memory = await splashed();
    await tap(/^Start 15 min/);
    await tap(/^Note/);
    expect(text()).toMatch(/Noted: \d\d:\d\d\./);
    expect(clocks(memory)).toHaveLength(1);
  });

  it('runs on after a reload, once', async () => {
    const memory = await splashed();
    await tap(/^Start 15 min/);
    await act(async () => memory.pass(5 * 60_000));
    show(memory, 'eye-skin');
    expect(timer()).toBe('10:00');
    expect(clocks(memory)).toHaveLength(1);
    expect(screen.queryByRole('button', { name: /^Start/ })).toBeNull();
  });

  it('says since when it is over, never below nothing, and can be started again', async () => {
    const memory = await splashed();
    await tap(/^Start 15 min/);
    await act(async () => memory.pass(20 * 60_000));
    expect(screen.queryByRole('timer')).toBeNull();
    expect(text()).toMatch(/Its time is over since \d\d:15\. Longer if it still hurts\./);
    await tap(/^Start 15 min/);
    expect(timer()).toBe('15:00');
    expect(clocks(memory)).toHaveLength(2);
  });

  it.each([
    ['fails', async (memory: ShellInMemory) => memory.breakStore({ code: 'closed' })],
    [
      'throws',
      async (memory: ShellInMemory) => {
        Object.assign(memory.shell, { perform: () => Promise.reject(new Error('out of order')) });
      },
    ],
  ])(
    'counts all the same when the record %s, also after a reload, and can be written later',
    async (_, breaks) => {
      const memory = await splashed();
      const { perform } = memory.shell;
      const begun = memory.now.value;
      await breaks(memory);
      show(memory, 'eye-skin');
      await tap(/^Start 15 min/);
      expect(timer()).toBe('15:00');
      expect((await screen.findByRole('alert')).textContent).toContain('could not be written');
      await act(async () => memory.pass(60_000));
      show(memory, 'eye-skin');
      expect(timer()).toBe('14:00');
      expect(screen.getByRole('link', { name: /^Call 112/ })).toBeTruthy();
      memory.breakStore(null);
      Object.assign(memory.shell, { perform });
      show(memory, 'eye-skin');
      await tap(/^Write it into the record/);
      expect(clocks(memory).map(({ at }) => at)).toEqual([begun]);
      expect(timer()).toBe('14:00');
      await waitFor(() => expect(screen.queryByRole('alert')).toBeNull());
    },
  );

  it('counts at once, before the record has answered', async () => {
    const memory = await splashed();
    Object.assign(memory.shell, { perform: () => new Promise(() => undefined) });
    show(memory, 'eye-skin');
    await tap(/^Start 15 min/);
    expect(timer()).toBe('15:00');
    expect(screen.queryByRole('alert')).toBeNull();
  });

  it('stands on no other card', async () => {
    const memory = await splashed();
    await tap(/^Start 15 min/);
    show(memory, 'spill');
    expect(screen.queryByRole('timer')).toBeNull();
    expect(screen.queryByRole('button', { name: /^Start/ })).toBeNull();
  });

  it('can be ended from the card', async () => {
    const memory = await splashed();
    await tap(/^Start 15 min/);
    expect(screen.getByRole('link', { name: 'End this clock' }).getAttribute('href')).toBe(
      `#/clocks/${clocks(memory)[0]?.body.clockId}`,
    );
  });
});
