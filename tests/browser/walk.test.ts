/** The walk along the containers with a phone in the hand: pauses, slips, a photo, a stop and its card, and what stays to be done. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { keyIn, looked, tapAnswer } from './checklist-answers';
import { inWorkshop } from './invented-workshop';
import { expectAccessible, expectClean } from './phone';

const heading = (page: Page, name: string | RegExp = /./) => page.getByRole('heading', { level: 1, name });
const inOrder = 'As it should be';

const title = async (page: Page): Promise<string> => (await heading(page).textContent()) ?? '';

/** Taps, and waits for another page. */
async function tapOn(page: Page, name: string): Promise<void> {
  const before = await title(page);
  await tapAnswer(page, name);
  await heading(page).filter({ hasNotText: before }).waitFor();
}

/** The rest of the containers, as they should be. */
async function seeTheRest(page: Page): Promise<void> {
  while ((await page.getByRole('button', { name: inOrder }).count()) > 0) await tapOn(page, inOrder);
}

async function placeInOrder(page: Page): Promise<void> {
  await tapOn(page, 'Each in its own tray');
  await tapOn(page, 'Ran clear, both sides');
  await keyIn(page, '12');
  await heading(page, 'The walk is done.').waitFor();
}

test('goes on where it was interrupted, and takes a slip back', async () => {
  const { page, goTo } = await inWorkshop();
  await page.getByRole('link', { name: /^Walk along the containers/ }).click();
  await heading(page, /^C/).waitFor();
  const [first] = [await title(page)];
  await expectAccessible(page);
  for (const name of [inOrder, 'Something is wrong']) {
    const box = await page.getByRole('button', { name }).boundingBox();
    expect(box?.height).toBeGreaterThanOrEqual(72);
  }
  await tapOn(page, inOrder);
  const second = await title(page);
  // A second tap of the same water drop.
  await page.getByRole('button', { name: inOrder }).click();
  expect(await title(page)).toBe(second);
  await page.getByRole('button', { name: `Undo: ${first}` }).click();
  await heading(page, first).waitFor();
  await tapOn(page, inOrder);
  await tapOn(page, inOrder);
  const third = await title(page);
  await page.reload();
  await heading(page, third).waitFor();
  await goTo('today');
  await page.getByRole('link', { name: /^Walk along the containers Under way: 2 of \d+ seen/ }).click();
  await heading(page, third).waitFor();
  await tapAnswer(page, 'Cannot see it');
  await expectAccessible(page);
  await tapOn(page, 'Somebody works with it');
  await seeTheRest(page);
  await placeInOrder(page);
  await page.getByText(/containers seen, 1 not seen, nothing found\.$/).waitFor();
  await expectAccessible(page);
  await page.getByRole('link', { name: /was not seen Somebody works with it/ }).click();
  await tapOn(page, inOrder);
  await heading(page, 'It is looked at').waitFor();
  expectClean(page);
});

test('keeps what is wrong with a photo, leads from a stop to its card and back, and lets each be closed', async () => {
  const { page, goTo } = await inWorkshop();
  await goTo('walk');
  await tapOn(page, 'Something is wrong');
  await expectAccessible(page);
  await tapOn(page, 'Leak or crust?');
  await tapOn(page, 'Weep');
  await tapOn(page, 'Old crust, dry');
  const picture = { name: 'crust.png', mimeType: 'image/png', buffer: await page.screenshot() };
  await page.getByLabel('Choose pictures').setInputFiles(picture);
  await page.getByAltText('Photo 1 of 1').waitFor();
  await page.reload();
  await page.getByAltText('Photo 1 of 1').waitFor();
  await expectAccessible(page);
  const next = page.getByRole('button', { name: 'Something is wrong' });
  await tapAnswer(page, 'Write it down, go on');
  await next.waitFor();

  await tapOn(page, 'Something is wrong');
  await tapOn(page, 'Shape of the walls');
  await tapAnswer(page, 'Bulged or hissing');
  await page.getByText('STOP', { exact: true }).waitFor();
  await expectAccessible(page);
  await page.getByRole('link', { name: /^Back off\. Touch nothing/ }).click();
  await heading(page, 'Container bulges or hisses').waitFor();
  await page.getByRole('button', { name: 'Back' }).click();
  await page.getByText('STOP', { exact: true }).waitFor();
  await tapAnswer(page, 'Dealt with as the card says? Say what was done.');
  await expectAccessible(page);
  await page.getByLabel('What was done').fill('Let down behind the wall, moved out');
  await looked(page);
  await page.getByRole('button', { name: 'Close it' }).click();
  await next.waitFor();
  await seeTheRest(page);
  await placeInOrder(page);
  await page.getByText(/containers seen, 2 found\.$/).waitFor();

  await goTo('today');
  await page.getByRole('link', { name: /^C.0\d: Leak or crust\?/ }).click();
  await heading(page, 'Leak or crust? Weep: old crust, dry.').waitFor();
  await page.getByAltText('Photo 1 of 1').waitFor();
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Done: say what was done' }).click();
  await page.getByLabel('What was done').fill('Washed off, dry');
  await page.getByLabel('Choose pictures').setInputFiles(picture);
  await page.getByAltText('Photo 1 of 1').waitFor();
  await looked(page);
  await page.getByRole('button', { name: 'Close it' }).click();
  await page.getByText('Washed off, dry').waitFor();
  await expectAccessible(page);
  await goTo('today');
  expect(await page.getByText(/Leak or crust\?|Shape of the walls/).count()).toBe(0);
  expectClean(page);
});

test('can be read and answered at twice the size of text, and in the dark', async () => {
  const { page, goTo } = await inWorkshop();
  await page.evaluate(() => {
    document.documentElement.style.fontSize = '225%';
    document.documentElement.dataset.theme = 'dark';
  });
  await goTo('walk');
  const width = () => page.evaluate(() => document.documentElement.scrollWidth);
  expect(await width()).toBe(360);
  await expectAccessible(page);
  await tapOn(page, 'Something is wrong');
  expect(await width()).toBe(360);
  await tapOn(page, 'Not so: Label readable, dated');
  await tapOn(page, 'Date not known');
  expect(await width()).toBe(360);
  await expectAccessible(page);
  expectClean(page);
});
