/** Clocks of devices: set back, put back in autumn, carried to another zone, and standing still between two entries. */
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { fillBatch, onDisk, ownWorkshop } from './own-workshop';
import { expectAccessible, expectClean, expectNoWider } from './phone';

const title = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });

/** A workshop of one's own on a phone that stands in this zone and says this hour. */
async function workshopAt(zone: string, now: string) {
  let carry = async (_to: string): Promise<void> => undefined;
  const workshop = await ownWorkshop(async (page) => {
    const devtools = await page.context().newCDPSession(page);
    carry = async (timezoneId) => {
      await devtools.send('Emulation.setTimezoneOverride', { timezoneId });
    };
    await carry(zone);
    await page.clock.install({ time: new Date(now) });
  });
  const { page, goTo } = workshop;
  const write = async (grams: string): Promise<void> => {
    await goTo('batches/new');
    await fillBatch(page, grams);
    await title(page, /Batch B/).waitFor();
  };
  /** Of all that is in the record, the newest first, as a person reads it; read from the disk by a page opened anew. */
  const history = async (): Promise<readonly string[]> => {
    await goTo('record/history');
    await page.reload();
    const lines = page.getByRole('list', { name: 'History' }).getByRole('link');
    await lines.first().waitFor();
    return (await lines.allTextContents()).map((text) => text.replaceAll(/[\u00a0\u202f]/g, ' '));
  };
  return { ...workshop, write, history, carry: (to: string) => carry(to) };
}

const inOrder = (entries: readonly Record<string, unknown>[]) =>
  entries.toSorted((a, b) => Number(a.counter) - Number(b.counter));

/** The book as the page of the record tells it, once everything was looked at. */
const expectWhole = async (page: Page, goTo: (place: string) => Promise<void>, entries: number) => {
  await goTo('record');
  await page.getByText(new RegExp(`^Whole, ${entries} entries`)).waitFor();
};

it('a clock that is set back by a day is told of, and what is written under it comes last', async () => {
  const { page, goTo, shut, write, history } = await workshopAt('Europe/Paris', '2026-05-14T08:00:00Z');
  await write('600');
  await goTo('today');
  await title(page, 'Thursday 14 May').waitFor();
  expect(await page.getByText('The clock of this phone may stand wrong').count()).toBe(0);

  await page.clock.setSystemTime(new Date('2026-05-13T08:00:00Z'));
  await page.reload();
  await title(page, 'Wednesday 13 May').waitFor();
  await page.getByText('The clock of this phone may stand wrong').waitFor();
  await page
    .getByText(/It says 13.May.2026, 10:00, but the last entry stands under 14.May.2026, 10:0\d/)
    .waitFor();
  await expectAccessible(page);
  await expectNoWider(page);

  await write('700');
  const [last, before] = await history();
  expect(last).toMatch(/700.*13 May 2026, 10:0\d/);
  expect(before).toMatch(/600.*14 May 2026, 10:0\d/);
  await expectWhole(page, goTo, 4);

  await page.clock.setSystemTime(new Date('2026-05-15T08:00:00Z'));
  await write('800');
  await goTo('today');
  await title(page, 'Friday 15 May').waitFor();
  expect(await page.getByText('The clock of this phone may stand wrong').count()).toBe(0);
  expect((await history()).slice(0, 3).map((line) => /\d00/.exec(line)?.[0])).toEqual(['800', '700', '600']);
  await expectWhole(page, goTo, 5);
  expectClean(page);
  await shut();
  expect(inOrder(await onDisk(page)).map(({ happenedAt }) => String(happenedAt).slice(0, 10))).toEqual([
    '2026-05-14',
    '2026-05-14',
    '2026-05-14',
    '2026-05-13',
    '2026-05-15',
  ]);
});

it('two entries of the hour that comes twice in autumn stay apart', async () => {
  const { page, goTo, write, history } = await workshopAt('Europe/Paris', '2026-10-25T00:10:00Z');
  await page.clock.setFixedTime(new Date('2026-10-25T00:40:00Z'));
  await write('600');
  await page.clock.setFixedTime(new Date('2026-10-25T01:20:00Z'));
  await write('700');
  const [second, first] = await history();
  expect(first).toMatch(
    /600.*25 Oct 2026, 02:40,.*Where it was written: 25 Oct 2026, 02:40, UTC\+02:00, Europe\/Paris/,
  );
  expect(second).toMatch(
    /700.*25 Oct 2026, 02:20,.*Where it was written: 25 Oct 2026, 02:20, UTC\+01:00, Europe\/Paris/,
  );
  await expectAccessible(page);
  await expectNoWider(page);
  await expectWhole(page, goTo, 4);
  expectClean(page);
});

it('an entry written on a journey keeps the hour and the zone of where it was written', async () => {
  const { page, goTo, shut, write, history, carry } = await workshopAt(
    'Europe/Paris',
    '2026-05-14T08:00:00Z',
  );
  await goTo('batches/new');
  // Under the open page.
  await carry('Asia/Tokyo');
  await fillBatch(page, '600');
  await title(page, /Batch B/).waitFor();
  const [there] = await history();
  expect(there).toMatch(/600.*14 May 2026, 17:0\d/);
  expect(there).not.toContain('Where it was written');

  await carry('Europe/Paris');
  await write('700');
  const [home, journey] = await history();
  expect(home).toMatch(/700.*14 May 2026, 10:0\d/);
  expect(home).not.toContain('Where it was written');
  expect(journey).toMatch(
    /600.*14 May 2026, 10:0\d.*Where it was written: 14 May 2026, 17:0\d, UTC\+09:00, Asia\/Tokyo/,
  );
  await page.getByRole('link', { name: /600.*Tokyo/ }).click();
  await page.getByText('Hour where it was written').waitFor();
  await page.getByText(/^14.May.2026, 17:0\d, UTC\+09:00, Asia\/Tokyo$/).waitFor();
  await expectAccessible(page);
  await expectNoWider(page);
  await expectWhole(page, goTo, 4);
  expectClean(page);
  await shut();
  expect(inOrder(await onDisk(page)).map(({ zone }) => zone)).toEqual([
    'Europe/Paris',
    'Europe/Paris',
    'Asia/Tokyo',
    'Europe/Paris',
  ]);
});

it('entries of the same millisecond stand in the order in which they were written', async () => {
  const { page, goTo, shut, write, history } = await workshopAt('Europe/Paris', '2026-05-14T08:00:00Z');
  await page.clock.setFixedTime(new Date('2026-05-14T09:00:00.123Z'));
  const masses = ['900', '600', '800', '700'];
  for (const grams of masses) await write(grams);
  expect((await history()).slice(0, 4).map((line) => /\d00/.exec(line)?.[0])).toEqual(masses.toReversed());
  await expectWhole(page, goTo, 6);
  expectClean(page);
  await shut();
  const entries = inOrder(await onDisk(page));
  expect(entries.map(({ counter }) => counter)).toEqual([1, 2, 3, 4, 5, 6]);
  expect(new Set(entries.slice(2).map(({ writtenAt }) => writtenAt))).toEqual(
    new Set(['2026-05-14T09:00:00.123Z']),
  );
});
