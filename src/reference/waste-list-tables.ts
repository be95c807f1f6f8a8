/** European list of waste: entries for wastes of this trade, and the order in which one is chosen. */
import * as z from 'zod/mini';
import { checked } from './checked';
import { told } from './tables';
import wasteListJson from './waste-list.json';

const Code = z.string().check(z.regex(/^\d\d \d\d \d\d$/));

export type WasteCode = keyof typeof wasteListJson.entries;
const codes = Object.keys(wasteListJson.entries) as [WasteCode, ...WasteCode[]];
const wasteCode = z.enum(codes);

/** `mirror`: one of two entries between which hazardous properties decide. `one-of-its-kind`: it is not known to have a counterpart. */
const EntryType = z.enum(['absolute', 'mirror', 'one-of-its-kind']);

const Entry = z.strictObject({
  /** Its subject in our own words. */
  says: z.string(),
  /** Written with an asterisk. */
  hazardous: z.boolean(),
  type: EntryType,
  counterpart: z.optional(wasteCode),
  ...told,
});
export type WasteListEntry = z.infer<typeof Entry>;

export type WasteKind = keyof typeof wasteListJson.kinds;
export const wasteKinds = Object.keys(wasteListJson.kinds) as [WasteKind, ...WasteKind[]];

export type WorkView = keyof typeof wasteListJson.views;
export const workViews = Object.keys(wasteListJson.views) as [WorkView, ...WorkView[]];

export type WrongId = keyof typeof wasteListJson.wrong;
const wrongIds = Object.keys(wasteListJson.wrong) as [WrongId, ...WrongId[]];

export type WasteListRuleId = keyof typeof wasteListJson.rules;
const ruleIds = Object.keys(wasteListJson.rules) as [WasteListRuleId, ...WasteListRuleId[]];

const Kind = z.strictObject({
  name: z.string(),
  /** The likeliest first. `only`: under the condition that `why` states, else not proposed. */
  entries: z
    .array(z.strictObject({ code: wasteCode, why: z.string(), only: z.optional(z.literal(true)) }))
    .check(z.minLength(1)),
  /** Entries where the work is seen as other than hydrometallurgy. */
  views: z.array(z.strictObject({ view: z.enum(workViews), code: wasteCode })),
  wrong: z.array(z.enum(wrongIds)),
});

export const wasteList = checked(
  () =>
    z.strictObject({
      about: z.string(),
      rules: z.record(z.enum(ruleIds), z.strictObject({ rule: z.string(), cite: z.string(), ...told })),
      /** Chapters in the order in which they are looked through; "99": codes that end so. */
      order: z.array(z.strictObject({ chapters: z.array(z.string()), says: z.string() })),
      entries: z.record(wasteCode, Entry),
      views: z.record(z.enum(workViews), z.strictObject({ name: z.string(), says: z.string(), ...told })),
      /** Codes that are not to be taken, and why. */
      wrong: z.record(z.enum(wrongIds), z.strictObject({ codes: z.array(Code), says: z.string(), ...told })),
      kinds: z.record(z.enum(wasteKinds), Kind),
    }),
  wasteListJson,
);
