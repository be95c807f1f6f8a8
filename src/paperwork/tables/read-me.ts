/** The text that goes with an archive: for whoever opens it years later and has nothing else. */
import { capital, joined } from '../words';
import type { About, PlacedFile } from './archive';

/** What the other files of an archive are; a table says so itself. */
export const fileWords = {
  pdf: 'The paper, to read, print and sign. The data is attached inside it.',
  json: 'Everything that the paper says, as data for programs, every number with all its digits.',
  schema: 'What each member of the data means and may hold (JSON Schema, draft 2020-12).',
} as const;

const w = {
  invented: 'EVERYTHING IN HERE IS INVENTED, for a demonstration.',
  made: (madeAt: string) => `Made ${madeAt.slice(0, 10)}, ${madeAt.slice(11, 19)} UTC.`,
  files: 'Files',
  inFolders: (path: string, folders: readonly string[]) => `${path}, in ${joined(folders)}`,
  tables: 'How the tables are written',
  tablesText: [
    'CSV, one line of heads, then the rows. Each table is here twice with the same contents.',
    'spreadsheet: to be opened by a double click, with the decimal sign of whoever made it (a semicolon between cells where that is a comma). Text that a spreadsheet would change, such as 007 or 3-4, begins with an apostrophe. A text too long for a cell is cut and says so.',
    'programs: RFC 4180, UTF-8, a comma between cells, a decimal point.',
    'In both, text that could work as a formula, or that begins with an apostrophe, has an apostrophe more in front: take one away to have what was written.',
    'Numbers stand alone, units in a column beside them. "low" and "high" are the ends of a range that holds about 19 times in 20.',
    '"not determined" stands where nobody measured or said it, also in columns of numbers: it is not zero. "none" stands where there is nothing to say.',
    'columns.csv explains every column.',
  ],
  check: 'How to check it',
  hash: (json: string) =>
    `The content hash is the SHA-256 of the canonical JSON (RFC 8785) of everything in ${json} but the member contentHash. Its beginning is printed on every page of the paper. In the folder of that file, Python 3 says True if nothing in it was changed:`,
  hashIs: (hash: string) => `Content hash: ${hash}`,
  sums: (name: string) => `${name} has the SHA-256 of every file as it was packed: sha256sum --check ${name}`,
} as const;

/** The names of the data's members are plain letters and its numbers whole, so that sorting and writing them this way is canonical. */
const python = (json: string, hash: string): string => {
  const steps = [
    'import json, hashlib',
    `d = json.load(open('${json}', encoding='utf-8'))`,
    "h = d.pop('contentHash')",
    "t = json.dumps(d, sort_keys=True, separators=(',', ':'), ensure_ascii=False)",
    `print(h == hashlib.sha256(t.encode()).hexdigest() == '${hash}')`,
  ];
  return `python3 -c "${steps.join('; ')}"`;
};

/** A file that lies in several folders is told once. */
function toldFiles(files: readonly PlacedFile[]): readonly string[] {
  const told = new Map<string, { readonly says: string; readonly folders: string[] }>();
  for (const { path, says } of files) {
    const [name = path, folder] = path.split('/').reverse();
    const key = JSON.stringify([name, says]);
    const known = told.get(key) ?? { says, folders: [] };
    if (folder !== undefined) known.folders.push(folder);
    told.set(key, known);
  }
  return [...told].map(([key, { says, folders }]) => {
    const [name = ''] = JSON.parse(key) as readonly string[];
    return `${folders.length === 0 ? name : w.inFolders(name, folders)}\n  ${says}`;
  });
}

const section = (head: string, parts: readonly string[]): string =>
  [head.toUpperCase(), ...parts].join('\n\n');

/** Lines end as Windows has them: every other system reads these too. @throws where the file that has the data is missing */
export function readMe(files: readonly PlacedFile[], about: About, sumsName: string): string {
  const json = files.find(({ name }) => name === about.json.name)?.path;
  if (json === undefined) throw new Error(`"${about.json.name}" is not in the archive`);
  return [
    capital(about.title),
    w.made(about.madeAt),
    ...(about.demo ? [w.invented] : []),
    about.cautions.join('\n'),
    section(w.files, toldFiles(files)),
    section(w.tables, w.tablesText),
    section(w.check, [
      w.hashIs(about.json.contentHash),
      w.hash(json),
      python(json, about.json.contentHash),
      w.sums(sumsName),
    ]),
    '',
  ]
    .join('\n\n')
    .trimEnd()
    .concat('\n')
    .replaceAll('\n', '\r\n');
}
