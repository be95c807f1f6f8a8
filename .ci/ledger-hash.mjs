/** What the ledger works out is kept beside long records, for as long as the code that works it out is the same. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';

const rooms = ['reference', 'quantities', 'chemistry', 'safety', 'rules', 'ledger'];

/**
 * Another one with any change of what the ledger works with: code, data, lists, and the libraries, which are pinned by version.
 * @param {URL} root of the project, with a slash at its end
 */
export function ledgerHash(root) {
  const hash = createHash('sha256');
  for (const room of [...rooms.map((name) => `src/${name}`), 'checklists']) {
    const folder = new URL(`${room}/`, root);
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
      /\.(ts|json)$/.test(name),
    );
    for (const file of files.sort()) hash.update(file).update(readFileSync(new URL(file, folder)));
  }
  const { dependencies } = JSON.parse(readFileSync(new URL('package.json', root), 'utf8'));
  hash.update(JSON.stringify(dependencies));
  return hash.digest('hex').slice(0, 16);
}
