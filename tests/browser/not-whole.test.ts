/** A record that is lost, cut short or damaged is noticed, kept as it is, and nothing is begun over it. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { madeBackup } from './made-backup';
import { fillBatch, harm, onDisk, ownWorkshop } from './own-workshop';
import { expectAccessible, expectClean } from './phone';

const title = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });

const databases = (page: Page) =>
  page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name));

const deleteRecord = (page: Page): Promise<string> =>
  page.evaluate(
    () =>
      new Promise((done) => {
        const deleting = indexedDB.deleteDatabase('leesbook-real');
        deleting.onsuccess = () => done('deleted');
        deleting.onblocked = () => done('blocked');
      }),
  );

async function expectCardOpens(page: Page, goTo: (place: string) => Promise<void>): Promise<void> {
  await goTo('sos');
  await title(page, 'Breathed brown fume').waitFor();
  expect(await page.getByText('The record is').count()).toBe(0);
}

describe('a record whose database is gone', () => {
  it('is told with what is known of it, nothing is made in its place, and the emergency card opens', async () => {
    const { page, address, goTo, shut } = await ownWorkshop();
    await shut();
    expect(await deleteRecord(page)).toBe('deleted');
    await page.goto(address);
    await title(page, 'The record is gone').waitFor();
    await page.getByText(/^It had 2 entries, the last written \d\d:\d\d$/).waitFor();
    await page.getByText('No backup was noted on this phone').waitFor();
    await page.getByRole('link', { name: /Restore a backup/ }).waitFor();
    await expectAccessible(page);
    for (const place of ['today', 'batches', 'containers/new', 'start/workshop']) {
      await goTo(place);
      await title(page, 'The record is gone').waitFor();
    }
    await expectCardOpens(page, goTo);
    expect(await databases(page)).toEqual([]);
  });

  it('gives way to a new one only after what is given up was read, and that stays told', async () => {
    const { page, address, goTo, shut } = await ownWorkshop();
    await shut();
    await deleteRecord(page);
    await page.goto(address);
    await page.getByRole('link', { name: /Begin a new record/ }).click();
    await page.getByText('All 2 entries of the record before, and every photo in it.').waitFor();
    expect(await page.getByRole('button', { name: 'Begin a new record' }).count()).toBe(0);
    await page.getByRole('button', { name: 'I have read what comes of it' }).click();
    await title(page, 'It is written down for ever').waitFor();
    await expectAccessible(page);
    expect(await databases(page)).toEqual([]);
    await page.getByRole('button', { name: 'Begin a new record' }).click();
    await page.getByRole('link', { name: /Set up my workshop/ }).waitFor();
    expect(await databases(page)).toEqual(['leesbook-real']);
    await goTo('record');
    await page.getByText('Goes on without one thing').click();
    await page.getByText('A whole record of 2 entries').waitFor();
  });

  it('is told as well where the database is still there, and empty', async () => {
    const { page, address, shut } = await ownWorkshop();
    await shut();
    await harm(page, 'empty');
    await page.goto(address);
    await title(page, 'The record is gone').waitFor();
    await shut();
    expect(await onDisk(page)).toEqual([]);
  });

  it('is told when it goes under the open app, once the page begins anew', async () => {
    const { page, address } = await ownWorkshop();
    const other = await page.context().newPage();
    await other.goto(`${address}icon.svg`);
    expect(await deleteRecord(other)).toBe('deleted');
    await page.getByText(/The record was closed by another window/).waitFor();
    await page.reload();
    await title(page, 'The record is gone').waitFor();
    expect(await databases(page)).toEqual([]);
  });
});

async function restore(page: Page, file: string): Promise<void> {
  await page.getByRole('link', { name: /Restore a backup/ }).click();
  await page.locator('input[type=file]').setInputFiles(file);
  await page.getByRole('heading', { name: 'The backup is whole' }).waitFor({ timeout: 120_000 });
  await page.getByRole('button', { name: /Restore it|Join it/ }).click();
  await page.getByRole('heading', { name: 'It is brought in' }).waitFor({ timeout: 120_000 });
  await page.getByRole('button', { name: /Open the record|See what is missing/ }).click();
}

/** As on a phone: there is no picker for a place to save to. */
const thatDownloads = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    Reflect.deleteProperty(window, 'showSaveFilePicker');
  });

