/** Candidates of a container on a phone without network: read by keyboard, in large text, one accepted and seen on the label. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openWorkshop } from './invented-workshop';
import { expectAccessible, expectClean, openPhone, untilKept } from './phone';
import { openSite } from './site';

const title = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });

/** Opens the invented workshop's first can of barren liquor. */
async function openLiquor(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await openWorkshop(page);
  await page.getByRole('link', { name: 'Containers', exact: true }).click();
  await title(page, 'Containers').waitFor();
  await page.getByRole('link', { name: /^C.02/ }).click();
  await title(page, /Container C.02/).waitFor();
}

/** Stands on it with the keyboard alone, as Tab reaches it, and presses Enter. */
async function enter(page: Page, name: RegExp): Promise<void> {
  const wanted = page.getByRole('link', { name }).first();
  await wanted.waitFor();
  for (let presses = 0; presses < 200; presses += 1) {
    await page.keyboard.press('Tab');
    if (await wanted.evaluate((one) => one === document.activeElement)) {
      await page.keyboard.press('Enter');
      return;
    }
  }
  throw new Error(`Tab does not reach ${name}`);
}

test('what the laws make of a can is there offline, by keyboard, and what the collector accepts goes on the label', async () => {
  const site = await openSite();
  const page = await openPhone({ width: 360, height: 800 });
  await openLiquor(page, site.address);
  await untilKept(page);
  await site.stop();
  const door = page.getByRole('link', { name: /^Candidates .*Not confirmed: \d+/ });
  await door.waitFor();
  await door.click();
  await title(page, /C.02: candidates/).waitFor();
  await page.getByRole('heading', { level: 2, name: 'Not determined' }).waitFor();
  await page.getByRole('link', { name: /^confirmed 11.02.07\*.*Fenwater Collection/ }).waitFor();
  await page.getByRole('img', { name: 'corrosion' }).waitFor();
  await expectAccessible(page);
  const close = page.locator('summary', { hasText: 'Came close' }).first();
  await close.press('Enter');
  await page.getByRole('link', { name: /H334/ }).waitFor();
  await enter(page, /H317/);
  await title(page, /Skin Sens.*H317/).waitFor();
  await page.getByRole('heading', { level: 2, name: 'The numbers' }).waitFor();
  await expectAccessible(page);
  await enter(page, /^Share of nickel dinitrate/);
  await title(page, /Share of nickel dinitrate/).waitFor();
  await page.goBack();
  await title(page, /Skin Sens.*H317/).waitFor();
  await page.getByRole('link', { name: 'Somebody has said so' }).click();
  await title(page, /Who has said what/).waitFor();
  await expectAccessible(page);
  await page.getByRole('radio', { name: /^It is so/ }).check();
  await page.getByLabel('Who said it').selectOption('Fenwater Collection');
  const today = await page.evaluate(() => new Date().toISOString().slice(0, 10));
  await page.getByLabel('When').fill(today);
  await page.getByRole('button', { name: 'Write it down' }).click();
  await page.getByText(/^Confirmed by Fenwater Collection/).waitFor();
  await expectAccessible(page);
  const container = page.url().replace(/\/candidates.*/, '');
  await page.goto(`${container}/label`);
  const label = page.getByRole('img', { name: /^The label says: .*C.02/ });
  await label.waitFor();
  const says = await label.getAttribute('aria-label');
  expect(says).toMatch(/H317/);
  expect(says, 'one word takes no other hazard off the label, and does not confirm it').toMatch(/H314/);
  expect(says).toMatch(/[Cc]andidate/);
  expectClean(page);
});

test('in letters twice as large nothing is cut off, in the dark too', async () => {
  const site = await openSite();
  const page = await openPhone({ width: 360, height: 800 });
  await openLiquor(page, site.address);
  const container = page.url();
  await page.goto(`${site.address}#/record/reading`);
  await page.getByRole('radio', { name: 'Dark' }).check();
  for (const path of ['', '/transport/UN%203264', '/waste-list/11%2002%2007*', '/another']) {
    await page.goto(`${container}/candidates${path}`);
    await page.getByRole('heading', { level: 1, name: /C.02|UN.3264|11.02.07/ }).waitFor();
    await page.evaluate(() => {
      document.documentElement.style.fontSize = '225%';
    });
    await page
      .getByText(/Dilution is no treatment|licensed collector decide/)
      .first()
      .waitFor();
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide, path).toBeLessThanOrEqual(360);
    await expectAccessible(page);
  }
  expectClean(page);
});
