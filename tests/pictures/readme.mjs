// Takes the pictures of the README from the running app, in its invented workshop. Needs a build: npm run pictures
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import { chromiumPath } from '../../.ci/ready.mjs';

const folder = new URL('./', import.meta.url);
const server = await preview({ preview: { port: 0, host: 'localhost' }, logLevel: 'error' });
const address = server.resolvedUrls?.local[0] ?? '';
const browser = await chromium.launch({ executablePath: chromiumPath() ?? '', args: ['--no-sandbox'] });
const context = await browser.newContext({
  viewport: { width: 360, height: 800 },
  deviceScaleFactor: 2,
  locale: 'en-GB',
  timezoneId: 'Europe/Stockholm',
});
const page = await context.newPage();
// The same day each time, so that a picture changes only when the app does.
await page.clock.install({ time: new Date('2026-05-14T07:42:00Z') });

/** @param {string} name */
const take = async (name) => {
  await page.evaluate(() => document.fonts.ready);
  await page.screenshot({ path: new URL(`${name}.png`, folder).pathname });
};
/** @param {RegExp | string} name */
const heading = (name) => page.getByRole('heading', { level: 1, name }).waitFor();

await page.goto(address);
await page.getByRole('button', { name: /invented workshop/ }).click();
await heading('Thursday 14 May');
await take('today');
await page.goto(`${address}#/containers`);
await heading('Containers');
await page.getByRole('link', { name: /C.02/ }).click();
await heading(/Container C.02/);
await take('container');
await page.getByRole('link', { name: /Hydrated lime/ }).click();
await heading('Hydrated lime');
await page.getByRole('link', { name: /base needed/ }).click();
await heading(/as sold/);
await take('working');
await page.goto(`${address}#/sos`);
await heading('Breathed brown fume');
await take('emergency');
await page.goto(`${address}#/batches`);
await heading('Batches');
await page.getByRole('link', { name: /B.03/ }).click();
await page.getByRole('link', { name: 'Start a step' }).click();
await page.getByRole('link', { name: /Filter the leach liquor/ }).click();
await heading(/\?/);
await take('question');
await browser.close();
await server.close();
