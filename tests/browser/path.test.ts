/** The whole job on a phone, from an empty record to a paper in the hand, the second half with no network at all. */
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { readPdf, textOf } from '../support/read-pdf';
import { answerUntil, looked, questionOn, tapAnswer } from './checklist-answers';
import { expectAccessible, expectClean, openPhone, untilKept } from './phone';
import { openSite } from './site';

const title = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
const tap = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).click();
const follow = (page: Page, name: string | RegExp) => page.getByRole('link', { name }).first().click();

/** Every page that is reached is looked at by axe, too. */
async function reach(page: Page, name: string | RegExp): Promise<void> {
  await title(page, name).waitFor();
  await expectAccessible(page);
}

async function setUp(page: Page): Promise<void> {
  await reach(page, 'Leesbook');
  await follow(page, 'Set up my workshop');
  await reach(page, 'Your workshop');
  await tap(page, 'Keep, go on');
  await expect.poll(() => page.locator('[aria-invalid=true]').count()).toBe(3);
  await page.getByLabel('Name of the workshop').fill('Kiln Yard');
  await page.getByLabel('Address').fill('Kiln Yard 3, Norrstad');
  await page.getByLabel('Emergency number').fill('112');
  await tap(page, 'Keep, go on');
  await reach(page, 'Who works here?');
  await page.getByLabel('Your name').fill('Ada Marsh');
  await tap(page, 'One more person');
  await page.getByLabel('Name of person 2').fill('Bo Lindqvist');
  await tap(page, 'Keep, go on');
  await reach(page, 'Local rules: not entered yet');
  await follow(page, 'Later');
  await reach(page, /November|\w+day/);
}

async function openBatch(page: Page): Promise<void> {
  await follow(page, 'Open the first batch');
  await reach(page, 'A new batch');
  await page.getByLabel('Mass of the feed', { exact: true }).fill('520,5');
  await page.getByRole('radio', { name: 'precious-metal electrode' }).check();
  await page.getByRole('radio', { name: 'older, may hold lead' }).check();
  await tap(page, 'Open this batch');
  await reach(page, /Batch B.01/);
}

/** Planned before anything is opened; what was typed survives a reload. By hand: 2.052 kg of acid itself, ÷ 68 %, ÷ 1.4048. */
async function workOutTheAcid(page: Page): Promise<void> {
  await follow(page, 'Start a step');
  await title(page, 'Start a step').waitFor();
  await follow(page, 'Work out a dilution');
  await reach(page, 'Dilute nitric acid');
  const field = (name: string) => page.getByRole('textbox', { name, exact: true });
  await field('Acid as it comes').fill('68');
  await field('Strength wanted').fill('34');
  await field('Volume wanted').fill('5');
  await page.getByText('2.15').first().waitFor();
  await page.reload();
  await page.getByText('All at once it may pass').waitFor();
  await expectAccessible(page);
  await follow(page, 'Then acid, in portions');
  await reach(page, 'Acid to take');
  await follow(page, 'Back');
  await title(page, 'Dilute nitric acid').waitFor();
  await follow(page, 'Back to the batch');
  await title(page, /Batch B.01/).waitFor();
}

/** Described where the list asks for it, which then goes on there. */
async function describeTheHood(page: Page): Promise<void> {
  await follow(page, /^Describe this place/);
  await reach(page, 'A new place');
  await page.getByLabel('Name', { exact: true }).fill('Kiln hood');
  await page.getByRole('radio', { name: /^Hood with a duct/ }).check();
  await page.getByLabel('Width of the opening', { exact: true }).fill('90');
  await page.getByLabel('Height of the opening', { exact: true }).fill('32');
  await page.getByLabel('Mean speed', { exact: true }).fill('0.52');
  await page.getByLabel('Measured on').fill(await page.evaluate(() => new Date().toISOString().slice(0, 10)));
  await tap(page, 'Keep this place');
}

/** A gram and a half of metal, not known which, in weak acid over a day: less than the hood carries away. */
async function workOutTheVentilation(page: Page): Promise<void> {
  await follow(page, /^Work it out/);
  await reach(page, 'Ventilation check');
  await page.getByLabel('What is known of it').selectOption('total');
  await page.getByLabel('Metal in all', { exact: true }).fill('1.5');
  await page.getByLabel('Volume', { exact: true }).fill('0.8');
  await page.getByLabel('Strength', { exact: true }).fill('12');
  await page.getByLabel('From the first gas to the last', { exact: true }).fill('24');
  await page.getByLabel('Limit', { exact: true }).selectOption('niosh-15-min');
  await tap(page, /^Take this result/);
  await reach(page, 'Ventilation result for this charge');
  await looked(page);
  await tap(page, /^The place is enough/);
}

