/** Which kind of picture, or of paper, bytes are, by how they begin. */
import type { FiledPaper } from '../ledger/entries/files';
import type { Photo } from '../ledger/entries/photos';

const text = (bytes: Uint8Array, from: number, to: number): string =>
  String.fromCharCode(...bytes.subarray(from, to));

/**
 * Null for anything that is not kept as a photo.
 * Source: JPEG, ITU-T T.81 B.1.1.3 (SOI, then a marker); PNG, ISO/IEC 15948 5.2; WebP, RFC 9649 2.4. Status: memory.
 */
export function pictureType(bytes: Uint8Array): Photo['type'] | null {
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'image/jpeg';
  if (text(bytes, 0, 8) === '\x89PNG\r\n\x1a\n') return 'image/png';
  if (text(bytes, 0, 4) === 'RIFF' && text(bytes, 8, 12) === 'WEBP') return 'image/webp';
  return null;
}

/** Source: ISO 32000-1 7.5.2, the header of a PDF; status: memory. */
export const isPdf = (bytes: Uint8Array): boolean => text(bytes, 0, 5) === '%PDF-';

/** Null for anything that no entry names. */
export const keptType = (bytes: Uint8Array): Photo['type'] | FiledPaper['type'] | null =>
  pictureType(bytes) ?? (isPdf(bytes) ? 'application/pdf' : null);
