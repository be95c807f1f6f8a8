/** What to test, in which order, and whom to ask, when nobody knows what a container holds. Apart from tables.ts, which has what every page needs. */
import * as z from 'zod/mini';
import { checked } from './checked';
import { SourceId } from './tables';
import unknownContentsJson from './unknown-contents.json';

/** `reasoned`: follows from the named source without standing in it. */
const cited = {
  source: SourceId,
  status: z.enum(['verified', 'memory', 'common practice', 'reasoned']),
};

const Line = z.string().check(z.minLength(1), z.maxLength(160));

const UnknownTest = z.strictObject({
  test: z.enum(['outside', 'open-slowly', 'ph', 'ammonia', 'oxidiser', 'copper', 'chloride']),
  name: z.string(),
  do: Line,
  /** What may be seen, and what follows. */
  shows: Line,
  why: Line,
  ...cited,
});

const AskOf = z.enum(['worked-here', 'previous-owner', 'collector', 'authority']);

const UnknownAsk = z.strictObject({ who: AskOf, ask: Line, why: Line, ...cited });

export type UnknownTest = z.infer<typeof UnknownTest>;
export type UnknownAsk = z.infer<typeof UnknownAsk>;

export const unknownContents = checked(
  () =>
    z.strictObject({
      /** In the order in which they are made: what closes a way stands before what needs it open. */
      tests: z.array(UnknownTest).check(z.minLength(1)),
      ask: z.array(UnknownAsk).check(z.minLength(1)),
    }),
  unknownContentsJson,
);
