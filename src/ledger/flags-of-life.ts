/** What is wrong with a container as a whole: broken, said to be empty, at another level than the record has it. */
import { isNothing } from './amounts';
import { saidEmpty } from './container-life';
import type { Flag } from './flags';
import { grouped } from './grouping';
import { levelAgainst } from './level-against';
import { reportDisagreements } from './report-disagrees';
import type { ContainerState, State } from './state';
import { wholeOf } from './whole-of';

/** Levels are set against the record only while nothing that was told later explains the difference. */
function flagOfLevel(container: ContainerState): Flag[] {
  const against = levelAgainst(container);
  if (against === null || against.agrees) return [];
  const { level, held, unit, at } = against;
  const about = { containerId: container.body.containerId };
  return [
    {
      pressing: 'soon',
      about,
      code: 'level-disagrees',
      level: level.toFixed(),
      held: held.toFixed(),
      unit,
      at,
    },
  ];
}

function flagOfEmptied(container: ContainerState): Flag[] {
  const { holds, body } = container;
  if (!saidEmpty(container) || isNothing(holds)) return [];
  const about = { containerId: body.containerId };
  const [volume, mass] = [holds.volume.toFixed(), holds.mass.toFixed()];
  return [{ pressing: 'soon', about, code: 'said-empty-yet-holds', volume, mass }];
}

export function flagsOfLife(container: ContainerState): Flag[] {
  const about = { containerId: container.body.containerId };
  const { damagedSince, doubtfulSince, answers } = container;
  const stale = answers.filter(({ staleSince, body }) => staleSince !== null && body.answer === 'accepted');
  return [
    ...(damagedSince !== null && (doubtfulSince !== null || wholeOf(container).length > 0)
      ? [{ pressing: 'now', about, code: 'container-damaged', since: damagedSince } as const]
      : []),
    ...flagOfEmptied(container),
    ...flagOfLevel(container),
    ...(stale.length > 0
      ? [
          {
            pressing: 'soon',
            about,
            code: 'answer-stale',
            answered: stale.map(({ body }) => body.code),
          } as const,
        ]
      : []),
  ];
}

/** One flag for each report that its wastes contradict. */
export function flagsOfReports(state: State, container: ContainerState): Flag[] {
  const byReport = grouped(reportDisagreements(state, container), ({ entryId }) => entryId);
  const { containerId } = container.body;
  return [...byReport].map(([entryId, of]) => ({
    pressing: 'soon',
    about: { containerId, entryId },
    code: 'report-disagrees',
    of: of.map(({ element }) => element),
  }));
}

/** Movements since it was last empty: what was diluted before is gone with what it was in. */
export function flagsOfDilution(state: State, { body, movements }: ContainerState): Flag[] {
  const emptied = movements.findLastIndex(({ after }) => isNothing(after));
  const inside = movements.slice(emptied + 1).filter(({ way }) => way === 'in');
  const since = new Set(inside.map(({ entryId }) => entryId));
  return state.movements.flatMap(({ entryId, body: { diluted } }) =>
    diluted && since.has(entryId)
      ? [
          {
            pressing: 'soon',
            about: { containerId: body.containerId, entryId },
            code: 'was-diluted',
            codes: diluted.codes,
            laws: diluted.laws,
          } as const,
        ]
      : [],
  );
}
