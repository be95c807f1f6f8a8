import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { oneWriter, untilWritten, whileWriting } from '../../../src/storage/one-writer';

/** Locks as Web Locks (W3C) has them, as far as one exclusive lock a name needs it. */
function locks() {
  const last = new Map<string, Promise<unknown>>();
  return {
    request<T>(name: string, { signal }: { signal: AbortSignal }, work: () => Promise<T>): Promise<T> {
      const before = last.get(name) ?? Promise.resolve();
      const given = new Promise<void>((resolve, reject) => {
        signal.addEventListener('abort', () => reject(signal.reason));
        void before.then(() => resolve());
      });
      const mine = given.then(work);
      last.set(
        name,
        given.then(
          () => mine.catch(() => undefined),
          () => before,
        ),
      );
      return mine;
    },
  };
}

/** A work that somebody else ends. */
function held<T>() {
  let end: (value: T) => void = () => {};
  const work = new Promise<T>((resolve) => {
    end = resolve;
  });
  return { work, end };
}

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('navigator', { locks: locks() });
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test('writers of one record go one after the other, in the order in which they asked', async () => {
  const said: string[] = [];
  const { work, end } = held<void>();
  const first = oneWriter('real', async () => {
    said.push('first begins');
    await work;
    said.push('first ends');
  });
  const second = oneWriter('real', async () => {
    said.push('second');
  });
  await oneWriter('demo', async () => {
    said.push('another record');
  });
  end();
  await Promise.all([first, second]);
  expect(said).toEqual(['first begins', 'another record', 'first ends', 'second']);
});

test('a writer that is stopped in the middle holds nobody up for ever', async () => {
  void oneWriter('real', () => new Promise(() => {}));
  const second = oneWriter('real', async () => 'written');
  await vi.advanceTimersByTimeAsync(3_999);
  const answered = vi.fn();
  void second.then(answered);
  await Promise.resolve();
  expect(answered).not.toHaveBeenCalled();
  await vi.advanceTimersByTimeAsync(1);
  expect(await second).toBe('written');
});

test('a work that takes long is not begun a second time', async () => {
  const { work, end } = held<string>();
  const begun = vi.fn(() => work);
  const writing = oneWriter('real', begun);
  await vi.advanceTimersByTimeAsync(60_000);
  end('written');
  expect(await writing).toBe('written');
  expect(begun).toHaveBeenCalledOnce();
});

test('what the work throws is thrown, and the next one has its turn', async () => {
  const begun = vi.fn(async () => {
    throw new Error('fault');
  });
  await expect(oneWriter('real', begun)).rejects.toThrow('fault');
  expect(begun).toHaveBeenCalledOnce();
  expect(await oneWriter('real', async () => 'written')).toBe('written');
});

test('where the browser has no locks, or gives none, nothing is missed', async () => {
  vi.stubGlobal('navigator', {
    locks: { request: () => Promise.reject(new DOMException('', 'SecurityError')) },
  });
  expect(await oneWriter('real', async () => 'written')).toBe('written');
  vi.stubGlobal('navigator', undefined);
  expect(await oneWriter('real', async () => 'written')).toBe('written');
});

test('whoever waits until all is written waits for what begins meanwhile, and until the answer was heard', async () => {
  vi.useRealTimers();
  const said: string[] = [];
  const { work, end } = held<void>();
  void whileWriting(() => work).then(async () => {
    // As through the layers between the store and a form.
    for (let layer = 0; layer < 20; layer++) await Promise.resolve();
    said.push('first heard');
    await whileWriting(async () => {
      said.push('second');
    });
    said.push('second heard');
  });
  const all = untilWritten().then(() => said.push('all written'));
  end();
  await all;
  expect(said).toEqual(['first heard', 'second', 'second heard', 'all written']);
});
