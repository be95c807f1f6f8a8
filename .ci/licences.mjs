// Under which licences the packages stand that the built app holds, with their texts.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));

/** @typedef {{ name: string, version: string, licence: string, text: string }} Licensed */

/** Who names none in package.json, and what stands in its LICENSE file. @type {Record<string, string>} */
const namedInFile = { 'png-js': 'MIT' };

/** Of the tools, what puts code of its own into the build: how one file loads another. */
const toolsWithin = ['vite', 'rolldown'];

/** @param {string} path */
const read = (path) => readFileSync(join(root, path), 'utf8').trim();

/**
 * The text that a package brings, or where it brings none what it says instead.
 * @param {string} folder
 * @param {{ name: string, license?: string, author?: string | { name?: string } }} about
 */
function textOf(folder, { name, license, author }) {
  const files = readdirSync(join(root, folder)).filter((file) => /^(licen[cs]e|copying|notice)/i.test(file));
  if (files.length > 0) return files.map((file) => read(join(folder, file))).join('\n\n');
  const by = typeof author === 'string' ? author : author?.name;
  return `${name} names its licence, ${license}${by ? `, and its author, ${by}` : ''}, and brings no text of it.`;
}

/** @param {string} folder e.g. "node_modules/zod" @returns {Licensed} */
function ofPackage(folder) {
  const about = JSON.parse(read(join(folder, 'package.json')));
  const { name, version } = about;
  const licence = about.license ?? namedInFile[name] ?? 'none named';
  return { name, version, licence, text: textOf(folder, about) };
}

/** Folders of the packages that the app itself needs, by the lock. @returns {readonly string[]} */
const needed = () =>
  Object.entries(JSON.parse(read('package-lock.json')).packages)
    .filter(([folder, { dev, devOptional }]) => folder !== '' && !dev && !devOptional)
    .map(([folder]) => folder)
    .filter((folder) => existsSync(join(root, folder)));

/**
 * Everything of others that the built app may hold, by name: packages with those that they need, and the fonts.
 * @returns {readonly Licensed[]}
 */
export function licensed() {
  const folders = [...needed(), ...toolsWithin.map((name) => `node_modules/${name}`)];
  const fonts = {
    name: 'DejaVu fonts',
    version: '2.37',
    licence: 'Bitstream-Vera',
    text: read('src/paperwork/fonts/LICENSE.txt'),
  };
  return [...folders.map(ofPackage), fonts].toSorted(
    (a, b) => a.name.localeCompare(b.name) || a.version.localeCompare(b.version),
  );
}

/** The page of the licences imports them under this name. */
const named = 'virtual:licences';

/** @returns {import('vite').Plugin} */
export const licencesInBuild = () => ({
  name: 'licences',
  resolveId: (id) => (id === named ? `\0${named}` : undefined),
  load: (id) => (id === `\0${named}` ? `export const licences = ${JSON.stringify(licensed())};` : undefined),
});