/** Readiness, then the list of the leach, with a stop, a reload in the middle, and the clearance at its end. */
async function clearTheLeach(page: Page): Promise<void> {
  await follow(page, 'Start a step');
  await reach(page, 'Start a step');
  await follow(page, /Start the leach/);
  await reach(page, 'First the walk round');
  await tap(page, 'Ready for a spill or fume');
  await title(page, 'Ways to eyewash and door').waitFor();
  await expectAccessible(page);
  await answerUntil(page);
  await reach(page, 'Acid may be opened.');
  await looked(page);
  await tap(page, /Start the leach/);
  await reach(page, 'Where are you working?');
  await describeTheHood(page);
  await title(page, 'What does the ribbon do?').waitFor();
  const { ask } = await questionOn(page);
  await page.reload();
  await title(page, ask).waitFor();
  await tapAnswer(page, 'No ribbon fitted');
  await reach(page, /No ribbon fitted/);
  await tapAnswer(page, 'Tape a thin ribbon to the sash. Then answer again.');
  await title(page, ask).waitFor();
  await answerUntil(page, 'Ventilation result for this charge');
  await workOutTheVentilation(page);
  await answerUntil(page);
  await reach(page, 'The leach may start.');
  await tapAnswer(page, 'Begin leaching');
  await reach(page, /Batch B.01/);
}

async function logTheLiquor(page: Page): Promise<void> {
  await follow(page, 'Log what a step gave');
  await reach(page, /What did B.01 give/);
  await follow(page, 'Barren liquor');
  await reach(page, /Barren liquor, B.01/);
  await page.getByLabel('Volume', { exact: true }).fill('rubbish');
  await tap(page, 'Keep this barren liquor');
  await page.getByText('“rubbish” is not a number').waitFor();
  await page.getByLabel('Copper, how it is known').selectOption('copper-weighed');
  await page.getByLabel('Copper weighed in', { exact: true }).waitFor();
  await page.getByLabel('Copper, how it is known').selectOption('photometer');
  await page.getByLabel('Volume', { exact: true }).fill('6,70');
  await page.getByLabel('Copper', { exact: true }).fill('17.6');
  await page.getByLabel('Nickel', { exact: true }).fill('6.2');
  await page.getByLabel('Free nitric acid', { exact: true }).fill('0,58');
  await page.reload();
  await expect.poll(() => page.getByLabel('Copper', { exact: true }).inputValue()).toBe('17.6');
  await page.getByLabel('Into which container').selectOption('new');
  await page.getByLabel('Holds when full', { exact: true }).fill('10');
  await expectAccessible(page);
  await tap(page, 'Keep this barren liquor');
  await reach(page, /Container C.01/);
}

async function logTheResidue(page: Page): Promise<void> {
  await follow(page, 'Batches');
  await reach(page, 'Batches');
  await follow(page, /B.01/);
  await follow(page, 'Log what a step gave');
  await follow(page, 'Ceramic residue');
  await reach(page, /Ceramic residue, B.01/);
  await page.getByLabel('Mass, wet', { exact: true }).fill('480');
  await page.getByLabel('Moisture, how it is known').selectOption('stated');
  await page.getByLabel('Moisture', { exact: true }).fill('22');
  await page.getByLabel('Into which container').selectOption('new');
  await tap(page, 'Keep this ceramic residue');
  await reach(page, /Container C.02/);
  await page.getByText('Liquor held in it').waitFor();
}

