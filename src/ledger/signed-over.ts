/**
 * What a signature under containers is of: whether anything was told of them since. Of an opening it is the same as of the whole
 * record, so only what holds still counts: what befell a container until it was last empty may not be at hand.
 */
import { hashOf } from './seal';
import type { ContainerState, State, StreamState, TreatmentState } from './state';
import { lastEmpty, marksThatCount } from './what-holds-of-a-container';

type Of = { readonly entryId: string };

const entriesOf = (told: readonly Of[]): readonly string[] => told.map(({ entryId }) => entryId);

const ofStream = (stream: StreamState | undefined): readonly string[] =>
  stream ? entriesOf([stream, ...stream.tests, ...(stream.counting ? [stream.counting] : [])]) : [];

const ofTreatment = (treatment: TreatmentState | undefined): readonly string[] => {
  if (!treatment) return [];
  const { doses, readings, ended } = treatment;
  return entriesOf([treatment, ...doses, ...readings, ...(ended ? [ended] : [])]);
};

/** Entries that tell of it and of what is in it. */
function toldOf({ streams, treatments }: State, container: ContainerState): readonly string[] {
  const { contents, changes, answers, movements, levels, reports, treatmentIds } = container;
  const since = lastEmpty(container, '\uffff');
  const befell = [...movements, ...levels, ...reports].filter(({ at }) => at >= since);
  const begun = treatmentIds.filter((id) => (treatments.get(id)?.at ?? '') >= since);
  const treated = new Set([...begun, ...contents.flatMap(({ treatedBy }) => treatedBy)]);
  const wastes = new Set(contents.flatMap(({ streamId }) => streamId ?? []));
  return [
    ...entriesOf([container, ...changes, ...answers, ...befell]),
    ...marksThatCount(container),
    ...[...wastes].flatMap((id) => ofStream(streams.get(id))),
    ...[...treated].flatMap((id) => ofTreatment(treatments.get(id))),
  ];
}

/**
 * Changes with whatever is told of these containers and of the wastes in them, and with each change of that: what was
 * signed before was of other things.
 */
export function signedOver(state: State, containerIds: readonly string[]): string {
  const told = containerIds.map((id) => {
    const container = state.containers.get(id);
    return [id, ...(container ? new Set(toldOf(state, container)) : [])].toSorted();
  });
  const changes = new Map(state.history.map(({ entry, changedBy }) => [entry.id, changedBy]));
  const entries = new Set(told.flat());
  // Also what changes a change: a correction that was withdrawn. A set goes through what is added meanwhile too.
  for (const id of entries) for (const change of changes.get(id) ?? []) entries.add(change);
  return hashOf([told.toSorted(), [...entries].toSorted()]);
}
