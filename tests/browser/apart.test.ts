/** What must not meet, on a phone with no network: refused, written down all the same, led to the card; a pair looked up. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { offlineInWorkshop } from './invented-workshop';
import { expectAccessible, expectClean } from './phone';

const follow = (page: Page, name: string | RegExp) => page.getByRole('link', { name }).first().click();
const titled = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });

async function reach(page: Page, name: string | RegExp): Promise<void> {
  await titled(page, name).waitFor();
  await expectAccessible(page);
}

/** Tab until the element named has the focus, then press a key on it. */
async function press(page: Page, name: RegExp, key: 'Enter' | 'Space'): Promise<void> {
  const focused = () =>
    page.evaluate(() => (document.activeElement?.textContent ?? '').replaceAll('\u2011', '-'));
  for (let i = 0; i < 40 && !name.test(await focused()); i += 1) await page.keyboard.press('Tab');
  expect(await focused()).toMatch(name);
  await page.keyboard.press(key);
}

async function pick(page: Page, list: string, label: string | RegExp): Promise<void> {
  const select = page.getByLabel(list);
  const options = await select.locator('option').allTextContents();
  const index = options.findIndex((option) =>
    typeof label === 'string' ? option === label : label.test(option),
  );
  await select.selectOption({ index });
}

test.each([{ dark: false }, { dark: true }])(
  'a transfer that must not be is refused, dark: $dark',
  { timeout: 180_000 },
  async ({ dark }) => {
    const { page, goTo } = await offlineInWorkshop({ dark });
    if (dark) {
      await goTo('record/reading');
      await page.getByRole('radio', { name: 'Dark' }).check();
      await goTo('today');
    }

    await follow(page, /^Containers$/);
    await follow(page, /C.07/);
    await reach(page, /C.07/);
    await follow(page, 'Take out');
    await page.getByRole('textbox', { name: 'Take out', exact: true }).fill('0.1');
    await pick(page, 'Into which', /^C.02/);
    await page.getByRole('button', { name: 'Write it down' }).click();
    await reach(page, /C.07 must not meet C.02/);
    const [why, doors] = await Promise.all([
      page.getByText(/Silver with ammonia can explode/).boundingBox(),
      page.getByRole('region', { name: 'Actions' }).boundingBox(),
    ]);
    expect((why?.y ?? Number.NaN) + (why?.height ?? 0), 'it is read without a scroll').toBeLessThanOrEqual(
      doors?.y ?? 0,
    );

    await page.clock.fastForward(1000);
    await press(page, /Rule and source/, 'Enter');
    await reach(page, /kept apart/);
    await page.getByText('Rule AG-NH3').click();
    await page.getByText(/8 Jan 1996/).waitFor();
    await expectAccessible(page);
    await page.clock.fastForward(1000);
    await press(page, /^Back$/, 'Enter');
    await titled(page, /must not meet/).waitFor();
    await page.clock.fastForward(1000);
    await press(page, /Already done/, 'Space');
    await reach(page, 'Old ammonia and silver');
    await follow(page, /C.02 in the record/);
    await page.getByText(/has met ammonia-test waste/).waitFor();
    await reach(page, /C.02/);

    await follow(page, /May it meet/);
    await reach(page, 'May these two meet?');
    await pick(page, 'The other', 'Bleach, hypochlorite');
    await page.getByText('They must not meet.').waitFor();
    await expectAccessible(page);
    await pick(page, 'The one', 'Sand');
    await page.getByText('The chart says nothing: that is no leave.').waitFor();
    await expectAccessible(page);
    expectClean(page);
  },
);
