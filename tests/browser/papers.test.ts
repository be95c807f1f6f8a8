/** The way from the place of the papers to a finished set, on a phone with no network: chosen, checked, mended, signed, made, saved. */
import { readFile } from 'node:fs/promises';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/ledger/entries/entry';
import { manyContainers } from '../bench/many-containers';
import { readPdf, textOf } from '../support/read-pdf';
import { inWorkshop, offlineInWorkshop } from './invented-workshop';
import { expectAccessible, expectClean, expectNoWider, openPhone, untilKept } from './phone';
import { openSite } from './site';

const titled = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
const follow = (page: Page, name: string | RegExp) => page.getByRole('link', { name }).first().click();
const tap = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).click();

/** No wider than the phone, also at twice the text. */
async function noWider(page: Page): Promise<void> {
  for (const size of ['225%', '']) {
    await page.evaluate((chosen) => {
      document.documentElement.style.fontSize = chosen;
    }, size);
    await expectNoWider(page);
  }
}

/** Looked at by axe, on light paper and on dark, and no wider than the phone, also at twice the text. */
async function readsWell(page: Page): Promise<void> {
  for (const theme of ['dark', 'light']) {
    await page.evaluate((chosen) => {
      document.documentElement.dataset.theme = chosen;
    }, theme);
    await expectAccessible(page);
  }
  await noWider(page);
}

/** A name as a finger writes it: loops, then a line under them. */
async function sign(page: Page): Promise<void> {
  const canvas = page.locator('canvas');
  await canvas.scrollIntoViewIfNeeded();
  const box = await canvas.boundingBox();
  if (!box) throw new Error('nothing to sign in');
  const go = (x: number, y: number) => page.mouse.move(box.x + box.width * x, box.y + box.height * y);
  await go(0.1, 0.5);
  await page.mouse.down();
  for (let at = 0; at <= 40; at++) await go(0.1 + at * 0.015, 0.5 + 0.2 * Math.sin(at * 0.8));
  await page.mouse.up();
  await go(0.1, 0.85);
  await page.mouse.down();
  await go(0.75, 0.8);
  await page.mouse.up();
}

const drawn = (page: Page) => page.getByRole('img', { name: /^Signature of/ }).locator('path');

async function saved(page: Page, name: string | RegExp): Promise<Uint8Array> {
  const saving = page.waitForEvent('download');
  await page.getByRole('link', { name }).click();
  return new Uint8Array(await readFile(await (await saving).path()));
}

/** Ticks these and no others. */
async function choose(page: Page, codes: readonly RegExp[]): Promise<void> {
  await follow(page, 'Papers');
  await follow(page, /^Make papers/);
  await titled(page, 'Hand-over papers').waitFor();
  for (const code of codes) await page.getByRole('checkbox', { name: code }).check();
}

async function check(page: Page): Promise<void> {
  await tap(page, /^Check/);
  await page
    .getByText(/^Candidate\. The/)
    .first()
    .waitFor();
}

