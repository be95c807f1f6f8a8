import { act, cleanup, fireEvent, render, screen, within } from '@testing-library/preact';
import { describe, expect, it } from 'vitest';
import { emergencyCards } from '../../../src/safety/emergency-cards';
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
    show(memory, 'eye-skin');
    await act(async () => {
      fireEvent.click(screen.getByRole('button', { name: /^Note/ }));
    });
    const noted = screen.getByRole('status').textContent ?? '';
    expect(noted).toMatch(/^Noted: \d\d:\d\d\.$/);
    await act(async () => memory.pass(3 * 60_000));
    show(memory, 'eye-skin');
    expect(screen.getByRole('status').textContent).toBe(noted);
    expect(text()).toMatch(/At least until \d\d:15/);
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
