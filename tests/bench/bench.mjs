// npm run bench [-- --json FILE]: how long curves take. Tells, asserts nothing.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { build } from 'vite';
import { slowdown, timeInChromium } from './in-chromium.mjs';

const { values: asked } = parseArgs({ options: { json: { type: 'string' } } });
const rounds = 25;
const warmUp = 8;

/** @type {{ name: string, value: number, unit: string, note: string }[]} */
const report = [];
/** @type {(name: string, value: number, unit: string, note?: string) => void} */
const tell = (name, value, unit, note = '') => {
  report.push({ name, value, unit, note });
  console.log(`${name}: ${value.toPrecision(3)} ${unit}${note && ` (${note})`}`);
};

const folder = mkdtempSync(join(tmpdir(), 'leesbook-bench-'));
// Through vite's module runner every import is read by a getter, four times as slow as what ships.
await build({
  configFile: false,
  logLevel: 'error',
  build: {
    ssr: fileURLToPath(new URL('./curves.ts', import.meta.url)),
    outDir: folder,
    minify: false,
    rollupOptions: { output: { entryFileNames: 'curves.mjs' } },
  },
  ssr: { noExternal: true },
});
const bundle = join(folder, 'curves.mjs');
const code = readFileSync(bundle, 'utf8');
/** @type {typeof import('./curves')} */
const { exponent, stepsOf, timesOf } = await import(pathToFileURL(bundle).href);
rmSync(folder, { recursive: true });

/** @type {import('./curves').Curve} */
const usual = { model: 'sit', points: 100, metals: 8 };

const [sit = Number.NaN, davies = Number.NaN] = timesOf(
  [usual, { ...usual, model: 'davies' }],
  rounds,
  warmUp,
);
tell(
  'curve',
  sit,
  'ms',
  `${usual.points} points, ${usual.metals} metals, specific ion interaction, V8 of Node`,
);
tell('rate', (1000 * usual.points) / sit, 'points/s');
tell('against Davies', sit / davies, '', 'the same curve after Davies, same run');
tell('steps', stepsOf(usual) / usual.points, 'Newton steps a point');

const points = [25, 50, 100, 200, 400];
const byPoints = timesOf(
  points.map((n) => ({ ...usual, points: n })),
  rounds,
  warmUp,
);
for (const [i, n] of points.entries()) tell(`curve of ${n} points`, byPoints[i] ?? Number.NaN, 'ms');
tell('growth with points', exponent(points, byPoints), '', 'power; 1 is linear');

const metals = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
const byMetals = timesOf(
  metals.map((n) => ({ ...usual, metals: n })),
  rounds,
  warmUp,
);
for (const [i, n] of metals.entries()) tell(`curve of ${n} metals`, byMetals[i] ?? Number.NaN, 'ms');
tell('growth with metals', exponent(metals, byMetals), '', 'power; 1 is linear');

const onPhone = await timeInChromium(code, usual);
if (onPhone === undefined) console.log('No Chromium: name it in CHROMIUM');
else tell('curve in Chromium', onPhone, 'ms', `the first curve above, processor slowed ${slowdown} times`);

if (asked.json !== undefined) writeFileSync(asked.json, `${JSON.stringify(report, null, 1)}\n`);
