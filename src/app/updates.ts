/** Registers the service worker and tells when the app is on the phone and when a newer one waits. */
import { signal } from '@preact/signals';
import { Workbox } from 'workbox-window';
import { untilWritten } from '../storage/one-writer';
import { ownScript } from '../ui/own-script';

/** A newer version is on the phone and waits to be taken. */
export const updateWaiting = signal(false);

/** The whole app is on the phone and opens with no network. */
export const offlineReady = signal(false);

let take = (): void => {};

/** Takes the waiting version: the page reloads as soon as the new worker answers for it. */
export const takeUpdate = (): void => take();

function offer(how: () => void): void {
  take = how;
  updateWaiting.value = true;
}

/** Never in the middle of writing: a form that does not hear that it was kept would be kept twice. */
export const loadAnew = (): void => void untilWritten().then(() => window.location.reload());

/**
 * Call once at the start. Does nothing in the development server, or where the browser has no service workers. A
 * failure on the way leaves the page as it is and `offlineReady` false; the next start tries again.
 */
export async function registerServiceWorker(): Promise<void> {
  if (import.meta.env.DEV || !('serviceWorker' in navigator)) return;
  const { serviceWorker } = navigator;
  const workbox = new Workbox(ownScript('./service-worker.js'));
  workbox.addEventListener('waiting', () =>
    offer(() => {
      workbox.addEventListener('controlling', loadAnew);
      workbox.messageSkipWaiting();
    }),
  );
  // Another tab took the new version: the files that this page would load later are gone, so it must reload as well.
  let controlled = serviceWorker.controller !== null;
  workbox.addEventListener('controlling', () => {
    if (controlled) offer(loadAnew);
    controlled = true;
  });
  // An installed app stays open for days, and the browser by itself looks for a new version only at a navigation.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') workbox.update().catch(() => undefined);
  });
  await workbox.register().catch(() => undefined);
  await serviceWorker.ready;
  offlineReady.value = true;
}
