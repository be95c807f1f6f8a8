// npm run verify -- FILE: whether a register, a disposal paper, a PDF or an archive of them is as it was made. Needs no network.
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { fileURLToPath } from 'node:url';
import { installPackages } from './ready.mjs';

const exits = { whole: 0, wrong: 1, unreadable: 2 };

/** Files inside a PDF. @param {Uint8Array} pdf */
async function insidePdf(pdf) {
  const { getDocument, VerbosityLevel } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  // The reader takes its input away: it gets a copy.
  const task = getDocument({ data: pdf.slice(), verbosity: VerbosityLevel.ERRORS });
  /** @type {Record<string, { content: Uint8Array }> | null} */
  const files = await (await task.promise).getAttachments();
  await task.destroy();
  return Object.fromEntries(Object.entries(files ?? {}).map(([name, { content }]) => [name, content]));
}

/** @param {string} path @returns {Promise<number>} how it ends */
async function verify(path) {
  let bytes;
  try {
    bytes = readFileSync(path);
  } catch (cause) {
    console.error(`${path} cannot be read: ${cause instanceof Error ? cause.message : cause}`);
    return exits.unreadable;
  }
  const { runnerImport } = await import('vite');
  /** @param {string} name */
  const ours = async (name) => {
    const file = fileURLToPath(new URL(`../src/paperwork/register/${name}`, import.meta.url));
    return (await runnerImport(file, { configFile: false, logLevel: 'error' })).module;
  };
  /** @type {typeof import('../src/paperwork/register/verify-file')} */
  const { verifyFile } = await ours('verify-file.ts');
  /** @type {typeof import('../src/paperwork/register/verify-words')} */
  const { verdictWords } = await ours('verify-words.ts');
  const checked = await verifyFile(basename(path), new Uint8Array(bytes), insidePdf);
  const told = checked.map(({ name, verdict }) => ({ name, ...verdictWords(verdict) }));
  for (const { name, outcome, title, lines } of told) {
    const say = outcome === 'unreadable' ? console.error : console.log;
    const whose = name === basename(path) ? '' : `${name}: `;
    say([`${whose}${title}`, ...lines.map((line) => `  ${line}`)].join('\n'));
  }
  const worst = /** @type {const} */ (['wrong', 'unreadable', 'whole']).find((outcome) =>
    told.some((one) => one.outcome === outcome),
  );
  return exits[worst ?? 'unreadable'];
}

const [path, ...more] = process.argv.slice(2);
if (path === undefined || more.length > 0) {
  console.error('npm run verify -- FILE');
  process.exitCode = exits.unreadable;
} else process.exitCode = installPackages() ? await verify(path) : exits.unreadable;
