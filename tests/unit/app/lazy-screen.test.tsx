import { render, screen } from '@testing-library/preact';
import userEvent from '@testing-library/user-event';
import { describe, expect, test, vi } from 'vitest';
import { lazyScreen } from '../../../src/app/lazy-screen';
import type { Screen as Opened } from '../../../src/app/routes';
import { updateWaiting } from '../../../src/app/updates';
import { ShellProvider } from '../../../src/screens/shell';
import { shellInMemory } from '../../support/shell-in-memory';

const Page: Opened = ({ at }) => <h1>The page of {at.id}</h1>;

const show = (Screen: Opened) =>
  render(
    <ShellProvider value={shellInMemory().shell}>
      <Screen at={{ id: 'C-07' }} />
    </ShellProvider>,
  );

describe('a screen that is fetched when it is first opened', () => {
  test('stands there once it has come, with the emergency card in reach until then', async () => {
    let come: (screen: Opened) => void = () => undefined;
    show(
      lazyScreen(
        () =>
          new Promise((resolve) => {
            come = resolve;
          }),
      ),
    );
    expect(screen.getByRole('link', { name: 'SOS' })).toBeDefined();
    come(Page);
    expect(await screen.findByRole('heading', { name: 'The page of C-07' })).toBeDefined();
  });

  test('is there at once the second time', async () => {
    const load = vi.fn(async () => Page);
    const Screen = lazyScreen(load);
    const { unmount } = show(Screen);
    await screen.findByText('The page of C-07');
    unmount();
    show(Screen);
    expect(screen.getByText('The page of C-07')).toBeDefined();
    expect(load).toHaveBeenCalledOnce();
  });

  test('that cannot be had says so, keeps every way out, and can be opened again', async () => {
    vi.spyOn(console, 'warn').mockImplementation(() => undefined);
    const reload = vi.spyOn(window.location, 'reload').mockImplementation(() => undefined);
    show(
      lazyScreen(async () => {
        throw new TypeError('Failed to fetch');
      }),
    );
    expect((await screen.findByRole('alert')).textContent).toMatch(/Nothing was lost/);
    expect(screen.getByRole('link', { name: 'SOS' })).toBeDefined();
    await userEvent.click(screen.getByRole('button', { name: 'Open again' }));
    expect(reload).toHaveBeenCalledOnce();
    vi.restoreAllMocks();
  });

  test('that cannot be had in a window of an older version says so', async () => {
    vi.spyOn(console, 'warn').mockImplementation(() => undefined);
    updateWaiting.value = true;
    show(
      lazyScreen(async () => {
        throw new TypeError('Failed to fetch');
      }),
    );
    expect(await screen.findByRole('heading', { name: 'This window is of an older version' })).toBeDefined();
    expect(screen.getByRole('button', { name: 'Open it in the new version' })).toBeDefined();
    updateWaiting.value = false;
    vi.restoreAllMocks();
  });
});
