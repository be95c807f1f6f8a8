/** A photo of the phone becomes one of the record, and is there with no network. */
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it, onTestFinished } from 'vitest';
import { cameraPicture } from './camera-picture';
import { openWorkshop } from './invented-workshop';
import { expectAccessible, expectClean, openPhone, untilKept } from './phone';
import { openSite } from './site';

/** A new container of the invented workshop, before it is kept. */
async function newContainer(dark = false): Promise<Page> {
  const site = await openSite();
  const page = await openPhone({ width: 360, height: 800, dark });
  await page.goto(site.address);
  await untilKept(page);
  await openWorkshop(page);
  await page.goto(`${site.address}#/containers/new`);
  await page.getByRole('group', { name: 'Photos' }).waitFor();
  return page;
}
const capacity = (page: Page) => page.getByLabel('Holds when full', { exact: true });

/** A file on the disk, so that the name says what it is and a large one is not sent as a message. */
async function file(name: string, content: Buffer): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'leesbook-picture-'));
  onTestFinished(() => rm(folder, { recursive: true }));
  await writeFile(join(folder, name), content);
  return join(folder, name);
}

const choose = async (page: Page, name: string, content: Buffer): Promise<void> =>
  page.getByLabel('Choose pictures').setInputFiles(await file(name, content));
const tile = (page: Page, place = 1) => page.getByRole('link', { name: `Open photo ${place}`, exact: true });

/** The picture really has come out: its own size in pixels, and the colours of its corners. */
const seen = (page: Page) =>
  page.locator('main img').evaluate(async (image: HTMLImageElement) => {
    await image.decode();
    const { naturalWidth: width, naturalHeight: height } = image;
    const canvas = Object.assign(document.createElement('canvas'), { width, height });
    const pen = canvas.getContext('2d');
    pen?.drawImage(image, 0, 0);
    const colour = (x: number, y: number): string => {
      const [red = 0, , blue = 0] = pen?.getImageData(x, y, 1, 1).data ?? [];
      return red > blue ? 'red' : 'blue';
    };
    return { width, height, upperLeft: colour(9, 9), upperRight: colour(width - 9, 9) };
  });

/** The bytes of every photo kept, one character each. */
const kept = (page: Page): Promise<readonly string[]> =>
  page.evaluate(async () => {
    const opening = indexedDB.open('leesbook-demo');
    await new Promise((resolve) => opening.addEventListener('success', resolve));
    const asking = opening.result.transaction('photos').objectStore('photos').getAll();
    await new Promise((resolve) => asking.addEventListener('success', resolve));
    opening.result.close();
    return (asking.result as { bytes: Uint8Array }[]).map(({ bytes }) =>
      Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''),
    );
  });

describe('a photo', () => {
  it('is chosen, shown, there after a reload with no network, and stands with its entry', async () => {
    const page = await newContainer();
    await choose(page, 'IMG_0001.jpg', await cameraPicture(page, 4000, 3000));
    await tile(page).waitFor();
    await expectAccessible(page);
    await page.context().setOffline(true);
    await page.reload();
    await tile(page).waitFor();
    // Turned upright and made smaller.
    const upright = { width: 1200, height: 1600, upperLeft: 'red', upperRight: 'blue' };
    expect(await seen(page)).toEqual(upright);
    await page.getByRole('button', { name: 'Open this container' }).click();
    await page.getByRole('heading', { level: 1, name: /C.\d+/ }).waitFor();

    await page.goto(`${page.url().split('#')[0]}#/record/history`);
    await page.locator('main a[href*="/record/entry/"]').first().click();
    await tile(page).click();
    await page.getByRole('heading', { level: 1, name: 'Photo' }).waitFor();
    expect(await seen(page)).toEqual(upright);
    await expectAccessible(page);
    await page.getByRole('button', { name: 'Full size' }).click();
    await expectAccessible(page);
    await page.getByRole('button', { name: 'Back' }).click();
    await tile(page).waitFor();
    expectClean(page);
  });

  it('holds nothing but the picture: not where it was taken', async () => {
    const page = await newContainer();
    for (const [width, height] of [
      [2000, 1000],
      [400, 300],
    ] as const)
      await choose(page, 'IMG.jpg', await cameraPicture(page, width, height));
    await tile(page, 2).waitFor();
    const photos = await kept(page);
    expect(photos).toHaveLength(2);
    for (const text of photos) {
      expect(text).toMatch(/^\xff\xd8\xff/);
      expect(text).not.toContain('Exif');
    }
    // Given back to the app, what it made is kept as it is: it is the same one photo, and the next is the third.
    const [first = ''] = photos;
    await choose(page, 'again.jpg', Buffer.from(first, 'latin1'));
    await choose(page, 'IMG.jpg', await cameraPicture(page, 300, 300));
    await tile(page, 3).waitFor();
    expect(await kept(page)).toHaveLength(3);
    expectClean(page);
  });

  it('that is damaged on the phone is said to be damaged, and not shown', async () => {
    const page = await newContainer(true);
    await choose(page, 'IMG.jpg', await cameraPicture(page, 400, 300));
    await tile(page).waitFor();
    await page.evaluate(async () => {
      const opening = indexedDB.open('leesbook-demo');
      await new Promise((resolve) => opening.addEventListener('success', resolve));
      const writing = opening.result.transaction('photos', 'readwrite');
      const asking = writing.objectStore('photos').getAll();
      asking.addEventListener('success', () => {
        const [photo] = asking.result as { bytes: Uint8Array }[];
        if (!photo) throw new Error('no photo');
        photo.bytes[300] = (photo.bytes[300] ?? 0) ^ 1;
        writing.objectStore('photos').put(photo);
      });
      await new Promise((resolve) => writing.addEventListener('complete', resolve));
      opening.result.close();
    });
    await page.reload();
    await page.getByRole('link', { name: /Photo 1 of 1.*damaged/ }).click();
    await page.getByRole('alert').filter({ hasText: 'damaged' }).waitFor();
    expect(await page.locator('main img').count()).toBe(0);
    await expectAccessible(page);
    expectClean(page);
  });
});

it.each([
  ['a text', 'notes.jpg', Buffer.from('no picture'), /not a picture/],
  ['a picture cut off', 'IMG.jpg', Buffer.from('ffd8ffe000104a46494600', 'hex'), /not a picture/],
  [
    'a kind that this browser cannot open',
    'IMG.heic',
    Buffer.concat([Buffer.from('000000186674797068656963', 'hex'), Buffer.alloc(99)]),
    /format this browser cannot open: take it here/,
  ],
  ['41 MB', 'IMG.jpg', Buffer.alloc(41_000_000), /larger than 40\sMB/],
])('%s is told with what to do, and what was written stays', async (_, name, content, words) => {
  const page = await newContainer();
  await capacity(page).fill('2.50');
  await choose(page, name, content);
  await page.getByRole('alert').filter({ hasText: words }).waitFor();
  expect(await capacity(page).inputValue()).toBe('2.50');
  expect(await kept(page)).toEqual([]);
  expectClean(page);
});
