/** A laboratory's report, written down with gloves on a small phone with no network, and with the largest text. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { offlineInWorkshop } from './invented-workshop';
import { expectAccessible, expectClean, expectNoWider } from './phone';

const titled = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
const fill = (page: Page, name: string, text: string) =>
  page.getByRole('textbox', { name, exact: true }).fill(text);
const tap = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).click();

/** As a person sets it in the browser. */
const sized = (page: Page, text: string): Promise<void> =>
  page.evaluate((size) => {
    document.documentElement.style.fontSize = size;
  }, text);

/** The smallest file that a reader of PDF takes for one. */
const pdf = Buffer.from(
  '%PDF-1.4\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF\n',
);

describe('a report of a laboratory', () => {
  test.each([
    { width: 360, height: 800, dark: false, text: '112.5%' },
    { width: 412, height: 915, dark: true, text: '225%' },
  ])(
    'is written down line by line, $width × $height, dark: $dark, text $text',
    {
      timeout: 180_000,
    },
    async ({ dark, text, ...size }) => {
      const { page, goTo } = await offlineInWorkshop({ ...size, dark });
      if (dark) {
        await goTo('record/reading');
        await page.getByRole('radio', { name: 'Dark' }).check();
      }
      await goTo('containers');
      await page.getByRole('link', { name: /C.02/ }).first().click();
      await titled(page, /C.02/).waitFor();
      await page.getByRole('link', { name: 'More', exact: true }).click();
      await page.getByRole('link', { name: /^A laboratory’s report/ }).click();
      await titled(page, /what a laboratory found$/).waitFor();
      await sized(page, text);
      await expectNoWider(page);
      await expectAccessible(page);

      await fill(page, 'Laboratory', 'Weir Laboratory');
      await page.getByLabel('Day of the sample').fill('2026-05-14');
      await tap(page, /^The eight of the federal table/);
      // The keyboard is where the first number goes, and no other line is open.
      const level = (name: string) => page.getByRole('textbox', { name: `${name}, level` });
      await expect.poll(() => level('Arsenic').evaluate((one) => one === document.activeElement)).toBe(true);
      expect(await page.getByRole('textbox', { name: /, level$/ }).count()).toBe(1);
      await level('Arsenic').fill('0,05');
      await page.getByRole('checkbox', { name: /^None found down to this/ }).check();
      await tap(page, 'Next line');
      await level('Barium').fill('0');
      await expectNoWider(page);
      await tap(page, 'Keep the report');
      await page.getByText(/tick “none found”/).waitFor();
      await level('Barium').fill('2.1');
      await page.getByLabel('One more element').selectOption('Cu');
      await page.getByLabel('Copper, level, unit').selectOption('g/L');
      await level('Copper').fill('12');
      await page
        .getByLabel('Choose a PDF')
        .setInputFiles({ name: 'W 2217.pdf', mimeType: 'application/pdf', buffer: pdf });
      await page.getByText('W 2217.pdf').waitFor();

      // What was begun stays through a reload, with the line that was open.
      await page.reload();
      await page.getByText('You had begun this.').waitFor();
      await sized(page, text);
      await expectNoWider(page);
      expect(await level('Copper').inputValue()).toBe('12');
      await expectAccessible(page);
      await tap(page, 'Keep the report');

      await titled(page, /^Container C.02/).waitFor();
      await page.getByRole('heading', { name: 'What a laboratory found' }).waitFor();
      await page.getByRole('link', { name: /C.02: laboratory and record disagree/ }).waitFor();
      await expectNoWider(page);
      await expectAccessible(page);
      await page.getByRole('link', { name: /^Weir Laboratory/ }).click();
      await titled(page, /report of Weir Laboratory/).waitFor();
      await page.getByText('Arsenic in the filtered liquid, none found down to').waitFor();
      await page.getByRole('link', { name: /^Open W 2217\.pdf/ }).waitFor();
      await expectAccessible(page);
      expectClean(page);
    },
  );
});
