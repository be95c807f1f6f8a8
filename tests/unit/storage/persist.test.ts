import { afterEach, expect, test, vi } from 'vitest';
import { askToKeep, space } from '../../../src/storage/persist';

afterEach(() => vi.unstubAllGlobals());

const browser = (storage: unknown) => vi.stubGlobal('navigator', { storage });

test('a browser that keeps the record already is not asked again', async () => {
  const persist = vi.fn();
  browser({ persisted: async () => true, persist });
  expect(await askToKeep()).toBe('kept');
  expect(persist).not.toHaveBeenCalled();
});

test('a browser that refuses, and one that cannot be asked, are told apart', async () => {
  browser({ persisted: async () => false, persist: async () => false });
  expect(await askToKeep()).toBe('asked-in-vain');
  browser(undefined);
  expect(await askToKeep()).toBe('cannot-ask');
  expect(await space()).toBeNull();
});

test('space is told in bytes', async () => {
  browser({ estimate: async () => ({ usage: 1000, quota: 5000 }) });
  expect(await space()).toEqual({ usedBytes: 1000, quotaBytes: 5000 });
});
