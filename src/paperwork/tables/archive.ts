/** Everything of one paper in one ZIP file, with a text that says what each file is and how to check it. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { type Zippable, zipSync } from 'fflate';
import type { DisposalData } from '../disposal/disposal-data';
import { asciiName, uniqueNames } from './ascii-name';
import { readMe } from './read-me';

export type ArchiveFile = {
  /** Folder that it lies in; none: at the top. */
  readonly folder?: string;
  readonly name: string;
  /** What it is, in one sentence. */
  readonly says: string;
  readonly bytes: Uint8Array;
};

export type About = {
  readonly title: string;
  /** UTC with milliseconds. */
  readonly madeAt: string;
  readonly demo: boolean;
  readonly cautions: readonly string[];
  /** Its `contentHash` is over everything else in it. */
  readonly json: { readonly name: string; readonly contentHash: string };
};

type Told = Pick<DisposalData, 'madeAt' | 'demo' | 'cautions' | 'contentHash'>;

/** @param json name of the file that has the data */
export const aboutOf = (
  { madeAt, demo, cautions, contentHash }: Told,
  title: string,
  json: string,
): About => ({
  title,
  madeAt,
  demo,
  cautions,
  json: { name: json, contentHash },
});

export type PlacedFile = ArchiveFile & { readonly path: string };

const sumsName = 'SHA256SUMS.txt';
const readMeName = 'READ-ME.txt';

function placed(files: readonly ArchiveFile[]): readonly PlacedFile[] {
  const wanted = files.map(({ folder, name }) =>
    folder === undefined ? asciiName(name) : `${asciiName(folder)}/${asciiName(name)}`,
  );
  const paths = uniqueNames([readMeName, sumsName, ...wanted]).slice(2);
  return files.map((file, at) => ({ ...file, path: paths[at] ?? '' }));
}

/**
 * A ZIP has the hour of whichever zone it is packed in and says not which. So that the same data gives the same bytes
 * everywhere, each file has noon of the day it was made (UTC); the READ-ME says the hour.
 */
function noonOf(madeAt: string): Date {
  const [year = 1980, month = 1, day = 1] = madeAt.slice(0, 10).split('-').map(Number);
  return new Date(year, month - 1, day, 12);
}

/** A PDF has been packed already. */
const levelOf = (path: string): 0 | 9 => (path.endsWith('.pdf') ? 0 : 9);

/** @throws where the file that has the data is not among them */
export function archiveOf(files: readonly ArchiveFile[], about: About): Uint8Array {
  const all = placed(files);
  const utf8 = new TextEncoder();
  const whole = [{ path: readMeName, bytes: utf8.encode(readMe(all, about, sumsName)) }, ...all];
  // As `sha256sum --check` reads it.
  const sums = whole.map(({ path, bytes }) => `${bytesToHex(sha256(bytes))}  ${path}\n`).join('');
  const entries = [...whole, { path: sumsName, bytes: utf8.encode(sums) }];
  const zippable: Zippable = Object.fromEntries(
    entries.map(({ path, bytes }) => [path, [bytes, { level: levelOf(path) }] as const]),
  );
  return zipSync(zippable, { mtime: noonOf(about.madeAt) });
}
