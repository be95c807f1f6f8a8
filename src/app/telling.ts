/**
 * What the phone does when a clock is due, while this page is alive: a notice, if the person asked for it, and a shake.
 * Nothing here wakes a page that the phone has put to sleep.
 */
import { effect, type ReadonlySignal, signal } from '@preact/signals';
import { runningClocks } from '../ledger/clocks-running';
import type { State } from '../ledger/state';
import { clockSays, clocksWords } from '../screens/clocks/words';
import type { Telling } from '../screens/shell';
import type { RecordName } from '../storage/database';
import { now } from './clock';
import { recall, remember } from './preferences';

const available = 'Notification' in window && 'serviceWorker' in navigator;

const wanted = signal(recall('tell-when-due') === 'yes');

function tellingNow(): Telling {
  if (!available) return 'unavailable';
  if (Notification.permission === 'denied') return 'refused';
  return Notification.permission === 'granted' && wanted.value ? 'on' : 'off';
}

const current = signal(tellingNow());
export const telling: ReadonlySignal<Telling> = current;

// The permission is given and taken in the phone's settings, too.
document.addEventListener('visibilitychange', () => {
  current.value = tellingNow();
});

export async function changeTelling(): Promise<void> {
  if (!available) return;
  wanted.value = current.value !== 'on';
  remember('tell-when-due', wanted.value ? 'yes' : 'no');
  if (wanted.value && Notification.permission === 'default') await Notification.requestPermission();
  current.value = tellingNow();
}

/** Two long shakes: a tick would be taken for a message. A browser complains of one before anybody has touched it. */
const shakeMs = [400, 200, 400];

function shake(): void {
  if (navigator.userActivation?.hasBeenActive) navigator.vibrate?.(shakeMs);
}

async function notice(clockId: string, title: string, body: string): Promise<void> {
  const registration = await navigator.serviceWorker.getRegistration();
  // The tag keeps two open pages from saying it twice.
  await registration?.showNotification(title, { body, tag: clockId, data: { path: `clocks/${clockId}` } });
}

type Told = { readonly name: RecordName; readonly state: ReadonlySignal<State> };

/**
 * From now on until the returned function is called. What was overdue already is not told: it stands on the page that
 * has just been opened.
 */
export function tellWhenDue({ name, state }: Told): () => void {
  const overdue = () => runningClocks(state.value, now.value).filter((running) => running.overdue);
  const told = new Set(overdue().map(({ clock }) => clock.body.clockId));
  return effect(() => {
    for (const running of overdue()) {
      const { clockId } = running.clock.body;
      if (told.has(clockId)) continue;
      told.add(clockId);
      shake();
      if (current.peek() !== 'on') continue;
      const { title, when, act } = clockSays(state.peek(), running, now.peek());
      const heading = name === 'demo' ? clocksWords.invented(title) : title;
      // The permission was taken back in the meantime, or the worker is gone: the page itself shows what is overdue.
      notice(clockId, heading, `${when} ${act}`).catch(() => undefined);
    }
  });
}
