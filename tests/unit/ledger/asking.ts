/** Asking two states for all that pages, papers and lists read of them, by name, so that they can be held against each other. */
import type { ContainerState, State } from '../../../src/ledger/state';

/** What happened longer ago than `since` is asked of neither. */
export type When = { readonly now: string; readonly zone: string; readonly since: string };

export type Told = Readonly<Record<string, unknown>>;

export type Asking = (state: State, when: When) => Generator<readonly [string, unknown]>;

export const idOf = ({ body }: ContainerState): string => body.containerId;

export const standing = (state: State): readonly ContainerState[] =>
  [...state.containers.values()].filter(({ goneSince }) => goneSince === null);

export const askers = ({ people }: State): readonly (string | null)[] => [
  null,
  ...[...people.values()].flatMap(({ leftAt, body }) => (leftAt === null ? body.personId : [])),
];

/** Each under the name of what it is asked of: "container C-07 label". */
export function named(of: string, told: Told): readonly (readonly [string, unknown])[] {
  return Object.entries(told).map(([name, value]) => [`${of} ${name}`, value]);
}
