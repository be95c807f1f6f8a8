/** The seven cards that open from every screen, with no network: one short line an act, in the order of acting. */
import * as z from 'zod/mini';
import { checked } from '../reference/checked';
import file from '../reference/emergency-cards.json';
import { cited, Line, Slug } from './cited';

/** Read at arm's length, in haste. */
const BigLine = z.string().check(z.minLength(1), z.maxLength(40));

const CardStep = z.strictObject({
  do: BigLine,
  small: z.optional(z.array(Line).check(z.minLength(1), z.maxLength(3))),
  /** The act is the call: the app adds the number and, after the words to say, the address. */
  call: z.optional(z.literal(true)),
  timerMinutes: z.optional(z.int().check(z.gte(1), z.lte(60))),
  ...cited,
});

export const EmergencyCard = z.strictObject({
  id: Slug,
  title: z.string().check(z.minLength(1), z.maxLength(30)),
  /** For the bar. */
  short: z.string().check(z.minLength(1), z.maxLength(10)),
  /** The call is part of it in any case, so its button is the largest thing at the thumb. */
  callFirst: z.boolean(),
  /** Words to say to the emergency service, before the address. */
  say: z.array(Line).check(z.minLength(1), z.maxLength(2)),
  steps: z.array(CardStep).check(z.minLength(3), z.maxLength(6)),
});

const File = z.strictObject({ about: z.string(), cards: z.array(EmergencyCard) });

export type EmergencyCard = z.infer<typeof EmergencyCard>;

/** The act with the number in it: "Call 112. Say this:". */
export const actOf = (
  { do: act, call }: EmergencyCard['steps'][number],
  number: string | undefined,
): string => (call !== true || number === undefined ? act : act.replace(/^Call\b/, `Call ${number}`));

/** By id, the most likely to be needed first. */
export const emergencyCards: ReadonlyMap<string, EmergencyCard> = new Map(
  checked(() => File, file).cards.map((card) => [card.id, card]),
);
