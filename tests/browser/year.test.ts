/** The year on a phone with no network: every page of it can be used, and its paper is made and saved. */
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { readPdf } from '../support/read-pdf';
import { offlineInWorkshop } from './invented-workshop';
import { expectAccessible, expectClean, expectNoWider } from './phone';

const title = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });

it('shows what the invented workshop came to, and makes its paper', async () => {
  const { page, goTo } = await offlineInWorkshop();
  await goTo('papers');
  await page.getByRole('link', { name: /^The year/ }).click();
  await title(page, 'The year 2026').waitFor();
  await expectAccessible(page);
  await expectNoWider(page);
  await page
    .getByRole('link', { name: /^Copper to waste for a gram of silver/ })
    .first()
    .click();
  await title(page, /for a gram of silver/).waitFor();
  await goTo('papers/year/2026/of/Cu');
  await page.getByRole('list', { name: 'What does not tell' }).waitFor();
  await expectAccessible(page);
  await page.evaluate(() => {
    document.documentElement.style.fontSize = '225%';
  });
  await expectNoWider(page);
  await goTo('papers/year/2026/paper');
  await page.getByRole('button', { name: /^Make the summary/ }).click();
  await title(page, 'The summary is made').waitFor();
  await expectAccessible(page);
  const save = page.getByRole('link', { name: 'Save it' });
  const [download] = await Promise.all([page.waitForEvent('download'), save.click()]);
  expect(download.suggestedFilename()).toBe('invented-year-2026-01-01-to-2026-12-31.pdf');
  const { pages } = await readPdf(new Uint8Array(await readFile(await download.path())));
  expect(pages.map(({ text }) => text).join('\n')).toContain('Closes as far as it is told');
  await goTo('papers');
  await page.getByText('invented-year-2026-01-01-to-2026-12-31.pdf').waitFor();
  expectClean(page);
});
