/** A first visit over a slow network: its first page is there and can be used long before the rest of the app is. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Page, Route } from 'playwright-core';
import { expect, inject, it } from 'vitest';
import { expectAccessible, expectClean, openPhone, untilKept } from './phone';
import { openSite } from './site';

/** Compressed, in KiB: what a first visit may wait for, and what comes after it in the background. */
const budgetKiB = {
  'before the first page is drawn': 30,
  'before a record is open': 540,
} as const;

const heading = (page: Page) => page.getByRole('heading', { level: 1, name: 'Leesbook' });

/** A phone to which the rest of the app comes when `let` is called, as far as it then comes. */
async function slowVisit(then: (route: Route) => Promise<void>) {
  const site = await openSite();
  const page = await openPhone({ width: 360, height: 800 });
  let release: () => void = () => undefined;
  const released = new Promise<void>((resolve) => {
    release = resolve;
  });
  const asked: string[] = [];
  page.on('request', (request) => asked.push(new URL(request.url()).pathname));
  await page.route(/\/begin-[^/]*\.js$/, async (route) => {
    await released;
    await then(route);
  });
  await page.goto(site.address, { waitUntil: 'commit' });
  await heading(page).waitFor();
  return { page, asked, release };
}

/** KiB of what a host sends that compresses. */
async function weight(names: readonly string[]): Promise<number> {
  const texts = names
    .map((name) => (name === '/' ? 'index.html' : name))
    .filter((name) => /\.(html|js|css)$/.test(name));
  const files = await Promise.all(texts.map((name) => readFile(join(inject('builtApp'), name))));
  return files.reduce((sum, file) => sum + gzipSync(file).length, 0) / 1024;
}

/** Scripts and styles that the page has in itself, by the browser's own word. */
const loaded = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    performance
      .getEntriesByType('resource')
      .filter((entry) => (entry as PerformanceResourceTiming).responseEnd > 0)
      .map(({ name }) => new URL(name).pathname),
  );

it('draws its first page with little, and what is tapped meanwhile is done', async () => {
  const { page, asked, release } = await slowVisit((route) => route.continue());
  const html = await readFile(join(inject('builtApp'), 'index.html'), 'utf8');
  const named = [...html.matchAll(/(?:src|href)="\.(\/assets\/[^"]+)"/g)].map(([, name = '']) => name);
  expect(named.length).toBeGreaterThan(1);
  const first = await weight(['/', ...named]);
  console.info(`first page: ${first.toFixed(1)} KiB`);
  expect(first).toBeLessThan(budgetKiB['before the first page is drawn']);
  await expectAccessible(page);

  await page.getByRole('button', { name: /invented workshop/ }).click();
  await page.getByText('Laying it out').waitFor();
  release();
  await page.getByText('Invented demo workshop').waitFor();
  await untilKept(page);
  const all = await weight(
    [...new Set(['/', ...(await loaded(page))])].filter((name) => !name.endsWith('/service-worker.js')),
  );
  console.info(`with the record open: ${all.toFixed(1)} KiB, of ${asked.length} requests`);
  expect(all).toBeLessThan(budgetKiB['before a record is open']);
  expectClean(page);
});

it('leads on from its first page, once the app is there', async () => {
  const { page, release } = await slowVisit((route) => route.continue());
  await page.getByRole('link', { name: /Set up my workshop/ }).click();
  release();
  await page.getByRole('heading', { level: 1, name: 'Your workshop' }).waitFor();
  expectClean(page);
});

it('says so where the network is lost before the app is there', async () => {
  const { page, release } = await slowVisit((route) => route.abort());
  release();
  await page.getByRole('heading', { level: 1, name: 'Leesbook is not on the phone yet' }).waitFor();
  await expectAccessible(page);
  await page.unroute(/\/begin-[^/]*\.js$/);
  await page.getByRole('button', { name: 'Open again' }).click();
  await heading(page).waitFor();
});

it('does not show its first page to whoever comes back', async () => {
  const site = await openSite();
  const page = await openPhone({ width: 360, height: 800 });
  await page.goto(site.address);
  await untilKept(page);
  await page.getByRole('button', { name: /invented workshop/ }).click();
  await page.getByText('Invented demo workshop').waitFor();
  await page.addInitScript(() => {
    Object.assign(window, { seen: [] });
    new MutationObserver(() => {
      const shown = document.querySelector('h1')?.textContent ?? '';
      const { seen } = window as unknown as { seen: string[] };
      if (seen.at(-1) !== shown) seen.push(shown);
    }).observe(document, { childList: true, subtree: true });
  });
  await page.reload();
  await page.getByText('Invented demo workshop').waitFor();
  expect(await page.evaluate(() => (window as unknown as { seen: string[] }).seen)).not.toContain('Leesbook');
  expectClean(page);
});
