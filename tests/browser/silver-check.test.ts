/** A test for silver on a phone with no network, in the invented workshop: both lists, a reload in the middle, the clock run out, its waste. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { answerUntil, looked } from './checklist-answers';
import { offlineInWorkshop } from './invented-workshop';
import { expectAccessible, expectClean, expectNoWider } from './phone';

const title = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
const follow = (page: Page, name: string | RegExp) => page.getByRole('link', { name }).first().click();
async function tap(page: Page, name: string | RegExp): Promise<void> {
  await looked(page);
  const exact = typeof name === 'string' ? { exact: true } : {};
  await page.getByRole('button', { name, ...exact }).click();
}

const minutes = (n: number): number => n * 60_000;
const standsBy = 'Joost Merrin';

/** Every page that is reached is looked at by axe, on light paper and on dark, and is no wider than the phone, also at twice the text. */
async function reach(page: Page, name: string | RegExp): Promise<void> {
  await title(page, name).waitFor();
  for (const theme of ['dark', 'light']) {
    await page.evaluate((chosen) => {
      document.documentElement.dataset.theme = chosen;
    }, theme);
    await expectAccessible(page);
  }
  for (const size of ['225%', '']) {
    await page.evaluate((chosen) => {
      document.documentElement.style.fontSize = chosen;
    }, size);
    await expectNoWider(page);
  }
}

async function see(page: Page, ask: string, answer: string): Promise<void> {
  await reach(page, ask);
  await tap(page, answer);
}

/** Goes through the list that stands before a reagent, and begins its step. */
async function clears(page: Page, list: string, mayStart: string): Promise<void> {
  await reach(page, `First: ${list}`);
  await follow(page, list);
  // The walk round of the place comes first where it is not in date.
  await page
    .getByRole('heading', { level: 1 })
    .filter({ hasNotText: `First: ${list}` })
    .waitFor();
  if (await title(page, 'First the walk round').isVisible()) {
    await tap(page, /Ready for a spill or fume/);
    await title(page, 'Ways to eyewash and door').waitFor();
    await answerUntil(page, undefined, standsBy);
    await title(page, 'Acid may be opened.').waitFor();
    await tap(page, new RegExp(list));
    await page.getByRole('heading', { level: 1 }).filter({ hasNotText: 'Acid may be opened.' }).waitFor();
  }
  await answerUntil(page, undefined, standsBy);
  await title(page, mayStart).waitFor();
  await tap(page, 'Begin the test');
}

test('silver is looked for from the first list to the jar', { timeout: 240_000 }, async () => {
  const { page } = await offlineInWorkshop();

  await follow(page, 'Batches');
  await follow(page, /B.03/);
  await title(page, /Batch B.03/).waitFor();
  await follow(page, /Check for silver/);
  await clears(page, 'Chloride spot test', 'The chloride test may start.');
  await see(page, 'How does the sample look?', 'Clear, bottom seen');
  await see(page, 'Blank: what does it show?', 'Stays clear');
  await see(page, 'And known silver?', 'Clear, then white curd');

  // With keys alone: the title has the focus, the first answer is one step on.
  await reach(page, 'What came down?');
  await looked(page);
  const first = page.getByRole('button', { name: 'White, curdy, at once' });
  for (let steps = 0; steps < 12 && !(await first.evaluate((one) => one === document.activeElement)); steps++)
    await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await reach(page, 'Hot water: what went?');
  for (const answer of await page.getByRole('group', { name: 'Answers' }).getByRole('button').all())
    expect((await answer.boundingBox())?.height ?? 0).toBeGreaterThanOrEqual(72);
  await tap(page, 'The white stays');
  await see(page, 'Daylight: what became of it?', 'Not tried');

  await clears(page, 'Ammonia spot test', 'The ammonia test may start.');
  await reach(page, 'Ammonia goes in');
  await tap(page, /Ammonia goes in now/);
  await see(page, 'Is it alkaline?', 'pH 9 or more');
  await title(page, 'Where is the white now?').waitFor();
  await page.clock.fastForward(minutes(4));
  await page.reload();
  await reach(page, 'Where is the white now?');
  await page.getByText('10 min left').waitFor();
  await see(page, 'Where is the white now?', 'Gone, all of it');

  await title(page, 'Which colour is the liquid?').waitFor();
  await page.clock.fastForward(minutes(11));
  await reach(page, '15 min are over. Acid in now.');
  await page.getByRole('link', { name: 'Dried or dark: open the card' }).waitFor();
  await tap(page, 'Wet, no film: acid goes in now');
  await see(page, 'What does the strip show?', 'Above pH 3');
  await page
    .getByText(/More dilute HCl, drop by drop/)
    .first()
    .waitFor();
  await see(page, 'What does the strip show?', 'pH 3 or less');
  await see(page, 'What came back?', 'White curd');

  await reach(page, 'Not conclusive');
  await tap(page, /Now its waste/);
  await reach(page, 'The waste of the test');
  await page.getByLabel('Sample').fill('0,5');
  await page.getByLabel('Drops of everything that went in').fill('30');
  await tap(page, /^Take 2.0/);
  await follow(page, /Sample and drops/);
  await reach(page, 'Waste of the test');
  await follow(page, 'Back');
  await page.getByLabel('Into which container').first().selectOption('new');
  await page.getByLabel('Holds when full', { exact: true }).fill('0.5');
  await reach(page, 'The waste of the test');
  await tap(page, 'Keep the test');

  await reach(page, 'Not conclusive');
  await page.getByText('Gone, all of it: fits silver').waitFor();
  await page.getByRole('link', { name: /Ammonia-test waste/ }).waitFor();
  await follow(page, 'Its entry in the history');
  await reach(page, /Silver check: not conclusive/);
  await follow(page, 'Open its working');
  await follow(page, 'To the batch');
  await title(page, /Batch B.03/).waitFor();
  await page.getByRole('link', { name: /Not conclusive/ }).waitFor();
  expectClean(page);
});
