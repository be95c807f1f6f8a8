import { cleanup, render, screen, within } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import { ContainerScreen } from '../../../src/screens/containers/container';
import { ShellProvider } from '../../../src/screens/shell';
import { WashingScreen } from '../../../src/screens/washing/washing';
import { follow, open, row, type, user } from '../../support/hand';
import { residueState } from './residue-state';

type Made = Awaited<ReturnType<typeof residueState>>;

const show = ({ shell, tub }: Made, id = tub) =>
  render(
    <ShellProvider value={shell}>
      <WashingScreen at={{ id }} />
    </ShellProvider>,
  );

async function washes(memory: Made, volume = '0.50', count = '3') {
  show(memory);
  await type('Water for each wash', volume);
  await type('Washes', count);
}

describe('washing a residue', () => {
  test('is reached from a container that holds one, and from no other', async () => {
    const memory = await residueState();
    const container = (id: string) =>
      render(
        <ShellProvider value={memory.shell}>
          <ContainerScreen at={{ id }} />
        </ShellProvider>,
      );
    container(memory.barren);
    expect(screen.queryByRole('link', { name: /Wash it/ })).toBeNull();
    cleanup();
    container(memory.tub);
    const link = screen.getByRole('link', { name: /Wash it/ });
    expect(link.getAttribute('href')).toBe(`#/containers/${memory.tub}/washing`);
    open(memory.shell, link.getAttribute('href') ?? '');
    expect(screen.getByRole('heading', { level: 1, name: 'Washing' })).toBeDefined();
  });

  test('tells what stays and the wash water as soon as water and washes are told', async () => {
    const memory = await residueState();
    show(memory);
    expect(screen.getByText(/stand here once water and washes/)).toBeDefined();
    await type('Water for each wash', '0.50');
    await type('Washes', '3');
    expect(row(/Wash water made/).textContent).toContain('1.50');
    expect(row(/Copper that stays/)).toBeDefined();
    expect(row(/Nickel that stays/)).toBeDefined();
    expect(row(/Free acid that stays/)).toBeDefined();
  });

  test('says that how well a wash mixes is from memory or practice, and opens it', async () => {
    const memory = await residueState();
    await washes(memory);
    expect(row(/What a wash takes out/).textContent).toMatch(/from memory/);
    await user.selectOptions(screen.getByLabelText('How it is washed'), 'settled');
    await type('Stays when poured off', '0.60');
    expect(row(/What a wash takes out/).textContent).toMatch(/common practice, no source/);
    expect(row(/Water used/)).toBeDefined();
    follow(memory.shell, /What a wash takes out/);
    expect(screen.getByText(/Stirred up until no lump/)).toBeDefined();
  });

  test('opens every figure into its working, down to what was weighed', async () => {
    const memory = await residueState();
    await washes(memory);
    follow(memory.shell, /Copper that stays/);
    expect(screen.getByRole('heading', { level: 1, name: /Copper that stays/ })).toBeDefined();
    const deeper = screen.getAllByRole('link', { name: /worked out/ }).at(-1);
    open(memory.shell, deeper?.getAttribute('href') ?? '');
    expect(screen.getByRole('heading', { level: 1, name: /Share that stays/ })).toBeDefined();
    expect(screen.getAllByText(/³/).length).toBeGreaterThan(0);
  });

  test('a limit gives the fewest washes, the least water and the plot with its table', async () => {
    const memory = await residueState();
    await washes(memory);
    expect(screen.getByText(/stand here once a limit/)).toBeDefined();
    await type('May stay', '50');
    const needed = screen.getByText('Washes of this water').closest('li');
    expect(needed?.textContent).toMatch(/likely 4 are enough/);
    // By hand: 1.62 g on 300 g dry, 28 % staying each time, 41 % at the high end.
    expect(needed?.textContent).toMatch(/6$/);
    expect(row(/Least wash water, 12 washes/)).toBeDefined();
    expect(screen.getByRole('img', { name: /Wash water against washes/ })).toBeDefined();
    const tables = screen.getAllByRole('table');
    expect(within(tables[0] as HTMLElement).getAllByRole('row').length).toBeGreaterThan(8);
  });

  test('a limit kept before any wash, and one of a metal nobody told, are said in words', async () => {
    const memory = await residueState();
    await washes(memory);
    await type('May stay', '90000');
    expect(screen.getByText('Under the limit before any wash.')).toBeDefined();
    await memory.holds('300', memory.washStream);
    cleanup();
    show(memory);
    await user.selectOptions(screen.getByLabelText('Residue'), '1');
    expect(screen.getByText('Nobody told how much copper the liquor held.')).toBeDefined();
    expect(screen.getByLabelText('Limit for')).toHaveProperty('value', 'Cu');
  });

  test('half a wash, and a level below what it holds drained, are faults at their fields', async () => {
    const memory = await residueState();
    await washes(memory, '0.50', '2.5');
    await user.tab();
    expect(screen.getByText('A whole number.')).toBeDefined();
    expect(screen.getByText(/stand here once water and washes/)).toBeDefined();
    await user.selectOptions(screen.getByLabelText('How it is washed'), 'settled');
    await type('Stays when poured off', '0.01');
    await user.tab();
    expect(screen.getByText('It holds more than that drained.')).toBeDefined();
  });

  test('keeps what was typed when the person comes back', async () => {
    const memory = await residueState();
    await washes(memory, '0,75', '4');
    cleanup();
    show(memory);
    expect(screen.getByLabelText('Water for each wash')).toHaveProperty('value', '0,75');
    expect(row(/Wash water made/).textContent).toContain('3.00');
  });

  test('asks which residue where there are several', async () => {
    const memory = await residueState();
    await memory.holds('800', memory.barrenStream);
    show(memory);
    await user.selectOptions(screen.getByLabelText('Residue'), '1');
    await type('Water for each wash', '0.50');
    await type('Washes', '1');
    const more = row(/Copper in the wash water/).textContent;
    await user.selectOptions(screen.getByLabelText('Residue'), '0');
    expect(row(/Copper in the wash water/).textContent).not.toBe(more);
  });

  test('says so where nobody knows what liquor is held', async () => {
    const memory = await residueState();
    show(memory, memory.barren);
    expect(screen.getByText(/Nothing here is known to hold a liquor/)).toBeDefined();
  });
});
