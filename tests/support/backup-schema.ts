/** The published forms of a backup: `public/backup-1.schema.json` and `-2` of its manifest, `backup-entry-1.schema.json` of an entry. */
import * as z from 'zod/mini';
import { Entry } from '../../src/ledger/entries/entry';
import { ManifestOne, ManifestTwo } from '../../src/storage/backup/manifest';

/** Ours for ever: whoever keeps a copy of a schema can tell by it which one it is, wherever the file lies. */
const ids = {
  manifestOne: 'urn:uuid:3f1c7a52-94d8-4c1b-8a30-5d0f6be2a1c7',
  manifestTwo: 'urn:uuid:8d41e6b0-2c75-4f9a-b1d3-60e9a7c4f258',
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

const whatItIs =
  'manifest.json in a backup: a zip archive with every entry of the record of a workshop as a line of entries.ndjson, and its photos and papers under files/, each named by the SHA-256 of its bytes. contentHash is the SHA-256 of the canonical JSON (RFC 8785) of everything else in the manifest. The comment of the archive is "sha256:" and the SHA-256 of every byte before it.';

/** As text, with the newline at its end. */
export const backupSchema = (v: 1 | 2): string =>
  v === 1
    ? published(ManifestOne, {
        $id: ids.manifestOne,
        title: 'Manifest of a backup, version 1',
        description: whatItIs,
      })
    : published(ManifestTwo, {
        $id: ids.manifestTwo,
        title: 'Manifest of a backup, version 2',
        description: `${whatItIs} Of a record that goes on without something: without tells what was lost or damaged, and when somebody decided so.`,
      });

export const backupEntrySchema = (): string =>
  published(EntryLine, {
    $id: ids.entry,
    title: 'Entry of a backup, version 1',
    description:
      'One line of entries.ndjson in a backup, in canonical JSON (RFC 8785). hash is the SHA-256 of the same line without it; previous is the hash of the entry that the same device wrote before. What an entry says stands in its body as the app stored it; the form of each kind of body is not told here.',
  });
