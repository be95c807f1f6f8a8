/** A load leaves on a phone with no network: chosen, signed with a finger, kept, chased, proved with a PDF, and one that comes back. */
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { offlineInWorkshop } from './invented-workshop';
import { expectAccessible, expectClean, expectNoWider } from './phone';

const day = 24 * 3_600_000;

const follow = (page: Page, name: string | RegExp) =>
  page.getByRole('link', { name, exact: true }).first().click();
const tap = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).click();
const titled = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
const fill = (page: Page, name: string, text: string) =>
  page.getByRole('textbox', { name, exact: true }).fill(text);

async function reach(page: Page, name: string | RegExp): Promise<void> {
  await titled(page, name).waitFor();
  await expectNoWider(page);
  await expectAccessible(page);
}

/** A stroke from corner to corner of the box to sign in, as a pointer draws it. */
async function sign(page: Page, whose: string): Promise<void> {
  const canvas = page.getByRole('group', { name: whose, exact: true }).locator('canvas');
  await canvas.scrollIntoViewIfNeeded();
  const box = await canvas.boundingBox();
  if (!box) throw new Error('nothing to sign in');
  const at = (x: number, y: number) => [box.x + box.width * x, box.y + box.height * y] as const;
  await page.mouse.move(...at(0.2, 0.3));
  await page.mouse.down();
  for (const x of [0.3, 0.4, 0.5, 0.6, 0.7]) await page.mouse.move(...at(x, x === 0.5 ? 0.3 : 0.7));
  await page.mouse.up();
}

/** The smallest file that a reader of PDF takes for one. */
const pdf = Buffer.from(
  '%PDF-1.4\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF\n',
);

const rows = (page: Page, list: string) => page.getByRole('list', { name: list }).getByRole('listitem');