describe('a set of papers', () => {
  test('goes from an empty choice to a saved PDF with the signature in it; a reload in the middle loses nothing', {
    timeout: 240_000,
  }, async () => {
    const { page, goTo } = await offlineInWorkshop();
    await choose(page, []);
    await readsWell(page);
    await tap(page, /^Check/);
    await page.getByText('Tick at least one container.').waitFor();
    for (const code of [/C.02/, /C.03/]) await page.getByRole('checkbox', { name: code }).check();
    await check(page);
    await readsWell(page);
    await page.reload();
    await page.getByRole('heading', { name: /C.02/ }).waitFor();
    expect(await page.getByRole('heading', { name: /^C.\d\d$/ }).allTextContents()).toEqual(['C‑02', 'C‑03']);

    await follow(page, /^Sign the statement/);
    await page.getByText(/^Every other figure is worked out/).waitFor();
    await readsWell(page);
    await page.getByRole('textbox', { name: 'Who signs' }).fill('Zoë Åkesson');
    await sign(page);
    const line = await drawn(page).getAttribute('d');
    expect(line).toMatch(/^M.*M/);
    await page.reload();
    await drawn(page).waitFor();
    expect(await drawn(page).getAttribute('d')).toBe(line);
    expect(await page.getByRole('textbox', { name: 'Who signs' }).inputValue()).toBe('Zoë Åkesson');
    await readsWell(page);

    const button = page.getByRole('button', { name: /^Make the set/ });
    const about = Number(/About (\d+) pages/.exec((await button.textContent()) ?? '')?.[1]);
    await button.click();
    await titled(page, /is made/).waitFor({ timeout: 60_000 });
    await readsWell(page);
    const bytes = await saved(page, 'Save it');
    const text = await textOf(bytes);
    expect(text).toContain('Zoë Åkesson');
    expect(text).toMatch(/This is no certificate/);
    const { pages } = await readPdf(bytes);
    expect(about / pages.length).toBeGreaterThan(0.6);
    expect(about / pages.length).toBeLessThan(1.6);
    const archive = unzipSync(await saved(page, /^Save tables/));
    expect(Object.keys(archive).filter((name) => name.endsWith('.pdf'))).toHaveLength(1);
    expect(Object.keys(archive).some((name) => name.endsWith('containers.csv'))).toBe(true);

    await follow(page, /^Hand over now/);
    await page.getByRole('heading', { level: 1 }).waitFor();
    for (const code of [/^C.02 /, /^C.03 /])
      expect(await page.getByRole('checkbox', { name: code }).isChecked()).toBe(true);
    await goTo('papers');
    await page
      .getByRole('list', { name: 'Hand-over papers' })
      .getByText(/disposal-C-02_C-03/)
      .waitFor();
    await readsWell(page);
    expectClean(page);
  });

  test('holds the longest code that a container may have, also at twice the text', {
    timeout: 120_000,
  }, async () => {
    const { page, goTo } = await offlineInWorkshop();
    await follow(page, 'Batches');
    await follow(page, /^B.0/);
    await follow(page, 'Log what a step gave');
    await follow(page, 'Wash water');
    await page.getByLabel('Volume', { exact: true }).fill('3');
    await page.getByLabel('Into which container').selectOption('new');
    await page.getByLabel('Code on the label').fill('W'.repeat(16));
    await tap(page, 'Keep this wash water');
    await titled(page, /^Container W{16}$/).waitFor();
    for (const address of ['papers/new', 'hand-overs/new']) {
      await goTo(address);
      await page.getByRole('checkbox', { name: /^W{16} / }).check();
      await noWider(page);
    }
    await goTo('papers/new');
    await tap(page, /^Check/);
    await page.getByRole('heading', { name: /^W{16}$/ }).waitFor();
    await noWider(page);
    expectClean(page);
  });

  test('leads to where a gap is mended, and back again', { timeout: 120_000 }, async () => {
    const { page } = await offlineInWorkshop();
    await choose(page, [/C.02/, /C.03/]);
    await check(page);
    const gaps = page.getByRole('list', { name: 'C‑02', exact: true });
    await gaps.getByRole('link', { name: /^Not closed/ }).click();
    await titled(page, /C.02/).waitFor();
    await expectAccessible(page);
    await tap(page, 'Write it down');
    await titled(page, /^Container C.02/).waitFor();
    await follow(page, /^Back to the papers/);
    await gaps.waitFor();
    expect(await gaps.getByText('Not closed').count()).toBe(0);
    expect(await page.getByRole('heading', { name: /^C.\d\d$/ }).allTextContents()).toEqual(['C‑02', 'C‑03']);
    await follow(page, 'Back');
    await follow(page, 'Today');
    await titled(page, /day/).waitFor();
    expect(await page.getByRole('link', { name: /^Back to the papers/ }).count()).toBe(0);
    expectClean(page);
  });

  test('is chosen, signed in letters and made by keys alone', { timeout: 120_000 }, async () => {
    const { page, goTo } = await offlineInWorkshop();
    await goTo('papers/new');
    /** Goes on from where the focus is, as a person does, and no further than a page has stops. */
    async function tabTo(name: RegExp): Promise<void> {
      for (let stops = 0; stops < 120; stops++) {
        await page.keyboard.press('Tab');
        const at = await page.evaluate(() => {
          const on = document.activeElement;
          const label = on instanceof HTMLInputElement ? on.labels?.[0] : undefined;
          return (label ?? on)?.textContent ?? '';
        });
        if (name.test(at)) return;
      }
      throw new Error(`no key leads to ${name}`);
    }
    await tabTo(/^C.02/);
    await page.keyboard.press('Space');
    await tabTo(/^Check this one/);
    await page.keyboard.press('Enter');
    await page
      .getByText(/^Candidate\. The/)
      .first()
      .waitFor();
    await tabTo(/^Sign the statement/);
    await page.keyboard.press('Enter');
    await titled(page, 'Sign the statement').waitFor();
    await tabTo(/^Who signs/);
    await page.keyboard.press('Control+A');
    await page.keyboard.type('Ines Halvard');
    await tabTo(/^Sign in letters/);
    await page.keyboard.press('Space');
    await page.getByText('Signed in letters, not drawn').waitFor();
    await expectAccessible(page);
    await tabTo(/^Make the set/);
    await page.keyboard.press('Enter');
    await titled(page, /is made/).waitFor({ timeout: 60_000 });
    expect(await textOf(await saved(page, 'Save it'))).toMatch(/in letters/);
    expectClean(page);
  });

  test('keeps what was drawn when the phone is turned, and draws on at the same place', {
    timeout: 120_000,
  }, async () => {
    const { page, goTo } = await inWorkshop({}, new Date('2026-05-14T07:42:00Z'));
    await goTo('papers/new');
    await page.getByRole('checkbox', { name: /C.02/ }).check();
    await check(page);
    await follow(page, /^Sign the statement/);
    await page.getByText(/This is no certificate/).waitFor();
    await sign(page);
    const before = (await drawn(page).getAttribute('d')) ?? '';
    await page.setViewportSize({ width: 800, height: 360 });
    await sign(page);
    const after = (await drawn(page).getAttribute('d')) ?? '';
    expect(after.split('M')).toHaveLength(5);
    expect(after.startsWith(before)).toBe(true);
    // The same strokes once more, on a box of another size: within a hand's breadth of a pixel or two.
    const ends = after
      .split('M')
      .slice(1)
      .map((stroke) => (/([\d.]+) ([\d.]+)$/.exec(stroke) ?? []).slice(1).map(Number));
    for (const at of [0, 1] as const) {
      const [one = [], two = []] = [ends[at], ends[at + 2]];
      expect(Math.hypot((one[0] ?? 0) - (two[0] ?? 0), (one[1] ?? 0) - (two[1] ?? 0))).toBeLessThan(4);
    }
    expectClean(page);
  });
});

