/** Which entries are about one thing, what corrected or withdrew them among them. */
import type { Entry } from './entries/entry';
import { type Reference, referencesOf } from './references';
import { namedBy } from './standing';
import type { HistoryLine, State } from './state';

export type Thing = {
  readonly is: 'container' | 'batch' | 'treatment' | 'hand-over';
  readonly id: string;
};

type Named = Pick<Reference, 'to' | 'id'>;

/** What belongs to a thing so much that whatever is said of it is said of the thing. */
const partsOf: Readonly<Record<Thing['is'], readonly Reference['to'][]>> = {
  container: ['treatment', 'finding', 'checklist'],
  batch: ['step', 'stream', 'checklist', 'clock'],
  treatment: [],
  'hand-over': [],
};

/** Things that an entry brings into the record, as later entries name them. */
export function brings(id: string, body: Entry['body']): readonly Named[] {
  switch (body.kind) {
    case 'container-opened':
      return [{ to: 'container', id: body.containerId }];
    case 'batch-opened':
      return [{ to: 'batch', id: body.batchId }];
    case 'treatment-begun':
      return [{ to: 'treatment', id: body.treatmentId }];
    case 'handed-over':
      return [{ to: 'hand-over', id: body.handOverId }];
    case 'step-started':
      return [{ to: 'step', id: body.stepId }];
    case 'stream-logged':
      return [{ to: 'stream', id: body.streamId }];
    case 'clock-started':
      return [{ to: 'clock', id: body.clockId }];
    case 'checklist-finished':
      return [{ to: 'checklist', id }];
    case 'container-inspected':
      return body.found.map(({ findingId }) => ({ to: 'finding', id: findingId }));
    case 'entry-corrected':
      return brings(body.corrects, body.body);
    default:
      return [];
  }
}

/**
 * Goes along entries, best in the order of the record, and takes those about the thing. `missed` are entries that were passed
 * before a correction made them about it.
 */
export type Gathering = {
  readonly takes: (entry: Entry) => boolean;
  readonly missed: () => readonly string[];
};

export function gathering(thing: Thing): Gathering {
  const parts = partsOf[thing.is];
  const known = new Set([thing.id]);
  const taken = new Set<string>();
  const corrected = new Set<string>();
  const isOf = ({ to, id }: Named): boolean => known.has(id) && (to === thing.is || parts.includes(to));
  return {
    takes: (entry) => {
      const named = namedBy(entry);
      const brought = brings(entry.id, entry.body);
      const about =
        (named !== null && taken.has(named)) || brought.some(isOf) || referencesOf(entry.body).some(isOf);
      if (!about) return false;
      taken.add(entry.id);
      if (named !== null) corrected.add(named);
      for (const { to, id } of brought) if (parts.includes(to)) known.add(id);
      return true;
    },
    missed: () => [...corrected].filter((id) => !taken.has(id)),
  };
}

/** Lines of what the state holds about it, in the order of the record. */
export function linesAbout(state: State, thing: Thing): readonly HistoryLine[] {
  const { takes, missed } = gathering(thing);
  const taken = new Set<string>();
  // Twice: entries of another device may name what stands behind them.
  for (const { entry } of [...state.history, ...state.history]) if (takes(entry)) taken.add(entry.id);
  for (const id of missed()) taken.add(id);
  return state.history.filter(({ entry }) => taken.has(entry.id));
}
