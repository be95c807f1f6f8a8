// npm run cases -- FOLDER [--json FILE]: every case file in a folder, expected against computed.
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { runnerImport } from 'vite';

const usage = 'npm run cases -- FOLDER [--json FILE]';

/** @returns {{ folder: string, json: string | undefined } | undefined} */
function asked() {
  try {
    const { values, positionals } = parseArgs({
      options: { json: { type: 'string' } },
      allowPositionals: true,
    });
    const [folder] = positionals;
    return folder === undefined || positionals.length > 1 ? undefined : { folder, json: values.json };
  } catch {
    return undefined;
  }
}

const task = asked();
if (!task) {
  console.error(usage);
  process.exit(2);
}

/** @type {{ module: typeof import('./evaluate') }} */
const { module } = await runnerImport(fileURLToPath(new URL('./evaluate.ts', import.meta.url)), {
  configFile: false,
  logLevel: 'error',
});
const { evaluateFolder, failedIn, passedIn } = module;

/** @type {ReturnType<typeof evaluateFolder>} */
let all;
try {
  all = evaluateFolder(task.folder);
} catch (cause) {
  console.error(`${task.folder} cannot be read: ${cause instanceof Error ? cause.message : cause}`);
  console.log('0 passed, 1 failed');
  process.exit(1);
}

const total = { passed: 0, failed: 0 };
for (const { file, id, kind, outcome } of all) {
  const [passed, failed] = [passedIn(outcome), failedIn(outcome)];
  total.passed += passed;
  total.failed += failed;
  console.log(`\n${id} (${kind}, ${file}): ${passed} passed, ${failed} failed`);
  for (const { ok, line } of outcome.checks) console.log(`  ${ok ? 'ok ' : 'NOT'} ${line}`);
  for (const note of outcome.notes) console.log(`  ${note}`);
}
if (all.length === 0) {
  console.error(`No case files (*.json) in ${task.folder}`);
  total.failed += 1;
}
if (task.json !== undefined) {
  const values = all.map(({ id, kind, outcome }) => [
    id,
    { kind, passed: passedIn(outcome), failed: failedIn(outcome), computed: outcome.computed },
  ]);
  writeFileSync(task.json, `${JSON.stringify(Object.fromEntries(values), null, 1)}\n`);
}
console.log(`${total.passed} passed, ${total.failed} failed`);
process.exitCode = total.failed > 0 ? 1 : 0;
