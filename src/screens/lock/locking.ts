/**
 * Whether the pages are hidden: in a window that is opened, when they were out of view for longer than was chosen, and from
 * "lock now". In each window by itself. A reload changes nothing: what is locked stays so, what is open does too, as whoever
 * reloads it reads it already.
 */
import { effect, type ReadonlySignal, signal } from '@preact/signals';
import {
  dropScreenLock,
  keepScreenLock,
  pinFits,
  readScreenLock,
  type ScreenLock,
  screenLockKey,
  sealPin,
} from '../../storage/screen-lock';

const kept = signal(readScreenLock());
/** Null where there is no lock. */
export const screenLock: ReadonlySignal<ScreenLock | null> = kept;

const minuteMs = 60_000;

/** What a storage does, or nothing where it is blocked or full. */
function quietly<T>(use: () => T): T | null {
  try {
    return use();
  } catch {
    return null;
  }
}

const momentIn = (text: string | null): number => (text === null ? Number.NaN : Number(text));

/** When this window was last open in view, for a reload of it: sessionStorage goes with the window. Blocked, a reload asks. */
const lastSeen = {
  key: 'leesbook:last-seen',
  read: (): number => momentIn(quietly(() => sessionStorage.getItem(lastSeen.key))),
  keep: (): void => void quietly(() => sessionStorage.setItem(lastSeen.key, String(Date.now()))),
  drop: (): void => void quietly(() => sessionStorage.removeItem(lastSeen.key)),
};

/** When all windows were locked last, also for one that sleeps or is closed for now. */
const nowKey = 'leesbook:screen-lock-now';
const wasLockedSince = (since: number): boolean =>
  momentIn(quietly(() => localStorage.getItem(nowKey))) >= since;

/** A clock that was set back tells nothing of how long it was: that counts as long. */
const isShort = (lock: ScreenLock, since: number): boolean => {
  const passed = Date.now() - since;
  return passed >= 0 && passed < lock.minutes * minuteMs && !wasLockedSince(since);
};

const hidden = signal(kept.value !== null && !isShort(kept.value, lastSeen.read()));
export const pagesHidden: ReadonlySignal<boolean> = hidden;
// From before the lock closed: a reload of the locked page would open it.
effect(() => {
  if (hidden.value) lastSeen.drop();
});

/** Of somebody in need, and of what must not wait for a PIN. */
const alwaysOpen: ReadonlySet<string | undefined> = new Set(['sos', 'clocks']);

export const isHidden = (path: readonly string[]): boolean => hidden.value && !alwaysOpen.has(path[0]);

/** In every window. */
export function lockNow(): void {
  if (kept.value === null) return;
  hidden.value = true;
  // Where it is full the others are locked by themselves when they were out of view.
  quietly(() => localStorage.setItem(nowKey, String(Date.now())));
}

/** Another window changed the lock, took it off, or locked all. */
window.addEventListener('storage', ({ key }) => {
  if (key === nowKey) hidden.value = kept.value !== null;
  if (key !== screenLockKey && key !== null) return;
  kept.value = readScreenLock();
  if (kept.value === null) hidden.value = false;
});

let leftAt: number | null = null;
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'hidden') {
    leftAt = Date.now();
    if (!hidden.value) lastSeen.keep();
    return;
  }
  const left = leftAt;
  leftAt = null;
  if (kept.value !== null && left !== null && !isShort(kept.value, left)) hidden.value = true;
});

/** Wrong PINs that cost no wait: a glove misses a key. */
const free = 4;
const firstWaitMs = 30_000;
const longestWaitMs = 15 * minuteMs;

/** @returns ms to wait after so many wrong PINs: twice as long each time, to a quarter of an hour */
export const waitAfter = (wrong: number): number =>
  wrong <= free ? 0 : Math.min(longestWaitMs, firstWaitMs * 2 ** (wrong - free - 1));

/** Runs while the page is there, by a clock that nobody can set: a reload begins the wait anew. */
let waitsFrom = performance.now();

/** ms until another PIN may be tried. */
export const waitLeft = (): number =>
  Math.max(0, waitsFrom + waitAfter(kept.value?.wrong ?? 0) - performance.now());

/** Keeps a change of the lock; where it cannot be kept it holds until the page is closed. */
function change(lock: ScreenLock): boolean {
  kept.value = lock;
  return keepScreenLock(lock).ok;
}

export type Tried = 'right' | 'wrong' | 'wait';

/** Shows the pages again where the PIN is right. */
export async function tryPin(pin: string): Promise<Tried> {
  const before = kept.value;
  if (before === null) return 'right';
  if (waitLeft() > 0) return 'wait';
  if (await pinFits(before, pin)) {
    change({ ...before, wrong: 0, removalAskedAt: null });
    hidden.value = false;
    return 'right';
  }
  // Another window may have counted meanwhile.
  const now = readScreenLock() ?? before;
  waitsFrom = performance.now();
  change({ ...now, wrong: now.wrong + 1 });
  return 'wrong';
}

/** @returns whether it is kept; where it is not, there is no lock */
export async function setPin(pin: string, minutes: number): Promise<boolean> {
  const sealed = await sealPin(pin);
  const well = change({ v: 1, ...sealed, minutes, wrong: 0, removalAskedAt: null });
  if (!well) kept.value = null;
  return well;
}

export function setMinutes(minutes: number): void {
  if (kept.value !== null) change({ ...kept.value, minutes });
}

export function takeOff(): void {
  dropScreenLock();
  kept.value = null;
  hidden.value = false;
}

/** From the asking to the taking off, without the PIN: the owner who looks at the phone every day sees it meanwhile. */
export const removalHours = 24;

/** @param now UTC, of the page's clock */
export function askForRemoval(now: string): void {
  if (kept.value !== null) change({ ...kept.value, removalAskedAt: now });
}

/** When the lock may be taken off without the PIN; null where nobody asked, or the clock was set back since. */
export function removableFrom(now: string): string | null {
  const asked = kept.value?.removalAskedAt ?? null;
  if (asked === null || Date.parse(asked) > Date.parse(now)) return null;
  return new Date(Date.parse(asked) + removalHours * 60 * minuteMs).toISOString();
}
