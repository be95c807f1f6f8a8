/** Limits and rules by which the law of classification takes a mixture (CLP Annex I), as far as this trade meets them. */
import * as z from 'zod/mini';
import clpJson from './clp.json';
import { hazardClasses } from './substances-tables';
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

export const clp = z
  .strictObject({
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
  })
  .parse(clpJson);
export type EstimatedRoute = keyof typeof clp.acute;
