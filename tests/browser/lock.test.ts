/** The lock of the screen on a phone: what it hides is not in the document, and what was being written is kept. */
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { offlineInWorkshop } from './invented-workshop';
import { expectAccessible, expectClean, expectNoWider } from './phone';

const title = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
const key = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

/** Another app is in front, and after so long this one again. */
async function away(page: Page, time: string): Promise<void> {
  const turn = (state: string) =>
    page.evaluate((now) => {
      Object.defineProperty(document, 'visibilityState', { configurable: true, value: now });
      document.dispatchEvent(new Event('visibilitychange'));
    }, state);
  await turn('hidden');
  await page.clock.fastForward(time);
  await turn('visible');
}

async function turnOn(page: Page, goTo: (place: string) => Promise<void>): Promise<void> {
  await goTo('record/lock');
  await page.getByLabel('PIN', { exact: true }).fill('0258');
  await page.getByLabel('The same PIN again').fill('0258');
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Turn the lock on' }).click();
  await page.getByText('On, after 5 minutes out of view').waitFor();
  await expectAccessible(page);
  await expectNoWider(page);
}

it('hides every page but those of somebody in need, keeps what was being written, and opens by its PIN', async () => {
  const { page, goTo } = await offlineInWorkshop();
  await turnOn(page, goTo);
  await goTo('containers/new');
  await page.getByLabel('Holds when full', { exact: true }).fill('2.57');
  await away(page, '04:00');
  expect(await page.getByLabel('Holds when full', { exact: true }).inputValue()).toBe('2.57');
  await away(page, '05:00');
  await title(page, 'Locked').waitFor();
  await expectAccessible(page);
  await expectNoWider(page);
  expect(await page.content()).not.toMatch(/2\.57|Holds when full|C.01/);
  for (const place of ['today', 'containers', 'record/history', 'record/lock', 'papers']) {
    await page.evaluate((to) => window.location.assign(`#/${to}`), place);
    await title(page, 'Locked').waitFor();
  }
  await page.getByRole('link', { name: 'SOS' }).click();
  await title(page, 'Locked').waitFor({ state: 'detached' });
  await page.getByRole('link', { name: /^Call/ }).first().waitFor();
  await goTo('clocks');
  await title(page, 'Clocks').waitFor();
  await goTo('containers/new');
  await title(page, 'Locked').waitFor();

  for (const digit of ['0', '2', '5', '9']) await key(page, digit).click();
  await key(page, 'Open').click();
  await page.getByText('Not the PIN.').waitFor();
  for (const digit of ['0', '2', '5', '8']) await key(page, digit).click();
  await key(page, 'Open').click();
  await page.getByLabel('Holds when full', { exact: true }).waitFor();
  expect(await page.getByLabel('Holds when full', { exact: true }).inputValue()).toBe('2.57');
  expectClean(page);
});

it('is on in every window, and goes in all of them', async () => {
  const { page, goTo } = await offlineInWorkshop();
  await turnOn(page, goTo);
  const address = page.url().split('#')[0];
  const second = await page.context().newPage();
  await second.goto(`${address}#/containers`);
  await title(second, 'Locked').waitFor();
  await second.getByLabel('PIN', { exact: true }).fill('0258');
  await second.keyboard.press('Enter');
  await title(second, 'Containers').waitFor();
  // A page that stands open is not asked about when it is loaded anew; one that is locked stays so.
  await page.reload();
  await page.getByRole('button', { name: 'Lock now' }).click();
  await title(page, 'Locked').waitFor();
  await title(second, 'Locked').waitFor();
  for (const locked of [page, second]) {
    await locked.reload();
    await title(locked, 'Locked').waitFor();
  }

  await page.getByText('PIN forgotten?').click();
  await page.getByRole('button', { name: 'Ask to take the lock off' }).click();
  await second.getByText(/Somebody asked to take this lock off/).waitFor();
  await expectAccessible(page);
  await page.clock.fastForward('23:59:00');
  await page.getByText(/Somebody asked/).waitFor();
  expect(await page.getByRole('button', { name: 'Take the lock off now' }).count()).toBe(0);
  await page.clock.fastForward('01:30');
  await page.getByRole('button', { name: 'Take the lock off now' }).click();
  await title(page, 'Screen lock').waitFor();
  await title(second, 'Containers').waitFor();
  expectClean(page);
});
