/** The spot test for silver: what is looked at, and what each sight speaks for. Apart from tables.ts, which has what every page needs. */
import * as z from 'zod/mini';
import { checked } from './checked';
import silverCheckJson from './silver-check.json';
import { Constant, Ranged, SourceId } from './tables';

/** `reasoned`: follows from the named source without standing in it. */
const cited = {
  source: SourceId,
  status: z.enum(['verified', 'memory', 'common practice', 'reasoned']),
};

/** Wet gloves read it from the stand. */
const Short = z.string().check(z.minLength(1), z.maxLength(34));
const Line = z.string().check(z.minLength(1), z.maxLength(140));

const lookNames = [
  'before',
  'blank',
  'known',
  'chloride',
  'hot-water',
  'light',
  'alkaline',
  'ammonia',
  'colour',
  'strip',
  'acid',
] as const;

const Seen = z.strictObject({
  seen: z.string(),
  answer: Short,
  /** `fits` and `against` are about silver; `open` takes the worth from the test; `nothing` does neither. */
  speaks: z.enum(['fits', 'against', 'open', 'nothing']),
  says: Line,
  equation: z.optional(z.string()),
  /** What to do about it. */
  next: z.optional(Line),
  ...cited,
});

const Look = z.strictObject({
  look: z.enum(lookNames),
  ask: Short,
  do: Line,
  seen: z.array(Seen).check(z.minLength(2), z.maxLength(5)),
});

export type LookName = (typeof lookNames)[number];
export type Look = z.infer<typeof Look>;
export type Seen = z.infer<typeof Seen>;

export const silverCheck = checked(
  () =>
    z.strictObject({
      /** Longest that silver may stand in ammonia, as published. */
      ceiling: Constant,
      /** One drop of a pipette. */
      drop: Ranged,
      destroys: z.strictObject({ text: z.string(), equation: z.string(), ...cited }),
      /** In the order in which they are made. */
      looks: z.array(Look),
    }),
  silverCheckJson,
);
