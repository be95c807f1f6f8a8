/** The bases on the shelf, and how pure each is. A later description of the same base replaces the earlier one. */
import * as z from 'zod/mini';
import { WrittenPercent } from '../../quantities/written.ts';
import { Line } from './text.ts';

export const Base = z.enum([
  'hydrated-lime',
  'quicklime',
  'limestone',
  'caustic-soda',
  'soda-ash',
  'magnesium-hydroxide',
  'baking-soda',
]);

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
