// npm run faults: the faults of the gate, far more often. Counts may be said: npm run faults -- kills=300 intentions=1000000
import { installDebian, installPackages, run } from '../../.ci/ready.mjs';

/** What an hour or two has time for. @type {Record<string, number>} */
const atNight = { kills: 500, intentions: 200_000, files: 30_000, ways: 4, places: 200 };

const asked = process.argv.slice(2);
const counts = { ...atNight };
/** @type {string[]} */
const files = [];
for (const word of asked) {
  const [name = '', count] = word.split('=');
  if (count === undefined) files.push(`tests/faults/${name}`, `tests/faults/in-chromium/${name}`);
  else if (name in counts && Number(count) > 0) counts[name] = Number(count);
  else {
    console.error(
      `No such count: ${word}. There are: ${Object.keys(counts).join(', ')}, each more than nothing.`,
    );
    process.exit(1);
  }
}

const environment = Object.fromEntries(
  Object.entries(counts).map(([name, count]) => [`FAULTS_${name.toUpperCase()}`, String(count)]),
);
const ready = installPackages() && installDebian(['chromium']);
// Other cases every night, unless a seed is said.
const extra = { SEED: process.env.SEED ?? 'any', ...environment };
const well = ready && run('vitest', ['run', '--project=faults*', '--testTimeout=0', ...files], extra);
process.exitCode = well ? 0 : 1;
