// Draws the picture of src/chemistry/treatment/README.md from a simulated run: node tests/pictures/treatment.mjs
import { writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

/** @type {{ module: typeof import('./closing-in') }} */
const { module } = await runnerImport(fileURLToPath(new URL('./closing-in.ts', import.meta.url)), {
  configFile: false,
  logLevel: 'error',
});
await writeFile(new URL('./closing-in.svg', import.meta.url), module.closingInPicture());
