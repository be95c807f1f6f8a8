/** Substances that a waste of this trade may hold, as the law of classification lists them (CLP Annex VI), or as they are notified. */
import * as z from 'zod/mini';
import { checked } from './checked';
import substancesJson from './substances.json';
import { Num, told } from './tables';

export const hazardClasses = [
  'Ox. Gas',
  'Ox. Liq.',
  'Ox. Sol.',
  'Press. Gas',
  'Met. Corr.',
  'Acute Tox.',
  'Skin Corr.',
  'Skin Irrit.',
  'Eye Dam.',
  'Eye Irrit.',
  'Resp. Sens.',
  'Skin Sens.',
  'Muta.',
  'Carc.',
  'Repr.',
  'Lact.',
  'STOT SE',
  'STOT RE',
  'Aquatic Acute',
  'Aquatic Chronic',
] as const;
export type HazardClassName = (typeof hazardClasses)[number];

export const routes = ['oral', 'dermal', 'vapour', 'dust or mist', 'gas'] as const;
export type Route = (typeof routes)[number];

export type SubstanceId = keyof typeof substancesJson;
export const substanceIds = Object.keys(substancesJson) as [SubstanceId, ...SubstanceId[]];

const Class = z.strictObject({
  class: z.enum(hazardClasses),
  /** "1A", "2"; empty where a class has none (Press. Gas, Lact.). */
  category: z.string().check(z.regex(/^(\d[ABC]?)?$/)),
  /** Of acute toxicity only. */
  route: z.optional(z.enum(routes)),
  /** Hazard statement: "H314". */
  code: z.string().check(z.regex(/^H\d{3}[A-Za-z]*$/)),
  /** The entry gives it as the least that it is ("*"). */
  minimum: z.optional(z.literal(true)),
});
export type HazardClass = z.infer<typeof Class>;

/** In a mixture the class begins at this mass percent, in place of the generic limit. */
const OwnLimit = z.strictObject({ ...Class.shape, from: Num });

const Substance = z.strictObject({
  name: z.string(),
  /** Without water of crystallisation. */
  formula: z.string(),
  cas: z.string().check(z.regex(/^\d{2,7}-\d{2}-\d$/)),
  /** Index number in Annex VI; null where the substance is not in it and its classes are notified ones. */
  index: z.nullable(z.string()),
  classes: z.array(Class),
  /** Specific concentration limits, %. The first class that a share reaches counts. */
  limits: z.optional(z.array(OwnLimit)),
  /** Acute toxicity estimates that the entry itself prints. */
  toxicity: z.optional(
    z.array(z.strictObject({ route: z.enum(routes), estimate: Num, unit: z.enum(['mg/kg', 'mg/L']) })),
  ),
  /** Multiplying factors for the aquatic environment; 1 where none is named. */
  m: z.optional(z.strictObject({ acute: z.optional(Num), chronic: z.optional(Num), ...told })),
  /** The metal in it, and grams of the substance for a gram of the metal. */
  metal: z.optional(z.strictObject({ symbol: z.string(), factor: Num })),
  /** Note 1 of Annex VI: limits are put to the mass percent of the metal. */
  countedAs: z.optional(z.literal('metal')),
  /** Classes that a test of the mixture decides. */
  byTest: z.optional(z.array(Class)),
  /** Notified by some besides the classes that are counted: for a person to judge. */
  notified: z.optional(z.array(Class)),
  supplemental: z.optional(z.array(z.literal('EUH071'))),
  /** Notes of Annex VI. */
  notes: z.optional(z.array(z.enum(['A', 'B', '1', '5']))),
  /** Date from which the entry applies, where that is lately. */
  since: z.optional(z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/))),
  ...told,
});
export type Substance = z.infer<typeof Substance>;

export const substances = checked(() => z.record(z.enum(substanceIds), Substance), substancesJson);

/** The nitrate in which a metal is in liquor, by the metal's symbol. */
export const nitrateOf: ReadonlyMap<string, SubstanceId> = new Map(
  substanceIds.flatMap((id) => {
    const { formula, metal } = substances[id];
    return metal && formula.includes('NO3') ? [[metal.symbol, id] as const] : [];
  }),
);
