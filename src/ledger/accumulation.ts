/** From when on the storage time of a container counts. */
import type { ContainerState, State } from './state';

/** Whether the local rules know a place beside the work where waste may be gathered before its time counts. */
const nearWorkKnown = (state: State): boolean => state.rules.has('near-work-limit');

const earlier = (a: string, b: string): string => (a < b ? a : b);
const later = (a: string, b: string): string => (a > b ? a : b);

/** Whether it stands beside the work, by the local rules: its time does not count while it does. */
export const standsNearWork = (state: State, { areas }: ContainerState): boolean =>
  nearWorkKnown(state) && areas.at(-1)?.is === 'near-work';

/** When it first held waste; one of which nobody knows what is in it, from the doubt on at the latest. */
const holdsSince = ({ firstWasteIn, doubtfulSince }: ContainerState): string | null =>
  firstWasteIn !== null && doubtfulSince !== null
    ? earlier(firstWasteIn, doubtfulSince)
    : (firstWasteIn ?? doubtfulSince);

/**
 * From the first waste; where that was put in beside the work by the local rules, from the day it was first brought to the
 * store. Null while nothing is in it, once it is gone, and while its waste has stood beside the work alone. Where nobody
 * said where it stands, or no such rule was entered, the first waste counts: the careful answer.
 */
export function accumulationStart(state: State, container: ContainerState): string | null {
  const { areas, goneSince } = container;
  const held = holdsSince(container);
  if (held === null || goneSince !== null) return null;
  if (areas.length === 0 || !nearWorkKnown(state)) return held;
  const starts = areas.flatMap(({ is, since }, i) => {
    const until = areas[i + 1]?.since;
    const stillThere = until === undefined || until > held;
    return is === 'store' && stillThere ? [later(since, held)] : [];
  });
  const [first] = starts;
  // It stood somewhere before anybody said where: that counts.
  const unsaid = areas[0] && areas[0].since > held ? held : null;
  return unsaid ?? first ?? null;
}
