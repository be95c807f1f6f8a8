/**
 * What lies in a backup, and the list that says so. The forms are published: `public/backup-1.schema.json`, and
 * `public/backup-2.schema.json` of a record that goes on without something.
 */
import * as z from 'zod/mini';
import { Hash, Id } from '../../ledger/entries/identity';
import { Instant } from '../../ledger/entries/moments';
import { text } from '../../ledger/entries/text';
import { Without } from '../marker';

export const names = {
  readMe: 'READ-ME.txt',
  manifest: 'manifest.json',
  entries: 'entries.ndjson',
  damaged: 'damaged.ndjson',
} as const;

const Count = z.int().check(z.minimum(0));
const Place = z.int().check(z.minimum(1));

const Lines = z.strictObject({ count: Count, bytes: Count, sha256: Hash });

export const fileTypes = ['image/jpeg', 'image/png', 'image/webp', 'application/pdf'] as const;

const BackupFile = z.strictObject({
  sha256: Hash,
  bytes: z.int().check(z.positive()),
  type: z.enum(fileTypes),
});

/** Entries of a device that were not there, or could not be read, when the backup was made. */
const Gap = z.strictObject({ device: Id, from: Place, to: Place });

const format = z.literal('leesbook-backup');

const members = {
  madeBy: z.strictObject({ name: z.literal('Leesbook'), version: text(40) }),
  madeAt: Instant,
  record: z.enum(['real', 'demo']),
  /** The last entry of each device. */
  heads: z.array(z.strictObject({ device: Id, counter: Place, hash: Hash })),
  gaps: z.array(Gap),
  /** Entries that did not name the one before them, though each is whole in itself. */
  breaks: z.array(z.strictObject({ device: Id, counter: Place })),
  readMe: z.strictObject({ bytes: Count, sha256: Hash }),
  entries: Lines,
  /** Null when nothing was damaged; then the file is not there either. */
  damaged: z.nullable(Lines),
  files: z.array(BackupFile),
};

const one = { format, v: z.literal(1), ...members };
const two = {
  format,
  v: z.literal(2),
  ...members,
  /** What somebody decided to go on without, where it was made. */
  without: z.array(Without).check(z.minLength(1)),
};
const UnsealedManifest = z.discriminatedUnion('v', [z.strictObject(one), z.strictObject(two)]);

/** `contentHash` is the SHA-256 of the canonical JSON (RFC 8785) of everything else in it. */
export const ManifestOne = z.strictObject({ ...one, contentHash: Hash });
export const ManifestTwo = z.strictObject({ ...two, contentHash: Hash });
export const Manifest = z.discriminatedUnion('v', [ManifestOne, ManifestTwo]);

/** Of a later one nobody here knows what it says. */
export const latestVersion = 2;

export type UnsealedManifest = z.infer<typeof UnsealedManifest>;
export type Manifest = z.infer<typeof Manifest>;
export type BackupFile = z.infer<typeof BackupFile>;

const endings: Readonly<Record<BackupFile['type'], string>> = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
  'application/pdf': 'pdf',
};

/** Where a photo or paper lies in the archive, with an ending so that it opens where it is unpacked. */
export const nameOf = ({ sha256, type }: BackupFile): string => `files/${sha256}.${endings[type]}`;

/**
 * The comment at the end of the archive: SHA-256 of every byte before the comment, so that not one of them changes unnoticed.
 * @example sealText('0f…') // 'sha256:0f…', 71 bytes
 */
export const sealText = (hash: string): string => `sha256:${hash}`;
export const sealLength = sealText('').length + 64;
