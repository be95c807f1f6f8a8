/** How far something is that goes through the record. */
import type { HowFar } from '../../storage/pages-of-entries';

/** Whole percent; of nothing, all of it. */
export const percentOf = ({ done, of }: HowFar): number => (of === 0 ? 100 : Math.floor((100 * done) / of));
