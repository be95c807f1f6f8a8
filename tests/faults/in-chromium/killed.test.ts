/** The browser is killed in the middle of writing, time and again, on one profile: what was acknowledged is there. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { openSite } from '../../browser/site';
import { Chance } from '../chance';
import { howMany, seed } from '../how-many';
import { type OwnBrowser, startBrowser } from './killed-browser';
import { pageOf } from './page-of';
import type { Seen } from './writer-page';

const times = howMany.kills;
/** A new profile after so many: a record that has grown large takes longer to look through. */
const timesEach = 50;

/** Kills by chance: after so many acknowledgements, and so many milliseconds into whatever is under way then. */
const mostBefore = 12;
const longestWaitMs = 30;

/** Hears the acknowledgements of a page as they come. @returns waits until there were so many of them */
async function hear(
  { page }: OwnBrowser,
  acknowledged: Set<string>,
): Promise<(count: number) => Promise<void>> {
  let heard = 0;
  let wake = (): void => {};
  await page.exposeFunction('acknowledged', (hashes: readonly string[]) => {
    for (const hash of hashes) acknowledged.add(hash);
    heard += 1;
    wake();
  });
  return (count) =>
    new Promise((resolve) => {
      wake = () => {
        if (heard >= count) resolve();
      };
      wake();
    });
}

/**
 * Every acknowledged entry is there, whole, and the app itself finds nothing wrong.
 * @returns what was on the disk though nobody had heard of it
 */
function expectKept(seen: Seen, acknowledged: ReadonlySet<string>, where: string): readonly string[] {
  expect(seen.trouble, where).toEqual([]);
  expect(seen.wrong, where).toEqual([]);
  const there = new Set(seen.hashes);
  expect(
    [...acknowledged].filter((hash) => !there.has(hash)),
    `lost ${where}`,
  ).toEqual([]);
  // One write, killed before it could be said; it may be two entries that belong together.
  const unheard = seen.hashes.filter((hash) => !acknowledged.has(hash));
  expect(unheard.length, where).toBeLessThanOrEqual(2);
  return unheard;
}

/** One profile, killed so many times, and looked at once more at the end. */
async function lives(
  address: string,
  kills: number,
  chance: Chance,
  from: number,
): Promise<[number, number]> {
  const profile = await mkdtemp(join(tmpdir(), 'leesbook-killed-'));
  onTestFinished(async ({ task }) => {
    // What Chromium left behind is the only witness.
    if (task.result?.state === 'fail') console.log(`the profile is kept: ${profile}`);
    else await rm(profile, { recursive: true, force: true, maxRetries: 3 });
  });
  const acknowledged = new Set<string>();
  let unheardOf = 0;
  for (let killed = 0; ; killed++) {
    const browser = await startBrowser(profile);
    try {
      const until = await hear(browser, acknowledged);
      await browser.page.goto(address);
      const seen = await browser.page.evaluate(() => window.writer.look());
      const unheard = expectKept(seen, acknowledged, `after ${killed} kills, seed ${from}`);
      if (unheard.length > 0) unheardOf += 1;
      for (const hash of unheard) acknowledged.add(hash);
      if (killed === kills) return [acknowledged.size, unheardOf];
      // It answers only where writing fails; else the browser is gone by then.
      const failing = browser.page.evaluate(() => window.writer.writeOn());
      failing.catch(() => undefined);
      await Promise.race([until(1 + chance.below(mostBefore)), failing]);
      // Half of the times the moment it is heard, when what was not on the disk yet would be lost.
      const wait = chance.oneIn(2) ? 0 : chance.below(longestWaitMs);
      if (wait > 0) await new Promise((resolve) => setTimeout(resolve, wait));
    } finally {
      await browser.kill(chance.oneIn(2) ? 'browser' : 'family');
    }
  }
}

test(`a browser killed ${times} times while it writes has lost nothing that it acknowledged, and torn nothing`, async () => {
  const { address } = await openSite(await pageOf('writer-page.ts'));
  const from = seed();
  const chance = new Chance(from);
  const all = { entries: 0, unheard: 0 };
  for (let left = times; left > 0; left -= timesEach) {
    const [entries, unheard] = await lives(address, Math.min(left, timesEach), chance, from);
    all.entries += entries;
    all.unheard += unheard;
  }
  console.log(
    `${times} kills, ${all.entries} entries, ${all.unheard} kills between a write and its acknowledgement`,
  );
  expect(all.entries).toBeGreaterThan(times);
}, 3_600_000);
