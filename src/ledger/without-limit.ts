/** What stands or is awaited while nobody has said for how long it may. */
import { calendarDay, daysBetween } from '../rules/clocks/calendar-day';
import { type StartId, type StartingPoint, strictest } from '../rules/starting-points';
import { accumulationStart } from './accumulation';
import type { Law } from './entries/local-rules';
import { lawsOf } from './laws';
import type { ContainerState, State } from './state';

/** Something that has stood or been awaited for days, and nobody has said how many it may. */
export type Endless = {
  readonly kind: 'leave' | 'proof';
  readonly containerId: string;
  /** Calendar day. */
  readonly since: string;
  readonly days: number;
  /** The strictest of what the laws here say, for comparison only. */
  readonly reference: StartingPoint | undefined;
};

/** California has the days of federal law. */
const startOf = (law: Law): StartId => (law === 'us-california' ? 'us-federal' : law);

/**
 * How long waste has stood, and proofs have been awaited, where no limit was entered to count down from: nothing is known to
 * be in time then. Longest first.
 */
export function withoutLimit(state: State, now: string, zone: string): readonly Endless[] {
  const today = calendarDay(now, zone);
  const all = (
    kind: Endless['kind'],
    rule: 'storage-days' | 'proof-days',
    sinceOf: (container: ContainerState) => string | null,
  ): readonly Endless[] => {
    if (state.rules.has(rule)) return [];
    const reference = strictest(rule, lawsOf(state).map(startOf));
    return [...state.containers.values()].flatMap((container) => {
      const moment = sinceOf(container);
      if (moment === null) return [];
      const since = calendarDay(moment, zone);
      const { containerId } = container.body;
      return [{ kind, containerId, since, days: daysBetween(since, today), reference }];
    });
  };
  return [
    ...all('leave', 'storage-days', (container) => accumulationStart(state, container)),
    ...all('proof', 'proof-days', ({ goneSince, proofFiledAt }) =>
      proofFiledAt === null ? goneSince : null,
    ),
  ].sort((a, b) => b.days - a.days);
}
