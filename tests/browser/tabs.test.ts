/** Several windows of one record: who writes, who hears of it, and what happens when one is of another version. */
import type { Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { openWorkshop } from './invented-workshop';
import { expectClean, openPhone, untilKept } from './phone';
import { openSite, type Site } from './site';

const title = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
const mass = (page: Page) => page.getByLabel('Mass of the feed', { exact: true });
const offer = (page: Page) => page.getByRole('button', { name: /new version/i });

async function visited(site: Site, before?: () => void): Promise<Page> {
  const page = await openPhone({ width: 360, height: 800 });
  if (before) await page.context().addInitScript(before);
  await page.goto(site.address);
  await untilKept(page);
  return page;
}

async function inDemo(site: Site, place: string, before?: () => void): Promise<Page> {
  const page = await visited(site, before);
  await openWorkshop(page);
  await page.goto(`${site.address}#/${place}`);
  return page;
}

async function another(page: Page, address: string): Promise<Page> {
  const second = await page.context().newPage();
  await second.goto(address);
  return second;
}

async function fillIn(page: Page, grams: string): Promise<void> {
  await mass(page).fill(grams);
  await page.getByRole('radio', { name: 'mixed' }).check();
  await page.getByRole('radio', { name: 'lead-free' }).check();
}

const submit = (page: Page) => page.getByRole('button', { name: 'Open this batch' }).click();

/** A page of the same origin that is not the app: the browser looks for an icon there in vain, and says so on its console. */
const besides = (page: Page, site: Site) => another(page, `${site.address}icon.svg`);

/** This window is the writer until it is told to let go. */
const holdPen = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<void>((held) => {
        void navigator.locks.request('leesbook-write-demo', () => {
          held();
          return new Promise<void>((release) => {
            Object.assign(window, { letGo: release });
          });
        });
      }),
  );
const letGo = (page: Page) => page.evaluate(() => (window as unknown as { letGo: () => void }).letGo());

/** Of a page of the same origin that is not the app. */
type Stubborn = { open: IDBDatabase };

const openAs = (page: Page, version: number | undefined, stores: readonly string[]) =>
  page.evaluate(
    ([wanted, names]) =>
      new Promise<number>((resolve, reject) => {
        const request = indexedDB.open('leesbook-real', wanted);
        request.onupgradeneeded = () => {
          for (const name of names) {
            if (request.result.objectStoreNames.contains(name)) continue;
            const store = request.result.createObjectStore(name, name === 'meta' ? {} : { keyPath: 'id' });
            if (name !== 'entries') continue;
            store.createIndex('in-order', ['writtenAt', 'device', 'counter']);
            store.createIndex('by-device', ['device', 'counter'], { unique: true });
          }
        };
        request.onsuccess = () => {
          Object.assign(window, { open: request.result });
          resolve(request.result.version);
        };
        request.onerror = () => reject(request.error);
      }),
    [version, stores] as const,
  );
const close = (page: Page) => page.evaluate(() => (window as unknown as Stubborn).open.close());

const batches = async (page: Page, site: Site): Promise<string | null> => {
  await page.goto(`${site.address}#/batches`);
  await title(page, /Batches/).waitFor();
  return page.locator('main').textContent();
};

describe('a new version that is taken in the middle of writing', () => {
  it('comes once the entry is kept: it is there once, and the form does not ask for it again', async () => {
    const site = await openSite();
    const page = await inDemo(site, 'batches/new');
    const other = await besides(page, site);
    site.serve(inject('laterApp'));
    await page.reload();
    await offer(page).waitFor();
    await fillIn(page, '123.5');
    await holdPen(other);
    await submit(page);
    await page.evaluate(() => {
      navigator.serviceWorker.addEventListener('controllerchange', () => {
        document.documentElement.dataset.taken = 'yes';
      });
    });
    await offer(page).click();
    // The new version answers for the page already, and the page still waits for what it was writing.
    await page.locator('html[data-taken=yes]').waitFor();
    await letGo(other);
    await page.locator('html[data-version=later]').waitFor();
    const shown = await batches(page, site);
    expect(shown?.split('123.5')).toHaveLength(2);
    await page.goto(`${site.address}#/batches/new`);
    await title(page, 'A new batch').waitFor();
    expect(await mass(page).inputValue()).toBe('');
  });
});

describe('a window that stays the writer, stopped in the middle', () => {
  it('keeps nobody from writing', async () => {
    const site = await openSite();
    const page = await inDemo(site, 'batches/new');
    await holdPen(await besides(page, site));
    await fillIn(page, '77');
    await submit(page);
    await title(page, /Batch B/).waitFor();
  });
});

describe('what another window wrote', () => {
  it.each([
    [
      'where the browser has no channel between windows',
      () => Reflect.deleteProperty(window, 'BroadcastChannel'),
    ],
    ['where the browser has no locks', () => Reflect.deleteProperty(Navigator.prototype, 'locks')],
  ])('is seen at once, %s', async (_, lacking) => {
    const site = await openSite();
    const first = await inDemo(site, 'batches/new', lacking);
    const second = await another(first, `${site.address}#/batches`);
    await title(second, /Batches/).waitFor();
    await fillIn(first, '456');
    await submit(first);
    await title(first, /Batch B/).waitFor();
    await second.getByText(/^456/).waitFor();
    expectClean(first);
  });

  it.each(['visibilitychange', 'resume'] as const)(
    'while this one slept is seen when it comes back (%s)',
    async (comingBack) => {
      const site = await openSite();
      const first = await inDemo(site, 'batches/new');
      const second = await another(first, `${site.address}#/today`);
      await openDeaf(second, `${site.address}#/batches`);
      await fillIn(first, '789');
      await submit(first);
      await title(first, /Batch B/).waitFor();
      expect(await second.getByText(/^789/).count()).toBe(0);
      await second.evaluate((name) => document.dispatchEvent(new Event(name)), comingBack);
      await second.getByText(/^789/).waitFor();
      expectClean(first);
    },
  );
});

/** A window that hears nothing of what is said to it, as if it were frozen. */
async function openDeaf(page: Page, address: string): Promise<void> {
  await page.addInitScript(() => {
    BroadcastChannel.prototype.addEventListener = () => undefined;
  });
  await page.goto('about:blank');
  await page.goto(address);
  await title(page, /Batches/).waitFor();
}

describe('another version of the record', () => {
  it('waits while a window holds an older one open, says so, and goes on by itself', async () => {
    const site = await openSite();
    const stubborn = await openPhone({ width: 360, height: 800 });
    await stubborn.goto(`${site.address}icon.svg`);
    expect(await openAs(stubborn, 2, ['entries', 'meta', 'photos'])).toBe(2);
    const page = await another(stubborn, site.address);
    await page.getByText('An older Leesbook is open in another window').waitFor();
    await close(stubborn);
    await page.getByRole('button', { name: /invented workshop/ }).waitFor();
  });

  it('that is newer shuts this one, which writes nothing any more and says to take the new version', async () => {
    const site = await openSite();
    const page = await visited(site);
    await page.getByRole('button', { name: /invented workshop/ }).waitFor();
    const newer = await besides(page, site);
    expect(await openAs(newer, 99, [])).toBe(99);
    await page.getByText('The record was closed by another window').waitFor();
    await page.getByRole('button', { name: 'Open again' }).click();
    await page.getByText('The record was written by a newer Leesbook').waitFor();
    await page.goto(`${site.address}#/sos`);
    await title(page, 'Breathed brown fume').waitFor();
  });
});
