/** Where a sentence comes from, and how well that is known. */
import * as z from 'zod/mini';

/**
 * `verified`: seen in a copy of the named source. `memory`: not seen this time, to be checked. `common practice`:
 * habit of the trade. `reasoned`: follows from the named source without standing in it.
 */
export const Status = z.enum(['verified', 'memory', 'common practice', 'reasoned']);

/** One short line for a person to read. */
export const Line = z.string().check(z.trim(), z.minLength(1), z.maxLength(240));

/** Name of a list, item, card or rule: words joined by hyphens. */
export const Slug = z.string().check(z.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/), z.maxLength(60));

export const cited = { source: z.string().check(z.minLength(1), z.maxLength(400)), status: Status };

export type Status = z.infer<typeof Status>;

/** `seen`: what of it was read, and where. */
export type Cited = { readonly source: string; readonly status: Status; readonly seen?: string | undefined };
