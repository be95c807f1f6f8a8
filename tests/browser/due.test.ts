/** Last days on a phone with no network: in order on Today, in a file for a calendar, and as a number on the icon. */
import { readFile } from 'node:fs/promises';
import ICAL from 'ical.js';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { offlineInWorkshop } from './invented-workshop';
import { expectAccessible, expectClean, expectNoWider, openPhone, untilKept } from './phone';
import { openSite } from './site';

const title = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });

/** States a local rule by its form. */
async function states(page: Page, goTo: (place: string) => Promise<unknown>, rule: string, value: string) {
  await goTo(`record/rules/${rule}`);
  await page.getByRole('textbox', { name: /\?$/ }).first().fill(value);
  await page.getByLabel('Who said so').fill('County office');
  await page.locator('input[type=date]').fill('2026-04-10');
  await page.getByRole('button', { name: /^Keep/ }).click();
  await title(page, 'Local rules').waitFor();
}

describe('in the invented workshop', () => {
  it('Today has last days in order, each opens how it was counted, and the file holds them all', async () => {
    const { page, goTo } = await offlineInWorkshop();
    await states(page, goTo, 'storage-days', '30');
    await states(page, goTo, 'month-limit', '8');
    await goTo('today');
    await title(page, 'Thursday 14 May').waitFor();
    const rows = await page
      .getByRole('list', { name: 'Due and wrong' })
      .getByRole('listitem')
      .allTextContents();
    const place = (part: RegExp): number => rows.findIndex((text) => part.test(text));
    const order = [
      /is too full/,
      /Walk along/,
      /Waste of this month/,
      /contents not known/,
      /C.06 must leave/,
      /C.03 must leave/,
    ];
    const places = order.map(place);
    expect(places).not.toContain(-1);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    await expectAccessible(page);

    await page.getByRole('link', { name: /^Dates and amounts/ }).click();
    await title(page, 'Dates and amounts').waitFor();
    await expectAccessible(page);
    const counted = await page.getByRole('list', { name: 'By the calendar' }).getByRole('listitem').count();
    await page.getByRole('link', { name: /C.02 must leave/ }).click();
    await title(page, /C.02 must leave/).waitFor();
    await page.getByText('Last day, the careful one').waitFor();
    await expectAccessible(page);

    for (const [address, name] of [
      ['due/months', 'Month by month'],
      ['due/months/2026-05', 'May 2026'],
      ['due/on-site', 'Waste on site'],
      ['due/near-work', 'Beside the work'],
    ] as const) {
      await goTo(address);
      await title(page, name).waitFor();
      await expectNoWider(page);
      await expectAccessible(page);
    }

    await goTo('due/months/2026-05');
    await page.getByRole('link', { name: /^Barren liquor/ }).click();
    await page.getByRole('group', { name: 'How does its month count it?' }).waitFor();
    await expectAccessible(page);

    await goTo('due/calendar');
    await page.getByRole('button', { name: 'Make the calendar file' }).click();
    const save = page.getByRole('link', { name: 'Save the file' });
    await save.waitFor();
    await expectAccessible(page);
    const [download] = await Promise.all([page.waitForEvent('download'), save.click()]);
    expect(download.suggestedFilename()).toBe('due-days-2026-05-14.ics');
    const text = await readFile(await download.path(), 'utf8');
    const events = new ICAL.Component(ICAL.parse(text))
      .getAllSubcomponents('vevent')
      .map((one) => new ICAL.Event(one));
    expect(events.length).toBe(counted);
    expect(events.every(({ startDate }) => startDate.isDate)).toBe(true);
    expect(events.map(({ summary }) => summary)).toContain('Invented: Walk along the containers');
    expectClean(page);
  });

  it.each([
    { width: 412, height: 915, dark: true },
    { width: 360, height: 800, dark: false },
  ])('its pages fit at twice the size of text, $width px wide', async (phone) => {
    const { page, goTo } = await offlineInWorkshop(phone);
    for (const address of [
      'today',
      'due',
      'due/months',
      'due/months/2026-05',
      'due/on-site',
      'due/calendar',
    ]) {
      await goTo(address);
      await page.evaluate(() => {
        document.documentElement.style.fontSize = '225%';
      });
      await expectNoWider(page);
    }
    expectClean(page);
  });
});

it('an installed app has the number of what is due on its icon, and takes it away', async () => {
  const site = await openSite();
  const page = await openPhone({ width: 360, height: 800 });
  await page.clock.install({ time: new Date('2026-05-14T07:42:00Z') });
  await page.addInitScript(() => {
    const asked = window.matchMedia.bind(window);
    window.matchMedia = (query) =>
      query.includes('display-mode') ? ({ ...asked(query), matches: true } as MediaQueryList) : asked(query);
    const told: string[] = [];
    Object.assign(window, { told });
    Object.assign(navigator, {
      setAppBadge: async (count: number) => void told.push(String(count)),
      clearAppBadge: async () => void told.push('none'),
    });
  });
  await page.goto(site.address);
  await untilKept(page);
  await site.stop();
  await page.context().setOffline(true);
  const told = () => page.evaluate(() => (window as unknown as { told: string[] }).told);
  await page.getByRole('link', { name: /Set up my workshop/ }).click();
  await page.getByLabel('Name of the workshop').fill('Kiln Yard');
  await page.getByLabel('Address').fill('Kiln Yard 3');
  await page.getByLabel('Emergency number').fill('112');
  await page.getByRole('button', { name: 'Keep, go on' }).click();
  await title(page, 'Who works here?').waitFor();
  await page.getByLabel('Your name').fill('Ada Marsh');
  await page.getByRole('button', { name: 'Keep, go on' }).click();
  await title(page, /Local rules/).waitFor();
  await expect.poll(told).toEqual(['none']);
  // A rinse that is due in fifteen minutes, and over after them.
  await page.goto(`${site.address}#/sos/eye-skin`);
  await page.getByRole('button', { name: /^Start 15 min/ }).click();
  await page.getByRole('timer').waitFor();
  await page.clock.fastForward(16 * 60_000);
  await expect.poll(told).toEqual(['none', '1']);
  await page.getByRole('link', { name: 'End this clock' }).click();
  await page.clock.fastForward(1_000);
  await page.getByRole('button', { name: 'The rinse is over' }).click();
  await expect.poll(told).toEqual(['none', '1', 'none']);
  expectClean(page);
});
