/** What of a container is flagged or not determined: it stays visible in the paper, and can be mended before. */
import type { ContainerFigures } from '../../ledger/container-figures';
import { type Flag, flags } from '../../ledger/flags';
import type { State } from '../../ledger/state';
import { treatmentOf } from '../../ledger/treatment';
import type { Metal } from '../../reference/tables';
import { thingsBehind } from './entries-behind';
import { streamsIn } from './origins';

/** What is wrong or doubtful by the record about a container, its wastes and the steps they came from. */
export function flagsBehind(state: State, containerId: string): readonly Flag[] {
  const { streams, steps } = thingsBehind(state, containerId);
  const container = state.containers.get(containerId);
  const inIt = new Set(container ? streamsIn(state, container).map(({ body }) => body.streamId) : []);
  const entryIds = new Set([container?.entryId]);
  const behind = treatmentOf(state, containerId)?.behind ?? [];
  const treatments = new Set(behind.map(({ body }) => body.treatmentId));
  return flags(state).filter(({ about }) => {
    // What was treated elsewhere is still what was treated.
    if (about.treatmentId !== undefined && treatments.has(about.treatmentId)) return true;
    if (about.containerId !== undefined) return about.containerId === containerId;
    if (about.stepId !== undefined) return steps.has(about.stepId);
    if (about.streamId !== undefined) return inIt.has(about.streamId);
    return (
      about.entryId !== undefined &&
      (entryIds.has(about.entryId) || isOfStream(state, streams, about.entryId))
    );
  });
}

const isOfStream = (state: State, streams: ReadonlySet<string>, entryId: string): boolean =>
  [...streams].some((id) => state.streams.get(id)?.entryId === entryId);

/** Something that nobody told, and the waste that does not tell it. */
export type Untold = {
  readonly what: Extract<Metal, 'Cu' | 'Ni'> | 'acid' | 'held-liquor' | 'unaccounted';
  /** Some of the wastes in it tell; the paper then says "at least". */
  readonly partly: boolean;
  /** Absent where no log accounts for it. */
  readonly streamId?: string;
};

/** What a paper will call "not determined" though a measurement could tell; empty where there is no liquor. */
export function untoldIn({ load, metals, acid, silent, contents }: ContainerFigures): readonly Untold[] {
  const untold: Untold[] = contents.unaccounted ? [{ what: 'unaccounted', partly: false }] : [];
  const add = (what: Untold['what'], openIn: readonly string[], told: boolean): void => {
    const [streamId] = openIn;
    if (streamId !== undefined) untold.push({ what, partly: told, streamId });
    else if (!told) untold.push({ what, partly: false });
  };
  if (load) {
    for (const metal of ['Cu', 'Ni'] as const) {
      const found = metals.find((m) => m.metal === metal);
      add(metal, found?.openIn ?? [], found?.all !== undefined);
    }
    add('acid', acid.openIn, acid.figure !== undefined);
  }
  for (const streamId of silent) untold.push({ what: 'held-liquor', partly: false, streamId });
  return untold;
}
