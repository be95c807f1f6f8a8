/** The pH of what a container holds, as far as the record tells: the last one read of it, else from its free acid. */
import { acidPerLitre, type Load } from '../chemistry/load';
import { phFromAcid, phRead } from '../chemistry/ph-from-acid';
import type { Figure } from '../quantities/figure';
import { rcra } from '../reference/rcra-tables';
import type { StreamKind } from '../safety/stream-kind';
import { phReport } from './lab-levels';
import type { ContainerState, Happening, State } from './state';
import { wasteKinds } from './waste-kinds';

/** Wastes with a base in them, or with ammonia: acid alone does not say what their pH is, nor that of a mixture with them. */
const withBase: ReadonlySet<StreamKind> = new Set<StreamKind>([
  'ammonia-test-waste',
  'treated-slurry',
  'filtrate',
  'hydroxide-sludge',
  'spill-absorbent',
]);

/** At the limit of the laws, or more acid: then it is so whatever else of the acid is not known. */
const strong = rcra.corrosive.acid.value;

/**
 * Worked out from the free acid, unless something in it is known to take acid up. Where some of the acid is not known, it
 * says only how strong it is at the least.
 */
export function phOfAcid(load: Load | undefined, kinds: readonly StreamKind[]): Figure<'1'> | undefined {
  if (!load || kinds.some((kind) => withBase.has(kind))) return undefined;
  const acid = acidPerLitre(load);
  if (load.freeAcid.openIn.length === 0) return acid && phFromAcid(acid);
  const atMost = acid && phFromAcid(acid, 'at most');
  return atMost?.high.lte(strong) ? atMost : undefined;
}

/** Of a liquor that is alone in its container as it was logged. */
function ofItsStream(state: State, { contents }: ContainerState): Figure<'1'> | undefined {
  const [part, second] = contents;
  if (!part || second || part.streamId === null || part.treatedBy.length > 0 || part.lessWater)
    return undefined;
  const ph = state.streams.get(part.streamId)?.body.liquid?.ph;
  return ph && phRead({ ph: ph.value, instrument: ph.instrument }, `stream/${part.streamId}/ph`);
}

/** Whether it may have moved the pH of what this container holds. */
function movesPh(state: State, containerId: string, { body }: Happening): boolean {
  switch (body.kind) {
    case 'stream-placed':
    case 'water-lost':
    case 'contents-determined':
      return body.containerId === containerId;
    case 'contents-moved':
      return body.toContainerId === containerId;
    case 'dose-added':
      return state.treatments.get(body.treatmentId)?.body.containerId === containerId;
    default:
      return false;
  }
}

/** The last one read in the pot: one from before something went in, or water off, is of something else. */
function readInPot(state: State, { body: { containerId } }: ContainerState): Figure<'1'> | undefined {
  const { happenings, treatments } = state;
  const since = happenings.findLastIndex((told) => movesPh(state, containerId, told));
  const told = happenings
    .slice(since + 1)
    .flatMap(({ entryId, body }) =>
      body.kind === 'pot-read' &&
      body.ph &&
      treatments.get(body.treatmentId)?.body.containerId === containerId
        ? [{ entryId, ph: body.ph }]
        : [],
    )
    .at(-1);
  return told && phRead({ ph: told.ph.value, instrument: told.ph.instrument }, `entry/${told.entryId}/ph`);
}

/** Of the newest sample that a laboratory had, while what was sampled is what is in it. */
function reportedPh({ reports }: ContainerState): Figure<'1'> | undefined {
  const told = phReport(reports);
  return told?.body.ph && phRead({ ph: told.body.ph, instrument: 'meter' }, `entry/${told.entryId}/ph`);
}

/** Undefined where nothing tells of it: not determined, whatever is likely. */
export function phOf(
  state: State,
  container: ContainerState,
  load: Load | undefined,
): Figure<'1'> | undefined {
  const { kinds } = wasteKinds(state, container.body.containerId);
  return (
    readInPot(state, container) ??
    reportedPh(container) ??
    ofItsStream(state, container) ??
    phOfAcid(load, kinds)
  );
}