/** Puts a record into the app's store, as if it had been written there. */
async function keep(log: readonly Entry[]): Promise<void> {
  const open = indexedDB.open('leesbook-real');
  await new Promise((go) => {
    open.onsuccess = go;
  });
  const store = open.result.transaction(['entries', 'meta'], 'readwrite');
  for (const entry of log) store.objectStore('entries').put(entry);
  const last = log.at(-1);
  if (last) {
    const { device, counter, hash, writtenAt } = last;
    store.objectStore('meta').put({ device, counter, hash, writtenAt }, 'head');
  }
  await new Promise((go) => {
    store.oncomplete = go;
  });
  open.result.close();
}

describe('forty containers', () => {
  test('are all chosen at a tap, and checked one after the other', { timeout: 240_000 }, async () => {
    const site = await openSite();
    const page = await openPhone({ width: 360, height: 800 });
    await page.goto(site.address);
    await untilKept(page);
    await page.evaluate(keep, await manyContainers(40));
    await page.reload();
    await page.goto(`${site.address}#/papers/new`);
    await tap(page, 'All (40)');
    await tap(page, /^Check these 40/);
    await page.getByText(/of 40 with nothing missing/).waitFor({ timeout: 90_000 });
    expect(await page.getByRole('list').getByRole('heading', { level: 2 }).count()).toBe(40);
    await expect.poll(() => page.getByText('Looking …').count(), { timeout: 90_000 }).toBe(0);
    await noWider(page);
    expectClean(page);
  });
});
