/** The life of a container on a phone with no network: found, not determined, said what it is, filled, broken, moved over, gone. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { offlineInWorkshop } from './invented-workshop';
import { expectAccessible, expectClean } from './phone';

/** Words are the whole name, since "Containers" stands in other names too. */
const follow = (page: Page, name: string | RegExp) =>
  page.getByRole('link', { name, exact: true }).first().click();
const tap = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).click();
const titled = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
const fill = (page: Page, name: string, text: string) =>
  page.getByRole('textbox', { name, exact: true }).fill(text);

async function reach(page: Page, name: string | RegExp): Promise<void> {
  await titled(page, name).waitFor();
  await expectAccessible(page);
}

async function pick(page: Page, list: string, label: RegExp): Promise<void> {
  const select = page.getByLabel(list, { exact: true });
  const options = await select.locator('option').allTextContents();
  await select.selectOption({ index: options.findIndex((option) => label.test(option)) });
}

/** Half a litre of wash water out of C-03 into the one that was found. */
async function pourOver(page: Page): Promise<void> {
  await follow(page, 'Containers');
  await follow(page, /C.03/);
  await titled(page, /C.03/).waitFor();
  await follow(page, 'Take out');
  await titled(page, /Out of C.03/).waitFor();
  await fill(page, 'Take out', '0.5');
  await pick(page, 'Into which', /^C.09/);
  await tap(page, 'Write it down');
}

test.each([
  { width: 360, height: 800, dark: false },
  { width: 412, height: 915, dark: true },
])('from found to gone, $width × $height, dark: $dark', { timeout: 240_000 }, async ({ dark, ...size }) => {
  const { page, goTo } = await offlineInWorkshop({ ...size, dark });
  if (dark) {
    await goTo('record/reading');
    await page.getByRole('radio', { name: 'Dark' }).check();
  }

  // Found: it stands on the shelf, and nobody knows what it is.
  await follow(page, 'Containers');
  await reach(page, 'Containers');
  await follow(page, /^Found one/);
  await titled(page, /^Found/).waitFor();
  await page.getByRole('radio', { name: 'Taken over with the place' }).check();
  await fill(page, 'How much stands in it', '1.2');
  await fill(page, 'Holds when full', '2.5');
  await expectAccessible(page);
  await tap(page, 'Put it on the shelf');
  await reach(page, /C.09/);
  await page.getByText(/^Contents not determined since/).waitFor();
  await follow(page, /^What to test/);
  await reach(page, /^What is in C.09/);
  await page.getByRole('link', { name: /^Call Fenwater/ }).waitFor();
  await follow(page, 'Back');
  await titled(page, /C.09/).waitFor();
  expect(await page.getByRole('link', { name: 'Put in' }).count(), 'nothing may be added').toBe(0);
  await pourOver(page);
  await page.getByText(/Nobody knows for sure what is in it\. Do not add/).waitFor();
  await follow(page, 'Back');

  // Somebody says what it is; then it takes more of it.
  await follow(page, 'Containers');
  await follow(page, /C.09/);
  await titled(page, /C.09/).waitFor();
  await follow(page, 'Say what it is');
  await titled(page, /what it is$/).waitFor();
  await pick(page, 'Kind of waste', /^Wash water/);
  // As much as keeps every property of what is poured in: nothing is diluted.
  await fill(page, 'Copper', '1.2');
  await fill(page, 'Nickel', '0.6');
  await pick(page, 'Who says so', /^Joost/);
  await expectAccessible(page);
  await tap(page, 'That is what it is');
  await reach(page, /C.09/);
  await page.getByText(/^Joost Merrin said what is in it/).waitFor();
  await page.clock.fastForward(60_000);
  await pourOver(page);
  await titled(page, /^Container C.03/).waitFor();

  // It breaks: all of it into a sound one, with one tap.
  await follow(page, 'Containers');
  await follow(page, /C.09/);
  await page.getByText('1.70').first().waitFor();
  await follow(page, 'More');
  await reach(page, /more/);
  await follow(page, /^It is damaged/);
  await titled(page, /damaged/).waitFor();
  await tap(page, 'Write it down');
  await reach(page, /Move all of it, now/);
  await page.clock.fastForward(1000);
  await tap(page, /^All of it into C.05/);
  await reach(page, /^Container C.05/);
  await page.getByText('1.70').first().waitFor();
  await page.clock.fastForward(60_000);

  // And it goes: to whom, with which paper.
  await follow(page, 'More');
  await follow(page, /^It is gone/);
  await titled(page, /gone/).waitFor();
  await pick(page, 'To whom it went', /^Fenwater/);
  await fill(page, 'Number of the paper', 'T-114');
  await expectAccessible(page);
  await tap(page, 'Write it down');
  await page.getByText(/^Gone since/).waitFor();
  await expectAccessible(page);

  await page.reload();
  await page.getByText(/^Gone since/).waitFor();
  await page.getByText('Fenwater Collection, T-114').waitFor();
  await follow(page, 'Containers');
  await page.getByText('Gone (2)').click();
  await reach(page, 'Containers');
  expectClean(page);
});
