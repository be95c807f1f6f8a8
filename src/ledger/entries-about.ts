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

/** Told of a waste, wherever it is: of a container they are told while it was put in there. */
const ofWaste: ReadonlySet<Entry['body']['kind']> = new Set(['stream-tested', 'counting-said']);

/** Wastes that an entry tells of without telling where one is. */
const wastesTold = ({ id, body }: Entry): readonly string[] => {
  const plain = body.kind === 'entry-corrected' ? body.body : body;
  const told = ofWaste.has(plain.kind) ? referencesOf(plain) : brings(id, plain);
  return told.flatMap((named) => (named.to === 'stream' ? named.id : []));
};

/**
 * Goes along entries, best in the order of the record, and takes those about the thing. `missed` are entries that were passed
 * before a later one made them about it: a correction, or one that put a waste into the container.
 */
export type Gathering = {
  readonly takes: (entry: Entry) => boolean;
  readonly missed: () => readonly string[];
};

export function gathering(thing: Thing): Gathering {
  const parts = partsOf[thing.is];
  const known = new Set([thing.id]);
  const taken = new Set<string>();
  const wanted = new Set<string>();
  /** Of a container: wastes that were put in, and entries passed that tell of a waste, by waste. */
  const wastes = new Set<string>();
  const passed = new Map<string, string[]>();
  const isOf = ({ to, id }: Named): boolean => known.has(id) && (to === thing.is || parts.includes(to));
  const pass = (entry: Entry): void => {
    for (const waste of wastesTold(entry)) passed.set(waste, [...(passed.get(waste) ?? []), entry.id]);
  };
  const takeWastes = (references: readonly Named[]): void => {
    for (const { to, id } of references)
      if (to === 'stream') {
        wastes.add(id);
        for (const before of passed.get(id) ?? []) wanted.add(before);
      }
  };
  return {
    takes: (entry) => {
      const named = namedBy(entry);
      const brought = brings(entry.id, entry.body);
      const references = referencesOf(entry.body);
      const about = brought.some(isOf) || references.some(isOf);
      const follows = named !== null && (taken.has(named) || wanted.has(named));
      if (!about && !follows && !wastesTold(entry).some((waste) => wastes.has(waste))) {
        if (thing.is === 'container') pass(entry);
        return false;
      }
      taken.add(entry.id);
      if (named !== null) wanted.add(named);
      if (thing.is === 'container' && about) takeWastes(references);
      for (const { to, id } of brought) if (parts.includes(to)) known.add(id);
      return true;
    },
    missed: () => [...wanted].filter((id) => !taken.has(id)),
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
