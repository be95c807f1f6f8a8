/** How a waste came about, as the counting of a month asks it: by somebody's word, else by what the record tells. */
import type { Candidate } from '../rules/candidate';
import { byOrigin, type Known, type Origin } from '../rules/quantities/counting';
import { rcraCandidates } from '../rules/rcra/candidates';
import type { StreamKind } from '../safety/stream-kind';
import { mixtureFrom } from './container-mixture';
import { comingOfWaste } from './dilution';
import type { CountingSaid } from './entries/streams';
import type { State, StreamState } from './state';

/** Wastes that are left of treating others on site. */
const leftOfTreatment: ReadonlySet<StreamKind> = new Set<StreamKind>([
  'treated-slurry',
  'filtrate',
  'hydroxide-sludge',
]);

type UnitKind = Extract<Origin, { kind: 'into-unit' }>['unit'];

/** One that is not so makes all of it not so; one that is open leaves all of it open. */
const allOf = (known: readonly Known[]): Known =>
  known.includes('no') ? 'no' : known.includes('not determined') ? 'not determined' : 'yes';

/** Whether a waste was counted once: in its own month, or as that of which it is left. */
function countedOnce(origin: Origin): Known {
  if ('countedBefore' in origin && origin.countedBefore === 'yes') return 'yes';
  return byOrigin(origin).counts ? 'yes' : 'no';
}

/**
 * Wastes that were treated on site before one that is left of treating was logged: with its batch where it has one, whatever
 * else was in the pot; else all. Undefined among them stands for what no logged waste accounts for.
 */
function treatedBefore(state: State, { body, at }: StreamState): readonly (StreamState | undefined)[] {
  const { batchId } = body;
  return [...state.treatments.values()]
    .filter((treatment) => treatment.at <= at)
    .map(({ treated }) => (treated ?? []).map(({ streamId }) => state.streams.get(streamId ?? '')))
    .filter((pot) => batchId === null || pot.some((one) => !one || one.body.batchId === batchId))
    .flat();
}

/** What a waste was made from by treating, as far as the record tells. */
export const treatedFor = (state: State, stream: StreamState): readonly StreamState[] =>
  leftOfTreatment.has(stream.body.stream)
    ? treatedBefore(state, stream).filter((one) => one !== undefined)
    : [];

/** Whether it is told of as left of itself, at once or by way of others: an hour that is wrong somewhere. */
function comesOfItself(state: State, stream: StreamState): boolean {
  const reached = new Set<StreamState>();
  const open = [stream];
  for (let one = open.pop(); one; one = open.pop())
    for (const before of treatedFor(state, one)) {
      if (before === stream) return true;
      if (!reached.has(before)) open.push(before);
      reached.add(before);
    }
  return false;
}

/**
 * Whether what was treated was counted once. Of a mixture that holds anything that was not counted, the residue is counted:
 * the careful answer.
 */
function countedBefore(state: State, stream: StreamState): Known {
  const treated = treatedBefore(state, stream);
  if (treated.length === 0 || comesOfItself(state, stream)) return 'not determined';
  return allOf(treated.map((one) => (one ? countedOnce(originOf(state, one)) : 'not determined')));
}

/** Hazardous waste codes of a waste by the law of the USA, as it was logged. */
export function rcraCodesOf(state: State, { body }: StreamState): readonly Candidate[] {
  const { liquid, solid, stream } = body;
  const amounts = [liquid?.volume, solid?.wetMass].filter((amount) => amount !== undefined);
  const whole = comingOfWaste(state, body, ...amounts);
  return whole ? rcraCandidates(mixtureFrom(whole.contents, [stream], whole.pH).levels) : [];
}

/** Whether it is hazardous for nothing but its corrosivity; open while a test, or a person, may still say otherwise. */
function onlyCorrosive(state: State, stream: StreamState): Known {
  const others = rcraCodesOf(state, stream).filter(({ code }) => code !== 'D002');
  if (others.some(({ standing }) => standing === 'fires')) return 'no';
  return others.every(({ standing }) => standing === 'close') ? 'yes' : 'not determined';
}

/** Straight into a unit; only one for neutralisation asks what else the waste is. */
const intoUnit = (unit: UnitKind, onlyCorrosive: Known = 'not determined'): Origin => ({
  kind: 'into-unit',
  unit,
  straight: 'yes',
  onlyCorrosive,
});

function originSaid(state: State, stream: StreamState, { counted }: CountingSaid): Origin {
  switch (counted) {
    case 'counted':
      return { kind: 'generated' };
    case 'straight-into-neutralisation':
      return intoUnit('elementary-neutralisation', onlyCorrosive(state, stream));
    case 'straight-into-water-treatment':
      return intoUnit('wastewater-treatment');
    case 'straight-into-enclosed-unit':
      return intoUnit('totally-enclosed');
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

export function originOf(state: State, stream: StreamState): Origin {
  if (stream.counting) return originSaid(state, stream, stream.counting.body);
  return leftOfTreatment.has(stream.body.stream)
    ? { kind: 'residue-of-treatment', countedBefore: countedBefore(state, stream) }
    : { kind: 'generated' };
}
