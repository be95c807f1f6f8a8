/** Texts that would be more than text elsewhere, in every field that takes one: every page shows them, and none of them does anything. */
import { cp, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, inject, onTestFinished, test } from 'vitest';
import { walkEveryRoute } from '../../browser/every-route';
import { expectClean, openPhone, untilKept } from '../../browser/phone';
import { openSite } from '../../browser/site';
import { howMany } from '../how-many';
import { pageOf } from './page-of';

/** The app, with the page that writes beside it: one origin, one record. */
async function appWithWriter(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'leesbook-harmful-'));
  onTestFinished(() => rm(folder, { recursive: true }));
  await cp(inject('builtApp'), folder, { recursive: true });
  await cp(await pageOf('harmful-page.ts'), join(folder, 'writer'), { recursive: true });
  return folder;
}

/** Markup and a script; at night also a formula, an address and what templates take for their own. */
const texts = [
  '<img src=x onerror="globalThis.ran=1"><script>globalThis.ran=1</script>',
  '="><svg/onload=globalThis.ran=1>{{globalThis.ran=1}} javascript:globalThis.ran=1',
].slice(0, howMany.ways);

test.each(texts)('%s is text on every page, in every place', async (text) => {
  const { address } = await openSite(await appWithWriter());
  const page = await openPhone({ width: 360, height: 800 });
  const said: string[] = [];
  page.context().on('dialog', (dialog) => {
    said.push(dialog.message());
    void dialog.dismiss();
  });
  const asked: string[] = [];
  page.context().on('request', (request) => asked.push(request.url()));
  // Before the app's own worker answers for every address.
  await page.goto(`${address}writer/index.html`);
  await page.evaluate((harm) => window.writeHarm(harm), text);
  await page.goto(address);
  await untilKept(page);
  const { addresses } = await walkEveryRoute(page, address);
  expect(addresses.size).toBeGreaterThan(30);
  await page.goto(`${address}#/record/people`);
  await page.getByText(text).first().waitFor();
  expect(said).toEqual([]);
  expect(await page.evaluate(() => 'ran' in globalThis)).toBe(false);
  expect(asked.filter((url) => !url.startsWith(address) && !/^(blob|data):/.test(url))).toEqual([]);
  expectClean(page);
});
