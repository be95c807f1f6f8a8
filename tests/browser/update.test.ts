import type { Page } from 'playwright-core';
import { expect, inject, it } from 'vitest';
import { openWorkshop } from './invented-workshop';
import { expectAccessible, expectClean, openPhone, untilKept } from './phone';
import { openSite, type Site } from './site';

const offer = (page: Page) => page.getByRole('button', { name: /new version/i });
const laterVersion = (page: Page) => page.locator('html[data-version=later]');

async function visited(address: string): Promise<Page> {
  const page = await openPhone({ width: 360, height: 800 });
  await page.goto(address);
  await untilKept(page);
  return page;
}

it('a new version waits until it is taken, and then opens with no server', async () => {
  const site = await openSite();
  const page = await visited(site.address);
  expect(await offer(page).count()).toBe(0);

  site.serve(inject('laterApp'));
  await page.reload();
  await offer(page).waitFor();
  await page.reload();
  await offer(page).waitFor();
  expect(await laterVersion(page).count()).toBe(0);

  await offer(page).click();
  await laterVersion(page).waitFor();
  await page.getByRole('heading', { level: 1 }).waitFor();
  expect(await offer(page).count()).toBe(0);

  await site.stop();
  await page.reload();
  await laterVersion(page).waitFor();
  expectClean(page);
});

it('a page left open finds the new version when it is looked at again', async () => {
  const site = await openSite();
  const page = await visited(site.address);
  site.serve(inject('laterApp'));
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await offer(page).click();
  await laterVersion(page).waitFor();
  expectClean(page);
});

it('a second open page is told when the first has taken the new version', async () => {
  const site = await openSite();
  const first = await visited(site.address);
  const second = await first.context().newPage();
  await second.goto(site.address);
  site.serve(inject('laterApp'));
  await first.reload();
  await offer(first).click();
  await laterVersion(first).waitFor();

  await offer(second).click();
  await laterVersion(second).waitFor();
  expectClean(first);
});

/** The page of what is due is loaded when it is first opened. */
const openDue = (page: Page) => page.getByRole('link', { name: /^Dates and amounts/ }).click();

it.each([
  ['the server has the new ones only', async () => undefined],
  ['there is no server', (site: Site) => site.stop()],
])('an old window whose files are gone says so and opens in the new version, where %s', async (_, then) => {
  const site = await openSite();
  const first = await visited(site.address);
  await openWorkshop(first);
  const old = await first.context().newPage();
  await old.goto(`${site.address}#/batches/new`);
  await old.getByLabel('Mass of the feed', { exact: true }).fill('512,5');
  site.serve(inject('laterApp'));
  await first.reload();
  await offer(first).click();
  await laterVersion(first).waitFor();
  await offer(old).waitFor();
  await then(site);

  await old.evaluate(() => window.location.assign('#/today'));
  await openDue(old);
  await old.getByRole('heading', { level: 1, name: 'This window is of an older version' }).waitFor();
  await expectAccessible(old);
  expect(await laterVersion(old).count()).toBe(0);
  await old.getByRole('link', { name: 'SOS' }).click();
  await old.getByRole('heading', { level: 1, name: 'Breathed brown fume' }).waitFor();
  await old.goBack();
  await old.getByRole('button', { name: 'Open it in the new version' }).click();
  await laterVersion(old).waitFor();
  await old.getByRole('heading', { level: 1, name: 'Dates and amounts' }).waitFor();
  await old.evaluate(() => window.location.assign('#/batches/new'));
  expect(await old.getByLabel('Mass of the feed', { exact: true }).inputValue()).toBe('512,5');
});
