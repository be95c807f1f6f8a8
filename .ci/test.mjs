// npm test: every check in order, and one closing line for the whole run. With names, only those: npm test -- unit
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { installDebian, installPackages, run } from './ready.mjs';

/** @typedef {{ passed: number, failed: number }} Count */

const reports = mkdtempSync(join(tmpdir(), 'leesbook-test-'));

/** @param {boolean} well @returns {Count} */
const one = (well) => (well ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 });

/** @type {(command: string, ...args: string[]) => () => Count} */
const command =
  (name, ...args) =>
  () =>
    one(run(name, args));

/**
 * Tests by vitest. A file that breaks before its tests are known counts as one failed, and so does a run that ends
 * badly without naming a failed test.
 * @type {(part: string, ...args: string[]) => () => Count}
 */
const vitest =
  (part, ...args) =>
  () => {
    const file = join(reports, `${part}.json`);
    const well = run('vitest', [
      'run',
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${file}`,
      ...args,
    ]);
    if (!existsSync(file)) return one(false);
    const report = JSON.parse(readFileSync(file, 'utf8'));
    /** @type {{ status: string, assertionResults: { status: string }[] }[]} */
    const files = report.testResults;
    const broken = files.filter(
      ({ status, assertionResults }) =>
        status === 'failed' && !assertionResults.some((test) => test.status === 'failed'),
    ).length;
    const failed = report.numFailedTests + broken;
    return { passed: report.numPassedTests, failed: well ? failed : Math.max(failed, 1) };
  };

/** @type {Record<string, () => Count>} */
const parts = {
  style: command('biome', 'check', '--error-on-warnings'),
  'types of the app': command('tsc', '-p', '.'),
  'types of the service worker': command('tsc', '-p', 'src/service-worker.tsconfig.json'),
  'types of the tests': command('tsc', '-p', 'tests'),
  leftovers: command('knip'),
  dependencies: command('node', '.ci/dependencies.mjs'),
  directions: vitest('directions', '--project=unit', 'tests/unit/directions.test.ts'),
  // Papers, registers and backups are also read by programs that are not ours.
  unit: () =>
    installDebian(['age', 'poppler-utils', 'python3'])
      ? vitest('unit', '--project=unit*', '--exclude=tests/unit/directions.test.ts')()
      : one(false),
  published: vitest('published', '--project=published'),
  faults: () => (installDebian(['chromium']) ? vitest('faults', '--project=faults*')() : one(false)),
  browser: () => (installDebian(['chromium']) ? vitest('browser', '--project=browser')() : one(false)),
};

const asked = process.argv.slice(2);
const chosen = Object.keys(parts).filter(
  (name) => asked.length === 0 || asked.some((word) => name.startsWith(word)),
);
if (chosen.length === 0) console.error(`No such part. There are: ${Object.keys(parts).join(', ')}`);

const total = { passed: 0, failed: chosen.length === 0 ? 1 : 0 };
/** @type {string[]} */
const bad = [];
if (installPackages()) {
  for (const name of chosen) {
    console.log(`\n== ${name}`);
    const started = performance.now();
    const { passed, failed } = parts[name]?.() ?? one(false);
    total.passed += passed;
    total.failed += failed;
    if (failed > 0) bad.push(name);
    const seconds = ((performance.now() - started) / 1000).toFixed(1);
    console.log(`== ${name}: ${failed > 0 ? 'NOT good' : 'good'}, ${seconds} s`);
  }
} else {
  console.error('The packages could not be installed.');
  total.failed += 1;
}
rmSync(reports, { recursive: true });
if (bad.length > 0) console.log(`\nNot good: ${bad.join(', ')}`);
console.log(`\n${total.passed} passed, ${total.failed} failed`);
process.exitCode = total.failed > 0 ? 1 : 0;
