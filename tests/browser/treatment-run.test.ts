/** A treatment on a phone with no network, in the invented workshop: allowed, cleared, begun, dosed, read, ended. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { answerUntil, looked, tapAnswer } from './checklist-answers';
import { offlineInWorkshop } from './invented-workshop';
import { expectAccessible, expectClean } from './phone';

const tap = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();
const follow = (page: Page, name: string | RegExp) => page.getByRole('link', { name }).first().click();
const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const part = (page: Page, name: string) => page.getByRole('heading', { level: 2, name, exact: true });

async function reach(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole('heading', { level: 1, name }).waitFor();
  await expectAccessible(page);
}

/** What keeps it from beginning is made right, one after the other, and leads back. */
async function makeRight(page: Page): Promise<void> {
  await follow(page, /Nobody has said yet that treatment is allowed/);
  await page.getByRole('radio', { name: /Yes, it is allowed/ }).check();
  await page.getByLabel('Who said so').fill('Karrowby county waste office');
  await page.getByLabel('When').fill('2026-05-04');
  await tap(page, 'Keep this rule');
  await page.getByText('allowed', { exact: true }).waitFor();
  await page.goBack();
  await page.goBack();
  await reach(page, /Begin treating C.02/);
  await tap(page, /First: Neutralise with lime/);
  await page.getByRole('heading', { level: 1, name: /Who is with you|What does the ribbon do/ }).waitFor();
  await answerUntil(page, undefined, 'Joost Merrin');
  await reach(page, 'Neutralisation may start.');
  await tapAnswer(page, 'Begin neutralising');
  await reach(page, /Begin treating C.02/);
}

async function dose(page: Page): Promise<void> {
  await follow(page, 'Log dose');
  await reach(page, /Into C.02/);
  await tap(page, /The next portion/);
  await tap(page, 'It is in');
  await part(page, 'Wait').waitFor();
}

async function read(page: Page, ph: string, celsius: string): Promise<void> {
  await follow(page, 'Log reading');
  await page.getByRole('heading', { level: 1, name: /Reading in C.02/ }).waitFor();
  await field(page, 'pH').fill(ph);
  await page.getByRole('radio', { name: 'pH meter' }).check();
  await field(page, 'Temperature').fill(celsius);
  await expectAccessible(page);
  await tap(page, 'Keep the reading');
  await page.getByRole('heading', { level: 1, name: /C.02 to pH 9/ }).waitFor();
}

test('a treatment goes from its rule to its end', { timeout: 180_000 }, async () => {
  const { page } = await offlineInWorkshop();

  await follow(page, /^Containers$/);
  await follow(page, /C.02/);
  await follow(page, 'Begin the treatment');
  await reach(page, /Begin treating C.02/);
  await makeRight(page);
  await field(page, 'To pH').fill('9');
  await looked(page);
  await tap(page, /Begin the treatment/);
  await part(page, 'Next portion').waitFor();
  await reach(page, /C.02 to pH 9/);
  const [next, thumb] = await Promise.all([
    part(page, 'Next portion').boundingBox(),
    page.getByRole('region', { name: 'Actions' }).boundingBox(),
  ]);
  expect((next?.y ?? Number.NaN) + (next?.height ?? 0), 'it is seen without a scroll').toBeLessThan(
    thumb?.y ?? 0,
  );

  await read(page, '0.2', '21');
  await dose(page);
  await page.clock.fastForward('13:00');
  await page.reload();
  await part(page, 'Wait').waitFor();
  await page.getByText(/^7.min$/).waitFor();
  await page.clock.fastForward('08:00');
  await part(page, 'Read the pH').waitFor();
  await expectAccessible(page);
  await read(page, '0.8', '27');
  await page.getByText(/left to add to pH 9/).waitFor();
  await follow(page, /left to add to pH 9/);
  await reach(page, /left to add to pH 9/);
  await follow(page, 'Back');

  await dose(page);
  await page.clock.fastForward('21:00');
  await read(page, '1.0', '29');
  await page.getByText('The readings contradict the plan').waitFor();
  await expectAccessible(page);
  expect(await page.getByText('Left to add').count()).toBe(0);

  await follow(page, 'End it');
  await page.getByRole('radio', { name: /Stopped before the end/ }).check();
  await field(page, 'Why, or what else to know').fill('the meter is broken');
  await expectAccessible(page);
  await tap(page, 'End it');
  await reach(page, /C.02: treatment ended/);
  await page.getByText(/Dissolved metals are not determined/).waitFor();
  expectClean(page);
});
