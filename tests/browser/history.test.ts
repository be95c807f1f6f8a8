/** Finding something in the record, telling who wrote what when, and checking the book. */
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { inWorkshop, offlineInWorkshop } from './invented-workshop';
import { expectAccessible, expectClean, expectNoWider } from './phone';

const title = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
const found = (page: Page) => page.getByRole('list', { name: 'Find' }).getByRole('link');

it('a container is found by typing, and what was typed stands there on coming back', async () => {
  const { page, goTo } = await offlineInWorkshop();
  await goTo('containers');
  await page.getByRole('link', { name: /^Find/ }).click();
  await title(page, 'Find').waitFor();
  const field = page.getByLabel('What do you look for?');
  await field.pressSequentially('c05');
  await page.getByText('found', { exact: false }).first().waitFor();
  await expect.poll(() => found(page).first().textContent()).toMatch(/^C.05/);
  await expectAccessible(page);
  await field.fill('leach silver 6 april');
  await expect.poll(() => found(page).first().textContent()).toMatch(/^C.05/);
  await expectNoWider(page);
  await found(page).first().click();
  await title(page, /Container C.05/).waitFor();
  await page.goBack();
  await title(page, 'Find').waitFor();
  expect(await page.getByLabel('What do you look for?').inputValue()).toBe('leach silver 6 april');
  await expect.poll(() => found(page).first().textContent()).toMatch(/^C.05/);
  await page.getByLabel('What do you look for?').fill('no such thing');
  await page.getByText('Nothing is found by this').waitFor();
  await expectAccessible(page);
  expectClean(page);
});

it('the history of a container tells a correction: what it said, what it says, who and when', async () => {
  const { page, goTo } = await offlineInWorkshop();
  await goTo('containers');
  await page.getByRole('link', { name: /^C.01/ }).click();
  await title(page, /Container C.01/).waitFor();
  await page.getByRole('link', { name: /^History of this container/ }).click();
  await title(page, /history$/).waitFor();
  await page.getByRole('link', { name: /9\.8.L read/ }).click();
  await page.getByRole('link', { name: /^Correct it/ }).click();
  await title(page, /^Correct/).waitFor();
  await page.getByLabel('Level', { exact: true }).fill('9,3');
  await page.getByLabel('Why it was wrong').fill('read the wrong line');
  await page.getByRole('button', { name: 'Keep the correction' }).click();
  await title(page, /read$/).waitFor();
  await page.getByText('What became of it').waitFor();
  await goTo('containers');
  await page.getByRole('link', { name: /^C.01/ }).click();
  await page.getByRole('link', { name: /^History of this container/ }).click();
  const line = page.getByRole('listitem').filter({ hasText: 'read the wrong line' }).last();
  await line.waitFor();
  const text = (await line.textContent()) ?? '';
  expect(text).toMatch(/9\.8.L read9 May 2026, \d\d:\d\d, Ines Halvard/);
  expect(text).toMatch(/Written down later: 14 May 2026/);
  expect(text).toMatch(/Corrected 14 May 2026, \d\d:\d\d, Ines Halvard: read the wrong line/);
  expect(text).toMatch(/9\.8.L, now 9\.3.L/);
  await expectAccessible(page);
  await expectNoWider(page);
  expectClean(page);
});

it('the book is checked on the phone, and a hash from a paper is found in it', async () => {
  const { page, goTo } = await inWorkshop();
  await goTo('record');
  await page.getByRole('link', { name: /^Check the book/ }).click();
  await title(page, 'Check the book').waitFor();
  await expectAccessible(page);
  await page.getByRole('button', { name: /^Check every entry now/ }).click();
  await page.getByText(/^Whole: \d+ entries$/).waitFor();
  const last = await page
    .getByRole('listitem')
    .filter({ hasText: /^.{19}This phone/ })
    .textContent();
  const hash = (last ?? '').slice(0, 19);
  await page.getByLabel('Hash on the paper').fill(hash.toUpperCase());
  await page.getByRole('button', { name: 'Look for it' }).click();
  await page.getByText(/^This book contains that entry: number \d+$/).waitFor();
  await expectAccessible(page);
  await expectNoWider(page);
  await page.getByLabel('Hash on the paper').fill(`${hash.slice(0, -1)}${hash.endsWith('0') ? '1' : '0'}`);
  await page.getByRole('button', { name: 'Look for it' }).click();
  await page.getByText('This book does not contain that entry').waitFor();
  expectClean(page);
});

it('the history of all is read page by page, and comes back to where it was left', async () => {
  const { page, goTo } = await inWorkshop();
  await goTo('record/history');
  const lines = page.getByRole('list', { name: 'History' }).getByRole('link');
  await lines.first().waitFor();
  const before = await lines.count();
  await page.getByRole('button', { name: 'Show older ones' }).click();
  await expect.poll(() => lines.count()).toBeGreaterThan(before);
  const wanted = lines.nth(before + 5);
  await wanted.scrollIntoViewIfNeeded();
  const top = (await wanted.boundingBox())?.y ?? 0;
  const name = await wanted.textContent();
  await wanted.click();
  await page.getByText('What it says').waitFor();
  await page.goBack();
  await title(page, 'History').waitFor();
  await expect.poll(async () => Math.round((await wanted.boundingBox())?.y ?? 0)).toBe(Math.round(top));
  expect(await wanted.textContent()).toBe(name);
  await expectAccessible(page);
  expectClean(page);
});
