/** From what was answered on a walk to what is written of it. */
import type { Item } from '../safety/checklist-item';
import type { Checklist } from '../safety/checklist-schema';
import { contentHash } from '../safety/checklists';
import type { Answered } from '../safety/run-schema';
import type { Found } from './entries/inspections';
import type { IntentionOf } from './intention';
import { looksOf } from './walks';

/** What somebody adds to a finding. */
export type Added = Pick<Found, 'note' | 'photos'>;

const said = ({ answer, unit, reason }: Answered): string => {
  const told = unit === undefined ? answer : `${answer} ${unit}`;
  return reason === undefined ? told : `${told}: ${reason}`;
};

/** An answer that was not in order, as a task until it is closed. */
export const foundOf = (answered: Answered, findingId: string, { note, photos }: Added = {}): Found => ({
  findingId,
  look: answered.item,
  ask: answered.ask,
  answer: said(answered),
  ...(answered.verdict === 'stops' ? { stops: true } : {}),
  ...(note === undefined || note === '' ? {} : { note }),
  ...(photos === undefined || photos.length === 0 ? {} : { photos }),
});

const ids = (items: readonly Item[]): string[] => items.map(({ id }) => id);

/** One container on a walk. @param startedAt when it came up on the screen */
export const inspectedIntention = (
  list: Checklist,
  seen: {
    readonly walkId: string;
    readonly containerId: string;
    readonly found: readonly Found[];
    readonly startedAt: string;
    readonly quick?: boolean;
  },
): IntentionOf<'log-inspected'> => ({
  do: 'log-inspected',
  walkId: seen.walkId,
  containerId: seen.containerId,
  looks: ids(looksOf(list, 'container')),
  found: [...seen.found],
  startedAt: seen.startedAt,
  ...(seen.quick ? { quick: true } : {}),
});

/** The end of a walk. @param place answers to the looks of the place, in order; those that do not apply were not asked */
export function finishedWalk(
  list: Checklist,
  walk: {
    readonly walkId: string;
    readonly startedAt: string;
    readonly containerIds: readonly string[];
    readonly notSeen: IntentionOf<'finish-walk'>['notSeen'];
    readonly place: readonly Answered[];
    readonly found: readonly Found[];
  },
): IntentionOf<'finish-walk'> {
  const asked = walk.place.filter(({ verdict }) => verdict !== 'not-applicable');
  return {
    do: 'finish-walk',
    walkId: walk.walkId,
    list: { id: list.id, version: String(list.version), hash: contentHash(list), title: list.title },
    startedAt: walk.startedAt,
    containerIds: [...new Set(walk.containerIds)],
    notSeen: [...walk.notSeen],
    looks: asked.map(({ item }) => item),
    readings: asked.flatMap(({ item, answer, unit }) =>
      unit === undefined ? [] : [{ look: item, value: answer, unit }],
    ),
    found: [...walk.found],
  };
}