describe('a backup', () => {
  it('brings a record back that is gone: it is whole again, and is written to', async () => {
    const { page, address, goTo, shut } = await ownWorkshop(thatDownloads);
    const file = await madeBackup(page, goTo);
    await shut();
    const before = await onDisk(page);
    await deleteRecord(page);
    await page.goto(address);
    await page.getByText(/^Last backup \d\d:\d\d, with 2 entries$/).waitFor();
    await page.getByText('Nothing was written after it.').waitFor();
    await restore(page, file);
    await title(page, /day/).waitFor();
    await goTo('record');
    await page.getByText('Whole, 2 entries').waitFor();
    await page.getByText('All of it is in a backup').waitFor();
    expect(await page.getByText(/Goes on without|not whole/).count()).toBe(0);
    await shut();
    expect(await onDisk(page)).toEqual(before);
    await goTo('batches/new');
    await fillBatch(page, '300');
    await title(page, /Batch B/).waitFor();
  });

  it('that is older brings back what it has, and what is still missing stays told', async () => {
    const { page, address, goTo, shut } = await ownWorkshop(thatDownloads);
    const file = await madeBackup(page, goTo);
    await goTo('batches/new');
    await fillBatch(page, '300');
    await title(page, /Batch B/).waitFor();
    await shut();
    await deleteRecord(page);
    await page.goto(address);
    await page.getByText('1 entry after it is in no backup noted here.').waitFor();
    await restore(page, file);
    await title(page, 'The record is not whole').waitFor();
    await page.getByText('1 entry at the end is missing').waitFor();
    await page.getByText(/^Last backup \d\d:\d\d, with 2 entries$/).waitFor();
  });
});

it('that was given up and brought back by a backup is whole again', async () => {
  const { page, address, goTo, shut } = await ownWorkshop(thatDownloads);
  const file = await madeBackup(page, goTo);
  await shut();
  await harm(page, 'lose-last');
  await page.goto(`${address}#/record/not-whole/go-on`);
  await page.getByRole('button', { name: 'I have read what comes of it' }).click();
  await page.getByRole('button', { name: 'Go on as it is' }).click();
  await title(page, /day/).waitFor();
  await goTo('record/history');
  await page.getByText('Not all is here: 1 entry that was lost').click();
  await restore(page, file);
  await title(page, /day/).waitFor();
  await goTo('record');
  await page.getByText('Whole, 2 entries').waitFor();
});

describe('a record that is shorter than it was', () => {
  it('says how many entries are missing, refuses to write, and keeps what was typed', async () => {
    const { page, address, goTo, shut } = await ownWorkshop();
    await shut();
    await harm(page, 'lose-last');
    const left = await onDisk(page);
    await page.goto(address);
    await page.getByText('The record is not whole').click();
    await page.getByText('1 entry at the end is missing').waitFor();
    await page.getByRole('link', { name: /Take out what is here/ }).waitFor();
    await expectAccessible(page);
    await goTo('batches/new');
    await fillBatch(page, '777');
    await page.getByText(/nothing is written into it\. What you have typed stays here/).waitFor();
    await page.reload();
    expect(await page.getByLabel('Mass of the feed', { exact: true }).inputValue()).toBe('777');
    await expectCardOpens(page, goTo);
    await shut();
    expect(await onDisk(page)).toEqual(left);
  });

  it('goes on when somebody decides so, and what is written then follows nothing that was lost', async () => {
    const { page, address, goTo, shut } = await ownWorkshop();
    await shut();
    await harm(page, 'lose-last');
    await page.goto(`${address}#/record/not-whole/go-on`);
    await page.getByRole('button', { name: 'I have read what comes of it' }).click();
    await page.getByRole('button', { name: 'Go on as it is' }).click();
    await title(page, /^(Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)day/).waitFor();
    await goTo('batches/new');
    await fillBatch(page, '300');
    await title(page, /Batch B/).waitFor();
    await goTo('record');
    await page.getByText('Goes on without 2 things').waitFor();
    expect(await page.getByText(/^Whole/).count()).toBe(0);
    await shut();
    const entries = await onDisk(page);
    expect(entries.map(({ counter, previous }) => [counter, previous])).toEqual([
      [1, null],
      [1, null],
    ]);
    expect(new Set(entries.map(({ device }) => device)).size).toBe(2);
  });

  it.each(['lose-last', 'change-letter'] as const)(
    'goes on in every window once it is decided in one, with what was typed there (%s)',
    async (how) => {
      const { page, address, shut } = await ownWorkshop();
      await shut();
      await harm(page, how);
      await page.goto(`${address}#/today`);
      await page.getByText('The record is not whole').waitFor();
      const second = await page.context().newPage();
      await second.goto(`${address}#/batches/new`);
      await second.getByText('The record is not whole').waitFor();
      await second.getByLabel('Mass of the feed', { exact: true }).fill('777');
      const card = await page.context().newPage();
      await card.goto(`${address}#/sos`);
      await title(card, 'Breathed brown fume').waitFor();
      await card.evaluate(() => Object.assign(window, { isSamePage: true }));
      await page.goto(`${address}#/record/not-whole/go-on`);
      await page.getByRole('button', { name: 'I have read what comes of it' }).click();
      await page.getByRole('button', { name: 'Go on as it is' }).click();
      await title(page, /day/).waitFor();
      await second.getByText('The record is not whole').waitFor({ state: 'detached' });
      expect(await second.getByLabel('Mass of the feed', { exact: true }).inputValue()).toBe('777');
      await fillBatch(second, '778');
      await title(second, /Batch B/).waitFor();
      // Nobody who reads it is disturbed.
      expect(await card.evaluate(() => 'isSamePage' in window)).toBe(true);
    },
  );

  it('says so where the note of the last entry is gone, and lays no new one', async () => {
    const { page, address, shut } = await ownWorkshop();
    await shut();
    await harm(page, 'lose-head');
    await page.goto(`${address}#/record/not-whole`);
    await page.getByText('Where this phone left off is not known').waitFor();
  });
});

