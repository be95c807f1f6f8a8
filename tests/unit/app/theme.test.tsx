/** Light or dark: as somebody chose, or as the phone is set from one moment to the next. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';

let change: (dark: boolean) => void = () => undefined;

/** The preferences as a window finds them at its start. */
async function started(phoneIsDark: boolean) {
  vi.resetModules();
  const listeners: ((event: { readonly matches: boolean }) => void)[] = [];
  change = (matches) => {
    for (const heard of listeners) heard({ matches });
  };
  vi.stubGlobal('matchMedia', (query: string) => ({
    matches: query === '(prefers-color-scheme: dark)' && phoneIsDark,
    addEventListener: (_: string, heard: (typeof listeners)[number]) => listeners.push(heard),
  }));
  return import('../../../src/app/preferences');
}

const shown = () => document.documentElement.dataset.theme;
const above = () => document.querySelector('meta[name=theme-color]')?.getAttribute('content');

beforeEach(() => {
  localStorage.clear();
  document.head.innerHTML = '<meta name="theme-color" content="#FDFDFB" />';
});
afterEach(() => {
  vi.unstubAllGlobals();
  delete document.documentElement.dataset.theme;
});

describe('the page', () => {
  it('is light where nobody chose, whatever the phone is set to', async () => {
    await started(true);
    expect(shown()).toBe('light');
    change(false);
    change(true);
    expect(shown()).toBe('light');
  });

  it('goes with the phone once that is chosen, while it is open and at the next start', async () => {
    const { theme } = await started(true);
    theme.value = 'phone';
    expect([shown(), above()]).toEqual(['dark', '#0b1211']);
    change(false);
    expect([shown(), above()]).toEqual(['light', '#fdfdfb']);
    change(true);
    expect(shown()).toBe('dark');
    await started(false);
    expect(shown()).toBe('light');
    change(true);
    expect(shown()).toBe('dark');
  });

  it('stays dark where that is chosen', async () => {
    const { theme } = await started(false);
    theme.value = 'dark';
    change(false);
    expect(shown()).toBe('dark');
  });
});
