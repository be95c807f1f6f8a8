/** A workshop of one's own on a new phone, in the real record, and faults that befall its storage while the app is shut. */
import type { Page } from 'playwright-core';
import { openPhone, untilKept } from './phone';
import { openSite } from './site';

export type OwnWorkshop = {
  readonly page: Page;
  readonly address: string;
  readonly goTo: (place: string) => Promise<void>;
  /** Leaves the app for a page of the same origin on which nothing of it runs. */
  readonly shut: () => Promise<void>;
};

const heading = (page: Page) => page.getByRole('heading', { level: 1 });

export async function fillBatch(page: Page, grams: string): Promise<void> {
  await page.getByLabel('Mass of the feed', { exact: true }).fill(grams);
  await page.getByRole('radio', { name: 'mixed' }).check();
  await page.getByRole('radio', { name: 'lead-free' }).check();
  await page.getByRole('button', { name: 'Open this batch' }).click();
}

/** Described, with one batch of 500 g: two entries. @param prepare done to the page before the app is first opened */
export async function ownWorkshop(
  prepare?: (page: Page, address: string) => Promise<unknown>,
): Promise<OwnWorkshop> {
  const site = await openSite();
  const page = await openPhone({ width: 360, height: 800 });
  await prepare?.(page, site.address);
  const goTo = async (place: string): Promise<void> => {
    await page.goto(`${site.address}#/${place}`);
    await heading(page).waitFor();
  };
  await page.goto(site.address);
  await untilKept(page);
  await goTo('start/workshop');
  await page.getByLabel('Name of the workshop').fill('Weir Yard');
  await page.getByLabel('Address').fill('Weir Yard 6, Ostermill');
  await page.getByLabel('Emergency number').fill('112');
  await page.getByRole('button', { name: 'Keep, go on' }).click();
  await page.waitForURL(/start\/people/);
  await goTo('batches/new');
  await fillBatch(page, '500');
  await page.getByRole('heading', { name: /Batch B/ }).waitFor();
  const shut = async (): Promise<void> => {
    await page.goto(`${site.address}icon.svg`);
  };
  return { page, address: site.address, goTo, shut };
}

/** Runs on the database of the real record, in one transaction of its own. */
export const harm = (page: Page, how: 'empty' | 'lose-last' | 'lose-head' | 'change-letter'): Promise<void> =>
  page.evaluate(
    (harmed) =>
      new Promise<void>((done, fail) => {
        const opening = indexedDB.open('leesbook-real');
        opening.onerror = () => fail(opening.error);
        opening.onsuccess = () => {
          const database = opening.result;
          const transaction = database.transaction(['entries', 'meta'], 'readwrite');
          const [entries, meta] = [transaction.objectStore('entries'), transaction.objectStore('meta')];
          transaction.oncomplete = () => {
            database.close();
            done();
          };
          transaction.onabort = () => fail(transaction.error);
          if (harmed === 'empty') entries.clear();
          if (harmed === 'empty' || harmed === 'lose-head') meta.clear();
          const all = entries.getAll();
          all.onsuccess = () => {
            const last = all.result.toSorted((a, b) => a.counter - b.counter).at(-1);
            if (harmed === 'lose-last') entries.delete(last.id);
            if (harmed === 'change-letter')
              entries.put({
                ...last,
                happenedAt: last.happenedAt.replace(/\d(?=Z)/, (d: string) => (d === '1' ? '2' : '1')),
              });
          };
        };
      }),
    how,
  );

/** Each entry as it lies on the disk, in the order of their ids. */
export const onDisk = (page: Page): Promise<readonly Record<string, unknown>[]> =>
  page.evaluate(
    () =>
      new Promise<Record<string, unknown>[]>((done, fail) => {
        const opening = indexedDB.open('leesbook-real');
        opening.onerror = () => fail(opening.error);
        opening.onsuccess = () => {
          const all = opening.result.transaction('entries').objectStore('entries').getAll();
          all.onsuccess = () => {
            opening.result.close();
            done(all.result);
          };
        };
      }),
  );
