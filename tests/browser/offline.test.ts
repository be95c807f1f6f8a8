import { readdir } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { expect, inject, it } from 'vitest';
import { expectAccessible, expectClean, openPhone, untilKept } from './phone';
import { openSite } from './site';

it('opens cold with no network and no server after one visit', async () => {
  const site = await openSite();
  const first = await openPhone({ width: 360, height: 800 });
  await first.goto(site.address);
  await first.getByRole('heading', { level: 1 }).waitFor();
  await expectAccessible(first);
  await untilKept(first);
  expectClean(first);
  const seen = await first.getByRole('heading', { level: 1 }).textContent();

  const phone = first.context();
  await first.close();
  await phone.setOffline(true);
  await site.stop();
  await expect(fetch(site.address)).rejects.toThrow('fetch failed');

  const second = await phone.newPage();
  await second.goto(site.address);
  await second.getByRole('heading', { level: 1, name: seen ?? '', exact: true }).waitFor();
  await second.reload();
  await second.getByRole('heading', { level: 1, name: seen ?? '', exact: true }).waitFor();
  expectClean(second);
});

it('keeps every file of the build on the phone, and nothing besides', async () => {
  const site = await openSite();
  const page = await openPhone({ width: 360, height: 800 });
  await page.goto(site.address);
  await untilKept(page);
  const kept = await page.evaluate(async () => {
    const names = await caches.keys();
    const requests = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
    return requests.flat().map(({ url }) => new URL(url).pathname.slice(1));
  });
  const entries = await readdir(inject('builtApp'), { recursive: true, withFileTypes: true });
  const built = entries
    .filter((entry) => entry.isFile())
    .map((entry) => relative(inject('builtApp'), join(entry.parentPath, entry.name)))
    .filter((name) => name !== 'service-worker.js');
  expect(kept.sort()).toEqual(built.sort());
});

it('asks no other host for anything', async () => {
  const site = await openSite();
  const page = await openPhone({ width: 360, height: 800, dark: true });
  const asked: string[] = [];
  page.context().on('request', (request) => asked.push(request.url()));
  await page.goto(site.address);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await untilKept(page);
  expect(asked.filter((url) => !url.startsWith(site.address))).toEqual([]);
  expectClean(page);
});
