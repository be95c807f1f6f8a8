// npm run bench [-- curves] [papers] [size] [--entries 1000,10000] [--json FILE]: how long curves, papers and a record of ten years take. Tells, asserts nothing.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, parse } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { build } from 'vite';
import { chromiumPath } from '../../.ci/ready.mjs';
import { tellCurves } from './curves-told.mjs';
import { tellPapers } from './papers.mjs';
import { tellSize } from './size.mjs';

const { values: asked, positionals } = parseArgs({
  options: { json: { type: 'string' }, entries: { type: 'string', default: '1000,10000,100000' } },
  allowPositionals: true,
});

/** @type {{ name: string, value: number, unit: string, note: string }[]} */
const report = [];
/** @type {import('./papers.mjs').Tell} */
const tell = (name, value, unit, note = '') => {
  report.push({ name, value, unit, note });
  console.log(`${name}: ${value.toPrecision(3)} ${unit}${note && ` (${note})`}`);
};

const folder = mkdtempSync(join(tmpdir(), 'leesbook-bench-'));

/** Through vite's module runner every import is read by a getter, four times as slow as what ships. @type {import('./papers.mjs').Bundled} */
async function bundled(source) {
  const name = `${parse(source.pathname).name}.mjs`;
  await build({
    configFile: false,
    logLevel: 'error',
    build: {
      ssr: fileURLToPath(source),
      outDir: folder,
      emptyOutDir: false,
      minify: false,
      rollupOptions: { output: { entryFileNames: name } },
    },
    ssr: { noExternal: true },
  });
  return join(folder, name);
}

const parts = {
  curves: () => tellCurves(tell, bundled),
  papers: () => tellPapers(tell, bundled, join(folder, 'app')),
  size: () => tellSize(tell, bundled, join(folder, 'app'), asked.entries.split(',').map(Number)),
};

try {
  if (chromiumPath() === undefined) console.log('No Chromium: name it in CHROMIUM');
  for (const [name, part] of Object.entries(parts))
    if (positionals.length === 0 || positionals.includes(name)) await part();
} finally {
  rmSync(folder, { recursive: true });
}

if (asked.json !== undefined) writeFileSync(asked.json, `${JSON.stringify(report, null, 1)}\n`);
