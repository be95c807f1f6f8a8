/** What things are called in the record. */
import * as z from 'zod/mini';
import { text } from './text';

/** Identifier of an entry or a device: a UUID of version 7 begins with its time, so it sorts by time (RFC 9562). */
export const TimedId = z.uuidv7();

/** Identifier of a person, batch, step, stream, container, paper or checklist run. */
export const Id = z.uuid();

/** SHA-256 in lower-case hexadecimal. */
export const Hash = z.string().check(z.regex(/^[0-9a-f]{64}$/));

/** What is written on the label: "B-18", "C-07", or what the person typed. */
export const Code = text(16);

/** Name of a step or checklist as in `checklists/`: words joined by hyphens. */
export const Slug = z.string().check(z.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/), z.maxLength(60));
