/** What every paper as data begins and ends with. */
import * as z from 'zod/mini';
import { Hash, Instant, says, Text, text, told } from './described';

/** @param kind which paper; version 1 of its shape, read for ever */
export const headOf = <const K extends string>(kind: K) => ({
  v: says(z.literal(1), 'Version of this shape.'),
  kind: says(z.literal(kind), 'What this file is.'),
  language: says(z.literal('en'), 'Language of the texts (BCP 47).'),
  demo: says(z.boolean(), 'Whether everything in it is invented.'),
  madeAt: says(Instant, 'When it was made.'),
  zone: text('Time zone of the workshop (IANA), by which its days are counted.'),
  madeBy: told('Who made it.'),
  cautions: says(z.array(Text).check(z.minLength(1)), 'What everybody has to know who acts on this.'),
});

/** The record as it stood. */
export const LastEntry = z.strictObject({
  number: says(z.int(), 'Its place in the record.'),
  id: text('Its identifier.'),
  hash: says(Hash, 'Its hash, which seals all entries before it.'),
  writtenAt: says(Instant, 'When it was written.'),
});

/** `contentHash` is the SHA-256 of the canonical JSON (RFC 8785) of everything else. */
export const withHash = <const C extends z.core.$ZodShape>(content: C) =>
  z.strictObject({
    ...content,
    contentHash: says(
      Hash,
      'SHA-256 of the canonical JSON (RFC 8785) of everything in this file but this member.',
    ),
  });
