/** Backups as somebody who knows how they are made would forge them: each part as they want it, and all hashes made right again. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { unzipSync } from 'fflate';
import { canonicalText, hashOf } from '../../src/ledger/seal';
import { Archive } from '../../src/storage/backup/archive';
import { names } from '../../src/storage/backup/manifest';

/** Name to bytes, in the order in which they lie in the archive. */
export type Parts = ReadonlyMap<string, Uint8Array>;

export const partsOf = (archive: Uint8Array): Parts => new Map(Object.entries(unzipSync(archive)));

export const textOf = (parts: Parts, name: string): string =>
  new TextDecoder().decode(parts.get(name) ?? new Uint8Array());

export const linesOf = (parts: Parts, name: string): readonly string[] =>
  textOf(parts, name).split('\n').slice(0, -1);

export const withPart = (parts: Parts, name: string, bytes: Uint8Array | string): Parts =>
  new Map(parts).set(name, typeof bytes === 'string' ? utf8ToBytes(bytes) : bytes);

export const withLines = (parts: Parts, lines: readonly string[]): Parts =>
  withPart(parts, names.entries, lines.map((line) => `${line}\n`).join(''));

const lineCount = (bytes: Uint8Array): number =>
  bytes.reduce((sum, byte) => sum + (byte === 0x0a ? 1 : 0), 0);

type Loose = Record<string, unknown>;

/** The manifest with counts, sizes and hashes of what lies beside it; `change` comes last, before it is sealed. */
export function withManifest(parts: Parts, change: (manifest: Loose) => Loose = (same) => same): Parts {
  const { contentHash: _, ...was } = JSON.parse(textOf(parts, names.manifest)) as Loose;
  const told = (name: string) => {
    const bytes = parts.get(name) ?? new Uint8Array();
    return { bytes: bytes.length, sha256: bytesToHex(sha256(bytes)) };
  };
  const entries = { count: lineCount(parts.get(names.entries) ?? new Uint8Array()), ...told(names.entries) };
  const manifest = change({ ...was, readMe: told(names.readMe), entries });
  const sealed = { ...manifest, contentHash: hashOf(manifest) };
  return withPart(parts, names.manifest, `${canonicalText(sealed)}\n`);
}

/** The manifest names the ends of the chains as the lines have them. */
export function withEnds(parts: Parts): Parts {
  const ends = new Map<unknown, Loose>();
  for (const line of linesOf(parts, names.entries)) {
    const { device, counter, hash } = JSON.parse(line) as Loose;
    if (Number(counter) > Number(ends.get(device)?.counter ?? 0)) ends.set(device, { device, counter, hash });
  }
  return withManifest(parts, (manifest) => ({ ...manifest, heads: [...ends.values()] }));
}

/** As the app packs and seals it. */
export async function packed(parts: Parts): Promise<Uint8Array<ArrayBuffer>> {
  const archive = new Archive('2026-03-02T08:00:00.000Z');
  for (const [name, bytes] of parts)
    if (name.startsWith('files/')) archive.laid(name, bytes);
    else archive.whole(name, bytes);
  return new Uint8Array(await archive.end().arrayBuffer());
}