describe('a load', () => {
  test.each([
    { width: 360, height: 800, dark: false },
    { width: 412, height: 915, dark: true },
  ])(
    'from the gate to its proof, $width × $height, dark: $dark',
    { timeout: 240_000 },
    async ({ dark, ...size }) => {
      const { page, goTo } = await offlineInWorkshop({ ...size, dark });
      if (dark) {
        await goTo('record/reading');
        await page.getByRole('radio', { name: 'Dark' }).check();
      }

      // Chosen by its page; another beside it that must not travel next to it is told of, and not in the way.
      await follow(page, 'Containers');
      await follow(page, /C.02/);
      await titled(page, /C.02/).waitFor();
      await follow(page, 'More');
      await follow(page, /^Hand it over/);
      await reach(page, 'Hand over');
      expect(await page.getByRole('checkbox', { name: /^C.02 / }).isChecked()).toBe(true);
      await page.getByText(/C.02: not written down as closed/).waitFor();
      await page.getByRole('checkbox', { name: /^C.07 / }).check();
      await page.getByText(/C.0\d and C.0\d: not side by side/).waitFor();
      await page.getByRole('checkbox', { name: /^C.07 / }).uncheck();

      // The collector reads less; the driver signs.
      await page.getByRole('checkbox', { name: /^C.02: The collector has another amount/ }).check();
      await tap(page, 'Keep the hand-over');
      await page.getByText('Write a number here.').waitFor();
      await page.getByRole('textbox', { name: /^C.02, as the collector has it/ }).fill('5.6');
      await fill(page, 'Driver', 'Rufus Oakley');
      await fill(page, 'Vehicle, number plate', 'FEN 204');
      await sign(page, 'For the workshop');
      await sign(page, 'For the collector');
      await page.getByRole('img', { name: 'Signature of Rufus Oakley, drawn' }).waitFor();

      // What was begun stays through a reload, with its strokes.
      await page.reload();
      await page.getByText('You had begun this.').waitFor();
      await page.getByRole('img', { name: 'Signature of Rufus Oakley, drawn' }).waitFor();
      await expectAccessible(page);
      await tap(page, 'Keep the hand-over');

      await reach(page, 'Left with Fenwater Collection');
      await page.getByRole('img', { name: 'Signature of Ines Halvard, drawn' }).waitFor();
      const [differs] = await rows(page, 'Amounts that differ').allTextContents();
      expect(differs).toMatch(/5\.6.L agreed, 6\.65.L by the record/);
      expect(differs).toMatch(/15\.8.% less than the record/);
      await page.getByRole('link', { name: /^C.02: 15\.8.% less/ }).click();
      await reach(page, 'Difference from the record');
      await page.getByRole('link', { name: 'Back' }).click();
      await titled(page, 'Left with Fenwater Collection').waitFor();
      const load = page.url().split('/').at(-1) ?? '';

      // Its receipt is made here, with no network.
      await follow(page, /^Make the receipt/);
      await reach(page, 'Receipt');
      await tap(page, 'Make the receipt');
      await titled(page, 'The receipt is made').waitFor();
      const [receipt] = await Promise.all([page.waitForEvent('download'), follow(page, 'Save it')]);
      expect(receipt.suggestedFilename()).toMatch(/receipt.*C-02\.pdf$/);
      expect((await readFile(await receipt.path())).subarray(0, 5).toString()).toBe('%PDF-');

      // Gone, and its page says with whom.
      await goTo('containers');
      await page.getByText('Gone (2)').click();
      await follow(page, /^C.02: gone/);
      await titled(page, /C.02/).waitFor();
      await follow(page, /^Left with Fenwater Collection/);
      await titled(page, 'Left with Fenwater Collection').waitFor();

      // The proof is chased on Today once its day is near.
      await goTo('today');
      await page.getByRole('link', { name: /C.02: the collector has 5\.6/ }).waitFor();
      expect(await page.getByRole('link', { name: /^C.02: proof of disposal/ }).count()).toBe(0);
      await page.clock.fastForward(24 * day);
      await page.reload();
      await page.getByRole('link', { name: /C.02: proof of disposal/ }).click();
      await titled(page, 'Left with Fenwater Collection').waitFor();
      expect(page.url()).toContain(load);

      // Filed with a PDF, which opens again under its name; then nothing is chased.
      await follow(page, /^File the proof/);
      await reach(page, 'Proof of disposal');
      await page
        .getByLabel('Choose a PDF')
        .setInputFiles({ name: 'R 4.png', mimeType: 'image/png', buffer: Buffer.from('no paper') });
      await page.getByText(/^This is not a PDF/).waitFor();
      await page
        .getByLabel('Choose a PDF')
        .setInputFiles({ name: 'Certificate 88.PDF', mimeType: 'application/pdf', buffer: pdf });
      await page.getByText('Certificate 88.pdf').waitFor();
      await fill(page, 'Its number', '88');
      await expectAccessible(page);
      await tap(page, 'File the proof');
      await reach(page, 'Left with Fenwater Collection');
      await page.getByText('All proofs are filed').waitFor();
      await page.reload();
      const open = page.getByRole('link', { name: /^Open Certificate 88\.pdf/ });
      const [download] = await Promise.all([page.waitForEvent('download'), open.click()]);
      expect(download.suggestedFilename()).toBe('Certificate 88.pdf');
      expect(await readFile(await download.path())).toEqual(pdf);
      await goTo('today');
      expect(await page.getByRole('link', { name: /^C.02/ }).count()).toBe(0);
      expectClean(page);
    },
  );

  test('that is refused comes back whole, and Today says that it still has to leave', {
    timeout: 120_000,
  }, async () => {
    const { page, goTo } = await offlineInWorkshop();
    await goTo('hand-overs');
    await reach(page, 'Hand-overs');
    await follow(page, /^Fenwater Collection/);
    await titled(page, 'Left with Fenwater Collection').waitFor();
    await follow(page, /^A load came back/);
    await reach(page, 'A load came back');
    await page.getByText('In the USA they may be counted anew').click();
    await page.getByText(/262\.16\(e\).*from memory/).waitFor();
    await tap(page, 'It is here again');
    await page.getByText('Write something here.').waitFor();
    await fill(page, 'Why it was refused', 'Their tank was full.');
    await tap(page, 'It is here again');
    await reach(page, 'Left with Fenwater Collection');
    await page.getByText('All of it came back').waitFor();
    await goTo('today');
    await page.getByRole('link', { name: /^R.01 came back and must leave again/ }).waitFor();
    await goTo('containers');
    await follow(page, /^R.01/);
    await titled(page, /R.01/).waitFor();
    await page
      .getByText(/4\.20?.L/)
      .first()
      .waitFor();
    await follow(page, 'Hand it over');
    await titled(page, 'Hand over').waitFor();
    expectClean(page);
  });

  test.each([
    { width: 412, height: 915, dark: true },
    { width: 360, height: 800, dark: false },
  ])('its pages fit at twice the size of text, $width px wide', async (phone) => {
    const { page, goTo } = await offlineInWorkshop(phone);
    await goTo('hand-overs');
    await follow(page, /^Fenwater Collection/);
    await titled(page, 'Left with Fenwater Collection').waitFor();
    const load = page.url().split('#/').at(-1) ?? '';
    for (const address of ['hand-overs', load, `${load}/proof`, `${load}/back`, 'hand-overs/new']) {
      await goTo(address);
      await page.evaluate(() => {
        document.documentElement.style.fontSize = '225%';
      });
      await expectNoWider(page);
    }
    await page.getByRole('checkbox', { name: /^C.02 / }).check();
    await page.getByRole('checkbox', { name: /another amount/ }).check();
    await expectNoWider(page);
    expectClean(page);
  });

  test('is handed over by the keyboard alone, signed in letters', { timeout: 120_000 }, async () => {
    const { page, goTo } = await offlineInWorkshop();
    await goTo('hand-overs/new');
    const focused = () =>
      page.evaluate(() => {
        const now = document.activeElement as HTMLElement;
        // All of the page's text is in its body.
        if (now === document.body) return '';
        const label = (now as HTMLInputElement).labels?.[0]?.textContent ?? now.textContent ?? '';
        return `${now.closest('fieldset')?.querySelector('legend')?.textContent ?? ''}: ${label}`;
      });
    const to = async (name: RegExp): Promise<void> => {
      for (let i = 0; i < 60; i += 1) {
        if (name.test(await focused())) return;
        await page.keyboard.press('Tab');
      }
      throw new Error(`the keyboard does not reach ${name}`);
    };
    await to(/C.06/);
    await page.keyboard.press('Space');
    await to(/^For the workshop: Sign in letters/);
    await page.keyboard.press('Space');
    await to(/^For the collector: Who signs/);
    await page.keyboard.type('Rufus Oakley');
    await to(/^For the collector: Sign in letters/);
    await page.keyboard.press('Space');
    await to(/: Keep the hand-over$/);
    await page.keyboard.press('Enter');
    await titled(page, 'Left with Fenwater Collection').waitFor();
    await page.getByText(/^Rufus Oakley, signed in letters/).waitFor();
    await expectAccessible(page);
    expectClean(page);
  });
});
