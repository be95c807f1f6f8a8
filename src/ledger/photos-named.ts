/** Which photos something names, wherever in it they stand. */
import * as z from 'zod/mini';
import type { Body } from './entries/body';
import { FiledPaper } from './entries/files';
import { Photo } from './entries/photos';
import type { State } from './state';

const Named = z.union([Photo, FiledPaper]);

/** Everything in a value that `schema` fits, in the order in which it stands there; nothing inside such a thing is looked at. */
function namedIn<T>(value: unknown, schema: z.ZodMiniType<T>): readonly T[] {
  if (typeof value !== 'object' || value === null) return [];
  // Only what has a hash is asked further: a long record has a million other things in it.
  const read = 'hash' in value ? schema.safeParse(value) : undefined;
  return read?.success ? [read.data] : Object.values(value).flatMap((part) => namedIn(part, schema));
}

/** Every photo in a body, an entry or a draft, in the order in which they stand there. */
export const photosNamed = (value: unknown): readonly Photo[] => namedIn(value, Photo);

/** Every paper that came as a file likewise. */
export const papersNamed = (value: unknown): readonly FiledPaper[] => namedIn(value, FiledPaper);

/** What must be kept beside the entries before a body may name it: its photos, and papers that came as a file. */
export const filesNamed = (value: unknown): readonly { readonly hash: string }[] => namedIn(value, Named);

/** A hash, alone or inside a longer text such as an address. */
const hash = /(?<![0-9a-f])[0-9a-f]{64}(?![0-9a-f])/g;
const hashLength = 64;

/**
 * Everything in a value, however deep, that could be the hash of a photo. For asking what must stay: also an entry that
 * cannot be read any more may name a photo. Quick, since it goes through the whole record.
 */
export function hashesIn(value: unknown, found: Set<string> = new Set()): ReadonlySet<string> {
  if (typeof value === 'string') {
    if (value.length >= hashLength) for (const [text] of value.matchAll(hash)) found.add(text);
  } else if (typeof value === 'object' && value !== null)
    for (const part of Object.values(value)) hashesIn(part, found);
  return found;
}

/**
 * Photos of the containers that bodies change: whoever changes a vessel names all of its pictures anew, also those that
 * lie on another device. As much to look through as was ever changed about these vessels.
 */
export function photosOfChanged(state: State, bodies: readonly Body[]): ReadonlySet<string> {
  const found = new Set<string>();
  for (const body of bodies) {
    if (body.kind !== 'container-changed') continue;
    const container = state.containers.get(body.containerId);
    hashesIn([container?.body, container?.changes], found);
  }
  return found;
}
