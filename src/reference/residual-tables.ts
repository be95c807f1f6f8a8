/** What treated liquor still holds, and what it may be held against. Apart from tables.ts, so that only the treatment pages load it. */
import * as z from 'zod/mini';
import { checked } from './checked';
import residualsJson from './residuals.json';
import { Constant, type Metal, metalSymbols, Num, Ranged, told } from './tables';

const Symbols = z.enum(metalSymbols as [Metal, ...Metal[]]);
/** mg/L by metal. */
const Levels = z.strictObject({
  title: z.string(),
  unit: z.literal('mg/L'),
  values: z.partialRecord(Symbols, Num),
  ...told,
});
export type Levels = z.infer<typeof Levels>;

export type ReferenceId = keyof typeof residualsJson.reference;
export const referenceIds = Object.keys(residualsJson.reference) as ReferenceId[];

export const residuals = checked(
  () =>
    z.strictObject({
      /** What plants reach in the long run: nothing here is promised below it. */
      floor: Levels,
      /** Named values to hold a residual against where no local limit is stated. */
      reference: z.record(z.enum(referenceIds as [ReferenceId, ...ReferenceId[]]), Levels),
      /** The solid that a fresh one turns into, by id; `end` names another log K of the same solid. */
      aged: z.strictObject({
        values: z.record(z.string(), z.strictObject({ id: z.string(), end: z.optional(z.literal('low')) })),
        ...told,
      }),
      /** Times what the model says with fresh solids, by ionic strength up to which it holds, mol/kg. */
      above: z.strictObject({
        rows: z.array(z.strictObject({ upTo: z.nullable(Num), factor: Num })),
        ...told,
      }),
      /** Ionic strength, mol/kg, to which the activity model formally holds, and to which it was used and compared. */
      reach: z.strictObject({ formal: Constant, used: Constant, ammonia: Constant }),
      /** Partial molal volumes of what a base brings. */
      cations: z.strictObject({
        unit: z.literal('mL/mol'),
        values: z.strictObject({ Ca: Num, Mg: Num, Na: Num }),
        ...told,
      }),
      mixing: Ranged,
    }),
  residualsJson,
);
