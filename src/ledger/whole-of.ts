/** All that a container holds, as it would be written to take it out. */
import { asHeld, isNothing, less, nothing, plus, writtenWhole } from './amounts';
import type { Amount } from './entries/containers';
import type { ContainerState } from './state';

/** By the record; where that holds nothing, what was read on it last and since it was emptied, less what has been taken out since. */
export function wholeOf({
  holds,
  levels,
  movements,
  marks,
}: Pick<ContainerState, 'holds' | 'levels' | 'movements' | 'marks'>): readonly Amount[] {
  const whole = writtenWhole(holds);
  const read = levels.at(-1);
  if (whole.length > 0 || !read) return whole;
  if (marks.some(({ body, at }) => body.mark === 'emptied' && at >= read.at)) return whole;
  const out = movements
    .filter(({ way, at }) => way === 'out' && at > read.at)
    .map(({ amount }) => asHeld(amount))
    .reduce(plus, nothing);
  return out === nothing ? [read.body.level] : writtenWhole(less(asHeld(read.body.level), out));
}

/** What of a container that is in doubt is shown as standing in it: what was read last goes before the record. */
export function seenIn(container: ContainerState): readonly Amount[] {
  const read = container.levels.at(-1)?.body.level;
  return read && !isNothing(container.holds) ? [read] : wholeOf(container);
}