describe('one changed letter', () => {
  it('is found by itself, without anybody asking, and keeps the record from being written to until somebody decides', async () => {
    const { page, address, goTo, shut } = await ownWorkshop();
    await shut();
    await harm(page, 'change-letter');
    const damaged = await onDisk(page);
    await page.goto(`${address}#/today`);
    await page.getByText('The record is not whole').click();
    await page.getByText('Entry 2 of this phone is damaged').waitFor();
    await page.getByText('Its own hash does not fit what it says.').waitFor();
    await goTo('batches/new');
    await fillBatch(page, '200');
    await page.getByText(/nothing is written into it/).waitFor();
    await goTo('record/not-whole/go-on');
    await page.getByRole('button', { name: 'I have read what comes of it' }).click();
    await page.getByRole('button', { name: 'Go on as it is' }).click();
    await title(page, /day/).waitFor();
    await goTo('batches/new');
    await page.getByRole('button', { name: 'Open this batch' }).click();
    await title(page, /Batch B/).waitFor();
    await goTo('record/not-whole');
    await page.getByText('Entry 2, damaged').waitFor();
    await shut();
    expect(await onDisk(page)).toEqual(expect.arrayContaining([...damaged]));
    expect(await onDisk(page)).toHaveLength(3);
  });
});

describe('the marker beside the record', () => {
  it('is laid anew where it was cleared, and the record is taken as it is', async () => {
    const { page, address, goTo, shut } = await ownWorkshop();
    await shut();
    await page.evaluate(() => localStorage.clear());
    await page.goto(address);
    await title(page, /day/).waitFor();
    expect(await page.evaluate(() => localStorage.getItem('leesbook:marker:real'))).toContain('"entries":2');
    await goTo('record/keeping');
    await page.getByText(/nobody can tell that there was a record/).waitFor();
    await expectAccessible(page);
  });

  it('is missed in words where the browser blocks its place, and the app goes on', async () => {
    const { page, goTo } = await ownWorkshop(async (phone) => {
      await phone.addInitScript(() => {
        Object.defineProperty(window, 'localStorage', {
          get: () => {
            throw new DOMException('blocked', 'SecurityError');
          },
        });
      });
    });
    await goTo('record');
    await page.getByText('The marker of the record is not kept').waitFor();
    await page.getByText(/^Whole, 2 entries/).waitFor();
    expectClean(page);
  });
});

it('a record of a newer version is not touched, and the page says what to do', async () => {
  const { page, address, shut } = await ownWorkshop();
  await shut();
  const before = await onDisk(page);
  await page.evaluate(
    () =>
      new Promise((done) => {
        const opening = indexedDB.open('leesbook-real', 999);
        opening.onsuccess = () => done(opening.result.close());
      }),
  );
  await page.goto(address);
  await page.getByText(/written by a newer Leesbook\. Nothing was changed\./).waitFor();
  await shut();
  expect(await onDisk(page)).toEqual(before);
});