/** Copper as charged, the account it makes, and the page of a waste: each can be used. */
async function accountForTheBatch(page: Page): Promise<void> {
  await follow(page, 'Batches');
  await reach(page, 'Batches');
  await follow(page, /B.01/);
  await follow(page, /Charged or got back/);
  await reach(page, /B.01: charged or got back/);
  await page.getByLabel('What it was').selectOption('charge copper');
  await page.getByLabel('Mass', { exact: true }).fill('220,0');
  await tap(page, 'Write it down');
  await page.getByText('Written down. Add the next, or go back.').waitFor();
  await expectAccessible(page);
  await follow(page, 'Back');
  await reach(page, /Batch B.01/);
  await follow(page, /Copper.*Cannot be told/);
  await reach(page, /Copper of B.01/);
  await page.getByText('nobody wrote down the copper weighed out').waitFor();
  await page.goBack();
  await follow(page, /^Barren liquor/);
  await reach(page, /Barren liquor, B.01/);
  await follow(page, /^Photometer.*118/);
  await reach(page, 'Copper in all');
  await page.getByText('17.6 g/L × 6.70 L').waitFor();
  await follow(page, 'Back');
  await title(page, /Barren liquor, B.01/).waitFor();
}

/** Opens the working of every figure of the container and of its lime, and comes back. */
async function openEveryFigure(page: Page): Promise<void> {
  await follow(page, 'Containers');
  await reach(page, 'Containers');
  await follow(page, /C.01/);
  await reach(page, /Container C.01/);
  const ways = await page
    .locator('a[href*="/working/"], a[href*="/base/"]')
    .evaluateAll((links) => links.map((a) => a.getAttribute('href') ?? ''));
  expect(ways.length).toBeGreaterThan(12);
  for (const way of ways) {
    await page.locator(`a[href="${way}"]`).first().click();
    await page
      .getByRole('heading', { name: way.includes('/base/') ? /./ : /What stands in it|How it is known/ })
      .first()
      .waitFor();
    await expectAccessible(page);
    await page.goBack();
    await title(page, /Container C.01/).waitFor();
  }
  await follow(page, /Hydrated lime/);
  await reach(page, 'Hydrated lime');
  // Worked by hand: (3.886 + 3.711 + 1.415) mol × 37.046 g/mol ÷ 95 % × 1.10 = 387 g, known to tens.
  await page.getByText('390').first().waitFor();
  await follow(page, /Hydrated lime, base needed/);
  await reach(page, /Hydrated lime/);
  await page.getByText('9.013').first().waitFor();
}

/** Makes the paper with no network, saves it, and reads it with a program that shares no code with its writer. */
async function makeThePaper(page: Page): Promise<void> {
  await follow(page, 'Back');
  await follow(page, 'Back');
  await title(page, /Container C.01/).waitFor();
  await follow(page, 'Papers');
  await reach(page, 'Papers');
  await follow(page, 'Make papers');
  await reach(page, 'Hand-over papers');
  for (const box of await page.getByRole('checkbox', { name: /C.0[12]/ }).all()) await box.check();
  await tap(page, /^Check these 2/);
  await page.getByRole('heading', { name: 'Who must still say yes' }).waitFor();
  await page.getByText('Candidate. The collector confirms').first().waitFor();
  await expectAccessible(page);
  await page.getByRole('radio', { name: /A4/ }).check();
  await tap(page, /^Make the set/);
  await reach(page, 'The paper is made');
  const saving = page.waitForEvent('download');
  await follow(page, 'Save it');
  const bytes = new Uint8Array(await readFile(await (await saving).path()));
  const text = await textOf(bytes);
  expect(text).toContain('Kiln Yard');
  expect(text).toMatch(/17\.6/);
  expect(text).toMatch(/not determined/);
  expect(text).toMatch(/authority|collector/);
  expect(text).not.toMatch(/\bsafe\b|\bcompliant\b/i);
  const { pages, language, attachments } = await readPdf(bytes);
  expect(language).toBe('en');
  expect(pages.length).toBeGreaterThan(1);
  const [data] = Object.values(attachments);
  expect(data, 'the same data lies inside').toBeDefined();
}

describe('the whole job', () => {
  it('goes from an empty record to a paper, offline from the clearance on', async () => {
    const site = await openSite();
    const page = await openPhone({ width: 360, height: 800 });
    await page.clock.install();
    await page.goto(site.address);
    await untilKept(page);
    await setUp(page);
    await openBatch(page);
    await workOutTheAcid(page);
    await clearTheLeach(page);
    await site.stop();
    await page.context().setOffline(true);
    await logTheLiquor(page);
    await logTheResidue(page);
    await accountForTheBatch(page);
    await openEveryFigure(page);
    await makeThePaper(page);
    expectClean(page);
  }, 240_000);
});
