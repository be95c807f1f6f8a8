/** What was done of late enough to be asked for: the last time of each, however long ago. */
import { asHappened } from './grouping';
import { hasLabels } from './has-labels';
import type { State, WalkState } from './state';

/** Of the looks at containers on a walk as many as tell of every look that was asked. */
function everyLook(inspected: WalkState['inspected']): readonly string[] {
  const asked = new Set<string>();
  return inspected.flatMap(({ entryId, body: { looks } }) => {
    const before = asked.size;
    for (const look of looks) asked.add(look);
    return asked.size > before ? entryId : [];
  });
}

/** The last list of each kind that each person went through, the last walk, reading, look at a hood, paper, and label of what stands here. */
export function lastOfEach(state: State): readonly string[] {
  type Last = { readonly key: string; readonly entryIds: readonly string[] };
  const one = (key: string, entryId: string): Last => ({ key, entryIds: [entryId] });
  const checklists = [...state.checklists.values()];
  const lists = checklists.map(({ entryId, who, body }) =>
    one(`${body.checklist.id} ${who} ${body.outcome}`, entryId),
  );
  const readings = checklists.flatMap(({ entryId, body }) =>
    body.answers.flatMap(({ item, kind, answer }) =>
      kind === 'reading' && answer !== 'not-applicable'
        ? one(`reading ${body.checklist.id} ${item}`, entryId)
        : [],
    ),
  );
  const walks = [...state.walks.values()].flatMap(({ inspected, finished }): readonly Last[] => {
    if (!finished) return [];
    const { entryId, who, body } = finished;
    return [
      { key: `walk ${who}`, entryIds: [entryId, ...everyLook(inspected)] },
      ...body.readings.map(({ look }) => one(`on walk ${body.list.id} ${look}`, entryId)),
    ];
  });
  const hoods = [...state.ventilationChecks.values()].map(({ entryId, body }) =>
    one(`hood ${body.stationId}`, entryId),
  );
  const made = [...state.papers.values()];
  const papers = made.map(({ entryId }) => one('paper', entryId));
  const labels = asHappened(made.filter(({ body }) => hasLabels(body))).flatMap(({ entryId, body }) =>
    body.containerIds.flatMap((id) =>
      state.containers.get(id)?.goneSince === null ? one(`label ${id}`, entryId) : [],
    ),
  );
  const last = new Map(
    [...lists, ...readings, ...walks, ...hoods, ...papers, ...labels].map(({ key, entryIds }) => [
      key,
      entryIds,
    ]),
  );
  return [...new Set([...last.values()].flat())];
}
