// How the app does with a record of a month, a year and ten years, on a slowed phone. Tells, asserts nothing.
import { rmSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromiumPath } from '../../.ci/ready.mjs';
import { slowdown } from './in-chromium.mjs';
import { served } from './served.mjs';
import {
  found as foundIn,
  goTo,
  held,
  lay,
  logged,
  phone,
  scrolled,
  slowPage,
  started,
  stored,
} from './size-in-chromium.mjs';

/** @typedef {import('../../src/ledger/entries/entry').Entry} Entry */

const runs = 7;
/** What somebody looks for: a container, a batch, a metal, a month. */
const asked = ['c-1', 'c-23', 'b-12', 'silver', 'november'];
/** A measure is repeated for so long at the most, ms. */
const patience = 90_000;

/** @param {readonly number[]} values */
function median(values) {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  const [low, high] = [sorted[sorted.length - 1 - middle], sorted[middle]];
  return ((low ?? Number.NaN) + (high ?? Number.NaN)) / 2;
}

/** @template T @param {(nth: number) => Promise<T>} once @returns {Promise<T[]>} */
async function repeated(once) {
  const began = performance.now();
  /** @type {T[]} */
  const all = [];
  while (all.length < runs && (all.length === 0 || performance.now() - began < patience))
    all.push(await once(all.length));
  return all;
}

/** Vessels that stand here and hold liquid that was only ever poured in, with how much. @param {readonly Entry[]} entries */
function standing(entries) {
  /** @type {Map<string, number>} */
  const litres = new Map();
  for (const { body } of entries) {
    if (body.kind === 'stream-placed' && body.amount.unit === 'L')
      litres.set(body.containerId, (litres.get(body.containerId) ?? 0) + Number(body.amount.value));
    if (body.kind === 'contents-moved') {
      litres.delete(body.fromContainerId);
      if (body.toContainerId !== null) litres.delete(body.toContainerId);
    }
    if (body.kind === 'handed-over')
      for (const { containerId } of body.containers) litres.delete(containerId);
  }
  return [...litres].map(([id, all]) => ({ id, litres: all.toFixed(2) }));
}

/** @typedef {Record<string, { value: number, unit: string }>} Measured */

/**
 * @param {string} profile @param {string} address @param {readonly Entry[]} entries
 * @param {{ photo: (n: number) => Uint8Array, hashes: readonly string[] }} pictures
 */
async function measured(profile, address, entries, { photo, hashes }) {
  const device = await phone(profile, address);
  /** @type {Measured} */
  const found = {};
  /** @param {string} name @param {number} value @param {string} unit */
  const note = (name, value, unit) => {
    found[name] = { value, unit };
  };
  try {
    await lay(device, entries, photo, hashes);
    const first = await slowPage(device);
    note('first start: Today drawn', (await started(device, first.page, first.session)).today, 'ms');
    // Whatever is put away for the next start is put away while the page rests.
    await new Promise((go) => setTimeout(go, 8000));
    await first.page.close();
    const starts = await repeated(async () => {
      const { page, session } = await slowPage(device);
      const one = await started(device, page, session);
      await page.close();
      return one;
    });
    note('start: Today drawn', median(starts.map(({ today }) => today)), 'ms');
    note('start: a tap answered', median(starts.map(({ answered }) => answered)), 'ms');
    note('start: processor time', median(starts.map((one) => one.worked)), 'ms');
    const toldOf = await repeated(async () => {
      const { page, session } = await slowPage(device, false);
      const { told } = await started(device, page, session);
      await page.close();
      return told;
    });
    note('start: all told', median(toldOf), 'ms');

    const { page, session } = await slowPage(device);
    await started(device, page, session);
    note('memory after the start', await held(session), 'MB');
    const cans = standing(entries);
    const logs = await repeated((nth) =>
      logged(page, session, cans[nth % cans.length] ?? { id: '', litres: '1' }),
    );
    note('logging: shown', median(logs.map(({ shown }) => shown)), 'ms');
    note('logging: kept', median(logs.map(({ kept }) => kept)), 'ms');
    note('logging: until the browser tells of the tap', median(logs.map(({ heard }) => heard)), 'ms');
    note('logging: kept from then on', median(logs.map(({ kept, heard }) => kept - heard)), 'ms');
    note('logging: before the store', median(logs.map(({ begun }) => begun)), 'ms');
    note('logging: in the store', median(logs.map(({ kept, begun }) => kept - begun)), 'ms');
    note('logging: processor time', median(logs.map((one) => one.worked)), 'ms');

    for (const [name, path, has] of /** @type {const} */ ([
      ['containers', 'containers', 'main a[href^="#/containers/0"]'],
      ['history', 'record/history', 'main a[href^="#/record/entry"]'],
    ])) {
      await goTo(page, path, has);
      const all = await repeated(() => scrolled(page, session));
      /** @param {import('./size-in-chromium.mjs').Scrolled} one */
      const share = ({ frames, dropped }) => (100 * dropped) / (frames + dropped);
      note(`scrolling ${name}: frames dropped`, median(all.map(share)), '%');
      note(`scrolling ${name}: longest frame`, median(all.map(({ longest }) => longest)), 'ms');
    }
    const { index, keys } = await foundIn(page, asked);
    note('search: first answer after it is opened', index, 'ms');
    note('search: a key', median(keys), 'ms');
    note('search: the slowest key', Math.max(...keys), 'ms');
    note('memory after use', await held(session), 'MB');
    note('store', await stored(page), 'MB');
    await page.close();
    return found;
  } finally {
    await device.close();
  }
}

