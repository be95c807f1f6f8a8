/** Papers are made beside the page: with no network, with a bar that moves, and with a way to give one up. */
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { readPdf } from '../support/read-pdf';
import { offlineInWorkshop } from './invented-workshop';
import { expectAccessible, expectClean } from './phone';

const title = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
const make = (page: Page) => page.getByRole('button', { name: /^Make the set/ });

/** Keeps where the bar stood, in turn. */
const watchBar = (page: Page) =>
  page.evaluate(() => {
    const stood: number[] = [];
    Object.assign(window, { stood });
    new MutationObserver(() => {
      const now = document.querySelector('[role=progressbar]')?.getAttribute('aria-valuenow');
      if (now && stood.at(-1) !== Number(now)) stood.push(Number(now));
    }).observe(document.body, { subtree: true, childList: true, attributes: true });
  });

const stoodAt = (page: Page) =>
  page.evaluate(() => (window as unknown as { stood: readonly number[] }).stood);

async function checkAll(page: Page, goTo: (place: string) => Promise<void>): Promise<void> {
  await goTo('papers/new');
  await page.getByRole('button', { name: /^All/ }).click();
  await page.getByRole('button', { name: /^Check these/ }).click();
  await make(page).waitFor();
}

test('a set is made with no network while the bar moves, and is kept in the record by its name', async () => {
  const { page, goTo } = await offlineInWorkshop();
  await checkAll(page, goTo);
  await watchBar(page);
  await make(page).click();
  await title(page, 'The paper is made').waitFor({ timeout: 120_000 });
  const stood = await stoodAt(page);
  expect(stood.length).toBeGreaterThan(5);
  expect(stood).toEqual(stood.toSorted((a, b) => a - b));
  expect(page.workers(), 'the worker ends with its paper').toEqual([]);
  const saving = page.waitForEvent('download');
  const save = page.getByRole('link', { name: 'Save it' });
  const name = (await save.getAttribute('download')) ?? '';
  await save.click();
  const { pages } = await readPdf(new Uint8Array(await readFile(await (await saving).path())));
  expect(pages.length).toBeGreaterThan(6);
  await goTo('papers');
  await page.getByText(name, { exact: false }).first().waitFor();
  expectClean(page);
});

test('a set that is cancelled leaves nothing in the record, no worker, and the check as it was', async () => {
  const { page, goTo } = await offlineInWorkshop();
  // The worker does its work, and the page never hears that it is done: so it can be cancelled however quick it is.
  await page.evaluate(() => {
    const listen = Worker.prototype.addEventListener;
    Worker.prototype.addEventListener = function (this: Worker, type: string, hear: EventListener) {
      const heard: EventListener = (event) => {
        if (!('made' in ((event as MessageEvent).data ?? {}))) hear(event);
      };
      listen.call(this, type, heard);
    } as typeof listen;
  });
  await checkAll(page, goTo);
  await page.getByRole('radio', { name: /^Letter/ }).check();
  await page.getByRole('checkbox', { name: /whole working/ }).uncheck();
  await make(page).click();
  await title(page, /^Making/).waitFor();
  await page.getByText(/^Drawing the pages/).waitFor({ timeout: 120_000 });
  expect(page.workers()).toHaveLength(1);
  await expectAccessible(page);
  await page.getByRole('button', { name: /^Cancel/ }).click();
  await make(page).waitFor();
  expect(page.workers()).toEqual([]);
  expect(await page.getByRole('radio', { name: /^Letter/ }).isChecked()).toBe(true);
  expect(await page.getByRole('checkbox', { name: /whole working/ }).isChecked()).toBe(false);
  await goTo('papers');
  await page.getByText(/^No paper made yet/).waitFor();
  expectClean(page);
});
