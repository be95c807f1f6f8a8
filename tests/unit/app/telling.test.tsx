import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { minutesAfter } from '../../../src/safety/stated-time';
import { workshopInMemory } from '../../support/shell-in-memory';

const start = '2026-05-12T08:00:00.000Z';
const vibrate = vi.fn();
const showNotification = vi.fn(async () => undefined);
const getRegistration = vi.fn(async () => ({ showNotification }));
const requestPermission = vi.fn(async () => {
  permission = 'granted';
});
let permission = 'default';

const give = (on: object, name: string, value: unknown): void =>
  void Object.defineProperty(on, name, { value, configurable: true, writable: true });

/** The browser as the module finds it when it is loaded. */
async function load() {
  vi.resetModules();
  const { now } = await import('../../../src/app/clock');
  now.value = start;
  return { now, ...(await import('../../../src/app/telling')) };
}

beforeEach(() => {
  permission = 'default';
  localStorage.clear();
  for (const spy of [vibrate, showNotification, getRegistration, requestPermission]) spy.mockClear();
  give(navigator, 'vibrate', vibrate);
  give(navigator, 'userActivation', { hasBeenActive: true });
  give(navigator, 'serviceWorker', { getRegistration });
  give(window, 'Notification', {
    get permission() {
      return permission;
    },
    requestPermission,
  });
});

afterEach(() => {
  for (const name of ['vibrate', 'userActivation', 'serviceWorker']) Reflect.deleteProperty(navigator, name);
  Reflect.deleteProperty(window, 'Notification');
});

async function withClock(minutes: number) {
  const memory = await workshopInMemory(start);
  await memory.does({ do: 'start-clock', of: 'purge', due: minutesAfter(start, minutes), batchId: null });
  return memory.state;
}

describe('a clock that comes due while the page is alive', () => {
  it('shakes the phone once, at its time, and asks for no permission', async () => {
    const { now, tellWhenDue } = await load();
    const stop = tellWhenDue({ name: 'real', state: await withClock(20) });
    now.value = minutesAfter(start, 19);
    expect(vibrate).not.toHaveBeenCalled();
    now.value = minutesAfter(start, 20);
    now.value = minutesAfter(start, 21);
    expect(vibrate).toHaveBeenCalledOnce();
    expect(requestPermission).not.toHaveBeenCalled();
    expect(getRegistration).not.toHaveBeenCalled();
    stop();
  });

  it('is silent where it was overdue when the page opened: it stands there to be seen', async () => {
    const { now, tellWhenDue } = await load();
    const stop = tellWhenDue({ name: 'real', state: await withClock(0) });
    now.value = minutesAfter(start, 1);
    expect(vibrate).not.toHaveBeenCalled();
    stop();
  });

  it('does not shake a phone that nobody has touched: the browser would complain', async () => {
    give(navigator, 'userActivation', { hasBeenActive: false });
    const { now, tellWhenDue } = await load();
    const stop = tellWhenDue({ name: 'real', state: await withClock(20) });
    now.value = minutesAfter(start, 20);
    expect(vibrate).not.toHaveBeenCalled();
    stop();
  });

  it('shows a notice once that was asked for, says in the invented workshop that it is one, and none after it was turned off', async () => {
    const { now, tellWhenDue, telling, changeTelling } = await load();
    expect(telling.value).toBe('off');
    await changeTelling();
    expect(requestPermission).toHaveBeenCalledOnce();
    expect(telling.value).toBe('on');
    const state = await withClock(20);
    const stops = [tellWhenDue({ name: 'real', state }), tellWhenDue({ name: 'demo', state })];
    now.value = minutesAfter(start, 20);
    await vi.waitFor(() => expect(showNotification).toHaveBeenCalledTimes(2));
    const titles = showNotification.mock.calls.map((call) => String((call as unknown[])[0]));
    expect(titles).toEqual([
      'Air clearing: its time is over',
      'Invented workshop: Air clearing: its time is over',
    ]);
    for (const stop of stops) stop();
    await changeTelling();
    expect(telling.value).toBe('off');
    expect(requestPermission).toHaveBeenCalledOnce();
  });

  it('is told by nothing once the record was closed', async () => {
    const { now, tellWhenDue } = await load();
    tellWhenDue({ name: 'real', state: await withClock(20) })();
    now.value = minutesAfter(start, 20);
    expect(vibrate).not.toHaveBeenCalled();
  });
});

describe('notices', () => {
  it('that the phone refuses stay refused, also when they are asked for', async () => {
    permission = 'denied';
    const { telling, changeTelling } = await load();
    expect(telling.value).toBe('refused');
    await changeTelling();
    expect(telling.value).toBe('refused');
    expect(requestPermission).not.toHaveBeenCalled();
  });

  it('are not to be had where the browser has none', async () => {
    Reflect.deleteProperty(window, 'Notification');
    expect((await load()).telling.value).toBe('unavailable');
  });
});
