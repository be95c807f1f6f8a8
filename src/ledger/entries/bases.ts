/** The bases on the shelf, and how pure each is. A later description of the same base replaces the earlier one. */
import * as z from 'zod/mini';
import { WrittenPercent, writtenIn } from '../../quantities/written';
import { type BaseId, baseIds } from '../../reference/tables';
import { Line } from './text';

/** Those of the reference data: a base is added there, and never taken out. */
export const Base = z.enum(baseIds as [BaseId, ...BaseId[]]);

/** One of the two: how pure, or what it is worth in acid. */
export const BaseDescribed = z
  .strictObject({
    kind: z.literal('base-described'),
    v: z.literal(1),
    base: Base,
    /** Percent by mass of the base itself. */
    purity: z.optional(WrittenPercent),
    /** Basicity factor after ASTM C400: grams of calcium oxide that a gram is worth. */
    basicity: z.optional(writtenIn('1')),
    /** Who or what says so: "as on the bag". */
    saidBy: z.optional(Line),
  })
  .check(
    z.refine(
      ({ purity, basicity }) => (purity === undefined) !== (basicity === undefined),
      'either purity or basicity',
    ),
  );

export type Base = z.infer<typeof Base>;
export type BaseDescribed = z.infer<typeof BaseDescribed>;
