// What the app stands on: pinned to the digit, unchangeable by the lock, quiet when installed, under known licences, and
// without a grave fault that is publicly known. Names what is not so.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { licensed } from './licences.mjs';

/** Licences that let the app be handed on, by their names in the SPDX list. */
const known = new Set([
  '0BSD',
  'Apache-2.0',
  'Bitstream-Vera',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'CC0-1.0',
  'ISC',
  'MIT',
  'OFL-1.1',
  'Unlicense',
]);

/** @param {string} expression e.g. "(MIT OR Apache-2.0)"; of several joined by AND each must be known */
export const licenceKnown = (expression) =>
  expression
    .replaceAll(/[()]/g, '')
    .split(/ OR /)
    .some((choice) => choice.split(/ AND /).every((name) => known.has(name.trim())));

/** @typedef {{ version?: string, resolved?: string, integrity?: string, link?: boolean, dev?: boolean, hasInstallScript?: boolean }} Locked */
/** @typedef {{ dependencies?: Record<string, string>, devDependencies?: Record<string, string> }} Asked */

/**
 * @param {Asked} asked of package.json
 * @param {Record<string, Locked & Asked>} lock the packages of package-lock.json
 * @returns {readonly string[]} what is not as it must be, one line each
 */
export function lockFaults(asked, lock) {
  const versions = { ...asked.dependencies, ...asked.devDependencies };
  const inexact = Object.entries(versions)
    .filter(([, version]) => !/^\d+\.\d+\.\d+(-[0-9a-z.-]+)?$/i.test(version))
    .map(([name, version]) => `${name} is asked for as ${version}: name one version`);
  const other = Object.entries(versions)
    .filter(([name, version]) => lock[`node_modules/${name}`]?.version !== version)
    .map(([name]) => `${name} stands in the lock at another version than in package.json: npm install`);
  const packages = Object.entries(lock).filter(([folder]) => folder !== '');
  const faults = packages.flatMap(([folder, one]) => [
    ...(one.integrity?.startsWith('sha512-') ? [] : [`${folder} has no hash in the lock`]),
    ...(one.link ? [`${folder} is a link to a folder`] : []),
    ...(one.resolved ? [`${folder} names where it came from: ${one.resolved}`] : []),
    ...(one.hasInstallScript && !one.dev ? [`${folder} runs a script when it is installed`] : []),
  ]);
  return [...inexact, ...other, ...faults];
}

/** @returns {readonly string[]} packages of the app under a licence that is not known here */
const licenceFaults = () =>
  licensed()
    .filter(({ licence }) => !licenceKnown(licence))
    .map(
      ({ name, version, licence }) => `${name} ${version} stands under ${licence}: not a licence known here`,
    );

/**
 * @param {string} answer what `npm audit --json` printed
 * @returns {{ faults: readonly string[], said: string }}
 */
export function auditOf(answer) {
  /** @type {{ vulnerabilities?: Record<string, { severity: string }>, message?: string }} */
  let told = {};
  try {
    told = JSON.parse(answer);
  } catch {
    // Cut off, or not an answer: it is said below.
  }
  if (!told.vulnerabilities)
    return {
      faults: [],
      said: `Known faults: not asked, the registry gives no answer (${told.message ?? 'no network?'})`,
    };
  const all = Object.entries(told.vulnerabilities);
  const faults = all
    .filter(([, { severity }]) => severity === 'high' || severity === 'critical')
    .map(([name, { severity }]) => `${name} has a publicly known fault: ${severity}`);
  return { faults, said: `Known faults in what the app needs: ${all.length}, grave ones ${faults.length}` };
}

function main() {
  /** @param {string} file */
  const json = (file) => JSON.parse(readFileSync(new URL(`../${file}`, import.meta.url), 'utf8'));
  const { stdout } = spawnSync('npm', ['audit', '--omit=dev', '--json'], {
    cwd: fileURLToPath(new URL('..', import.meta.url)),
    encoding: 'utf8',
    timeout: 60_000,
  });
  const { faults, said } = auditOf(stdout);
  const lock = json('package-lock.json').packages;
  const all = [...lockFaults(json('package.json'), lock), ...licenceFaults(), ...faults];
  console.log(said);
  console.log(`${licensed().length} packages and fonts are in the app`);
  for (const fault of all) console.error(fault);
  process.exitCode = all.length > 0 ? 1 : 0;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main();
