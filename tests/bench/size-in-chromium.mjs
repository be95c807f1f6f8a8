// A record of some size on a phone: the app as it is built, in a Chromium whose pages are slowed.
import { chromium } from 'playwright-core';
import { chromiumPath } from '../../.ci/ready.mjs';
import { slowdown } from './in-chromium.mjs';
import { countFrames, keepEntries, keepPhotos, lookOn, stopFrames } from './size-in-page.mjs';

/** @typedef {import('../../src/ledger/entries/entry').Entry} Entry */
/** @typedef {import('playwright-core').Page} Page */
/** @typedef {import('playwright-core').CDPSession} Session */

/** Nothing takes so long, ms; the bench says so instead of waiting on. */
const longest = 240_000;

/** @param {string} profile folder of the browser's own @param {string} address */
export async function phone(profile, address) {
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: chromiumPath() ?? '',
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
    viewport: { width: 360, height: 800 },
    deviceScaleFactor: 2,
    isMobile: true,
    hasTouch: true,
  });
  context.setDefaultTimeout(longest);
  return { context, address, close: () => context.close() };
}

/** @typedef {Awaited<ReturnType<typeof phone>>} Phone */

/**
 * Lays a record into the store that the app has made.
 * @param {Phone} phone @param {readonly Entry[]} entries @param {(n: number) => Uint8Array} photo @param {readonly string[]} hashes of photos in turn
 */
export async function lay({ context, address }, entries, photo, hashes) {
  const page = await context.newPage();
  await page.goto(address);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await page.getByRole('heading', { level: 1 }).waitFor();
  for (let from = 0; from < entries.length; from += 1000)
    await page.evaluate(keepEntries, entries.slice(from, from + 1000));
  for (let from = 0; from < hashes.length; from += 100) {
    const some = hashes.slice(from, from + 100).map((hash, i) => ({
      hash,
      base64: Buffer.from(photo(from + i)).toString('base64'),
    }));
    await page.evaluate(keepPhotos, some);
  }
  await page.close();
}

/** Processor time of the page's thread since it began, ms. @param {Session} session */
async function worked(session) {
  const { metrics } = await session.send('Performance.getMetrics');
  return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN);
}

/**
 * A new page on the slowed phone, at the app's own icon: the next address is the start of the app.
 * @param {Phone} phone @param {boolean} [taps] whether a place is tapped as soon as Today stands there
 * @param {number} [rate] @returns {Promise<{ page: Page, session: Session }>}
 */
export async function slowPage({ context, address }, taps = true, rate = slowdown) {
  const page = await context.newPage();
  await page.goto(`${address}icon.svg`);
  await page.addInitScript(lookOn, taps);
  const session = await context.newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  await session.send('Emulation.setCPUThrottlingRate', { rate });
  return { page, session };
}

/** @typedef {{ today: number, answered: number, told: number, worked: number }} Started ms since the navigation began; of processor time */

/** @param {Phone} phone @param {Page} page @param {Session} session @returns {Promise<Started>} */
export async function started({ address }, page, session) {
  const before = await worked(session);
  await page.goto(`${address}#/today`);
  // Waiting in the page by other means has it read a script of some hundred kilobytes, in the middle of its start.
  await session.send('Runtime.evaluate', { expression: 'looking', awaitPromise: true });
  const { today, answered, told } = await page.evaluate(() => /** @type {any} */ (window).seen);
  return { today, answered, told, worked: (await worked(session)) - before };
}

/** Goes to an address of the app by its fragment. @param {Page} page @param {string} path @param {string} has what is there then */
export async function goTo(page, path, has) {
  await page.evaluate((to) => {
    location.hash = to;
  }, `#/${path}`);
  await page.locator(has).first().waitFor();
}

/** @typedef {{ shown: number, kept: number, heard: number, begun: number, worked: number }} Logged ms since the finger was lifted */

/**
 * Reads a level on a container, as somebody taps it in.
 * @param {Page} page @param {Session} session @param {{ id: string, litres: string }} container @returns {Promise<Logged>}
 */
export async function logged(page, session, { id, litres }) {
  await goTo(page, `containers/${id}/level`, 'input');
  await page.locator('main input').first().fill(litres);
  const keep = page.getByRole('button', { name: 'Keep the level' });
  await keep.waitFor();
  const before = await worked(session);
  const shown = page.evaluate(() => {
    const here = location.hash;
    const { shown, title } = /** @type {any} */ (window);
    const asked = title();
    return shown(() => location.hash !== here && title() !== asked);
  });
  await keep.tap();
  const at = await shown;
  const { up, heard, begun, kept } = await page.evaluate(() => /** @type {any} */ (window).seen);
  return {
    shown: at - up,
    kept: kept - up,
    heard: heard - up,
    begun: begun - up,
    worked: (await worked(session)) - before,
  };
}

/**
 * Types what somebody looks for, and how long each key takes until its answer is on the screen.
 * @param {Page} page @param {readonly string[]} asked @returns {Promise<{ index: number, keys: number[] }>} ms
 */
export async function found(page, asked) {
  const began = performance.now();
  await goTo(page, 'find', 'main input');
  const field = page.locator('main input').first();
  await field.fill(asked[0] ?? '');
  // It answers once the index is made.
  await page.locator('main li').first().waitFor();
  const index = performance.now() - began;
  /** @type {number[]} */
  const keys = [];
  for (const text of asked) {
    await field.fill('');
    await page.evaluate(() => {
      /** @type {any} */ (window).seen.keys = [];
    });
    for (const [nth, key] of [...text].entries()) {
      await page.keyboard.press(key);
      await page.waitForFunction((n) => /** @type {any} */ (window).seen.keys.length > n, nth);
    }
    keys.push(...(await page.evaluate(() => /** @type {any} */ (window).seen.keys)));
  }
  return { index, keys };
}

/** @typedef {{ frames: number, dropped: number, longest: number }} Scrolled frames drawn, frames missed, ms of the longest */

/** Scrolls with a finger to and fro. @param {Page} page @param {Session} session @returns {Promise<Scrolled>} */
export async function scrolled(page, session) {
  await page.evaluate(countFrames);
  for (const yDistance of [-2400, -2400, -2400, 1200])
    await session.send('Input.synthesizeScrollGesture', {
      x: 180,
      y: yDistance < 0 ? 500 : 250,
      yDistance,
      speed: 1800,
      gestureSourceType: 'touch',
    });
  const frames = await page.evaluate(stopFrames);
  const frame = 1000 / 60;
  const dropped = frames.reduce((sum, ms) => sum + Math.max(0, Math.round(ms / frame) - 1), 0);
  return { frames: frames.length, dropped, longest: Math.max(0, ...frames) };
}

/** Megabytes that scripts hold once what nobody holds is cleared away. @param {Session} session */
export async function held(session) {
  await session.send('HeapProfiler.collectGarbage');
  const { metrics } = await session.send('Performance.getMetrics');
  return (metrics.find(({ name }) => name === 'JSHeapUsedSize')?.value ?? Number.NaN) / 1e6;
}

/** Megabytes in the store. @param {Page} page */
export const stored = (page) =>
  page.evaluate(async () => {
    const { usage, usageDetails } = /** @type {any} */ (await navigator.storage.estimate());
    return (usageDetails?.indexedDB ?? usage) / 1e6;
  });
