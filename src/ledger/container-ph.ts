/** The pH of what a container holds, as far as the record tells: the last one read of it, else from its free acid. */
import { acidPerLitre, type Load } from '../chemistry/load';
import { phFromAcid, phRead } from '../chemistry/ph-from-acid';
import type { Figure } from '../quantities/figure';
import type { ContainerState, State } from './state';

/** Of a liquor that is alone in its container as it was logged. */
function ofItsStream(state: State, { contents }: ContainerState): Figure<'1'> | undefined {
  const [part, second] = contents;
  if (!part || second || part.streamId === null || part.treatedBy.length > 0) return undefined;
  const ph = state.streams.get(part.streamId)?.body.liquid?.ph;
  return ph && phRead({ ph: ph.value, instrument: ph.instrument }, `stream/${part.streamId}/ph`);
}

/** Read in the pot since the last thing went in: a reading before that is of something else. */
function readInPot(state: State, { treatmentIds, movements }: ContainerState): Figure<'1'> | undefined {
  const treatment = state.treatments.get(treatmentIds.at(-1) ?? '');
  const told = treatment?.readings.findLast(({ body }) => body.ph !== undefined);
  const ph = told?.body.ph;
  if (!treatment || !told || !ph) return undefined;
  const since = [
    ...treatment.doses.map(({ at }) => at),
    ...movements.filter(({ way }) => way === 'in').map(({ at }) => at),
  ];
  if (since.some((at) => at > told.at)) return undefined;
  return phRead({ ph: ph.value, instrument: ph.instrument }, `entry/${told.entryId}/ph`);
}

/** Undefined where nothing tells of it: not determined, whatever is likely. */
export function phOf(
  state: State,
  container: ContainerState,
  load: Load | undefined,
): Figure<'1'> | undefined {
  const read = readInPot(state, container) ?? ofItsStream(state, container);
  if (read) return read;
  const acid = load && load.freeAcid.openIn.length === 0 ? acidPerLitre(load) : undefined;
  return acid && phFromAcid(acid);
}
