// The app as it is built, served on this machine.
import { fileURLToPath } from 'node:url';
import { build, preview } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** @param {string} app folder to build the app into */
export async function served(app) {
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
