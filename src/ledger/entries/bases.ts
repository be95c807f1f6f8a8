/** The bases on the shelf, and how pure each is. A later description of the same base replaces the earlier one. */
import * as z from 'zod/mini';
import { WrittenPercent } from '../../quantities/written';
import { type BaseId, baseIds } from '../../reference/tables';
import { Line } from './text';

/** Those of the reference data: a base is added there, and never taken out. */
export const Base = z.enum(baseIds as [BaseId, ...BaseId[]]);

export const BaseDescribed = z.strictObject({
  kind: z.literal('base-described'),
  v: z.literal(1),
  base: Base,
  /** Percent by mass of the base itself. */
  purity: WrittenPercent,
  /** Who or what says so: "as on the bag". */
  saidBy: z.optional(Line),
});

export type Base = z.infer<typeof Base>;
export type BaseDescribed = z.infer<typeof BaseDescribed>;
