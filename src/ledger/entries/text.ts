/** Free text in entries: trimmed, never empty, with a longest length, and writable as JSON on every machine. */
import * as z from 'zod/mini';

/** Half of a surrogate pair alone has no UTF-8 form, so it could not be hashed the same way twice. */
const isWhole = (text: string): boolean => !/\p{Cs}/u.test(text);

/** Text of 1 to `longest` UTF-16 code units after trimming. */
export const text = (longest: number) =>
  z.string().check(z.trim(), z.minLength(1), z.maxLength(longest), z.refine(isWhole, 'not whole text'));

/** A name, a place, a licence number: one short line. */
export const Line = text(120);

/** An address or a contact with several numbers. */
export const Address = text(500);

/** What a person wants to add. */
export const Note = text(2000);
