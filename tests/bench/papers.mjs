// How long papers take: the app as it is built, in Chromium, with the record of an invented workshop.
import { pathToFileURL } from 'node:url';
import { chromiumPath } from '../../.ci/ready.mjs';
import { slowdown } from './in-chromium.mjs';
import { setCancelled, setMade } from './papers-in-chromium.mjs';
import { served } from './served.mjs';

/** @typedef {(source: URL) => Promise<string>} Bundled gives the file of the bundle */
/** @typedef {(name: string, value: number, unit: string, note?: string) => void} Tell */

/** @param {Tell} tell @param {Bundled} bundled @param {string} app folder to build the app into */
export async function tellPapers(tell, bundled, app) {
  if (chromiumPath() === undefined) return;
  /** @type {typeof import('./many-containers')} */
  const { manyContainers } = await import(
    pathToFileURL(await bundled(new URL('./many-containers.ts', import.meta.url))).href
  );
  const [few, many] = [await manyContainers(10), await manyContainers(40)];
  const { address, stop } = await served(app);
  try {
    const set = await setMade(address, many, {});
    const about = `with its working and labels, ${many.length} entries, at the pace of this machine`;
    tell('set of 40 containers', set.seconds, 's', about);
    for (const [stage, at] of Object.entries(set.stages)) tell(`  ${stage}`, at / 1000, 's after the tap');
    tell('a container', set.seconds / 40, 's');
    tell('processor time', set.processor, 's', 'of page, worker and their helpers');
    tell('file', set.bytes / 1e6, 'MB');
    tell('pages', set.pages, '');
    tell('peak memory', set.peak, 'MB', 'of page and worker, above what the page had before');
    tell('moves of the bar', set.moves, '');
    tell('longest stand of the bar', set.longestStand / 1000, 's');
    tell('longest task on the page', set.longestTask, 'ms', 'from the tap until the file is offered');

    const pageSlow = { page: slowdown };
    const throttled = await setMade(address, many, pageSlow);
    const how = `the page slowed ${slowdown} times by Chromium, the worker at full speed`;
    tell('longest task on a slow page', throttled.longestTask, 'ms', how);
    tell('handing over the record on a slow page', throttled.posting, 'ms');
    const cancelled = await setCancelled(address, many, pageSlow);
    tell(
      'cancelling on a slow page',
      cancelled.seconds * 1000,
      'ms',
      'from the finger down until the form is back',
    );
    tell('longest task while cancelling', cancelled.longestTask, 'ms');
    tell('entries written by a cancelled one', cancelled.entriesWritten, '');

    const ten = await setMade(address, few, {});
    tell('set of 10 containers', ten.seconds, 's');
    tell('growth with containers', set.seconds / ten.seconds / 4, '', '40 against 10; 1 is linear');
    tell('growth of processor time', set.processor / ten.processor / 4, '');
    tell('growth of memory', set.peak / ten.peak / 4, '');
    tell('growth of the file', set.bytes / ten.bytes / 4, '');

    const slow = await setMade(address, few, { all: slowdown });
    tell(
      'set of 10 containers on a slow phone',
      slow.seconds,
      's',
      `page and worker slowed ${slowdown} times`,
    );
    tell('slowed against not slowed', slow.seconds / ten.seconds, '', `${slowdown} where nothing else runs`);
  } finally {
    await stop();
  }
}
