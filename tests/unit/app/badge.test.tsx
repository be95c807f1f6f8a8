import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { minutesAfter } from '../../../src/safety/stated-time';
import { workshopInMemory } from '../../support/shell-in-memory';

const start = '2026-05-12T08:00:00.000Z';
const setAppBadge = vi.fn(async (_count?: number) => undefined);
const clearAppBadge = vi.fn(async () => undefined);

const give = (on: object, name: string, value: unknown): void =>
  void Object.defineProperty(on, name, { value, configurable: true, writable: true });

const asInstalled = (is: boolean): void =>
  give(window, 'matchMedia', (asked: string) => ({ matches: is && asked.includes('standalone') }));

/** The browser as the module finds it when it is loaded. */
async function load() {
  vi.resetModules();
  const { now } = await import('../../../src/app/clock');
  now.value = start;
  return { now, ...(await import('../../../src/app/badge')) };
}

/** A clock that is due after so many minutes. */
async function withClock(minutes: number) {
  const memory = await workshopInMemory(start);
  const started = await memory.does({
    do: 'start-clock',
    of: 'purge',
    due: minutesAfter(start, minutes),
    batchId: null,
  });
  return { ...memory, clockId: started.body.kind === 'clock-started' ? started.body.clockId : '' };
}

const { matchMedia } = window;

/** The page rests, so that it is counted. */
const rests = (): void => void vi.runAllTimers();

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  setAppBadge.mockReset().mockResolvedValue(undefined);
  clearAppBadge.mockReset().mockResolvedValue(undefined);
  give(navigator, 'setAppBadge', setAppBadge);
  give(navigator, 'clearAppBadge', clearAppBadge);
  asInstalled(true);
});

afterEach(() => {
  vi.useRealTimers();
  give(window, 'matchMedia', matchMedia);
  for (const name of ['setAppBadge', 'clearAppBadge']) Reflect.deleteProperty(navigator, name);
});

describe('the number on the icon', () => {
  it('is how many things are due now, told once for each change, and none when none is', async () => {
    const { now, badgeWhatIsDue } = await load();
    const { state, does, clockId } = await withClock(20);
    const stop = badgeWhatIsDue({ name: 'real', state });
    expect(clearAppBadge).not.toHaveBeenCalled();
    rests();
    expect([setAppBadge.mock.calls, clearAppBadge.mock.calls.length]).toEqual([[], 1]);
    now.value = minutesAfter(start, 20);
    rests();
    now.value = minutesAfter(start, 21);
    rests();
    expect(setAppBadge.mock.calls).toEqual([[1]]);
    await does({ do: 'stop-clock', clockId, how: 'done' });
    rests();
    expect(clearAppBadge).toHaveBeenCalledTimes(2);
    await does({ do: 'start-clock', of: 'purge', due: minutesAfter(start, 1), batchId: null });
    stop();
    rests();
    expect(setAppBadge).toHaveBeenCalledTimes(1);
  });

  it('is there only where the app is installed, and never for what is invented', async () => {
    const { badgeWhatIsDue } = await load();
    const { state } = await withClock(-5);
    const stops = [badgeWhatIsDue({ name: 'demo', state })];
    asInstalled(false);
    stops.push(badgeWhatIsDue({ name: 'real', state }));
    rests();
    for (const stop of stops) stop();
    expect([setAppBadge, clearAppBadge].map((spy) => spy.mock.calls.length)).toEqual([0, 0]);
  });

  it('is a courtesy: a phone that refuses it, or knows none, changes nothing', async () => {
    const { badgeWhatIsDue } = await load();
    const { state } = await withClock(-5);
    const counted = (): void => {
      const stop = badgeWhatIsDue({ name: 'real', state });
      rests();
      stop();
    };
    // No spy: it would look after the promise itself, and nobody would see that it was left alone.
    give(navigator, 'setAppBadge', () => Promise.reject(new DOMException('no', 'NotAllowedError')));
    counted();
    give(navigator, 'setAppBadge', setAppBadge);
    setAppBadge.mockImplementation(() => {
      throw new TypeError('no');
    });
    counted();
    Reflect.deleteProperty(navigator, 'setAppBadge');
    expect(counted).not.toThrow();
  });
});
