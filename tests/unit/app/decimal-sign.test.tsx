/** The sign in decimals where nobody has chosen one: that of the browser's language, asked of it once. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';

async function signAt(language: string): Promise<string> {
  vi.resetModules();
  vi.spyOn(navigator, 'language', 'get').mockReturnValue(language);
  return (await import('../../../src/app/preferences')).sign.value;
}

beforeEach(() => localStorage.clear());
afterEach(() => vi.restoreAllMocks());

it('is that of the language, and is asked anew only when the language is another', async () => {
  const asked = vi.spyOn(Intl.NumberFormat.prototype, 'formatToParts');
  expect(await signAt('de-DE')).toBe(',');
  expect(await signAt('de-DE')).toBe(',');
  expect(asked).toHaveBeenCalledTimes(1);
  expect(await signAt('en-GB')).toBe('.');
  expect(asked).toHaveBeenCalledTimes(2);
});

it('is asked again where what was noted is no sign', async () => {
  await signAt('de-DE');
  for (const key of Object.keys(localStorage)) localStorage.setItem(key, 'de-DE x');
  expect(await signAt('de-DE')).toBe(',');
});

it('is the one that somebody chose, whatever the language', async () => {
  await signAt('de-DE');
  (await import('../../../src/app/preferences')).chooseSign('.');
  expect(await signAt('de-DE')).toBe('.');
});
