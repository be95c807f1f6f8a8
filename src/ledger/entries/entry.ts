/** One line of the record: an envelope around one body. */
import * as z from 'zod/mini';
import { Body } from './body';
import { Hash, Id, TimedId } from './identity';
import { Instant, Zone } from './moments';

const envelope = {
  id: TimedId,
  device: Id,
  /** 1, 2, 3… on this device. */
  counter: z.int().check(z.minimum(1)),
  writtenAt: Instant,
  happenedAt: Instant,
  /** Zone of the device at writing, so that the hour on the wall can be shown later. */
  zone: Zone,
  /** Person, or null when nobody had said who. */
  who: z.nullable(Id),
  /** Hash of this device's previous entry; null in its first. */
  previous: z.nullable(Hash),
  body: Body,
};

export const UnsealedEntry = z.strictObject(envelope);

/** `hash` is the SHA-256 of the canonical JSON (RFC 8785) of everything else. */
export const Entry = z.strictObject({ ...envelope, hash: Hash });

export type UnsealedEntry = z.infer<typeof UnsealedEntry>;
export type Entry = z.infer<typeof Entry>;
