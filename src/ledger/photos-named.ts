/** Which photos something names, wherever in it they stand. */
import { Photo } from './entries/photos';

/** Every photo in a body, an entry or a draft, in the order in which they stand there. */
export function photosNamed(value: unknown): readonly Photo[] {
  if (typeof value !== 'object' || value === null) return [];
  const read = Photo.safeParse(value);
  return read.success ? [read.data] : Object.values(value).flatMap(photosNamed);
}

/**
 * Everything in a text that could be the hash of a photo. For asking what must stay: also an entry that cannot be read
 * any more may name a photo.
 */
export const hashesWritten = (text: string): readonly string[] =>
  text.match(/(?<![0-9a-f])[0-9a-f]{64}(?![0-9a-f])/g) ?? [];
