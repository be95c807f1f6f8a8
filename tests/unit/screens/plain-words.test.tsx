import { render, screen } from '@testing-library/preact';
import { expect, test } from 'vitest';
import { loadEveryday, screenAt } from '../../../src/app/routes';
import { quantity } from '../../../src/quantities/quantity';
import { heldText, minutesShown } from '../../../src/screens/amounts';
import { type Shell, ShellProvider } from '../../../src/screens/shell';
import { residueState } from './residue-state';
import { runState } from './treatment-run-state';

await loadEveryday();

test('minutes stand in hours and minutes above an hour and a half', () => {
  const text = (minutes: number) => Object.values(minutesShown(minutes)).join(' ').replace(/\s/g, ' ');
  expect([90, 91, 120, 664].map(text)).toEqual(['90 min', '1 h 31 min', '2 h', '11 h 4 min']);
});

test('a few millilitres do not read as nothing', () => {
  const text = (litres: string) =>
    heldText({ volume: quantity(litres, 'L'), mass: quantity(0, 'g') }, '.').replace(/\s/g, ' ');
  expect(['0.0021', '0.0999', '0.1', '6.7', '0'].map(text)).toEqual([
    '2.1 mL',
    '99.9 mL',
    '0.10 L',
    '6.70 L',
    '0.00 L',
  ]);
});

test('a clearance that a treatment was begun on no longer stands on Today as cleared', async () => {
  const p = await runState();
  await p.allows();
  const clearance = await p.clears();
  p.show('today');
  expect(screen.getByText(/^Cleared until/)).toBeTruthy();
  await p.does({
    do: 'log-treatment-happened',
    containerId: p.barren,
    stages: [{ agent: 'hydrated-lime' }],
    clearance: clearance.id,
  });
  p.show('today');
  expect(screen.queryByText(/^Cleared until/)).toBeNull();
});

const open = (shell: Shell, address: string) => {
  const found = screenAt(address.split('/'));
  if (!found) throw new Error(`nothing at ${address}`);
  return render(
    <ShellProvider value={shell}>
      <found.screen at={found.at} />
    </ShellProvider>,
  );
};

test('a container with solids alone says that it has no liquid, not how little', async () => {
  const { shell, tub } = await residueState();
  open(shell, `containers/${tub}`);
  expect(screen.getByText('no liquid')).toBeTruthy();
  expect(screen.getByText(/^solids fill \d+\s% of 5\sL$/)).toBeTruthy();
});

test('liquors that a residue may hold are told apart by volume and day', async () => {
  const { shell, batch } = await residueState();
  open(shell, `batches/${batch}/log/ceramic-residue`);
  const held = (await screen.findByLabelText('Liquor it still holds')) as HTMLSelectElement;
  const named = [...held.options].map(({ textContent }) => (textContent ?? '').replace(/\s/g, ' '));
  expect(named[0]).toMatch(/^Barren liquor, 6.70 L, /);
  expect(new Set(named).size).toBe(named.length);
});
