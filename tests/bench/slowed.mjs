// A phone of some years: pages and workers of a Chromium slowed alike. Its own throttling slows pages only, so the whole
// process is stopped for most of each slice of time.
import { readFileSync, writeFileSync } from 'node:fs';

/** How long it runs in each slice, ms: short beside what a person notices. */
const runs = 5;

/**
 * Slows processes until the function that it gives is called.
 * @param {readonly number[]} processes
 * @param {number} times
 */
export function slowed(processes, times) {
  let over = false;
  /** @param {NodeJS.Signals} signal */
  const send = (signal) => {
    for (const id of processes)
      try {
        process.kill(id, signal);
      } catch {
        // It has ended by itself.
      }
  };
  /** @param {number} ms */
  const wait = (ms) => new Promise((go) => setTimeout(go, ms));
  const slicing = (async () => {
    // What a slice took too long, the next makes up for: timers of a busy machine are late.
    let [ran, stood] = [0, 0];
    while (!over) {
      const began = performance.now();
      await wait(runs);
      const stopped = performance.now();
      ran += stopped - began;
      send('SIGSTOP');
      await wait(Math.max(1, ran * (times - 1) - stood));
      send('SIGCONT');
      stood += performance.now() - stopped;
    }
  })();
  return async () => {
    over = true;
    await slicing;
  };
}

/**
 * Ids of the processes that run pages and their workers.
 * @param {import('playwright-core').Browser} browser
 * @returns {Promise<number[]>}
 */
export async function pageProcesses(browser) {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  await session.detach();
  return processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => id);
}

/** The most memory that a process had since it began or `forgetPeak` was called, in MB. @param {number} id */
export function peakOf(id) {
  const kilobytes = /^VmHWM:\s+(\d+) kB/m.exec(readFileSync(`/proc/${id}/status`, 'utf8'))?.[1];
  return Number(kilobytes) / 1000;
}

/** Linux keeps the peak until this is written (proc(5), clear_refs). @param {number} id */
export const forgetPeak = (id) => writeFileSync(`/proc/${id}/clear_refs`, '5');

/** Seconds that a process has had of a processor (proc(5), stat: utime and stime, a hundredth each). @param {number} id */
export function processorOf(id) {
  const fields = readFileSync(`/proc/${id}/stat`, 'utf8')
    .replace(/^.*\) /, '')
    .split(' ');
  return (Number(fields[11]) + Number(fields[12])) / 100;
}
