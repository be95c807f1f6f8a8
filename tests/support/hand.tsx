/** A hand on a page: opens an address as a tap on a row does, taps, writes and chooses by the names that are read out. */
import { cleanup, render, screen } from '@testing-library/preact';
import userEvent from '@testing-library/user-event';
import { loadEveryday, screenAt } from '../../src/app/routes';
import { type Shell, ShellProvider } from '../../src/screens/shell';

export const user = userEvent.setup();

await loadEveryday();

/** @param address "batches/new", or a link's "#/batches/new" */
export function open(shell: Shell, address: string) {
  const found = screenAt(address.replace(/^#\//, '').split('/').map(decodeURIComponent));
  if (!found) throw new Error(`nothing at ${address}`);
  const { screen: Screen, at } = found;
  cleanup();
  return render(
    <ShellProvider value={shell}>
      <Screen at={at} />
    </ShellProvider>,
  );
}

export const row = (name: RegExp) => screen.getByRole('link', { name });

/** Goes where a row leads. */
export const follow = (shell: Shell, name: RegExp) => open(shell, row(name).getAttribute('href') ?? '');

export const tap = (name: string | RegExp) => user.click(screen.getByRole('button', { name }));

export const type = (label: string | RegExp, text: string) => user.type(screen.getByLabelText(label), text);

/** Writes it anew, or leaves it empty. */
export async function fill(label: string | RegExp, text: string): Promise<void> {
  await user.clear(screen.getByLabelText(label));
  if (text !== '') await user.type(screen.getByLabelText(label), text);
}

export const choose = (label: string, option: string) =>
  user.selectOptions(screen.getByLabelText(label), option);
