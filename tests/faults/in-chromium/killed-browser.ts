/** A Chromium of our own, with a profile that outlives it, that is ended as a dying phone ends it. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { type Browser, chromium, type Page } from 'playwright-core';
import { chromiumPath } from '../../../.ci/ready.mjs';

const flags = [
  '--headless=new',
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--remote-debugging-port=0',
];

export type OwnBrowser = {
  readonly page: Page;
  /**
   * SIGKILL: nothing is flushed, closed or said.
   * @param whom the browser alone, or with all the processes that it has started
   */
  readonly kill: (whom: 'browser' | 'family') => Promise<void>;
};

/** The address at which it is told what to do, as it says itself. */
async function addressOf(process: ChildProcess): Promise<string> {
  if (!process.stderr) throw new Error('nothing can be heard of it');
  for await (const line of createInterface(process.stderr)) {
    const said = /^DevTools listening on (ws:\S+)/.exec(line);
    if (said?.[1]) return said[1];
  }
  throw new Error('Chromium ended before it said where it listens');
}

const isAlive = (group: number): boolean => {
  try {
    process.kill(-group, 0);
    return true;
  } catch {
    return false;
  }
};

/** @param profile folder of the profile: what was stored there before is there again */
export async function startBrowser(profile: string): Promise<OwnBrowser> {
  const path = chromiumPath();
  if (path === undefined) throw new Error('no Chromium: name it in CHROMIUM');
  // Detached, it leads a group of processes of its own, by whose number all that it starts can be ended, and nothing else.
  const own = spawn(path, [...flags, `--user-data-dir=${profile}`, 'about:blank'], {
    detached: true,
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  const ended = once(own, 'exit');
  const { pid } = own;
  if (pid === undefined) throw new Error('Chromium did not start');
  const browser: Browser = await chromium.connectOverCDP(await addressOf(own));
  own.stderr?.resume();
  const context = browser.contexts()[0] ?? (await browser.newContext());
  const page = context.pages()[0] ?? (await context.newPage());
  const kill = async (whom: 'browser' | 'family'): Promise<void> => {
    process.kill(whom === 'family' ? -pid : pid, 'SIGKILL');
    await ended;
    // What it leaves behind ends by itself once it notices, and holds the profile until then.
    while (isAlive(pid)) await new Promise((resolve) => setTimeout(resolve, 5));
    await browser.close().catch(() => undefined);
  };
  return { page, kill };
}
