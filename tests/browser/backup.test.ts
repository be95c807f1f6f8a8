import 'fake-indexeddb/auto';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  anotherPhone,
  backedUp,
  marked,
  opened,
  person,
  says,
  workshop,
} from '../unit/storage/backup/invented-record';
import { madeBackup } from './made-backup';
import { expectAccessible, expectClean, expectNoWider, openPhone } from './phone';
import { openSite, type Site } from './site';

/** Of an invented workshop: who works there, and a container with a photo. */
let begun = '';

beforeAll(async () => {
  const record = await opened();
  await says(record, workshop, person('Maren'), person('Tobias “T” Ødegård ☂'), await marked(record));
  begun = join(await mkdtemp(join(tmpdir(), 'leesbook-backup-')), 'begun.zip');
  await writeFile(begun, new Uint8Array(await (await backedUp()).file.arrayBuffer()));
});
afterAll(async () => {
  await anotherPhone();
  await rm(dirname(begun), { recursive: true });
});

const passphrase = 'weir yard six';

/** A new phone with nothing on it, that saves files by a link as most phones do. */
async function newPhone(site: Site): Promise<Page> {
  const page = await openPhone({ width: 360, height: 800 });
  await page.addInitScript(() => Reflect.deleteProperty(globalThis, 'showSaveFilePicker'));
  await page.goto(site.address);
  await page.getByRole('button', { name: /invented workshop/ }).waitFor();
  return page;
}

