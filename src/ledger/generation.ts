/** The wastes that arose, as the counting of a month takes them, and all that stands on site. */
import { weighed } from '../chemistry/evidence';
import { loadOf } from '../chemistry/load';
import { densityToWeigh } from '../chemistry/usual-density';
import { type Expression, expression, plus, times } from '../quantities/expression';
import { exact, type Figure, given, workedOut } from '../quantities/figure';
import type { Arising } from '../rules/quantities/counting';
import { isNothing } from './amounts';
import { liquorOf } from './container-load';
import { massOf } from './container-mixture';
import type { StreamLogged } from './entries/streams';
import { levelAgainst } from './level-against';
import type { ContainerState, Held, State, StreamState } from './state';
import { originOf } from './waste-origin';

type Part = { readonly of: 'volume' | 'mass'; readonly kg: Expression };

/** What of a waste is liquid and what is solid, each by mass. */
function partsOf(state: State, { streamId, stream, liquid, solid }: StreamLogged): readonly Part[] {
  const liquor = liquid && liquorOf(state, streamId);
  const load = liquor && loadOf(liquor, streamId);
  const wet = solid && weighed(solid.wetMass, `stream/${streamId}/wet-mass`, 'Waste, wet', solid.massSpread);
  return [
    ...(load ? [{ of: 'volume' as const, kg: times(load.volume, densityToWeigh(load, [stream])) }] : []),
    ...(wet ? [{ of: 'mass' as const, kg: expression(wet) }] : []),
  ];
}

/** Of one state each: the state makes them anew. */
const masses = new WeakMap<StreamState, Figure<'kg'> | null>();

/** Mass of a waste as it was logged; null where neither a scale nor a density tells it. Made once for a state. */
export function massOfStream(state: State, stream: StreamState): Figure<'kg'> | null {
  const known = masses.get(stream);
  if (known !== undefined) return known;
  const parts = partsOf(state, stream.body).map(({ kg }) => kg);
  const mass =
    parts.length === 0
      ? null
      : workedOut({ sentence: 'Waste, by mass', unit: 'kg', formula: plus(...parts) });
  masses.set(stream, mass);
  return mass;
}

/** What was found and nobody knows yet: it has no mass, and belongs to the month in which it was found. */
const foundOf = ({ body, doubtfulSince, contents }: ContainerState): Arising[] =>
  doubtfulSince === null || contents.length > 0
    ? []
    : [
        {
          id: body.containerId,
          at: doubtfulSince,
          what: 'not determined',
          kg: null,
          acute: 'no',
          origin: { kind: 'generated' },
        },
      ];

const made = new WeakMap<State, readonly Arising[]>();

/** Every waste that was logged, and what was found and is not determined; which of them a month counts is for the rules (`generatorMonth`). Made once for a state. */
export function arisings(state: State): readonly Arising[] {
  const known = made.get(state);
  if (known) return known;
  const logged = [...state.streams.values()].map(
    (stream): Arising => ({
      id: stream.body.streamId,
      at: stream.at,
      what: stream.body.stream,
      // Worked out when a month asks for it: most are of other months.
      get kg() {
        return massOfStream(state, stream);
      },
      acute: 'no',
      origin: originOf(state, stream),
    }),
  );
  const all = [...logged, ...[...state.containers.values()].flatMap(foundOf)];
  made.set(state, all);
  return all;
}

/** What of a waste is in no container; null where nothing tells its mass. @param unplaced how much that is */
export function looseMassOf(state: State, stream: StreamState, unplaced: Held): Figure<'kg'> | null {
  const { amount } = stream;
  const loose = partsOf(state, stream.body)
    .filter(({ of }) => !unplaced[of].isZero())
    .map(({ of, kg }) => times(kg, unplaced[of].div(amount[of]).toNumber()));
  return loose.length === 0
    ? null
    : workedOut({ sentence: 'Waste in no container yet', unit: 'kg', formula: plus(...loose) });
}

/** One container, or what is in none of one waste; null where nothing tells its mass. */
export type OnSitePart = {
  readonly of: 'container' | 'stream';
  readonly id: string;
  readonly mass: Figure<'kg'> | null;
};

export type OnSite = {
  readonly total: Figure<'kg'>;
  readonly parts: readonly OnSitePart[];
  /** Containers, and wastes in none, whose mass nothing tells: the total is at least. */
  readonly unweighed: readonly string[];
};

/** By the record nothing is in it, and what was read on it says otherwise. */
const readToHold = (container: ContainerState): boolean => levelAgainst(container)?.level.gt(0) === true;

const sentence = 'Waste on site';

/** Nothing in the record is a count of nothing; what has no mass is told of beside it. */
const totalOf = ([first, ...more]: readonly Figure<'kg'>[]): Figure<'kg'> =>
  first
    ? workedOut({ sentence, unit: 'kg', formula: plus(first, ...more) })
    : given({
        origin: sentence,
        sentence,
        value: 0,
        unit: 'kg',
        how: 'worked-out',
        spread: exact,
        decimals: 0,
      });

const sites = new WeakMap<State, OnSite>();

/** All that stands on site: what is in containers that are not gone, and waste that is in none yet. Made once for a state. */
export function onSite(state: State): OnSite {
  const site = sites.get(state) ?? siteOf(state);
  sites.set(state, site);
  return site;
}

function siteOf(state: State): OnSite {
  const parts: OnSitePart[] = [];
  for (const container of state.containers.values()) {
    if (container.goneSince !== null) continue;
    const found = massOf(state, container);
    if (found === 'empty' && !readToHold(container)) continue;
    const mass = typeof found === 'string' ? null : found;
    parts.push({ of: 'container', id: container.body.containerId, mass });
  }
  for (const stream of state.streams.values()) {
    if (isNothing(stream.unplaced)) continue;
    const mass = looseMassOf(state, stream, stream.unplaced);
    parts.push({ of: 'stream', id: stream.body.streamId, mass });
  }
  const masses = parts.flatMap(({ mass }) => mass ?? []);
  const unweighed = parts.flatMap(({ id, mass }) => (mass === null ? [id] : []));
  return { total: totalOf(masses), parts, unweighed };
}
