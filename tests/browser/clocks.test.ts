/** Times that matter to somebody's skin, on a phone: they outlive a reload, say when they are over, and can be reached by any hand. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectAccessible, expectClean, expectNoWider, openPhone, type Phone, untilKept } from './phone';
import { openSite } from './site';

const title = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
const minutes = (n: number): number => n * 60_000;

/** A phone in the invented workshop, with no network from here on. */
async function offlineInDemo(phone: Partial<Phone> = {}) {
  const site = await openSite();
  const page = await openPhone({ width: 360, height: 800, ...phone });
  await page.clock.install({ time: new Date('2026-05-14T07:42:00Z') });
  await page.goto(site.address);
  await untilKept(page);
  await page.getByRole('button', { name: /invented workshop/ }).click();
  await page.getByText('Invented demo workshop').waitFor();
  await site.stop();
  await page.context().setOffline(true);
  return { page, goTo: (place: string) => page.goto(`${site.address}#/${place}`) };
}

/** A finger comes a second after the page: water on the glass does not count as a tap. */
async function tap(page: Page, name: string | RegExp): Promise<void> {
  await page.clock.fastForward(1_000);
  await page.getByRole('button', { name }).click();
}

describe('a rinse', () => {
  it('is counted on the card with no network, runs on over a reload, is told when it is over, and ends', async () => {
    const { page, goTo } = await offlineInDemo();
    await goTo('sos/eye-skin');
    await title(page, 'Acid on eye or skin').waitFor();
    await tap(page, /^Start 15 min/);
    await page.getByRole('timer').waitFor();
    await expectAccessible(page);
    await page.clock.fastForward(minutes(5));
    await page.reload();
    await expect.poll(() => page.getByRole('timer').textContent()).toMatch(/^(10:00|9:\d\d)$/);
    await goTo('today');
    await page.getByRole('link', { name: /^Rinse with water/ }).waitFor();
    await expectAccessible(page);
    await goTo('containers');
    await title(page, 'Containers').waitFor();
    await page.clock.fastForward(minutes(10));
    await page.getByRole('complementary', { name: 'Overdue' }).waitFor();
    await expectAccessible(page);
    await page.getByRole('link', { name: /^Overdue Rinse: its time is over/ }).click();
    await title(page, 'Acid on eye or skin').waitFor();
    await page.getByText(/^Its time is over since/).waitFor();
    await expectAccessible(page);
    await page.getByRole('link', { name: 'End this clock' }).click();
    await title(page, 'Rinse: its time is over').waitFor();
    await expectAccessible(page);
    await tap(page, 'The rinse is over');
    await title(page, /^Done/).waitFor();
    await expectAccessible(page);
    await page.reload();
    await title(page, /^Done/).waitFor();
    await tap(page, 'Undo: it still runs');
    await title(page, 'Rinse: its time is over').waitFor();
    expectClean(page);
  });

  it('begins under the keys of a keyboard too, and fits at twice the size of text, in the dark', async () => {
    const { page, goTo } = await offlineInDemo({ dark: true });
    await goTo('record/reading');
    await page.getByRole('radio', { name: /dark/i }).check();
    await goTo('sos/eye-skin');
    await title(page, 'Acid on eye or skin').waitFor();
    await page.evaluate(() => {
      document.documentElement.style.fontSize = '225%';
    });
    const start = page.getByRole('button', { name: /^Start 15 min/ });
    const call = await page.getByRole('link', { name: /^Call/ }).first().boundingBox();
    expect((call?.y ?? 0) + (call?.height ?? 0)).toBeLessThan(800);
    for (let presses = 0; presses < 30; presses += 1) {
      if (await start.evaluate((button) => button === document.activeElement)) break;
      await page.keyboard.press('Tab');
    }
    await page.keyboard.press('Enter');
    await page.getByRole('timer').waitFor();
    await expectNoWider(page);
    await expectAccessible(page);
    await page.getByRole('link', { name: 'End this clock' }).click();
    await title(page, 'Rinse with water').waitFor();
    await expectNoWider(page);
    await expectAccessible(page);
    await goTo('today');
    await page.getByRole('link', { name: /^Rinse with water/ }).waitFor();
    await expectNoWider(page);
    await expectAccessible(page);
    expectClean(page);
  });
});

it('opens the card and counts the rinse on a phone whose record does not open', async () => {
  const { address } = await openSite();
  const page = await openPhone({ width: 360, height: 800 });
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('The disk is out of order.', 'UnknownError');
    };
  });
  await page.goto(address);
  await title(page, 'The record does not open').waitFor();
  await page.getByRole('link', { name: 'SOS' }).click();
  await title(page, 'Breathed brown fume').waitFor();
  await page.getByRole('link', { name: 'Call 112' }).waitFor();
  await page.getByRole('button', { name: 'Eye, skin' }).click();
  await page.getByRole('button', { name: /^Start 15 min/ }).click();
  await page.getByRole('timer').waitFor();
  await page.getByText('The record could not be written. The clock runs here all the same.').waitFor();
  await expectAccessible(page);
  await page.reload();
  await page.getByRole('timer').waitFor();
  expectClean(page);
});

/**
 * Notices that the browser took from this page, in order. Asked for afterwards it does not always know of them: where there is
 * no desktop to show them on, it drops some at once.
 */
async function noticesOf(page: Page): Promise<() => Promise<readonly string[]>> {
  await page.evaluate(() => {
    const taken: string[] = [];
    const show = ServiceWorkerRegistration.prototype.showNotification;
    ServiceWorkerRegistration.prototype.showNotification = async function (heading, options) {
      await show.call(this, heading, options);
      taken.push(`${heading} | ${options?.body}`);
    };
    Object.assign(globalThis, { taken });
  });
  return () => page.evaluate(() => (globalThis as unknown as { taken: string[] }).taken);
}

describe('the next look at a step', () => {
  it('is set with one large tap, and a notice comes when it is due, once that was asked for', async () => {
    const { page, goTo } = await offlineInDemo();
    const notices = await noticesOf(page);
    await page.context().grantPermissions(['notifications']);
    await goTo('clocks');
    await title(page, 'Clocks').waitFor();
    await expectAccessible(page);
    await tap(page, /^Tell me when it is due/);
    await page.getByRole('button', { name: /On, while this page is alive/ }).waitFor();
    await goTo('batches');
    await page.getByRole('link', { name: /^B/ }).first().click();
    await title(page, /^Batch/).waitFor();
    await goTo(`${new URL(page.url()).hash.slice(2)}/look`);
    await title(page, /^Next look at/).waitFor();
    await expectAccessible(page);
    await expectNoWider(page);
    await tap(page, /^15 min/);
    await title(page, /^Look at/).waitFor();
    await expectAccessible(page);
    await page.clock.fastForward(minutes(15));
    await expect
      .poll(notices)
      .toEqual([expect.stringMatching(/^Invented workshop: Look at .* Go and look\.$/)]);
    expectClean(page);
  });

  it('shows no notice when nobody asked for one', async () => {
    const { page, goTo } = await offlineInDemo();
    const notices = await noticesOf(page);
    await page.context().grantPermissions(['notifications']);
    await goTo('sos/eye-skin');
    await tap(page, /^Start 15 min/);
    await page.getByRole('timer').waitFor();
    await page.clock.fastForward(minutes(16));
    await page.getByText(/^Its time is over since/).waitFor();
    expect(await notices()).toEqual([]);
  });
});
