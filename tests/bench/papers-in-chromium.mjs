// Disposal papers of an invented workshop, made by the app as it is built, in Chromium.
import { chromium } from 'playwright-core';
import { chromiumPath } from '../../.ci/ready.mjs';
import { forgetPeak, pageProcesses, peakOf, processorOf, slowed } from './slowed.mjs';

/** @typedef {import('../../src/ledger/entries/entry').Entry} Entry */
/**
 * @typedef {object} Seen
 * @property {number} seconds from the tap to the page that offers the file
 * @property {number} longestTask ms that the page's thread was busy at a stretch, from the tap on
 * @property {number} posting ms that handing over the entries took
 * @property {number} moves how often the bar moved
 * @property {number} longestStand ms between two moves
 * @property {Record<string, number>} stages ms from the tap to the first word of each stage
 * @property {number} bytes of the file
 * @property {number} pages
 * @property {number} peak MB above what the page had before the tap
 * @property {number} processor seconds of processor time of page and worker
 */
/** @typedef {{ seconds: number, longestTask: number, entriesWritten: number }} Cancelled */
/**
 * How many times slower than this machine: the page's main thread by Chromium's own throttling, which leaves its workers at
 * full speed, or page and workers alike, which takes as many times as long.
 * @typedef {{ readonly page?: number, readonly all?: number }} Slow
 */

/** No set takes so long, ms; the bench says so instead of waiting on. */
const longest = 150_000;

/** Puts a record into the app's store, as if it had been written there. @param {readonly Entry[]} log */
async function keep(log) {
  const open = indexedDB.open('leesbook-real');
  await new Promise((go) => {
    open.onsuccess = go;
  });
  const store = open.result.transaction(['entries', 'meta'], 'readwrite');
  for (const entry of log) store.objectStore('entries').put(entry);
  const last = log[log.length - 1];
  if (last) {
    const { device, counter, hash, writtenAt } = last;
    store.objectStore('meta').put({ device, counter, hash, writtenAt }, 'head');
  }
  await new Promise((go) => {
    store.oncomplete = go;
  });
  open.result.close();
}

/** Looks on while a paper is made: how long the page is busy, how the bar moves, how long handing over takes. */
function watch() {
  const seen = {
    began: performance.now(),
    tasks: [0],
    moves: /** @type {number[]} */ ([]),
    stages: /** @type {Record<string, number>} */ ({}),
    pages: 0,
    posting: 0,
    bytes: 0,
  };
  Object.assign(window, { seen });
  const tasks = new PerformanceObserver((list) => {
    for (const { startTime, duration } of list.getEntries())
      if (startTime + duration > seen.began) seen.tasks.push(duration);
  });
  tasks.observe({ type: 'longtask' });
  const post = Worker.prototype.postMessage;
  /** @this {Worker} @param {any} said @param {any} [more] */
  Worker.prototype.postMessage = function (said, more) {
    const began = performance.now();
    post.call(this, said, more);
    seen.posting += performance.now() - began;
  };
  const address = URL.createObjectURL;
  URL.createObjectURL = (file) => {
    if (file instanceof File && file.type === 'application/pdf') seen.bytes = file.size;
    return address.call(URL, file);
  };
  let last = -1;
  new MutationObserver(() => {
    const bar = document.querySelector('[role=progressbar]');
    const percent = Number(bar?.getAttribute('aria-valuenow') ?? -1);
    const says = bar?.getAttribute('aria-valuetext') ?? '';
    const at = performance.now() - seen.began;
    const [stage = ''] = says.split(':');
    if (bar && !(stage in seen.stages)) seen.stages[stage] = at;
    seen.pages = Number(/^Drawing.* of (\d+)/.exec(says)?.[1] ?? seen.pages);
    if (bar && percent !== last) seen.moves.push(at);
    last = percent;
  }).observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
  addEventListener('pointerdown', () => {
    seen.began = performance.now();
  });
}

/** What was looked on, once the last long task has been told. */
async function told() {
  await new Promise((go) => setTimeout(go, 500));
  const { seen } = /** @type {any} */ (window);
  const ends = [0, ...seen.moves, performance.now() - 500 - seen.began];
  return {
    longestTask: Math.max(...seen.tasks),
    posting: seen.posting,
    moves: seen.moves.length,
    longestStand: Math.max(...ends.slice(1).map((at, i) => at - ends[i])),
    stages: seen.stages,
    pages: seen.pages,
    bytes: seen.bytes,
  };
}

