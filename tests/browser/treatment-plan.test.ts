/** A treatment planned before anything goes in, on a phone with no network: base and pH, what stays dissolved, portions. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openWorkshop } from './invented-workshop';
import { expectAccessible, expectClean, openPhone, untilKept } from './phone';
import { openSite } from './site';

const follow = (page: Page, name: string | RegExp) => page.getByRole('link', { name }).first().click();
const wide = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth);

async function reach(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole('heading', { level: 1, name }).waitFor();
  await page
    .getByText(/being worked out/i)
    .first()
    .waitFor({ state: 'detached' });
  await expectAccessible(page);
  expect(await wide(page)).toBe(false);
}

/** By choice, so that it stays over a reload. */
async function chooseDark(page: Page): Promise<void> {
  await page.evaluate(() => localStorage.setItem('leesbook:preference:theme', 'dark'));
  await page.reload();
  await page.locator('html[data-theme=dark]').waitFor();
}

test.each([false, true])(
  'base, pH and portions are chosen and looked at (dark: %s)',
  { timeout: 120_000 },
  async (dark) => {
    const site = await openSite();
    const page = await openPhone({ width: 360, height: 800, dark });
    await page.goto(site.address);
    await untilKept(page);
    await openWorkshop(page);
    if (dark) await chooseDark(page);
    // The pages of a treatment are fetched when they are first opened: the worker must have them by then.
    await site.stop();
    await page.context().setOffline(true);
    await follow(page, /^Containers$/);
    await follow(page, /C.02/);
    await follow(page, /Plan a treatment/);
    await reach(page, /C.02 with hydrated lime/);

    const slider = page.getByRole('slider', { name: 'Read the curve at' });
    const before = await slider.getAttribute('aria-valuetext');
    await slider.press('ArrowLeft');
    expect(await slider.getAttribute('aria-valuetext')).not.toBe(before);
    await page.getByRole('radio', { name: /^Limestone/ }).check();
    await page.getByText(/^Limestone ends at pH 5/).waitFor();
    await expectAccessible(page);
    await page.getByRole('radio', { name: /^Caustic soda/ }).check();
    await page.getByLabel('pH wanted').fill('9,5');
    await page.getByText(/pH 9\.5\. Still dissolved/).waitFor();
    await page.reload();
    await reach(page, /C.02 with caustic soda/);
    await expect.poll(() => page.getByLabel('pH wanted').inputValue()).toBe('9,5');

    await follow(page, 'Which pH');
    await reach(page, 'Which pH');
    await page.getByText('Reference only, not your limit').waitFor();
    await follow(page, /^Copper/);
    await reach(page, /Copper left in the filtrate, at most/);
    await follow(page, 'Back');
    await reach(page, 'Which pH');
    await follow(page, 'Back');
    await reach(page, /C.02 with caustic soda/);

    await follow(page, 'The portions');
    await reach(page, /C.02: the portions/);
    await page.getByRole('table', { name: 'Portions of caustic soda' }).waitFor();
    await page.getByRole('radio', { name: /Limestone, then/ }).check();
    await page.getByRole('table', { name: 'Portions of limestone' }).waitFor();
    await expectAccessible(page);
    await follow(page, /Largest portion, by the foam/);
    await reach(page, 'Largest portion for the free space');
    expectClean(page);
  },
);
