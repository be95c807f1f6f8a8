/** All that a container holds, as it would be written to take it out. */
import { asHeld, less, nothing, plus, writtenWhole } from './amounts';
import type { Amount } from './entries/containers';
import type { ContainerState } from './state';

/** By the record; where that holds nothing, what was read on it last, less what has been taken out since. */
export function wholeOf({
  holds,
  levels,
  movements,
}: Pick<ContainerState, 'holds' | 'levels' | 'movements'>): readonly Amount[] {
  const whole = writtenWhole(holds);
  const read = levels.at(-1);
  if (whole.length > 0 || !read) return whole;
  const out = movements
    .filter(({ way, at }) => way === 'out' && at > read.at)
    .map(({ amount }) => asHeld(amount))
    .reduce(plus, nothing);
  return out === nothing ? [read.body.level] : writtenWhole(less(asHeld(read.body.level), out));
}