/** @param {import('playwright-core').Page} page @param {string} address @param {readonly Entry[]} log */
async function openForm(page, address, log) {
  await page.goto(address);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.evaluate(keep, log);
  const containerIds = log.flatMap(({ body }) =>
    body.kind === 'container-opened' ? [body.containerId] : [],
  );
  const draft = {
    chosen: containerIds,
    sheet: 'A4',
    labels: true,
    working: true,
    signing: { name: '', strokes: [], letters: false, at: '' },
    signedOver: '',
  };
  const kept = 'leesbook:draft:real:set-chosen';
  const item = /** @type {const} */ ([kept, JSON.stringify(draft)]);
  await page.evaluate(([key, text]) => localStorage.setItem(key, text), item);
  await page.goto(`${address}#/papers/new/chosen`);
  await page.reload();
  const make = page.getByRole('button', { name: /^Make the set/ });
  await make.waitFor();
  await page.evaluate(watch);
  return make;
}

/** How many entries the record has. */
async function count() {
  const open = indexedDB.open('leesbook-real');
  await new Promise((go) => {
    open.onsuccess = go;
  });
  const asked = open.result.transaction('entries').objectStore('entries').count();
  await new Promise((go) => {
    asked.onsuccess = go;
  });
  open.result.close();
  return asked.result;
}

/**
 * @template T
 * @param {string} address
 * @param {readonly Entry[]} log
 * @param {Slow} slow
 * @param {(page: import('playwright-core').Page, make: import('playwright-core').Locator, used: () => { peak: number, processor: number }) => Promise<T>} look
 * @returns {Promise<T>}
 */
async function onPhone(address, log, { page: throttled = 1, all = 1 }, look) {
  const args = ['--no-sandbox', '--disable-gpu'];
  const browser = await chromium.launch({ executablePath: chromiumPath() ?? '', args });
  try {
    const context = await browser.newContext({ viewport: { width: 360, height: 800 } });
    context.setDefaultTimeout(longest);
    const page = await context.newPage();
    const make = await openForm(page, address, log);
    const processes = await pageProcesses(browser);
    // Those that run no page of ours stay as they are.
    const before = processes.map((id) => {
      forgetPeak(id);
      return { peak: peakOf(id), processor: processorOf(id) };
    });
    const used = () => ({
      peak: Math.max(...processes.map((id, i) => peakOf(id) - (before[i]?.peak ?? 0))),
      processor: processes.reduce((sum, id, i) => sum + processorOf(id) - (before[i]?.processor ?? 0), 0),
    });
    const session = await context.newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: throttled });
    const letGo = all > 1 ? slowed(processes, all) : async () => undefined;
    try {
      return await look(page, make, used);
    } finally {
      await letGo();
    }
  } finally {
    await browser.close();
  }
}

/** What the page says went wrong keeps nobody waiting. @param {import('playwright-core').Page} page */
async function untilOffered(page) {
  const fault = page.getByRole('alert').first();
  await page.getByRole('link', { name: 'Save it' }).or(fault).first().waitFor();
  if (await fault.isVisible()) throw new Error(`The set was not made: ${await fault.textContent()}`);
}

/** @param {string} address @param {readonly Entry[]} log @param {Slow} slow @returns {Promise<Seen>} */
export const setMade = (address, log, slow) =>
  onPhone(address, log, slow, async (page, make, used) => {
    await make.click();
    await untilOffered(page);
    const seconds = await page.evaluate(
      () => (performance.now() - /** @type {any} */ (window).seen.began) / 1000,
    );
    return { seconds, ...used(), ...(await page.evaluate(told)) };
  });

/** Cancelled in the middle. @param {string} address @param {readonly Entry[]} log @param {Slow} slow @returns {Promise<Cancelled>} */
export const setCancelled = (address, log, slow) =>
  onPhone(address, log, slow, async (page, make) => {
    await make.click();
    await page.waitForFunction(
      () => Number(document.querySelector('[role=progressbar]')?.getAttribute('aria-valuenow')) >= 20,
    );
    await page.getByRole('button', { name: /^Cancel/ }).click();
    await make.waitFor();
    const seconds = await page.evaluate(
      () => (performance.now() - /** @type {any} */ (window).seen.began) / 1000,
    );
    const { longestTask } = await page.evaluate(told);
    return { seconds, longestTask, entriesWritten: (await page.evaluate(count)) - log.length };
  });
