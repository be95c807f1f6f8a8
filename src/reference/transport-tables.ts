/** Dangerous goods that waste of this trade may be when it is carried: entries of the UN list and the rules that lead to them. */
import * as z from 'zod/mini';
import { checked } from './checked';
import { type SubstanceId, substanceIds } from './substances-tables';
import { Constant, Num, told } from './tables';
import transportJson from './transport.json';

const PackingGroup = z.enum(['I', 'II', 'III']);
/** Of great, medium, or minor danger. */
export type PackingGroup = z.infer<typeof PackingGroup>;

const TransportClass = z.enum(['5.1', '6.1', '8', '9']);
export type TransportClass = z.infer<typeof TransportClass>;

const Entry = z.strictObject({
  un: z.string().check(z.regex(/^(UN |NA)\d{4}$/)),
  /** Proper shipping name, as ADR writes it. */
  name: z.string(),
  /** As 49 CFR writes it, where that is another name. */
  nameUSA: z.optional(z.string()),
  class: TransportClass,
  subsidiary: z.array(TransportClass),
  groups: z.array(PackingGroup).check(z.minLength(1)),
  /** Names of constituents follow the name. */
  technicalNames: z.optional(z.literal(true)),
  usaOnly: z.optional(z.literal(true)),
  ...told,
});
export type Entry = z.infer<typeof Entry>;

export type EntryId = keyof typeof transportJson.entries;
const entryIds = Object.keys(transportJson.entries) as [EntryId, ...EntryId[]];
const entryId = z.enum(entryIds);

const Rule = z.strictObject({ rule: z.string(), cite: z.string(), ...told });
export type TransportRuleId = keyof typeof transportJson.rules;
const ruleIds = Object.keys(transportJson.rules) as [TransportRuleId, ...TransportRuleId[]];

const Side = z.enum(['acid', 'base']);

const InCarriage = z.strictObject({
  /** As it stands in brackets after an n.o.s. name. */
  name: z.string(),
  side: z.optional(Side),
  /** A liquid that makes a solid wet. */
  wets: z.optional(z.literal(true)),
  nitrate: z.optional(z.literal(true)),
  /** Packing group in class 8; the first share that is reached (`from`) or passed (`over`) counts. */
  corrosive: z.optional(
    z.array(z.strictObject({ from: z.optional(Num), over: z.optional(Num), group: PackingGroup })),
  ),
  /** The list names the dry salt. */
  solid: z.optional(entryId),
  /** The list has its soluble compounds in class 6.1 by this entry. */
  toxicAs: z.optional(entryId),
});
export type InCarriage = z.infer<typeof InCarriage>;

const Toxicity = z.strictObject({ unit: z.enum(['mg/kg', 'mg/L']), I: Num, II: Num, III: Num, ...told });

const KindInCarriage = z.strictObject({
  side: z.optional(Side),
  /** Dissolved metals are the rule in it. */
  laden: z.optional(z.literal(true)),
  wet: z.optional(z.literal(true)),
  /** Paper, cloth: they burn well once nitrate has dried on them. */
  burns: z.optional(z.literal(true)),
  nitrates: z.optional(z.literal(true)),
});

export const transport = checked(
  () =>
    z.strictObject({
      about: z.string(),
      entries: z.record(entryId, Entry),
      rules: z.record(z.enum(ruleIds), Rule),
      limits: z.strictObject({
        /** Class 8: corrosive constituents of all groups, and of group I. */
        corrosive: Constant,
        corrosiveGroupI: Constant,
        /** A corrosive constituent below this share does not count. */
        relevant: Constant,
        aquatic: Constant,
        aquaticRelevant: Constant,
        metalBelow: Constant,
        traces: Constant,
        /** Of the share of the substance that is named. */
        tracesBeside: Constant,
        mostly: Constant,
      }),
      /** Highest estimate of each packing group of class 6.1. */
      toxicity: z.strictObject({ oral: Toxicity, 'dust or mist': Toxicity }),
      substances: z.strictObject({
        ...told,
        unsure: z.string(),
        of: z.partialRecord(z.enum(substanceIds), InCarriage),
      }),
      kinds: z.strictObject({ about: z.string(), ...told, of: z.record(z.string(), KindInCarriage) }),
      reportableFrom: z.strictObject({
        about: z.string(),
        unit: z.literal('%'),
        ...told,
        of: z.array(z.strictObject({ quantity: Num, share: Num })),
      }),
    }),
  transportJson,
);

/** What a substance is in carriage; nothing where it is no dangerous good. */
export const inCarriage = (id: SubstanceId): InCarriage | undefined => transport.substances.of[id];
