/** Which kinds of waste a container holds, as far as the record tells. */
import type { StreamKind } from '../safety/stream-kind';
import type { ContentsPart, State } from './state';
import { isNeutralised } from './treatment';

export type WasteKinds = {
  /** Of the streams in it, and of the liquors that its wet solids still hold. */
  readonly kinds: readonly StreamKind[];
  /** Something is in it that no stream accounts for. */
  readonly unaccounted: boolean;
};

/** The kind of a stream, and of the liquor that it holds if it is a wet solid. */
function kindsOfStream(state: State, streamId: string): readonly StreamKind[] {
  const stream = state.streams.get(streamId)?.body;
  const held = stream?.solid?.holds.liquor;
  const mother = held === undefined || held === 'not-determined' ? undefined : state.streams.get(held)?.body;
  return [...(stream ? [stream.stream] : []), ...(mother ? [mother.stream] : [])];
}

/** Liquors that are treated slurry once a base has met them. */
const becomesSlurry: ReadonlySet<StreamKind> = new Set<StreamKind>([
  'leach-liquor',
  'barren-liquor',
  'wash-water',
  'filtrate',
]);

/** What a part is called now. Test waste stays what it was: its dangers do. */
export function namedKind(kind: StreamKind, { treatedBy }: ContentsPart): StreamKind {
  return treatedBy.length > 0 && becomesSlurry.has(kind) ? 'treated-slurry' : kind;
}

/** A treated liquor counts as slurry and as the liquor that it was, until it is read to be acid no more. */
function kindsOfPart(state: State, part: ContentsPart): readonly StreamKind[] {
  const { streamId, treatedBy } = part;
  if (streamId === null) return [];
  const kinds = kindsOfStream(state, streamId);
  const last = state.treatments.get(treatedBy.at(-1) ?? '');
  if (!last) return kinds;
  return kinds.flatMap((kind) => {
    const named = namedKind(kind, part);
    return named === kind || isNeutralised(last) ? [named] : [named, kind];
  });
}

export function kindsOfParts(state: State, parts: readonly ContentsPart[]): WasteKinds {
  const kinds = parts.flatMap((part) => kindsOfPart(state, part));
  return { kinds: [...new Set(kinds)], unaccounted: parts.some(({ streamId }) => streamId === null) };
}

export const wasteKinds = (state: State, containerId: string): WasteKinds =>
  kindsOfParts(state, state.containers.get(containerId)?.contents ?? []);

/** Wastes with nitric acid in them, which give off gas for days, and what took up a spill, with soda that may still foam. */
const gassing: ReadonlySet<StreamKind> = new Set<StreamKind>([
  'leach-liquor',
  'barren-liquor',
  'wash-water',
  'chloride-test-waste',
  'ceramic-residue',
  'spent-filters',
  'spill-absorbent',
]);

/** Whether a waste of this kind must not be shut up tight. */
export const givesGas = (kind: StreamKind): boolean => gassing.has(kind);
