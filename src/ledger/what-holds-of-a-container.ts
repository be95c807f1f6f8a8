/** What of all that was told of a container holds still: since when it was last empty, what came in since, and which marks count. */
import { isNothing } from './amounts';
import type { ContainerMarked } from './entries/containers';
import type { ContainerMovement, ContainerState, State } from './state';
import { wholeOf } from './whole-of';

/** Nothing is in it any more: where all the water went off, what was dissolved still is. */
const emptiedBy = ({ after, purpose }: ContainerMovement): boolean =>
  isNothing(after) && purpose !== 'evaporated';

/** When what is in it without being in the record was read; what it is that was read counts until it is told to be empty. */
const readAt = (container: ContainerState): string | undefined =>
  isNothing(container.holds) && wholeOf(container).length > 0 ? container.levels.at(-1)?.at : undefined;

/** When it was last empty before `at`; the empty text, which comes before every moment, where it never was. */
export function lastEmpty(container: ContainerState, at: string): string {
  const read = readAt(container);
  const until = read !== undefined && read < at ? read : at;
  return container.movements.findLast((movement) => movement.at < until && emptiedBy(movement))?.at ?? '';
}

/** What undoes another mark, or says that nothing is in it: the last of each may end what other entries say. */
const undoing: readonly ContainerMarked['mark'][] = [
  'reopened',
  'let-go',
  'staying',
  'came-back',
  'mended',
  'contents-known',
  'emptied',
];

/** Since when what a mark says holds; null where it does not. A doubt ends in more ways than by a mark. */
const holdsSince = (container: ContainerState): Partial<Record<ContainerMarked['mark'], string | null>> => ({
  closed: container.closedAt,
  held: container.heldSince,
  leaving: container.leavingSince,
  gone: container.goneSince,
  damaged: container.damagedSince,
  'contents-doubtful': container.doubtfulSince,
  'proof-filed': container.proofFiledAt,
});

/** Marks that still hold, or end others: that it is gone may be told by a hand-over. */
export function marksThatCount(container: ContainerState): readonly string[] {
  const since = holdsSince(container);
  const holding = container.marks.filter(({ at, body }) => at >= (since[body.mark] ?? '\uffff'));
  const ending = undoing.flatMap((mark) => container.marks.findLast(({ body }) => body.mark === mark) ?? []);
  return [...holding, ...ending].map(({ entryId }) => entryId);
}

/** Entries of all that was put into it since it was last empty, and into what that came from until it came. */
export function putInBehind({ containers }: State, containerId: string): ReadonlySet<string> {
  const entries = new Set<string>();
  const asked = new Set<string>();
  const open: [id: string, until: string][] = [[containerId, '\uffff']];
  for (let next = open.pop(); next; next = open.pop()) {
    const [id, until] = next;
    const container = containers.get(id);
    if (!container || asked.has(`${id} ${until}`)) continue;
    asked.add(`${id} ${until}`);
    const since = lastEmpty(container, until);
    for (const { entryId, at, way, otherId } of container.movements) {
      if (way === 'out' || at < since || at > until) continue;
      entries.add(entryId);
      if (otherId !== null) open.push([otherId, at]);
    }
  }
  return entries;
}
