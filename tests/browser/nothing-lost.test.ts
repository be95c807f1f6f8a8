/** What a person has typed or written down is there again, whatever happens to the page. */
import type { Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { openWorkshop } from './invented-workshop';
import { expectAccessible, expectClean, openPhone, untilKept } from './phone';
import { openSite, type Site } from './site';

const title = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
const mass = (page: Page) => page.getByLabel('Mass of the feed', { exact: true });

/** A phone in the invented workshop, at an address of it. */
async function inDemo(site: Site, place: string, dark = false): Promise<Page> {
  const page = await openPhone({ width: 360, height: 800, dark });
  await page.goto(site.address);
  await untilKept(page);
  await openWorkshop(page);
  await page.goto(`${site.address}#/${place}`);
  return page;
}

async function openBatch(page: Page, grams: string): Promise<void> {
  await mass(page).fill(grams);
  await page.getByRole('radio', { name: 'mixed' }).check();
  await page.getByRole('radio', { name: 'lead-free' }).check();
  await page.getByRole('button', { name: 'Open this batch' }).click();
  await title(page, /Batch B/).waitFor();
}

describe('a half-filled form', () => {
  it('survives a reload, a look elsewhere and a new version', async () => {
    const site = await openSite();
    const page = await inDemo(site, 'batches/new');
    await mass(page).fill('512,5');
    await page.getByRole('radio', { name: 'mixed' }).check();
    await page.reload();
    expect(await mass(page).inputValue()).toBe('512,5');
    await page.goto(`${site.address}#/sos`);
    await title(page, 'Breathed brown fume').waitFor();
    await page.goBack();
    expect(await mass(page).inputValue()).toBe('512,5');
    site.serve(inject('laterApp'));
    await page.reload();
    await page.getByRole('button', { name: /new version/i }).click();
    await page.locator('html[data-version=later]').waitFor();
    expect(await mass(page).inputValue()).toBe('512,5');
    expect(await page.getByRole('radio', { name: 'mixed' }).isChecked()).toBe(true);
    expectClean(page);
  });

  it('is empty again once it was kept', async () => {
    const site = await openSite();
    const page = await inDemo(site, 'batches/new');
    await openBatch(page, '100');
    await page.goto(`${site.address}#/batches/new`);
    await title(page, 'A new batch').waitFor();
    expect(await mass(page).inputValue()).toBe('');
  });
});

describe('two tabs of one record', () => {
  it('write in turn, see each other, and keep one unbroken chain', async () => {
    const site = await openSite();
    const first = await inDemo(site, 'batches/new');
    const second = await first.context().newPage();
    await second.goto(`${site.address}#/batches/new`);
    await title(second, 'A new batch').waitFor();
    await openBatch(first, '100');
    await openBatch(second, '200');
    const codes = await Promise.all([first, second].map((page) => title(page, /Batch B/).textContent()));
    expect(new Set(codes).size).toBe(2);
    for (const page of [first, second]) {
      await page.goto(`${site.address}#/batches`);
      await page.getByText(/^100/).waitFor();
      await page.getByText(/^200/).waitFor();
    }
    await second.goto(`${site.address}#/record`);
    await second.getByText(/^Whole, \d+ entries/).waitFor();
    expectClean(first);
  });

  it('one tap twice is one entry', async () => {
    const site = await openSite();
    const page = await inDemo(site, 'batches/new');
    await mass(page).fill('100');
    await page.getByRole('radio', { name: 'mixed' }).check();
    await page.getByRole('radio', { name: 'lead-free' }).check();
    await page.getByRole('button', { name: 'Open this batch' }).dblclick();
    await title(page, /Batch B.04/).waitFor();
    await page.goto(`${site.address}#/batches`);
    await page.getByRole('link', { name: /B.04/ }).waitFor();
    expect(await page.getByRole('link', { name: /B.05/ }).count()).toBe(0);
  });
});

describe('rubbish', () => {
  it.each(['abc', '-5', '1.250,5', '1 250', '1e9', '0', '🧪', '99999999999'])(
    'in a number: %s gets a message at the field, and nothing is written',
    async (typed) => {
      const site = await openSite();
      const page = await inDemo(site, 'batches/new');
      await mass(page).fill(typed);
      await page.getByRole('radio', { name: 'mixed' }).check();
      await page.getByRole('radio', { name: 'lead-free' }).check();
      await page.getByRole('button', { name: 'Open this batch' }).click();
      const described = await mass(page).getAttribute('aria-describedby');
      expect(await mass(page).getAttribute('aria-invalid')).toBe('true');
      expect(described).toContain('error');
      expect(await mass(page).inputValue()).toBe(typed);
      await title(page, 'A new batch').waitFor();
      expectClean(page);
    },
  );

  it('as an address leads to a page that says so', async () => {
    const site = await openSite();
    const page = await inDemo(site, 'containers/%E0%A4%A/nowhere');
    await title(page, 'Nothing is here').waitFor();
    await page.goto(`${site.address}#/containers/not-a-container`);
    await page.getByText('This container is not in the record.').waitFor();
    expectClean(page);
  });
});

describe('every place', () => {
  it.each([false, true])('reads well to a program that checks it (dark: %s)', async (dark) => {
    const site = await openSite();
    const page = await inDemo(site, 'record/reading', dark);
    if (dark) await page.getByRole('radio', { name: /dark/i }).check();
    for (const place of [
      'today',
      'batches',
      'batches/new',
      'containers',
      'containers/new',
      'papers',
      'papers/new',
      'record',
      'record/history',
      'record/rules',
      'record/bases',
      'record/people',
      'record/workshop',
      'record/about',
      'record/demo',
      'sos',
    ]) {
      await page.goto(`${site.address}#/${place}`);
      await page.getByRole('heading', { level: 1 }).waitFor();
      await expectAccessible(page);
    }
    expectClean(page);
  });
});

it('the invented workshop goes without a trace', async () => {
  const site = await openSite();
  const page = await inDemo(site, 'batches/new');
  await mass(page).fill('1');
  await page.goto(`${site.address}#/record/demo`);
  await page.getByRole('link', { name: /Remove/ }).click();
  await page.getByRole('button', { name: /Remove/ }).click();
  await page.getByRole('heading', { level: 1 }).filter({ hasNotText: 'Remove' }).waitFor();
  const left = await page.evaluate(async () => ({
    databases: (await indexedDB.databases()).map(({ name }) => name),
    kept: Object.keys(localStorage).filter((key) => key.includes('demo')),
  }));
  expect(left).toEqual({ databases: ['leesbook-real'], kept: [] });
  expectClean(page);
});
