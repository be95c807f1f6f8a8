import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import * as z from 'zod/mini';
import { clearDraft, forgetDrafts, keepDraft, readDraft } from '../../../src/storage/drafts';

const Form = z.strictObject({ volume: z.string() });

/** localStorage as in a browser, as far as drafts need it. */
function shelf() {
  const items = new Map<string, string>();
  return {
    get length() {
      return items.size;
    },
    key: (place: number) => [...items.keys()][place] ?? null,
    getItem: (key: string) => items.get(key) ?? null,
    setItem: (key: string, text: string) => void items.set(key, text),
    removeItem: (key: string) => void items.delete(key),
  };
}

beforeEach(() => vi.stubGlobal('localStorage', shelf()));
afterEach(() => vi.unstubAllGlobals());

describe('a half-filled form', () => {
  test('comes back as it was left, until it is written down', () => {
    expect(keepDraft('real', 'log-stream', { volume: '3.' })).toEqual({ ok: true });
    expect(readDraft('real', 'log-stream', Form)).toEqual({ volume: '3.' });
    clearDraft('real', 'log-stream');
    expect(readDraft('real', 'log-stream', Form)).toBeNull();
  });

  test('of the demo is not one of the real record, and goes with the demo', () => {
    keepDraft('demo', 'log-stream', { volume: '1' });
    keepDraft('demo', 'open-batch', { volume: '1' });
    keepDraft('real', 'log-stream', { volume: '2' });
    forgetDrafts('demo');
    expect(readDraft('demo', 'log-stream', Form)).toBeNull();
    expect(readDraft('demo', 'open-batch', Form)).toBeNull();
    expect(readDraft('real', 'log-stream', Form)).toEqual({ volume: '2' });
  });

  test('that no longer fits the form, or is no JSON, is as good as none', () => {
    keepDraft('real', 'log-stream', { litres: '3' });
    expect(readDraft('real', 'log-stream', Form)).toBeNull();
    localStorage.setItem('leesbook:draft:real:log-stream', '{');
    expect(readDraft('real', 'log-stream', Form)).toBeNull();
  });

  test('is told not kept where the storage is full, and nothing is thrown', () => {
    vi.stubGlobal('localStorage', {
      ...shelf(),
      setItem: () => {
        throw new DOMException('full', 'QuotaExceededError');
      },
    });
    expect(keepDraft('real', 'f', 1)).toEqual({ ok: false, failure: { code: 'storage-full' } });
  });

  test('is told not kept where the storage is blocked or absent, and nothing is thrown', () => {
    vi.unstubAllGlobals();
    Object.defineProperty(globalThis, 'localStorage', {
      configurable: true,
      get: () => {
        throw new DOMException('blocked', 'SecurityError');
      },
    });
    expect(keepDraft('real', 'f', 1)).toEqual({ ok: false, failure: { code: 'storage-blocked' } });
    expect(readDraft('real', 'f', Form)).toBeNull();
    expect(() => clearDraft('real', 'f')).not.toThrow();
    Object.defineProperty(globalThis, 'localStorage', {
      configurable: true,
      writable: true,
      value: undefined,
    });
    expect(keepDraft('real', 'f', 1)).toEqual({ ok: false, failure: { code: 'storage-blocked' } });
    expect(() => forgetDrafts('real')).not.toThrow();
  });
});
