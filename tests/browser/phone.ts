/** A phone to test with: Chromium with the size of one, and what went wrong in its pages. */
import axe from 'axe-core';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, expect, onTestFinished } from 'vitest';
import { chromiumPath } from '../../.ci/ready.mjs';

const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const running = new Map<string, Promise<Browser>>();

/** Before the lens is what the file shows, and the person has said yes to the camera. */
const cameraFlags = (file: string): readonly string[] => [
  '--use-fake-device-for-media-stream',
  '--use-fake-ui-for-media-stream',
  `--use-file-for-fake-video-capture=${file}`,
];

/** Whatever the browser asks of anybody, this machine too, goes to the proxy; no name is looked up beside it. */
const proxyFlags = (proxy: string): readonly string[] => [
  `--proxy-server=${proxy}`,
  '--proxy-bypass-list=<-loopback>',
  `--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE ${new URL(proxy).hostname}`,
];

/** One Chromium for each test file, and one for each camera and proxy in it; every phone in it has its own storage. */
const browser = ({ camera, proxy }: Pick<Phone, 'camera' | 'proxy'>): Promise<Browser> => {
  const executablePath = chromiumPath();
  if (executablePath === undefined) throw new Error('no Chromium: name it in CHROMIUM');
  const more = [...(camera ? cameraFlags(camera) : []), ...(proxy ? proxyFlags(proxy) : [])];
  const known = more.join(' ');
  const launched = running.get(known) ?? chromium.launch({ executablePath, args: [...flags, ...more] });
  running.set(known, launched);
  return launched;
};

afterAll(async () => {
  for (const launched of running.values()) await (await launched).close();
  running.clear();
});

export type Phone = {
  readonly width: number;
  readonly height: number;
  /** The person's system asks for dark. */
  readonly dark?: boolean;
  /** A film that the camera shows, as uncompressed YUV4MPEG2; it may be written after the phone was opened. */
  readonly camera?: string;
  /** Address of a proxy that all requests of this browser go through. */
  readonly proxy?: string;
};

const troubles = new WeakMap<BrowserContext, string[]>();

/**
 * A page on a new phone: nothing stored, no worker. Further pages of the same phone: `page.context().newPage()`.
 * It is put away when the test ends.
 */
export async function openPhone({ width, height, dark = false, ...device }: Phone): Promise<Page> {
  const context = await (await browser(device)).newContext({
    viewport: { width, height },
    deviceScaleFactor: 2,
    isMobile: true,
    hasTouch: true,
    colorScheme: dark ? 'dark' : 'light',
    locale: 'en-GB',
  });
  context.setDefaultTimeout(15_000);
  onTestFinished(() => context.close());
  const list: string[] = [];
  troubles.set(context, list);
  context.on('console', (message) => {
    if (message.type() === 'error') list.push(`console: ${message.text()} (${message.location().url})`);
  });
  context.on('weberror', (event) => list.push(`page: ${event.error().stack ?? event.error().message}`));
  await context.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI, sourceFile }) => {
      console.error(`security policy: ${violatedDirective} blocked ${blockedURI} in ${sourceFile}`);
    });
  });
  return context.newPage();
}

/** No console error, uncaught error or breach of the security policy so far, in any page of this phone. */
export const expectClean = (page: Page): void => expect(troubles.get(page.context())).toEqual([]);

const heightOf = (page: Page): Promise<number> => page.evaluate(() => document.documentElement.scrollHeight);

/**
 * What a program finds wrong with all of the page. A row half behind the foot of the page would count as too small a target,
 * though it scrolls, so the page is looked at whole; one that outgrew the room meanwhile is looked at again.
 */
async function wrongWith(page: Page, size: { readonly width: number; readonly height: number } | null) {
  for (;;) {
    const room = Math.max(size?.height ?? 0, await heightOf(page)) + 600;
    if (size) await page.setViewportSize({ width: size.width, height: room });
    const { violations } = await page.evaluate(() =>
      (globalThis as unknown as { axe: typeof axe }).axe.run({
        runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
        rules: { 'target-size': { enabled: true } },
      }),
    );
    if (!size || (await heightOf(page)) <= room) return violations;
  }
}

/** No page is wider than the phone. Not held against innerWidth: on a phone that grows with a page that is too wide. */
export const expectNoWider = async (page: Page): Promise<void> =>
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(page.viewportSize()?.width);

/** The page as it stands breaks no rule of WCAG 2.2 A and AA, nor a best practice, that a program can check. */
export async function expectAccessible(page: Page): Promise<void> {
  const size = page.viewportSize();
  // Evaluated by the browser's own debugger, which the security policy of the page does not reach.
  await page.evaluate(axe.source);
  const violations = await wrongWith(page, size);
  if (size) await page.setViewportSize(size);
  const list = violations.map(({ id, impact, help, nodes }) =>
    [
      `${id} (${impact}): ${help}`,
      ...nodes.map(({ html, failureSummary }) => `  ${html}\n  ${failureSummary}`),
    ].join('\n'),
  );
  expect(list, list.join('\n\n')).toEqual([]);
}

/** Waits until the whole app is on the phone and its worker answers for the page: no network is needed from now on. */
export async function untilKept(page: Page): Promise<void> {
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
}
