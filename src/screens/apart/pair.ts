/** Two things picked from the lists, as sides of a meeting. */
import { isDoubted } from '../../ledger/container-life';
import { contentsSide, vesselSide } from '../../ledger/meeting-sides';
import type { ContainerState, State } from '../../ledger/state';
import { wasteKinds } from '../../ledger/waste-kinds';
import type { DecimalSign } from '../../quantities/format';
import { type Matter, sortOf, type ThingId, thingIds } from '../../safety/must-not-meet/matter';
import { type Meeting, meetings, refusedMeeting } from '../../safety/must-not-meet/meetings';
import { unbroken } from '../../ui/figure-value';
import type { SelectOption } from '../../ui/select-field';
import { contentsTitle, heldText } from '../amounts';
import { thingName } from '../words';
import { apartWords as w } from './words';

const prefix = 'container ';

/** A container as a choice in the lists. */
export const containerValue = (containerId: string): string => `${prefix}${containerId}`;

const containerIn = (state: State, value: string): ContainerState | undefined =>
  state.containers.get(value.slice(prefix.length));

type Group = keyof typeof w.groups;

/** A title that cannot be picked, and under it what belongs to it. */
const listed = (group: Group, options: readonly SelectOption<string>[]): readonly SelectOption<string>[] =>
  options.length === 0
    ? []
    : [{ value: `title ${group}`, label: w.groups[group], disabled: true }, ...options];

const things: readonly Exclude<Group, 'containers'>[] = [
  'waste',
  'acid',
  'base',
  'metal',
  'reagent',
  'burns',
  'other',
  'material',
];

/** What the lists do not have. */
const unlisted = 'unlisted';

const asOption = (thing: ThingId): SelectOption<string> => ({ value: thing, label: thingName(thing) });

/** Everything that can be asked for: the containers that are there, wastes, what stands on the shelf, materials. */
export function choicesOf(state: State, sign: DecimalSign): readonly SelectOption<string>[] {
  const here = [...state.containers.values()].filter(({ goneSince }) => goneSince === null);
  const containers = here.map((container) => {
    const { body, holds } = container;
    const contents = contentsTitle(state, body.containerId);
    const held = contents === '' ? '' : `${contents}, ${heldText(holds, sign)}`;
    const told = isDoubted(state, container) ? w.doubted : held;
    return { value: containerValue(body.containerId), label: w.container(unbroken(body.code), told) };
  });
  return [
    ...listed('containers', containers),
    ...things.flatMap((group) =>
      listed(group, thingIds.filter((thing) => sortOf(thing) === group).map(asOption)),
    ),
    { value: unlisted, label: w.unlisted },
  ];
}

export type Answer = {
  readonly says: keyof typeof w.answer;
  /** Worst first. */
  readonly found: readonly Meeting[];
};

/** What stands behind a choice; null where nobody knows what is in it. */
function sideOf(state: State, value: string): readonly Matter[] | null {
  if (!value.startsWith(prefix)) return [{ thing: value }];
  const container = containerIn(state, value);
  if (!container) return null;
  const { containerId } = container.body;
  if (container.doubtfulSince !== null || wasteKinds(state, containerId).unaccounted) return null;
  return [...contentsSide(state, containerId), ...vesselSide(container.body)];
}

/** What is known of two that meet; null until both are picked. */
export function answerTo(state: State, one: string, other: string): Answer | null {
  if (one === '' || other === '') return null;
  if (one === unlisted || other === unlisted) return { says: 'unlisted', found: [] };
  const [a, b] = [sideOf(state, one), sideOf(state, other)];
  if (!a || !b) return { says: 'unknown', found: [] };
  const found = meetings(a, b);
  if (refusedMeeting(found)) return { says: 'refuse', found };
  if (found.length > 0) return { says: 'mind', found };
  return { says: one === other ? 'same' : 'none', found };
}
