/** Walks along the containers, and what they found. */
import { asHappened, grouped } from './grouping';
import type { SortedFacts } from './sorted-facts';
import type { FindingState, WalkState } from './state';

/** Walks by their id, as far as each went. */
export function walksOf(facts: SortedFacts): Map<string, WalkState> {
  const inspected = grouped(asHappened(facts['container-inspected']), ({ body }) => body.walkId);
  const finished = new Map(asHappened(facts['walk-finished']).map((told) => [told.body.walkId, told]));
  return new Map(
    [...new Set([...inspected.keys(), ...finished.keys()])].map((walkId) => [
      walkId,
      { walkId, inspected: inspected.get(walkId) ?? [], finished: finished.get(walkId) ?? null },
    ]),
  );
}

/** What walks found, by its id, each with how it was closed. */
export function findingsOf(facts: SortedFacts): Map<string, FindingState> {
  const closed = new Map(asHappened(facts['finding-closed']).map((told) => [told.body.findingId, told]));
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
}
