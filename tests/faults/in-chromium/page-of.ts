/** A page with a script of the tests on it that uses the app's own modules, built as the app is. */
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { onTestFinished } from 'vitest';

/**
 * @param script file beside this one
 * @returns a folder to be served; it goes when the test ends
 */
export async function pageOf(script: string): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'leesbook-faults-page-'));
  onTestFinished(() => rm(folder, { recursive: true }));
  await build({
    configFile: false,
    logLevel: 'warn',
    define: { 'process.env.NODE_ENV': '"production"' },
    build: {
      outDir: folder,
      emptyOutDir: true,
      lib: { entry: join(import.meta.dirname, script), formats: ['es'], fileName: () => 'page.js' },
    },
  });
  await writeFile(
    join(folder, 'index.html'),
    '<!doctype html><meta charset="utf-8"><link rel="icon" href="data:,"><title>Faults</title><script type="module" src="page.js"></script>',
  );
  return folder;
}
