/** A checklist being gone through: plain data, so that it survives a reload, and what is left of it in the record. */
import * as z from 'zod/mini';
import { Bound, StationKind, type VentilationResult } from './checklist-item';
import { Checklist } from './checklist-schema';
import { Line, Slug } from './cited';

/** UTC with milliseconds. */
const Instant = z.iso.datetime({ precision: 3 });

/** What a person said in the place of "it is in order". */
export const Reason = z.string().check(z.trim(), z.minLength(1), z.maxLength(240));

export const Who = z.strictObject({ name: Line, at: z.optional(Instant) });

/** Limits that the app worked out for this run, and from what. */
const Bounds = z.strictObject({ min: z.optional(z.string()), max: z.optional(z.string()), from: Line });

/** Who goes through a list, for what and where; its clearance holds for no other. */
export const Context = z.strictObject({
  person: z.string(),
  batchId: z.nullable(z.string()),
  containerId: z.optional(z.string()),
  /** The station, with its name; where its kind is known, nobody is asked for it. `amiss`: why it cannot be counted on. */
  place: z.optional(
    z.strictObject({
      id: z.string(),
      name: Line,
      kind: z.optional(StationKind),
      amiss: z.optional(z.strictObject({ says: Line, stops: z.boolean() })),
    }),
  ),
  /** The step that has begun already: the list is late, and clears nothing. */
  lateFor: z.optional(z.string()),
  bounds: z.optional(z.partialRecord(Bound, Bounds)),
  /** The bases of the plan, as `reference/bases.json` names them, and which plan. */
  planBases: z.optional(z.strictObject({ bases: z.array(Slug).check(z.minLength(1)), from: Line })),
});

export const Answered = z.strictObject({
  item: Slug,
  ask: Line,
  look: Line,
  kind: z.enum(['confirm', 'reading', 'choice']),
  /** What was seen ("dry to the corners") or "no", the digits as written, the chosen answer, or "not-applicable". */
  answer: z.string(),
  unit: z.optional(z.string()),
  /** The range as it was asked, and what it was worked out from, if it was. */
  min: z.optional(z.string()),
  max: z.optional(z.string()),
  from: z.optional(Line),
  /** An item, or a range, that the workshop made its own. */
  own: z.optional(z.literal(true)),
  range: z.optional(z.enum(['tightened', 'loosened'])),
  /** The app gave the answer, from this; nobody tapped it. */
  byApp: z.optional(Line),
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

export type Context = z.infer<typeof Context>;
export type Answered = z.infer<typeof Answered>;
export type Run = z.infer<typeof Run>;
export type Who = z.infer<typeof Who>;

/** What the person has just done on the screen. */
export type Given =
  | { readonly kind: 'confirm'; readonly yes: boolean; readonly reason?: string }
  | { readonly kind: 'reading'; readonly written: string; readonly reason?: string }
  | { readonly kind: 'choice'; readonly answer: string; readonly reason?: string; readonly who?: Who }
  | { readonly kind: 'not-applicable'; readonly reason: string }
  /** What the app worked out, from what, and the limits that come of it for later items: never a tap. */
  | {
      readonly kind: 'worked-out';
      readonly result: VentilationResult;
      readonly from: string;
      readonly bounds?: Context['bounds'];
    };
