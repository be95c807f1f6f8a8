import 'fake-indexeddb/auto';
import { render, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { App } from '../../../src/app/app';
import { go } from '../../../src/app/router';

/** The screen that breaks while `broken` is set: the emergency card, the only one that opens without a workshop. */
const sos = vi.hoisted(() => ({ broken: false }));
vi.mock('../../../src/screens/sos/sos', () => ({
  Sos: () => {
    if (sos.broken) throw new RangeError('drawn wrongly');
    return <h1>The card</h1>;
  },
}));

const link = (name: string) => screen.getByRole('link', { name }).getAttribute('href');

beforeEach(() => {
  localStorage.clear();
  vi.spyOn(console, 'error').mockImplementation(() => undefined);
  sos.broken = false;
  go('sos', 'replace');
});
afterEach(() => void vi.restoreAllMocks());

describe('an error in a screen', () => {
  test('shows its name, that nothing was lost, and every way out, never an empty page', async () => {
    sos.broken = true;
    render(<App />);
    expect(await screen.findByText('RangeError')).toBeTruthy();
    expect(screen.getByRole('alert').textContent).toContain('Nothing was lost');
    expect(link('SOS')).toBe('#/sos');
    expect(link('Record')).toBe('#/record');
    expect(link('To Today')).toBe('#/today');
  });

  test('is left behind at the next address', async () => {
    sos.broken = true;
    render(<App />);
    await screen.findByText('RangeError');
    sos.broken = false;
    go('sos/fire', 'replace');
    expect(await screen.findByText('The card')).toBeTruthy();
    expect(screen.queryByText('RangeError')).toBeNull();
  });
});

describe('an error of our own while the record opens', () => {
  const breaks = () =>
    vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new TypeError('not what was expected');
    });

  test('is a record that does not open', async () => {
    breaks();
    go('today', 'replace');
    render(<App />);
    await waitFor(() => expect(screen.getByRole('alert').textContent).toContain('TypeError'));
    expect(screen.getByRole('button', { name: 'Open again' })).toBeTruthy();
  });

  test('keeps nobody from an emergency card', async () => {
    breaks();
    render(<App />);
    expect(await screen.findByText('The card')).toBeTruthy();
  });
});
