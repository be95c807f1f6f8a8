/** A checklist being gone through: plain data, so that it survives a reload, and what is left of it in the record. */
import * as z from 'zod/mini';
import { Checklist } from './checklist-schema';
import { Line, Slug } from './cited';

/** UTC with milliseconds. */
const Instant = z.iso.datetime({ precision: 3 });

/** What a person said in the place of "it is in order". */
export const Reason = z.string().check(z.trim(), z.minLength(1), z.maxLength(240));

export const Who = z.strictObject({ name: Line, at: z.optional(Instant) });

/** Narrower or wider limits that the app worked out for this run, and from what. */
const Bounds = z.strictObject({ min: z.optional(z.string()), max: z.optional(z.string()), from: Line });

/** What a clearance holds for. It ends when one of these changes. */
export const Situation = z.strictObject({
  person: z.string(),
  batchId: z.nullable(z.string()),
  place: z.optional(z.string()),
  acid: z.optional(z.string()),
});

export const Context = z.extend(Situation, { bounds: z.optional(z.record(Slug, Bounds)) });

export const Answered = z.strictObject({
  item: Slug,
  ask: Line,
  look: Line,
  kind: z.enum(['confirm', 'reading', 'choice']),
  /** "yes" or "no", the digits as written, the chosen answer, or "not-applicable". */
  answer: z.string(),
  unit: z.optional(z.string()),
  min: z.optional(z.string()),
  max: z.optional(z.string()),
  /** `noted`: not in order, does not stop, and stays visible with its reason. */
  verdict: z.enum(['in-order', 'noted', 'stops', 'not-applicable']),
  reason: z.optional(Reason),
  who: z.optional(Who),
  /** When the question appeared. */
  openedAt: Instant,
  at: Instant,
  /** Confirmed sooner than a person can look. */
  quick: z.optional(z.literal(true)),
});

export const Run = z.strictObject({
  list: Checklist,
  context: Context,
  begunAt: Instant,
  openedAt: Instant,
  answered: z.array(Answered),
  /** Stops that were made right and answered again. */
  overcome: z.array(Answered),
  /** Answers to items asked during and after the step. */
  later: z.array(Answered),
  breaks: z.array(z.strictObject({ from: Instant, to: Instant })),
});

export type Situation = z.infer<typeof Situation>;
export type Context = z.infer<typeof Context>;
export type Answered = z.infer<typeof Answered>;
export type Run = z.infer<typeof Run>;
export type Who = z.infer<typeof Who>;

/** What the person has just done on the screen. */
export type Given =
  | { readonly kind: 'confirm'; readonly yes: boolean; readonly reason?: string }
  | { readonly kind: 'reading'; readonly written: string; readonly reason?: string }
  | { readonly kind: 'choice'; readonly answer: string; readonly reason?: string; readonly who?: Who }
  | { readonly kind: 'not-applicable'; readonly reason: string };
