/** The doses at which a pot is looked at on its way up, before it is looked at closely. */

/** Steps for one size of the pot, and how many times that size goes in before the base is said to end. */
const steps = 40;
const plenty = 2.5;

/**
 * Rising doses, mol of hydroxide, from nothing.
 * @param size of the pot: `sizeOf`, mol
 */
export const ladder = (size: number): readonly number[] =>
  Array.from({ length: Math.round(steps * plenty) + 1 }, (_, i) => (size * i) / steps);
