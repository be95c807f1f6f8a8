import { cleanup, render, screen, within } from '@testing-library/preact';
import userEvent from '@testing-library/user-event';
import { describe, expect, test, vi } from 'vitest';
import { ShellProvider } from '../../../src/screens/shell';
import { PlanScreen } from '../../../src/screens/treatment/plan';
import { TreatmentScreen } from '../../../src/screens/treatment/treatment';
import { TreatmentWorking } from '../../../src/screens/treatment/working';
import { disposalState } from '../paperwork/disposal-state';
import { residueState } from './residue-state';

/** Each page asks the equilibrium model some hundred times, which takes its time on a busy machine. */
vi.setConfig({ testTimeout: 30_000 });

type Made = Awaited<ReturnType<typeof disposalState>>;

const show = ({ shell, barren }: Made, id = barren) =>
  render(
    <ShellProvider value={shell}>
      <PlanScreen at={{ id }} />
    </ShellProvider>,
  );
const portions = (base: string) =>
  screen.findByRole('table', { name: `Portions of ${base}` }, { timeout: 10_000 });

/** No., grams, so far and pH of each line. */
const linesOf = (table: HTMLElement): string[][] =>
  within(table)
    .getAllByRole('row')
    .map((row) => [...row.children].map((cell) => cell.textContent ?? ''))
    .filter((cells) => cells.length === 4 && /^\d+$/.test(cells[0] ?? ''));

async function limestoneFirst(memory: Made): Promise<void> {
  show(memory);
  await userEvent.click(await screen.findByRole('radio', { name: /Limestone, then/ }, { timeout: 10_000 }));
}

