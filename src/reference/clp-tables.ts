/** Limits and rules by which the law of classification takes a mixture (CLP Annex I), as far as this trade meets them. */
import * as z from 'zod/mini';
import { checked } from './checked';
import clpJson from './clp.json';
import { statementCodes } from './statements-tables';
import { hazardClasses, routes } from './substances-tables';
import { Constant, Num, told } from './tables';

/** What a rule says in our own words, and where it stands. */
const Rule = z.strictObject({ rule: z.string(), cite: z.string(), ...told });
export type ClpRuleId = keyof typeof clpJson.rules;
const ruleIds = Object.keys(clpJson.rules) as [ClpRuleId, ...ClpRuleId[]];

const four = z.tuple([Num, Num, Num, Num]);
const Acute = z.strictObject({
  unit: z.enum(['mg/kg', 'mg/L']),
  /** Highest estimate of categories 1 to 4, itself included. */
  upTo: four,
  /** What stands for an ingredient of which only the category is known. */
  converted: four,
  codes: z.tuple([z.string(), z.string(), z.string(), z.string()]),
  ...told,
});

const Single = z.strictObject({
  class: z.enum(hazardClasses),
  categories: z.array(z.string()),
  /** Mass percent from which on a mixture has the class. */
  from: Num,
  /** The class that a smaller share still brings. */
  below: z.optional(z.strictObject({ category: z.string(), code: z.string(), from: Num })),
  ...told,
});

/** GHS01 is a bursting bomb, GHS02 a flame; neither belongs to a class that is met here. */
export const pictograms = ['GHS03', 'GHS04', 'GHS05', 'GHS06', 'GHS07', 'GHS08', 'GHS09'] as const;
export type Pictogram = (typeof pictograms)[number];

const Code = z.enum(statementCodes);
const Covers = z.strictObject({ code: Code, over: z.array(Code) });

/** What a label bears for a class. */
const LabelElement = z.strictObject({
  class: z.enum(hazardClasses),
  /** "" stands for a class without a category, or one that only a test would give. */
  categories: z.array(z.string()),
  routes: z.optional(z.array(z.enum(routes))),
  pictogram: z.nullable(z.enum(pictograms)),
  signal: z.nullable(z.enum(['Danger', 'Warning'])),
  precautions: z.array(Code),
  cite: z.string(),
  ...told,
});

export const clp = checked(
  () =>
    z.strictObject({
      /** What all of it is worth for waste. */
      scope: Rule,
      rules: z.record(z.enum(ruleIds), Rule),
      /** From this share on an ingredient is relevant for skin, eye, airways and acute toxicity. */
      cutOff: Constant,
      skin: z.strictObject({ corrosive: Constant, irritant: Constant }),
      eye: z.strictObject({ damaging: Constant, irritant: Constant }),
      /** How often what is corrosive counts as irritant. */
      irritantWeight: Constant,
      extremePh: z.strictObject({ acid: Constant, alkali: Constant }),
      respiratoryIrritation: Constant,
      /** Part of its limit from which on a sensitiser is named. */
      elicitation: Constant,
      aquatic: z.strictObject({ limit: Constant, chronic2: Constant, chronic3: Constant }),
      acute: z.strictObject({ oral: Acute, dermal: Acute, vapour: Acute, 'dust or mist': Acute }),
      single: z.array(Single),
      label: z.strictObject({
        elements: z.array(LabelElement),
        mostPrecautions: Constant,
        /** Precautions, the ones that a label needs most first. */
        order: z.strictObject({ codes: z.array(Code), ...told }),
        /** Precautions that say what others do, and more. */
        covers: z.array(Covers),
        /** Hazard statements beside which others fall away. */
        statementsCovered: z.strictObject({ rows: z.array(Covers), ...told }),
      }),
    }),
  clpJson,
);
export type EstimatedRoute = keyof typeof clp.acute;