const goTo = async (site: Site, page: Page, place: string): Promise<void> => {
  await page.goto(`${site.address}#/${place}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
};

/** Every entry as it lies in the store, and every photo as hexadecimal. */
const onDisk = (page: Page) =>
  page.evaluate(async () => {
    const answer = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const database = await answer(indexedDB.open('leesbook-real'));
    const all = (store: string) => answer(database.transaction(store).objectStore(store).getAll());
    const entries: Record<string, unknown>[] = await all('entries');
    const photos: { hash: string; bytes: Uint8Array }[] = await all('photos');
    const head = await answer(database.transaction('meta').objectStore('meta').get('head'));
    database.close();
    const hex = (bytes: Uint8Array) => [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
    return {
      entries,
      photos: photos.map(({ hash, bytes }) => ({ hash, bytes: hex(bytes) })),
      device: String(head?.device),
    };
  });

const looksAt = async (page: Page, file: string): Promise<void> =>
  page.locator('input[type=file]').setInputFiles(file);

/** Chooses a file on the page for it, and brings it in. */
async function bringIn(site: Site, page: Page, file: string, locked = false): Promise<void> {
  await goTo(site, page, 'record/restore');
  await looksAt(page, file);
  if (locked) {
    await page.getByLabel('Passphrase', { exact: true }).fill(passphrase);
    await page.getByRole('button', { name: 'Open it' }).click();
  }
  await page.getByRole('heading', { name: 'The backup is whole' }).waitFor({ timeout: 120_000 });
  await page.getByRole('button', { name: /Restore it|Join it/ }).click();
  await page.getByRole('heading', { name: 'It is brought in' }).waitFor({ timeout: 120_000 });
  // The page begins anew.
  const loaded = page.waitForEvent('load');
  await page.getByRole('button', { name: 'Open the record' }).click();
  await loaded;
  await page.getByRole('heading', { level: 1 }).waitFor();
}

const backUp = (site: Site, page: Page, locked = false): Promise<string> =>
  madeBackup(page, (place) => goTo(site, page, place), locked ? passphrase : null);

async function addPerson(site: Site, page: Page, name: string): Promise<void> {
  await goTo(site, page, 'record/people/new');
  await page.getByLabel('Name').fill(name);
  await page.getByRole('button', { name: /Keep/ }).click();
  await page.getByText(name).first().waitFor();
}

/** A phone on which that workshop was restored. */
async function workshopPhone(site: Site): Promise<Page> {
  const page = await newPhone(site);
  await bringIn(site, page, begun);
  return page;
}

describe('a backup', () => {
  test.each([
    ['plain', false],
    ['locked', true],
  ] as const)(
    'restored on a new phone is the same, entry by entry and photo by photo: %s',
    async (_, locked) => {
      const site = await openSite();
      const phone = await workshopPhone(site);
      await goTo(site, phone, 'record');
      await phone.getByText('All of it is in a backup').waitFor();
      await addPerson(site, phone, 'Sunniva');
      const before = await onDisk(phone);
      expect(before.entries).toHaveLength(5);
      expect(before.photos).toHaveLength(1);
      const file = await backUp(site, phone, locked);
      await goTo(site, phone, 'record');
      await phone.getByText('All of it is in a backup').waitFor();

      const other = await newPhone(site);
      await bringIn(site, other, file, locked);
      const after = await onDisk(other);
      expect(after.entries).toEqual(before.entries);
      expect(after.photos).toEqual(before.photos);
      expect(after.device).not.toBe(before.device);
      expectClean(phone);
      expectClean(other);
    },
  );

  test('of two phones, joined both ways, leaves the same on both', async () => {
    const site = await openSite();
    const [left, right] = [await workshopPhone(site), await workshopPhone(site)];
    await addPerson(site, left, 'Sunniva');
    await addPerson(site, right, 'Halvard');
    const [ofLeft, ofRight] = [await backUp(site, left), await backUp(site, right)];
    await bringIn(site, right, ofLeft);
    await bringIn(site, left, ofRight);
    const [one, two] = [await onDisk(left), await onDisk(right)];
    expect(one.entries).toHaveLength(6);
    expect(one.entries).toEqual(two.entries);
    await goTo(site, left, 'record/people');
    for (const name of ['Sunniva', 'Halvard', 'Maren']) await left.getByText(name).first().waitFor();
    await goTo(site, left, 'record/restore');
    await looksAt(left, ofRight);
    await left.getByText('Nothing in it is new').waitFor({ timeout: 120_000 });
    expectClean(left);
    expectClean(right);
  });

  test('that is damaged is refused, says what to do, and changes nothing; its pages can be used by anybody', async () => {
    const site = await openSite();
    const phone = await workshopPhone(site);
    const before = await onDisk(phone);
    await goTo(site, phone, 'record/backup');
    await phone.getByRole('radio', { name: /Only who knows/ }).check();
    await expectAccessible(phone);
    await expectNoWider(phone);
    const file = await backUp(site, phone);
    const bytes = await readFile(file);
    const at = bytes.length >> 1;
    bytes[at] = (bytes[at] ?? 0) ^ 1;
    await writeFile(`${file}.damaged`, bytes);
    await goTo(site, phone, 'record/restore');
    await expectAccessible(phone);
    await looksAt(phone, `${file}.damaged`);
    await phone.getByText(/Copy it again from where it was kept/).waitFor();
    await phone.getByText('Not taken. Nothing here was changed.').waitFor();
    await expectAccessible(phone);
    expect(await onDisk(phone)).toEqual(before);
    await looksAt(phone, file);
    await phone.getByRole('heading', { name: 'The backup is whole' }).waitFor({ timeout: 120_000 });
    await expectAccessible(phone);
    await expectNoWider(phone);
  });
});

test('a backup that lacks an entry says so before it is restored; after it the record is written to, and is never called whole', async () => {
  const site = await openSite();
  const phone = await newPhone(site);
  await goTo(site, phone, 'record/restore');
  await looksAt(phone, fileURLToPath(new URL('../unit/storage/kept/backup-2.zip', import.meta.url)));
  await phone.getByText('The record would go on without 1 entry').waitFor({ timeout: 120_000 });
  await expectAccessible(phone);
  await expectNoWider(phone);
  await phone.getByRole('checkbox', { name: /go on without it/ }).check();
  await phone.getByRole('button', { name: 'Restore it' }).click();
  const loaded = phone.waitForEvent('load');
  await phone.getByRole('button', { name: 'Open the record' }).click();
  await loaded;
  await goTo(site, phone, 'record');
  // Once everything was looked at: by itself, a while after the start.
  const row = phone.getByRole('link', { name: /Goes on without 4 things.*each is as it was written/s });
  await row.waitFor();
  expect(await phone.getByText(/^Whole|not whole/).count()).toBe(0);
  await addPerson(site, phone, 'Sunniva');
  expect((await onDisk(phone)).entries).toHaveLength(4);
  await goTo(site, phone, 'record/not-whole');
  await phone.getByText('1 entry that is missing').waitFor();
  expectClean(phone);
});

/** Another window of the same phone. */
async function anotherWindow(site: Site, phone: Page, place: string): Promise<Page> {
  const page = await phone.context().newPage();
  await goTo(site, page, place);
  return page;
}

/** One letter of the first entry, as a fault of the disk would change it. */
const changeLetter = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise<void>((done, fail) => {
        const opening = indexedDB.open('leesbook-real');
        opening.onerror = () => fail(opening.error);
        opening.onsuccess = () => {
          const transaction = opening.result.transaction('entries', 'readwrite');
          const entries = transaction.objectStore('entries');
          const first = entries.index('in-order').get(IDBKeyRange.lowerBound([]));
          first.onsuccess = () => entries.put({ ...first.result, zone: `${first.result.zone}s` });
          transaction.oncomplete = () => {
            opening.result.close();
            done();
          };
        };
      }),
  );

describe('another window', () => {
  test('has what was joined at once, without being loaded anew', async () => {
    const site = await openSite();
    const [phone, other] = [await workshopPhone(site), await workshopPhone(site)];
    await addPerson(site, other, 'Halvard');
    const file = await backUp(site, other);
    const beside = await anotherWindow(site, phone, 'record/people');
    await bringIn(site, phone, file);
    await beside.getByText('Halvard').first().waitFor();
    expect(await beside.getByText('Load it anew').count()).toBe(0);
    await addPerson(site, beside, 'Sunniva');
    expectClean(phone);
    expectClean(beside);
  });

  test('is told when something was mended that it knows otherwise, keeps what was typed, and goes on by one tap', async () => {
    const site = await openSite();
    const phone = await workshopPhone(site);
    await changeLetter(phone);
    const beside = await anotherWindow(site, phone, 'record/people/new');
    await beside.getByLabel('Name').fill('Sunniva');
    await bringIn(site, phone, begun);
    await beside.getByText('The record was changed in another window').waitFor();
    await beside.getByRole('button', { name: /^Keep/ }).click();
    await beside.getByText(/Nothing was written, and what you typed stays here/).waitFor();
    await expectAccessible(beside);
    await expectNoWider(beside);
    const loaded = beside.waitForEvent('load');
    await beside.getByRole('button', { name: 'Load it anew' }).click();
    await loaded;
    expect(await beside.getByLabel('Name').inputValue()).toBe('Sunniva');
    await beside.getByRole('button', { name: /^Keep/ }).click();
    await beside.getByText('Sunniva').first().waitFor();
    expect(await beside.getByText(/changed in another window|not whole/).count()).toBe(0);
    expect((await onDisk(beside)).entries).toHaveLength(5);
    expectClean(beside);
  });
});
