/** The published forms of a backup: `public/backup-1.schema.json` of its manifest, `public/backup-entry-1.schema.json` of an entry. */
import * as z from 'zod/mini';
import { Entry } from '../../src/ledger/entries/entry';
import { Manifest } from '../../src/storage/backup/manifest';

/** Ours for ever: whoever keeps a copy of a schema can tell by it which one it is, wherever the file lies. */
const ids = {
  manifest: 'urn:uuid:3f1c7a52-94d8-4c1b-8a30-5d0f6be2a1c7',
  entry: 'urn:uuid:b27e0d94-61af-4f3e-9c58-7e4d12c8f0a6',
};

const published = (
  schema: z.ZodMiniType,
  told: { $id: string; title: string; description: string },
): string => {
  const { $schema, ...rest } = z.toJSONSchema(schema);
  return `${JSON.stringify({ $schema, ...told, ...rest }, null, 2)}\n`;
};

/** What each kind of body holds is not told: new kinds come, and a backup of today must stay readable by its schema. */
const EntryLine = z.strictObject({
  ...Entry.shape,
  body: z.looseObject({ kind: z.string().check(z.minLength(1)), v: z.int().check(z.minimum(1)) }),
});

/** As text, with the newline at its end. */
export const backupSchema = (): string =>
  published(Manifest, {
    $id: ids.manifest,
    title: 'Manifest of a backup, version 1',
    description:
      'manifest.json in a backup: a zip archive with every entry of the record of a workshop as a line of entries.ndjson, and its photos and papers under files/, each named by the SHA-256 of its bytes. contentHash is the SHA-256 of the canonical JSON (RFC 8785) of everything else in the manifest. The comment of the archive is "sha256:" and the SHA-256 of every byte before it.',
  });

export const backupEntrySchema = (): string =>
  published(EntryLine, {
    $id: ids.entry,
    title: 'Entry of a backup, version 1',
    description:
      'One line of entries.ndjson in a backup, in canonical JSON (RFC 8785). hash is the SHA-256 of the same line without it; previous is the hash of the entry that the same device wrote before. What an entry says stands in its body as the app stored it; the form of each kind of body is not told here.',
  });