/** @param {number} value */
const short = (value) => (Number.isNaN(value) ? '?' : value >= 100 ? value.toFixed(0) : value.toPrecision(3));

/** @param {readonly number[]} sizes @param {readonly Measured[]} all */
function table(sizes, all) {
  const names = Object.keys(all[0] ?? {});
  const widest = Math.max(...names.map((name) => name.length)) + 2;
  const head = sizes.map((size) => size.toLocaleString('en').padStart(10)).join('');
  console.log(`\n${'entries'.padEnd(widest)}${head}   growth`);
  for (const name of names) {
    const values = all.map((one) => one[name]?.value ?? Number.NaN);
    const growth = values.slice(1).map((value, i) => short(value / (values[i] ?? Number.NaN)));
    const cells = values.map((value) => short(value).padStart(10)).join('');
    console.log(`${name.padEnd(widest)}${cells}   ${growth.join(', ')} (${all[0]?.[name]?.unit})`);
  }
}

/** @param {import('./papers.mjs').Tell} tell @param {import('./papers.mjs').Bundled} bundled @param {string} app folder to build the app into @param {readonly number[]} sizes in entries */
export async function tellSize(tell, bundled, app, sizes) {
  if (chromiumPath() === undefined) return;
  /** @type {typeof import('../support/seeded-workshop')} */
  const { photo, seededWorkshop } = await import(
    pathToFileURL(await bundled(new URL('../support/seeded-workshop.ts', import.meta.url))).href
  );
  const { address, stop } = await served(app);
  const yesterday = new Date(Date.now() - 24 * 3_600_000).toISOString().slice(0, 10);
  /** @type {Measured[]} */
  const all = [];
  try {
    for (const size of sizes) {
      const entries = [...seededWorkshop({ entries: size, until: yesterday })];
      const hashes = [...JSON.stringify(entries).matchAll(/"hash":"([0-9a-f]{64})","height"/g)].map(
        ([, hash]) => hash ?? '',
      );
      const profile = join(app, `../profile-${size}`);
      const found = await measured(profile, address, entries, { photo, hashes: [...new Set(hashes)] });
      rmSync(profile, { recursive: true });
      all.push(found);
      const [load = Number.NaN] = loadavg();
      found['busy with others, tasks a processor'] = { value: load / cpus().length, unit: '' };
      const about = `${size} entries, page slowed ${slowdown} times`;
      for (const [name, { value, unit }] of Object.entries(found)) tell(name, value, unit, about);
    }
    for (const name of Object.keys(all[0] ?? {}))
      for (const [i, size] of sizes.slice(1).entries())
        tell(
          `growth of ${name}`,
          (all[i + 1]?.[name]?.value ?? Number.NaN) / (all[i]?.[name]?.value ?? Number.NaN),
          '',
          `${size} entries against ${sizes[i]}`,
        );
    table(sizes, all);
  } finally {
    await stop();
  }
}
