/** The wastes that arose, as the counting of a month takes them, and all that stands on site. */
import { densityOf } from '../chemistry/density';
import { weighed } from '../chemistry/evidence';
import { loadOf } from '../chemistry/load';
import { plus, times } from '../quantities/expression';
import { exact, type Figure, given, workedOut } from '../quantities/figure';
import type { Arising } from '../rules/quantities/counting';
import { isNothing } from './amounts';
import { liquorOf } from './container-load';
import { mixtureOf } from './container-mixture';
import type { ContainerState, State, StreamState } from './state';
import { originOf } from './waste-origin';

/** Mass of a waste as it was logged; null where neither a scale nor a density tells it. */
export function massOfStream(state: State, { body }: StreamState): Figure<'kg'> | null {
  const { streamId, liquid, solid } = body;
  const liquor = liquid && liquorOf(state, streamId);
  const load = liquor && loadOf(liquor, streamId);
  const parts = [
    ...(load ? [times(load.volume, densityOf(load))] : []),
    ...(solid ? [weighed(solid.wetMass, `stream/${streamId}/wet-mass`, 'Waste, wet', solid.massSpread)] : []),
  ];
  const [first, ...more] = parts;
  return first === undefined
    ? null
    : workedOut({ sentence: 'Waste, by mass', unit: 'kg', formula: plus(first, ...more) });
}

const made = new WeakMap<State, readonly Arising[]>();

/** Every waste that was logged; which of them a month counts is for the rules (`generatorMonth`). Made once for a state. */
export function arisings(state: State): readonly Arising[] {
  const known = made.get(state);
  if (known) return known;
  const all = [...state.streams.values()].map(
    (stream): Arising => ({
      id: stream.body.streamId,
      at: stream.at,
      what: stream.body.stream,
      kg: massOfStream(state, stream),
      acute: 'no',
      origin: originOf(state, stream),
    }),
  );
  made.set(state, all);
  return all;
}

/** What of a waste is in no container yet: undefined where all of it is in one, null where nothing tells its mass. */
function looseMass(state: State, stream: StreamState): Figure<'kg'> | null | undefined {
  const { amount, unplaced } = stream;
  if (isNothing(unplaced)) return undefined;
  const mass = massOfStream(state, stream);
  const share = amount.volume.isZero() ? unplaced.mass.div(amount.mass) : unplaced.volume.div(amount.volume);
  return (
    mass &&
    workedOut({
      sentence: 'Waste in no container yet',
      unit: 'kg',
      formula: times(mass, share.toNumber()),
    })
  );
}

export type OnSite = {
  readonly total: Figure<'kg'>;
  /** Containers, and wastes in none, whose mass nothing tells: the total is at least. */
  readonly unweighed: readonly string[];
};

const isHere = ({ goneSince, holds, doubtfulSince, levels }: ContainerState): boolean =>
  goneSince === null && (!isNothing(holds) || doubtfulSince !== null || levels.length > 0);

const sentence = 'Waste on site';

/** Nothing in the record is a count of nothing; what has no mass is told of beside it. */
const totalOf = ([first, ...more]: readonly Figure<'kg'>[]): Figure<'kg'> =>
  first
    ? workedOut({ sentence, unit: 'kg', formula: plus(first, ...more) })
    : given({ origin: sentence, sentence, value: 0, unit: 'kg', how: 'worked-out', spread: exact });

/** All that stands on site: what is in containers that are not gone, and waste that is in none yet. */
export function onSite(state: State): OnSite {
  const masses: Figure<'kg'>[] = [];
  const unweighed: string[] = [];
  for (const container of state.containers.values()) {
    if (!isHere(container)) continue;
    const found = mixtureOf(state, container);
    if (found === 'empty') continue;
    if (found === 'not-determined') unweighed.push(container.body.containerId);
    else masses.push(found.mass);
  }
  for (const stream of state.streams.values()) {
    const loose = looseMass(state, stream);
    if (loose === null) unweighed.push(stream.body.streamId);
    else if (loose) masses.push(loose);
  }
  return { total: totalOf(masses), unweighed };
}
