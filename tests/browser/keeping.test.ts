/** What keeps the record on the phone: asking the browser, the home screen, and what happens when no room is left. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { fillBatch, onDisk, ownWorkshop } from './own-workshop';
import { expectAccessible, expectNoWider } from './phone';

const title = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });

/** Of which the app itself takes some ten. Given before anything is stored: a browser remembers for a while how much was free. */
const smallDisk = 30_000_000;

/** How much this phone has room for: little, and as much as there is again. Ends with the page that it was lowered on. */
function ownQuota() {
  let set = async (_quotaSize?: number): Promise<void> => undefined;
  return {
    lower: async (phone: Page, address: string): Promise<void> => {
      const devtools = await phone.context().newCDPSession(phone);
      const { origin } = new URL(address);
      set = async (quotaSize) => {
        await devtools.send('Storage.overrideQuotaForOrigin', {
          origin,
          ...(quotaSize === undefined ? {} : { quotaSize }),
        });
      };
      await set(smallDisk);
    },
    raise: () => set(),
  };
}

/** Writes beside the record until not even a hundred bytes find room. */
const fillTheDisk = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const opening = indexedDB.open('filler', 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore('bytes', { autoIncrement: true });
    await new Promise((done) => {
      opening.onsuccess = done;
    });
    const write = (size: number): Promise<boolean> =>
      new Promise((done) => {
        const transaction = opening.result.transaction('bytes', 'readwrite', { durability: 'strict' });
        const bytes = new Uint8Array(size);
        for (let at = 0; at < size; at += 65_536)
          crypto.getRandomValues(bytes.subarray(at, Math.min(size, at + 65_536)));
        transaction.objectStore('bytes').add(bytes);
        transaction.oncomplete = () => done(true);
        transaction.onabort = () => done(false);
      });
    for (let size = 2_000_000; size > 50; size = Math.floor(size / 2)) while (await write(size));
    opening.result.close();
  });

const makeRoom = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise((done) => {
        indexedDB.deleteDatabase('filler').onsuccess = () => done();
      }),
  );

describe('when no room is left', () => {
  it('nothing is written, the form stays filled and says what to do, and the record is whole; then it is kept', async () => {
    const { page, goTo, shut } = await ownWorkshop(ownQuota().lower);
    await shut();
    const before = await onDisk(page);
    await fillTheDisk(page);

    await goTo('batches/new');
    await fillBatch(page, '700');
    await page
      .getByText(/The phone is full\. Nothing was written, and what you typed stays here\./)
      .waitFor();
    expect(await page.getByLabel('Mass of the feed', { exact: true }).inputValue()).toBe('700');
    await page.reload();
    expect(await page.getByLabel('Mass of the feed', { exact: true }).inputValue()).toBe('700');
    await page.getByRole('button', { name: 'Open this batch' }).click();
    await page.getByText(/The phone is full\./).waitFor();
    // Not loaded anew: what the last try found is known to this page only.
    await page.evaluate(() => window.location.assign('#/today'));
    await page.getByText('The phone was full at the last try').click();
    await title(page, 'Keeping the record').waitFor();
    await page.getByText(/Photos take most/).waitFor();
    await expectAccessible(page);
    await shut();
    expect(await onDisk(page)).toEqual(before);

    await makeRoom(page);
    await goTo('batches/new');
    await page.getByRole('button', { name: 'Open this batch' }).click();
    await title(page, /Batch B/).waitFor();
    await goTo('record');
    await page.getByText(/^Whole, 3 entries/).waitFor();
  });
});

/** No place is left for drafts and the marker, which lie apart from the record. */
const fillLocalStorage = (page: Page): Promise<void> =>
  page.evaluate(() => {
    for (let size = 1_000_000, part = 0; size > 0; part += 1)
      try {
        localStorage.setItem(`filler:${part}`, 'x'.repeat(size));
      } catch {
        size = Math.floor(size / 2);
      }
  });

describe('when there is room again under the open page', () => {
  it('the same form is kept as it stands, the phone is not called full any more, and it goes on after a reload', async () => {
    const quota = ownQuota();
    const { page, address, goTo, shut } = await ownWorkshop(quota.lower);
    const other = await page.context().newPage();
    await other.goto(`${address}icon.svg`);
    await fillTheDisk(other);
    await goTo('batches/new');
    await fillBatch(page, '700');
    await page.getByText(/The phone is full\. Nothing was written/).waitFor();
    await quota.raise();
    await page.getByRole('button', { name: 'Open this batch' }).click();
    await title(page, /Batch B/).waitFor();
    await page.evaluate(() => window.location.assign('#/record/keeping'));
    await page.getByText(/^(About|Little room|How much room is left)/).waitFor();
    await page.reload();
    await goTo('batches/new');
    expect(await page.getByLabel('Mass of the feed', { exact: true }).inputValue()).toBe('');
    await fillBatch(page, '800');
    await title(page, /Batch B/).waitFor();
    await goTo('record');
    await page.getByText(/^Whole, 4 entries/).waitFor();
    await shut();
    expect((await onDisk(page)).map(({ counter }) => counter).sort()).toEqual([1, 2, 3, 4]);
  });
});

describe('when there is no room for what is typed', () => {
  it('the page says that it lives here only, the entry is kept all the same, and nothing is taken for lost', async () => {
    const { page, goTo, shut } = await ownWorkshop();
    await goTo('batches/new');
    await fillLocalStorage(page);
    await page.getByLabel('Mass of the feed', { exact: true }).fill('700');
    await page.getByText('What you type is not kept over a reload').waitFor();
    await expectAccessible(page);
    await fillBatch(page, '700');
    await title(page, /Batch B/).waitFor();
    await page.reload();
    await goTo('record');
    await page.getByText(/^Whole, 3 entries/).waitFor();
    await shut();
    expect(await onDisk(page)).toHaveLength(3);
  });
});

/** A browser that is asked before it promises to keep anything, and what it was asked. */
const thatAsks = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    Object.defineProperty(navigator, 'userAgentData', { value: undefined });
    const asked = { times: 0 };
    Object.assign(window, { asked });
    navigator.storage.persisted = async () => asked.times > 0;
    navigator.storage.persist = async () => {
      asked.times += 1;
      return true;
    };
  });

const timesAsked = (page: Page): Promise<number> =>
  page.evaluate(() => (window as unknown as { asked: { times: number } }).asked.times);

describe('a browser that puts a question to the person', () => {
  it('is asked upon a tap beside the reason, once something is worth keeping, and not before', async () => {
    const { page, goTo } = await ownWorkshop(thatAsks);
    await goTo('today');
    await page.getByText(/a browser clears what it has not promised to keep/).waitFor();
    expect(await timesAsked(page)).toBe(0);
    await page.getByRole('button', { name: 'Ask the browser to keep it' }).click();
    await page.getByText(/a browser clears what it has not promised to keep/).waitFor({ state: 'hidden' });
    expect(await timesAsked(page)).toBe(1);
  });
});

describe('a browser that clears what is not used', () => {
  it('says so on Today and how the app comes onto the home screen, and that it begins empty there', async () => {
    const { page, goTo } = await ownWorkshop((phone) =>
      phone.addInitScript(() => Object.defineProperty(navigator, 'standalone', { value: false })),
    );
    await goTo('today');
    await page.getByText('This browser clears what is not used').click();
    await title(page, 'Keeping the record').waitFor();
    await page.getByText('Choose “Add to Home Screen”, then “Add”.').waitFor();
    await page.getByText(/There it begins empty/).waitFor();
    await expectAccessible(page);
    await expectNoWider(page);
  });
});
