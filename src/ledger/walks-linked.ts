/** Walks along the containers, and what they found. */
import { asHappened, lastById } from './grouping';
import type { Remembering } from './memory';
import type { SortedFacts } from './sorted-facts';
import type { FindingState, WalkState } from './state';

/** Walks by their id, as far as each went, in the order in which they ended, or went on for the last time. */
export function walksOf(facts: SortedFacts, told: Remembering): ReadonlyMap<string, WalkState> {
  const inspected = told.grouped(
    'inspected on a walk',
    asHappened(facts['container-inspected']),
    ({ body }) => body.walkId,
  );
  const finished = told.once('walks finished', [facts['walk-finished']], () =>
    lastById(asHappened(facts['walk-finished']), ({ body }) => body.walkId),
  );
  const ids = told.once('walks there are', [inspected, finished], () => {
    const all = [...new Set([...inspected.keys(), ...finished.keys()])];
    const ended = all.map((id) => ({ id, at: (finished.get(id) ?? inspected.get(id)?.at(-1))?.at ?? '' }));
    return new Map(asHappened(ended).map(({ id }) => [id, id]));
  });
  return told.each('walks', ids, [inspected, finished], (walkId) => ({
    walkId,
    inspected: inspected.get(walkId) ?? [],
    finished: finished.get(walkId) ?? null,
  }));
}

/** What walks found, by its id, each with how it was closed. */
export function findingsOf(facts: SortedFacts, told: Remembering): ReadonlyMap<string, FindingState> {
  const closed = told.once('findings closed', [facts['finding-closed']], () =>
    lastById(asHappened(facts['finding-closed']), ({ body }) => body.findingId),
  );
  return told.once('findings', [facts['container-inspected'], facts['walk-finished'], closed], () => {
    const seen = asHappened([...facts['container-inspected'], ...facts['walk-finished']]);
    return new Map(
      seen.flatMap(({ entryId, at, body }) =>
        body.found.map((found) => [
          found.findingId,
          {
            entryId,
            at,
            containerId: body.kind === 'container-inspected' ? body.containerId : null,
            found,
            closed: closed.get(found.findingId) ?? null,
          },
        ]),
      ),
    );
  });
}
