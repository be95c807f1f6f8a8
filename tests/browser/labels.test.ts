/** A label is made on the phone, printed, and read again: by another decoder from its file, and by the app's own camera page. */
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, onTestFinished, test } from 'vitest';
import { drawPage, onThermalPaper } from '../support/draw-pdf';
import { writeFilm } from '../support/film';
import { readPdf } from '../support/read-pdf';
import { readQr } from '../support/read-qr';
import { openWorkshop } from './invented-workshop';
import { expectAccessible, expectClean, openPhone } from './phone';
import { openSite } from './site';

const title = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });

async function openDemo(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await openWorkshop(page);
}

async function openFirstContainer(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Containers', exact: true }).click();
  await title(page, 'Containers').waitFor();
  await page.getByRole('link', { name: /^C.02/ }).click();
  await title(page, /Container C.02/).waitFor();
}

test('a label made on the phone shows what it prints, has its real size, and leads back to its container', async () => {
  const site = await openSite();
  const page = await openPhone({ width: 360, height: 800 });
  await openDemo(page, site.address);
  await openFirstContainer(page);
  const container = page.url();
  await page.getByRole('link', { name: 'More' }).click();
  await page.getByRole('link', { name: /Make its label/ }).click();
  await title(page, /Label for C.02/).waitFor();
  await page.getByRole('radio', { name: /^Small/ }).check();
  const picture = page.getByRole('img', { name: /^The label says: .*C.02/ });
  await picture.waitFor();
  const says = (await picture.getAttribute('aria-label')) ?? '';
  await expectAccessible(page);
  await page.getByRole('button', { name: /Make the label/ }).click();
  await title(page, 'The label is made').waitFor();
  await expectAccessible(page);
  const saving = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Save it' }).click();
  const file = await (await saving).path();
  const bytes = new Uint8Array(await readFile(file));
  const { pages } = await readPdf(bytes);
  expect(pages).toHaveLength(1);
  // 105 × 74 mm.
  expect([pages[0]?.width, pages[0]?.height].map((pt) => Math.round((Number(pt) * 25.4) / 72))).toEqual([
    105, 74,
  ]);
  for (const word of (pages[0]?.text ?? '').match(/\p{L}{4,}/gu) ?? [])
    if (!/invented|demo/.test(word)) expect(says, 'the picture says what the file says').toContain(word);
  const link = readQr(onThermalPaper(await drawPage(bytes, 203)));
  expect(link).toBe(container);
  await page.goto('about:blank');
  await page.goto(link);
  await title(page, /Container C.02/).waitFor();
  expectClean(page);
});

test('the camera opens the container whose label it sees, says so of a label from elsewhere, and is let go', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'leesbook-film-'));
  onTestFinished(() => rm(folder, { recursive: true }));
  const camera = join(folder, 'label.y4m');
  await writeFilm(camera, 'https://elsewhere.example/#/containers/019a2b3c-4d5e-7f60-8a1b-2c3d4e5f6071');
  const site = await openSite();
  const page = await openPhone({ width: 360, height: 800, camera });
  await page.addInitScript(() => {
    const opened: MediaStreamTrack[] = [];
    Object.assign(window, { opened });
    const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
    navigator.mediaDevices.getUserMedia = async (wanted) => {
      const stream = await ask(wanted);
      opened.push(...stream.getTracks());
      return stream;
    };
  });
  const states = () =>
    page.evaluate(() =>
      (window as unknown as { opened: MediaStreamTrack[] }).opened.map(({ readyState }) => readyState),
    );
  await openDemo(page, site.address);
  await openFirstContainer(page);
  const container = page.url();
  await page.getByRole('link', { name: 'Containers', exact: true }).click();
  await page.getByRole('link', { name: 'Scan', exact: true }).click();
  await title(page, 'Scan a label').waitFor();
  await expectAccessible(page);
  expect(await states(), 'the camera is not asked for before a tap').toEqual([]);
  await page.getByRole('button', { name: /Look through the camera/ }).click();
  await page.getByText(/another workshop/).waitFor();
  await expectAccessible(page);
  expect(await states()).toEqual(['live']);
  await page.getByRole('button', { name: 'Stop the camera' }).click();
  await expect.poll(states).toEqual(['ended']);

  await writeFilm(
    camera,
    container.replace(site.address, 'https://another-host.example/book/').toUpperCase(),
  );
  await page.getByRole('button', { name: /Look through the camera/ }).click();
  await title(page, /Container C.02/).waitFor();
  expect(page.url()).toBe(container);
  await expect.poll(states).toEqual(['ended', 'ended']);
  expectClean(page);
});

test('a code that is typed opens its container, with a hyphen or without', async () => {
  const site = await openSite();
  const page = await openPhone({ width: 360, height: 800, dark: true });
  await openDemo(page, site.address);
  for (const typed of ['c2', 'C\u201302', ' c-02 ']) {
    await page.goto(`${site.address}#/scan`);
    await page.getByLabel('Code on the label').fill(typed);
    await page.getByLabel('Code on the label').press('Enter');
    await title(page, /Container C.02/).waitFor();
  }
  await page.goto(`${site.address}#/scan`);
  await page.getByLabel('Code on the label').fill('q9');
  await page.getByRole('button', { name: 'Open it' }).click();
  await page.getByText(/No container here has the code “q9”/).waitFor();
  await expectAccessible(page);
  expectClean(page);
});
