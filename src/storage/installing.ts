/** Whether the app lies on the home screen, and whether the browser throws away what is not there. */

/**
 * `installed`: on the home screen or in the dock. `clears-unused`: in a browser of the WebKit family, which deletes what a site
 * has kept after seven days of use of the browser without a tap on the site, unless the site is on the home screen, which has
 * days of its own. `offers`: the browser installs upon one tap. Otherwise `by-menu` or nothing.
 *
 * Source: WebKit, "Full Third-Party Cookie Blocking and More", 2020-03-24 (https://webkit.org/blog/10218/), section "7-Day Cap on
 * All Script-Writeable Storage". Status: verified in a quotation of it, 2026-11; whether it still holds in every version: memory.
 */
export type Installing = 'installed' | 'clears-unused' | 'offers' | 'by-menu';

/** Of browsers that can put the page into an app window. Not yet in the types of the DOM. */
type InstallPrompt = Event & { readonly prompt: () => Promise<unknown> };

let offered: InstallPrompt | null = null;

const isInstalled = (): boolean =>
  (navigator as { readonly standalone?: boolean }).standalone === true ||
  (typeof window.matchMedia === 'function' &&
    window.matchMedia('(display-mode: standalone), (display-mode: fullscreen), (display-mode: minimal-ui)')
      .matches);

/** Call once at the start: the browser says only once that it would install. @param onChange something of it is another now */
export function hearOfInstalling(onChange: () => void): void {
  window.addEventListener('beforeinstallprompt', (event) => {
    // Asked when somebody taps on the row, not across what they are doing.
    event.preventDefault();
    offered = event as InstallPrompt;
    onChange();
  });
  window.addEventListener('appinstalled', () => {
    offered = null;
    onChange();
  });
}

export function installing(): Installing {
  if (isInstalled()) return 'installed';
  if (offered) return 'offers';
  // Only browsers of that family know the word at all.
  return 'standalone' in navigator ? 'clears-unused' : 'by-menu';
}

/** Lets the browser ask whether to install; it may be asked only once for each time that it offers. */
export async function install(): Promise<void> {
  const prompt = offered;
  offered = null;
  await prompt?.prompt();
}

/** A phone or tablet: there is a home screen; else there is a dock. */
export const hasHomeScreen = (): boolean => navigator.maxTouchPoints > 0;
