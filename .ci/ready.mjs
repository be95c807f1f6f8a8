// Brings what is missing on a fresh machine. Node's own modules only: this runs before node_modules exists.
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));

/**
 * Runs a command, or a tool of node_modules by its name, in the project's folder, and shows what it prints.
 * @param {string} command
 * @param {string[]} args
 * @param {NodeJS.ProcessEnv} extra
 * @returns {boolean} whether it went well
 */
export function run(command, args, extra = {}) {
  const PATH = `${join(root, 'node_modules', '.bin')}${delimiter}${process.env.PATH ?? ''}`;
  const env = { ...process.env, PATH, ...extra };
  const done = spawnSync(command, args, { cwd: root, stdio: ['ignore', 'inherit', 'inherit'], env });
  if (done.error) console.error(`${command}: ${done.error.message}`);
  return done.status === 0;
}

/** @param {string} file */
const packagesIn = (file) => {
  const path = join(root, file);
  return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')).packages : undefined;
};

/** Whether node_modules holds what the lock asks for; a package for another platform may be absent. */
function packagesInstalled() {
  const wanted = packagesIn('package-lock.json');
  const held = packagesIn('node_modules/.package-lock.json');
  if (!held) return false;
  const asWanted = Object.keys(held).every((name) => held[name].integrity === wanted[name]?.integrity);
  return (
    asWanted && Object.keys(wanted).every((name) => name === '' || name in held || wanted[name].optional)
  );
}

/** @returns {boolean} whether the packages are there now */
export const installPackages = () => packagesInstalled() || run('npm', ['ci']);

/** @param {string} path */
const canRun = (path) => {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

/** Where Chromium is: CHROMIUM, else the first on the path. @returns {string | undefined} */
export const chromiumPath = () =>
  process.env.CHROMIUM ??
  (process.env.PATH ?? '')
    .split(delimiter)
    .flatMap((folder) => ['chromium', 'chromium-browser'].map((name) => join(folder, name)))
    .find(canRun);

/** @param {string} name */
const onPath = (name) =>
  (process.env.PATH ?? '').split(delimiter).some((folder) => canRun(join(folder, name)));

/** What the tests call that no npm package brings: the Debian package, and whether it is there already. */
const debian = {
  age: () => onPath('age'),
  chromium: () => chromiumPath() !== undefined,
  'poppler-utils': () => ['pdftotext', 'pdffonts', 'pdfinfo', 'pdfdetach'].every(onPath),
  python3: () => onPath('python3'),
};

/**
 * Installs what is missing of these, where that can be done.
 * @param {(keyof typeof debian)[]} packages
 * @returns {boolean} whether all are there now
 */
export function installDebian(packages) {
  const missing = packages.filter((name) => !debian[name]());
  if (missing.length === 0) return true;
  if (process.getuid?.() !== 0 || !existsSync('/etc/debian_version')) {
    console.error(
      `The tests need ${missing.join(' and ')} (the names of the Debian packages). Install them; Chromium may also be named: CHROMIUM=/path/to/chromium npm test`,
    );
    return false;
  }
  // Another package manager may be at work: wait for it instead of failing at once.
  const apt = ['-o', 'DPkg::Lock::Timeout=300'];
  const quiet = { DEBIAN_FRONTEND: 'noninteractive' };
  return (
    run('apt-get', [...apt, 'update'], quiet) &&
    run('apt-get', [...apt, 'install', '-y', '--no-install-recommends', ...missing], quiet) &&
    missing.every((name) => debian[name]())
  );
}
