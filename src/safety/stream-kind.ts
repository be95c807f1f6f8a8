/** The wastes that steps give, by the names of the trade. */
import * as z from 'zod/mini';

export const StreamKind = z.enum([
  'leach-liquor',
  'barren-liquor',
  'wash-water',
  'chloride-test-waste',
  'ammonia-test-waste',
  'ceramic-residue',
  'spent-filters',
  'soiled-ppe',
  'spill-absorbent',
  'treated-slurry',
  'filtrate',
  'hydroxide-sludge',
]);

export type StreamKind = z.infer<typeof StreamKind>;
