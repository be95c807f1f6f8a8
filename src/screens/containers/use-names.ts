/** Names that a form offers instead of asking to write them: who may have said something, who takes containers away. */
import { useShell } from '../shell';

export function useNames(): { readonly all: readonly string[]; readonly takers: readonly string[] } {
  const { state } = useShell();
  const { authority, collector, hazardousWasteCounter } = state.value.workshop?.body ?? {};
  const people = [...state.value.people.values()].filter(({ leftAt }) => leftAt === null);
  // The counter is written with its address: its first line is its name.
  const counter = hazardousWasteCounter?.split('\n')[0];
  const takers = [collector?.name, counter].filter((name) => name !== undefined);
  const offices = [collector?.name, authority?.name].filter((name) => name !== undefined);
  return { all: [...people.map(({ body }) => body.name), ...offices], takers };
}
