/**
 * Keeps the whole build on the phone, so that the app opens with no network. A new version waits until the person
 * takes it: nothing is swapped in the middle of a task.
 */
import { cleanupOutdatedCaches, createHandlerBoundToURL, precacheAndRoute } from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';

declare const self: ServiceWorkerGlobalScope & {
  readonly __WB_MANIFEST: (string | { url: string; revision: string | null })[];
};

precacheAndRoute(self.__WB_MANIFEST);
cleanupOutdatedCaches();
registerRoute(new NavigationRoute(createHandlerBoundToURL('index.html')));

self.addEventListener('message', (event) => {
  if ((event.data as { type?: string } | null)?.type === 'SKIP_WAITING') self.skipWaiting();
});

// Pages opened before the first worker came up are taken over too: what they load later also comes from the phone.
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

/** A page that is open comes into view as it stands: whatever was being typed stays, and what is overdue shows there. */
async function show(path: string): Promise<void> {
  const [open] = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
  if (open) await open.focus();
  else await self.clients.openWindow(`./#/${path}`);
}

self.addEventListener('notificationclick', (event) => {
  event.notification.close();
  const { path = 'today' } = (event.notification.data ?? {}) as { readonly path?: string };
  event.waitUntil(show(path));
});
