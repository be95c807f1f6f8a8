/** A working place described and a charge checked at it, on a phone with no network: keyboard, reload half-way, both themes, large text. */
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { offlineInWorkshop } from './invented-workshop';
import { expectAccessible, expectClean, expectNoWider, type Phone } from './phone';

const title = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
const line = (page: Page, name: string) => page.getByLabel(name, { exact: true });

/** A phone in the invented workshop, at the batch in the leach, with no network from here on. */
async function atTheLeach(phone: Partial<Phone> = {}) {
  const { page, goTo } = await offlineInWorkshop(phone);
  await goTo('batches');
  const href = await page.getByRole('link', { name: /B.03/ }).getAttribute('href');
  return { page, goTo, batch: href?.split('/').at(-1) ?? '' };
}

async function looksRight(page: Page, name: string | RegExp): Promise<void> {
  await title(page, name).waitFor();
  await expectNoWider(page);
  await expectAccessible(page);
}

/** A finger comes a second after the page: water on the glass does not count as a tap. */
async function tap(page: Page, name: string | RegExp): Promise<void> {
  await page.clock.fastForward(1_000);
  await page.getByRole('button', { name }).click();
}

/** Goes on with the Tab key alone until this has the focus. */
async function tabTo(page: Page, target: ReturnType<typeof line>): Promise<void> {
  for (let presses = 0; presses < 60; presses += 1) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error('the Tab key does not come there');
}

async function copper(page: Page, grams: string): Promise<void> {
  await line(page, 'Which metal?').selectOption('Cu');
  await line(page, 'Copper').fill(grams);
  await line(page, 'Volume').fill('1.0');
  await line(page, 'Strength').fill('7.9');
  await line(page, 'Strength, unit').selectOption('mol/L');
  await line(page, 'From the first gas to the last').fill('2');
}

it('a charge is checked half before a reload and half after, taken, and answers the list that asked', async () => {
  const { page, goTo, batch } = await atTheLeach();
  await goTo(`ventilation/${batch}/leach-start`);
  await looksRight(page, 'Ventilation check');
  await copper(page, '50');
  await page.reload();
  await title(page, 'Ventilation check').waitFor();
  expect(await line(page, 'Copper').inputValue()).toBe('50');
  await line(page, 'Limit').selectOption('niosh-15-min');
  await page.getByRole('status').getByText('Too much for this place: split it').waitFor();
  await looksRight(page, 'Ventilation check');
  await page.getByRole('link', { name: /^Largest lot/ }).click();
  await looksRight(page, 'Largest lot for this place');
  await page.getByRole('link', { name: 'Back' }).click();
  await title(page, 'Ventilation check').waitFor();
  await line(page, 'Copper').fill('3');
  await page.getByRole('status').getByText('This place is enough for this lot').waitFor();
  await looksRight(page, 'Ventilation check');
  await tap(page, /^Take this result/);
  await expect.poll(() => new URL(page.url()).hash).toBe(`#/check/${batch}/leach-start`);
  await goTo(`batches/${batch}`);
  await page.getByRole('link', { name: /^This place is enough/ }).click();
  await looksRight(page, 'Ventilation check');
  await page.getByText(/3\sg copper/).waitFor();
  expectClean(page);
});

it('works by the keyboard, in the dark, at twice the size of text', async () => {
  const { page, goTo, batch } = await atTheLeach({ dark: true });
  await goTo('record/reading');
  await page.getByRole('radio', { name: /dark/i }).check();
  await page.evaluate(() => {
    document.documentElement.style.fontSize = '225%';
  });
  await goTo(`ventilation/${batch}/-`);
  await title(page, 'Ventilation check').waitFor();
  await copper(page, '3');
  const limit = line(page, 'Limit');
  await tabTo(page, limit);
  await limit.selectOption('niosh-15-min');
  await looksRight(page, 'Ventilation check');
  await tabTo(page, page.getByRole('button', { name: /^Take this result/ }));
  await page.clock.fastForward(1_000);
  await page.keyboard.press('Enter');
  await page.getByText('The charge, as it was written').waitFor();
  await looksRight(page, 'Ventilation check');
  await tabTo(page, page.getByRole('link', { name: /^In the duct at the peak/ }));
  await page.keyboard.press('Enter');
  await looksRight(page, 'In the duct at the peak');
  expectClean(page);
});

it('a place is described, marked when it is due, and measured again', async () => {
  const { page, goTo } = await atTheLeach();
  await goTo('record/stations');
  await looksRight(page, 'Working places');
  await page.getByRole('link', { name: 'Describe a place' }).click();
  await title(page, 'A new place').waitFor();
  await line(page, 'Name').fill('Old hood');
  await page.getByRole('radio', { name: /^Hood with a duct/ }).check();
  await line(page, 'Width of the opening').fill('0.90');
  await line(page, 'Width of the opening, unit').selectOption('m');
  await page.reload();
  await title(page, 'A new place').waitFor();
  expect(await line(page, 'Width of the opening').inputValue()).toBe('0.90');
  await tap(page, 'Keep this place');
  await looksRight(page, 'A new place');
  await line(page, 'Height of the opening').fill('45');
  await line(page, 'Mean speed').fill('100');
  await line(page, 'Mean speed, unit').selectOption('ft/min');
  await line(page, 'Measured on').fill('2025-02-01');
  await tap(page, 'Keep this place');
  await looksRight(page, 'Old hood');
  await page.getByText('older than a year').waitFor();
  await goTo('today');
  await page.getByRole('link', { name: /^Old hood/ }).click();
  await page.getByRole('link', { name: /^We measured again/ }).click();
  await looksRight(page, /^Old hood: measured again/);
  await line(page, 'Mean speed').fill('0.51');
  await line(page, 'Mean speed, unit').selectOption('m/s');
  await tap(page, 'Keep this reading');
  await looksRight(page, 'Old hood');
  await expect.poll(() => page.getByText('older than a year').count()).toBe(0);
  await goTo('today');
  await title(page, /14 May/).waitFor();
  expect(await page.getByRole('link', { name: /^Old hood/ }).count()).toBe(0);
  expectClean(page);
});
