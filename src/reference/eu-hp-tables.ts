/** Properties that make a waste hazardous in the EU: limits to calculate with, and what a test decides. */
import * as z from 'zod/mini';
import { checked } from './checked';
import euHpJson from './eu-hp.json';
import { Constant, Num, told } from './tables';

const ruled = { rule: z.string(), ...told };
const Code = z.string().check(z.regex(/^(H\d{3}|EUH\d{3})$/));

/** What has a hazard statement, without its letters ("H350i" is H350). */
const Term = z.strictObject({
  code: Code,
  /** Only of this category; of any where none is named. */
  category: z.optional(z.string()),
  times: Num,
  /** From this mass percent on a substance counts. */
  cutOff: z.optional(Num),
});
export type Term = z.infer<typeof Term>;

const Limit = z.strictObject({
  /** `sum`: of all substances together. `each`: one substance alone. */
  combine: z.enum(['sum', 'each']),
  of: z.array(Term),
  /** Mass percent, reached or passed. */
  limit: Num,
});
export type HpLimit = z.infer<typeof Limit>;

const properties = Object.keys(euHpJson.byCalculation) as (keyof typeof euHpJson.byCalculation)[];
const byTest = Object.keys(euHpJson.byTest) as (keyof typeof euHpJson.byTest)[];
export type CalculatedHp = (typeof properties)[number];
export type TestedHp = (typeof byTest)[number];

export const euHp = checked(
  () =>
    z.strictObject({
      byCalculation: z.record(
        z.enum(properties as [CalculatedHp, ...CalculatedHp[]]),
        z.strictObject({ name: z.string(), ...ruled, limits: z.array(Limit) }),
      ),
      byTest: z.record(
        z.enum(byTest as [TestedHp, ...TestedHp[]]),
        z.strictObject({ name: z.string(), ...ruled, codes: z.array(Code) }),
      ),
      corrosiveByPh: z.strictObject({ acid: Constant, alkaline: Constant, ...ruled }),
      silverInAmmonia: z.strictObject(ruled),
    }),
  euHpJson,
);
export const calculatedHps = properties;
export const testedHps = byTest;
