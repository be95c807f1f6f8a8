/** The wastes that arose, as the counting of a month takes them, and all that stands on site. */
import { densityOf } from '../chemistry/density';
import { weighed } from '../chemistry/evidence';
import { loadOf } from '../chemistry/load';
import { plus, times } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import type { Arising, Known, Origin } from '../rules/quantities/counting';
import type { StreamKind } from '../safety/stream-kind';
import { isNothing } from './amounts';
import { liquorOf } from './container-load';
import { mixtureOf } from './container-mixture';
import type { CountingSaid } from './entries/streams';
import type { ContainerState, State, StreamState } from './state';

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

/** Wastes that are left of treating others on site. */
const leftOfTreatment: ReadonlySet<StreamKind> = new Set<StreamKind>([
  'treated-slurry',
  'filtrate',
  'hydroxide-sludge',
]);

/** Whether what was treated was in the record as a waste, and so in the count of its own month. */
function countedBefore(state: State, { body, at }: StreamState): Known {
  const before = [...state.treatments.values()].filter((treatment) => treatment.at <= at);
  const treated = before.flatMap((treatment) => treatment.treated ?? []);
  if (treated.some(({ streamId }) => streamId === null)) return 'not determined';
  const batches = treated.map(({ streamId }) => state.streams.get(streamId ?? '')?.body.batchId ?? null);
  const mine = body.batchId === null ? treated.length > 0 : batches.includes(body.batchId);
  return mine ? 'yes' : 'not determined';
}

/** By somebody's word. Of a unit for neutralisation it has to be known besides that the waste is only corrosive. */
function originSaid(counted: CountingSaid['counted'], onlyCorrosive: Known): Origin {
  switch (counted) {
    case 'counted':
      return { kind: 'generated' };
    case 'straight-into-neutralisation':
      return { kind: 'into-unit', unit: 'elementary-neutralisation', straight: 'yes', onlyCorrosive };
    case 'straight-into-water-treatment':
      return { kind: 'into-unit', unit: 'wastewater-treatment', straight: 'yes', onlyCorrosive };
    case 'straight-into-enclosed-unit':
      return { kind: 'into-unit', unit: 'totally-enclosed', straight: 'yes', onlyCorrosive };
    case 'recycled-at-once':
      return { kind: 'recycled-on-site', straight: 'yes' };
    case 'residue-of-counted':
      return { kind: 'residue-of-treatment', countedBefore: 'yes' };
    case 'reused-on-site':
      return { kind: 'reclaimed-on-site', countedBefore: 'yes' };
    case 'under-rules-of-its-own':
      return { kind: 'own-rules' };
    case 'not-hazardous':
      return { kind: 'not-hazardous' };
  }
}

function originOf(state: State, stream: StreamState): Origin {
  const { counting, body } = stream;
  if (counting) return originSaid(counting.body.counted, 'not determined');
  return leftOfTreatment.has(body.stream)
    ? { kind: 'residue-of-treatment', countedBefore: countedBefore(state, stream) }
    : { kind: 'generated' };
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
  readonly total: Figure<'kg'> | null;
  /** Containers, and wastes in none, whose mass nothing tells: the total is at least. */
  readonly unweighed: readonly string[];
};

const isHere = ({ goneSince, holds, doubtfulSince, levels }: ContainerState): boolean =>
  goneSince === null && (!isNothing(holds) || doubtfulSince !== null || levels.length > 0);

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
  const [first, ...more] = masses;
  const total = first
    ? workedOut({ sentence: 'Waste on site', unit: 'kg', formula: plus(first, ...more) })
    : null;
  return { total, unweighed };
}
