/** Builds the app once for all browser tests, and a later version of it, and takes both away at the end. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, type Plugin } from 'vite';
import type { TestProject } from 'vitest/node';

const root = join(import.meta.dirname, '../..');

const buildInto = (outDir: string, plugins: Plugin[]) =>
  build({
    configFile: join(root, 'vite.config.ts'),
    root: join(root, 'src'),
    logLevel: 'warn',
    build: { outDir, emptyOutDir: true },
    plugins,
  });

/** The later version differs in its code, so that the changed file gets a new name, and shows it in the page. */
const saysLater: Plugin = {
  name: 'says-later',
  transform: (code, id) =>
    id.endsWith('/src/main.tsx') ? `${code}\ndocument.documentElement.dataset.version = 'later';` : undefined,
};

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder of the app as people get it. */
    readonly builtApp: string;
    /** Folder of the same with a change; its pages have `data-version="later"` on the html element. */
    readonly laterApp: string;
  }
}

export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), 'leesbook-built-'));
  const takeAway = () => rm(folder, { recursive: true });
  // Under NODE_ENV=test, which vitest sets, the build would be one for development.
  const environment = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  try {
    await buildInto(join(folder, 'app'), []);
    await buildInto(join(folder, 'later'), [saysLater]);
  } catch (error) {
    await takeAway();
    throw error;
  } finally {
    process.env.NODE_ENV = environment;
  }
  project.provide('builtApp', join(folder, 'app'));
  project.provide('laterApp', join(folder, 'later'));
  return takeAway;
}
