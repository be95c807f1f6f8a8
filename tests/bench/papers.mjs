// How long papers take: the app as it is built, in Chromium, with the record of an invented workshop.
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build, preview } from 'vite';
import { chromiumPath } from '../../.ci/ready.mjs';
import { slowdown } from './in-chromium.mjs';
import { setCancelled, setMade } from './papers-in-chromium.mjs';

/** @typedef {(source: URL) => Promise<string>} Bundled gives the file of the bundle */
/** @typedef {(name: string, value: number, unit: string, note?: string) => void} Tell */

const root = fileURLToPath(new URL('../..', import.meta.url));

/** @param {string} app folder to build the app into */
async function served(app) {
  await build({
    configFile: `${root}vite.config.ts`,
    root: `${root}src`,
    logLevel: 'error',
    build: { outDir: app, emptyOutDir: true },
  });
  const server = await preview({
    configFile: false,
    root,
    logLevel: 'error',
    build: { outDir: app },
    preview: { host: 'localhost', port: 4180 },
  });
  return { address: server.resolvedUrls?.local[0] ?? '', stop: () => server.close() };
}

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
    const set = await setMade(address, many, slowdown);
    const about = `with its working and labels, ${many.length} entries, slowed ${slowdown} times`;
    tell('set of 40 containers', set.seconds, 's', about);
    for (const [stage, at] of Object.entries(set.stages)) tell(`  ${stage}`, at / 1000, 's after the tap');
    tell('a container', set.seconds / 40, 's');
    tell(
      'processor time',
      set.processor,
      's',
      'of page, worker and their helpers, as if nothing were slowed',
    );
    tell('file', set.bytes / 1e6, 'MB');
    tell('pages', set.pages, '');
    tell('peak memory', set.peak, 'MB', 'of page and worker, above what the page had before');
    tell('longest task on the page', set.longestTask, 'ms', 'from the tap until the file is offered');
    tell('handing over the record', set.posting, 'ms on the page');
    tell('moves of the bar', set.moves, '');
    tell('longest stand of the bar', set.longestStand / 1000, 's');

    const ten = await setMade(address, few, slowdown);
    tell('set of 10 containers', ten.seconds, 's');
    tell(
      'growth with containers',
      set.seconds / ten.seconds / 4,
      '',
      'one of 40 against one of 10; 1 is linear',
    );
    tell('growth of processor time', set.processor / ten.processor / 4, '');
    tell('growth of memory', set.peak / ten.peak / 4, '');
    tell('growth of the file', set.bytes / ten.bytes / 4, '');

    const quick = await setMade(address, many, 1);
    tell('set of 40 containers, not slowed', quick.seconds, 's');
    tell('slowed against not slowed', set.seconds / quick.seconds, '', `${slowdown} where nothing else runs`);
    tell('longest task on the page, not slowed', quick.longestTask, 'ms');

    const cancelled = await setCancelled(address, many, slowdown);
    tell('cancelling', cancelled.seconds * 1000, 'ms', 'from the finger down until the form is back');
    tell('longest task while cancelling', cancelled.longestTask, 'ms');
    tell('entries written by a cancelled one', cancelled.entriesWritten, '');
  } finally {
    await stop();
  }
}
