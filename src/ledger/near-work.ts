/** What stands beside the work by the local rules, all of it together, as it came and went. */
import { usualSpread } from '../chemistry/evidence';
import { plus } from '../quantities/expression';
import { exact, type Figure, given, within, workedOut } from '../quantities/figure';
import { calendarDay } from '../rules/clocks/calendar-day';
import { type Level, type NearTheWork, nearTheWork } from '../rules/clocks/near-the-work';
import { asHeld, isNothing, nothing } from './amounts';
import { takesUp } from './fill';
import type { ContainerState, State, Volume } from './state';
import { statedLimit } from './stated-limit';

type Change = { readonly at: string; readonly containerId: string; readonly volume: Volume };

const areaAt = ({ areas }: ContainerState, at: string) => areas.findLast(({ since }) => since <= at)?.is;

/**
 * What takes up room in it by the record; the level that was read of it, if that is more, where nobody knows what it is or
 * where nothing is in it by the record and nothing went out since.
 */
function roomAt({ movements, levels, doubtfulSince }: ContainerState, at: string): Volume {
  const moved = movements.findLast((movement) => movement.at <= at);
  const held = moved?.after ?? nothing;
  const read = levels.findLast((told) => told.at <= at);
  const unlogged = isNothing(held) && (!moved || (read !== undefined && read.at > moved.at));
  const level = takesUp(read && (doubtfulSince !== null || unlogged) ? asHeld(read.body.level) : nothing);
  const logged = takesUp(held);
  return level.gt(logged) ? level : logged;
}

/** Every moment at which what stands there of this container became other. */
function changesOf(container: ContainerState): readonly Change[] {
  const { movements, levels, areas, goneSince, body } = container;
  const moments = [
    ...movements.map(({ at }) => at),
    ...levels.map(({ at }) => at),
    ...areas.map(({ since }) => since),
    ...(goneSince === null ? [] : [goneSince]),
  ];
  return moments.map((at) => {
    const there = areaAt(container, at) === 'near-work' && (goneSince === null || at < goneSince);
    const volume = there ? roomAt(container, at) : takesUp(nothing);
    return { at, containerId: body.containerId, volume };
  });
}

const scale = usualSpread('vessel-scale');

/** What one container adds, read on the vessel. */
const partOf = ([containerId, volume]: readonly [string, Volume]): Figure<'L'> =>
  given({
    origin: `near-work/${containerId}`,
    sentence: 'In a container beside the work',
    value: volume,
    unit: 'L',
    how: 'reading',
    spread: within(scale(volume).plus),
  });

const sentence = 'Waste beside the work';

const sumOf = ([first, ...more]: readonly Figure<'L'>[]): Figure<'L'> =>
  first
    ? workedOut({ sentence, unit: 'L', formula: plus(first, ...more) })
    : given({
        origin: sentence,
        sentence,
        value: 0,
        unit: 'L',
        how: 'worked-out',
        spread: exact,
        decimals: 0,
      });

function levelsNow(state: State): readonly Level[] {
  const changes = [...state.containers.values()]
    .filter(({ areas }) => areas.some(({ is }) => is === 'near-work'))
    .flatMap(changesOf)
    .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  const now = new Map<string, Volume>();
  return changes.map(({ at, containerId, volume }) => {
    if (volume.isZero()) now.delete(containerId);
    else now.set(containerId, volume);
    return { at, volume: sumOf([...now].map(partOf)) };
  });
}

const known = new WeakMap<State, readonly Level[]>();

/** Worked out once for a state. */
function levelsOf(state: State): readonly Level[] {
  const levels = known.get(state) ?? levelsNow(state);
  known.set(state, levels);
  return levels;
}

/** Days to move what is more than the limit, while the local rules do not say: none, the careful answer. */
const carefulDays = 0;

/** Days to move what is more than the limit, and whether the local rules say so. */
export function daysToMove(state: State): { readonly days: number; readonly stated: boolean } {
  const stated = state.rules.get('near-work-days')?.body.stated;
  return stated?.rule === 'near-work-days'
    ? { days: Number(stated.value.value), stated: true }
    : { days: carefulDays, stated: false };
}

/** Most that may stand there by the local rules; null while they know no such place. */
export const nearWorkLimit = (state: State): Figure<'L'> | null => statedLimit(state, 'near-work-limit', 'L');

/** Null while the local rules know no such place. */
export function nearWork(state: State, now: string, zone: string): NearTheWork | null {
  const most = nearWorkLimit(state);
  if (!most) return null;
  const { days } = daysToMove(state);
  return nearTheWork(levelsOf(state), most, days, calendarDay(now, zone), zone);
}