describe('the portions of a treatment', () => {
  test('add up to what is so far in, from the first to the high end of what is needed', async () => {
    show(await disposalState());
    const lines = linesOf(await portions('hydrated lime'));
    let sum = 0;
    for (const [at, [number, grams, soFar]] of lines.entries()) {
      sum += Number(grams);
      expect(number).toBe(`${at + 1}`);
      expect(Number(soFar)).toBeCloseTo(sum, 6);
    }
    // 350 to 440 g are needed.
    expect(sum).toBeGreaterThanOrEqual(430);
    expect(sum).toBeLessThan(470);
  });

  test('say what pH to expect after each, and from where on the pH decides', async () => {
    show(await disposalState());
    const table = await portions('hydrated lime');
    const [first] = linesOf(table);
    expect(first?.[3]).toMatch(/^0\.\d( to \d\.\d)?$/);
    expect(within(table).getByText(/^Only if the pH is still below 9\.\d:$/)).toBeDefined();
    expect(screen.getByText(/^Stop at pH 9\.\d, however much is left\.$/)).toBeDefined();
  });

  test('tell the water for the largest one in the table, by its grams', async () => {
    show(await disposalState());
    const grams = linesOf(await portions('hydrated lime')).map(([, of]) => Number(of));
    const name = new RegExp(`^Water for a portion of ${Math.max(...grams)}\\sg`);
    expect(screen.getByRole('link', { name })).toBeDefined();
  });

  test('become more where less warming is allowed', async () => {
    show(await disposalState());
    const before = linesOf(await portions('hydrated lime')).length;
    await userEvent.type(screen.getByLabelText('A portion may warm it by'), '2');
    await expect
      .poll(async () => linesOf(await portions('hydrated lime')).length, { timeout: 10_000 })
      .toBeGreaterThan(before + 5);
  });

  test('limestone first: two stages, foam holds the portions, gas and waits are told', async () => {
    await limestoneFirst(await disposalState());
    await portions('limestone');
    await portions('hydrated lime');
    expect(screen.getByRole('heading', { level: 2, name: '1. Limestone to pH 5.0' })).toBeDefined();
    expect(screen.getByRole('heading', { level: 2, name: /^2\. Hydrated lime to pH 9\.\d$/ })).toBeDefined();
    expect(screen.getByRole('link', { name: /by the foam.*this one holds/ })).toBeDefined();
    expect(screen.getByRole('link', { name: /Carbon dioxide of this stage/ })).toBeDefined();
    expect(screen.getByLabelText('Free space over it')).toBeDefined();
    expect(screen.getByText(/empty: 3\.3\sL, what the container has left/)).toBeDefined();
  });

  test('a stage that does not get there says what to do instead', async () => {
    await limestoneFirst(await disposalState());
    await userEvent.type(screen.getByLabelText('Limestone to pH'), '6');
    await screen.findByText(/^Limestone ends at pH 5\.\d\. Write a lower pH for it/, undefined, {
      timeout: 10_000,
    });
    expect(screen.queryByRole('table')).toBeNull();
  });

  test('so many portions that nobody weighs them are counted, and not listed', async () => {
    const memory = await disposalState();
    show(memory);
    await portions('hydrated lime');
    await userEvent.type(screen.getByLabelText('A portion may warm it by'), '0,1');
    await screen.findByText(/^It would be \d{3} portions\. Take a vessel with more free space/, undefined, {
      timeout: 10_000,
    });
    expect(screen.queryByRole('table')).toBeNull();
    cleanup();
    show(memory);
    await screen.findByText(/^It would be \d{3} portions/, undefined, { timeout: 10_000 });
    expect(screen.getByLabelText('A portion may warm it by')).toHaveProperty('value', '0,1');
  });

  test('with a residue in the vessel nobody knows the free space: it is asked for', async () => {
    const memory = await residueState();
    await memory.holds('400', memory.barrenStream);
    await memory.does({
      do: 'log-stream',
      batchId: memory.batch,
      stepId: null,
      stream: 'barren-liquor',
      liquid: { ...memory.barrenLiquor, volume: { value: '1.00', unit: 'L' } },
      placements: [{ containerId: memory.tub, amount: { value: '1.00', unit: 'L' } }],
    });
    show(memory, memory.tub);
    await userEvent.click(await screen.findByRole('radio', { name: /Limestone, then/ }, { timeout: 10_000 }));
    await screen.findByText(/^Carbon dioxide comes off\. Write how much free space/, undefined, {
      timeout: 10_000,
    });
    await userEvent.type(screen.getByLabelText('Free space over it'), '3');
    await portions('limestone');
  });

  test('of two stages are drawn stage by stage, of one on the page before', async () => {
    const memory = await disposalState();
    show(memory);
    await portions('hydrated lime');
    expect(screen.queryByRole('img', { name: /^pH against/ })).toBeNull();
    cleanup();
    await limestoneFirst(memory);
    await portions('limestone');
    for (const base of ['limestone', 'hydrated lime'])
      expect(screen.getByRole('img', { name: new RegExp(`^pH against ${base}`) })).toBeDefined();
  });

  test('each figure opens its working, as it is chosen', async () => {
    const memory = await disposalState();
    await limestoneFirst(memory);
    await portions('limestone');
    const link = screen.getByRole('link', { name: /by the foam/ });
    expect(link.getAttribute('href')).toBe(`#/containers/${memory.barren}/treatment/working/stage-1-by-foam`);
    cleanup();
    render(
      <ShellProvider value={memory.shell}>
        <TreatmentWorking at={{ id: memory.barren, key: 'stage-1-by-foam' }} />
      </ShellProvider>,
    );
    expect(
      screen.getByRole('heading', { level: 1, name: 'Largest portion for the free space' }),
    ).toBeDefined();
    expect(screen.getByRole('link', { name: 'Back' }).getAttribute('href')).toBe(
      `#/containers/${memory.barren}/treatment/plan`,
    );
  });

  test('take the base and the pH that were chosen before', async () => {
    const memory = await disposalState();
    render(
      <ShellProvider value={memory.shell}>
        <TreatmentScreen at={{ id: memory.barren }} />
      </ShellProvider>,
    );
    await userEvent.click(await screen.findByRole('radio', { name: /^Caustic soda/ }, { timeout: 10_000 }));
    await userEvent.type(screen.getByLabelText('pH wanted'), '9,25');
    cleanup();
    show(memory);
    await portions('caustic soda');
    expect(screen.getByRole('heading', { level: 2, name: '1. Caustic soda to pH 9.25' })).toBeDefined();
    expect(
      screen.getByRole('link', { name: /Water for a portion of .*soda into water; it gets hot/ }),
    ).toBeDefined();
  });

  test('nothing is begun from here unless the local rules allow it', async () => {
    const memory = await disposalState();
    show(memory);
    await portions('hydrated lime');
    expect(screen.getByText('For planning only')).toBeDefined();
    expect(screen.queryByRole('button', { name: /Begin the treatment/ })).toBeNull();
    cleanup();
    await memory.does({
      do: 'state-local-rule',
      stated: { rule: 'treatment-allowed', value: 'yes' },
      saidBy: 'County office',
      saidOn: '2026-05-01',
    });
    show(memory);
    expect(screen.getByRole('button', { name: /Begin the treatment/ })).toBeDefined();
  });
});
