import { afterEach, describe, expect, test, vi } from 'vitest';
import { asksSilently, askToKeep, noteTry, roomIn, roomNow, space } from '../../../src/storage/persist';

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

describe('how much room is left', () => {
  const room = (left: number, used = 2_300_000) => roomIn({ usedBytes: used, quotaBytes: used + left });

  test.each([
    [100_000_000, 'enough', 100],
    [99_999_999, 'little', 99],
    [10_000_000, 'little', 10],
    [9_999_999, 'hardly-any', 9],
    [1, 'hardly-any', 0],
    [0, 'hardly-any', 0],
    [-5, 'hardly-any', 0],
  ])('of %i bytes is %s, and never told as more than it is: %i MB', (left, is, megabytes) => {
    expect(room(left)).toMatchObject({ room: is, left: megabytes });
  });

  test('is never told as less than what is taken', () => {
    expect(room(500_000_000, 2_300_001).used).toBe(3);
    expect(room(500_000_000, 0).used).toBe(0);
  });

  test('is not told where the browser names whole gibibytes beyond what is used, or nothing at all', () => {
    expect(room(10 * 2 ** 30)).toEqual({ room: 'not-told', left: null, used: 3 });
    expect(roomIn(null)).toEqual({ room: 'not-told', left: null, used: null });
  });

  test('is none after a try that found none, whatever the browser says, until one finds some', async () => {
    browser({ estimate: async () => ({ usage: 1000, quota: 5_000_000_000 }) });
    noteTry('none');
    expect((await roomNow()).room).toBe('full');
    noteTry('room');
    expect((await roomNow()).room).toBe('enough');
  });
});

test('only a browser that decides by itself is asked without a tap', () => {
  const brands = (...names: string[]) =>
    vi.stubGlobal('navigator', { userAgentData: { brands: names.map((brand) => ({ brand })) } });
  brands('Not/A)Brand', 'Chromium');
  expect(asksSilently()).toBe(true);
  brands('Another');
  expect(asksSilently()).toBe(false);
  vi.stubGlobal('navigator', {});
  expect(asksSilently()).toBe(false);
});
