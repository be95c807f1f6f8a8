/**
 * Works out anew only what rests on something that has changed. What comes out never depends on what is remembered: without
 * a memory the same is worked out, only slower.
 */
import { grouped } from './grouping';

type Remembered = { readonly restsOn: readonly unknown[]; readonly value: unknown };

/** What was worked out last, by name. Each state has its own, so that older states keep theirs. */
export type Memory = ReadonlyMap<string, Remembered>;

/** Whether both hold the very same things in the same order. */
export const isSame = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((one, i) => one === b[i]);

/** Whether `now` begins with all that `before` holds. */
export function goesOn<T>(now: readonly T[], before: readonly T[]): boolean {
  return now.length >= before.length && before.every((one, i) => one === now[i]);
}

type Group = ReadonlyMap<string, unknown>;

/** Notes what one of them holds and the other does not, or holds otherwise. */
function noteDifferences(before: Group, now: Group, differing: Set<string>): void {
  if (before === now) return;
  for (const [id, thing] of now) if (before.get(id) !== thing) differing.add(id);
  if (now.size < before.size || differing.size > 0)
    for (const id of before.keys()) if (!now.has(id)) differing.add(id);
}

/** Whether the first of the things are those that there were, in their order. */
function keepsOrder(before: Group, now: Group): boolean {
  const ids = now.keys();
  for (const id of before.keys()) if (ids.next().value !== id) return false;
  return true;
}

type Each<V, T> = {
  readonly things: ReadonlyMap<string, V>;
  readonly groups: readonly Group[];
  readonly made: ReadonlyMap<string, T>;
};

export class Remembering {
  readonly #before: Memory;
  readonly #now = new Map<string, Remembered>();

  constructor(before: Memory = new Map()) {
    this.#before = before;
  }

  /** To be given to the next one. */
  get memory(): Memory {
    return this.#now;
  }

  /** What `make` gives; that of last time where it rests on the very same. @param make is told what it gave last */
  once<T>(name: string, restsOn: readonly unknown[], make: (last: T | undefined) => T): T {
    const before = this.#before.get(name);
    const value =
      before && isSame(before.restsOn, restsOn) ? (before.value as T) : make(before?.value as T | undefined);
    this.#now.set(name, { restsOn, value });
    return value;
  }

  /** Of each thing what `make` gives, made anew only where the thing is another, or what a group holds under its id. */
  each<V, T>(
    name: string,
    things: ReadonlyMap<string, V>,
    groups: readonly Group[],
    make: (thing: V, id: string) => T,
  ): ReadonlyMap<string, T> {
    return this.once<Each<V, T>>(name, [things, ...groups], (last) => {
      const made = last ? new Map(last.made) : new Map<string, T>();
      const differing = new Set<string>(last ? [] : things.keys());
      if (last) {
        noteDifferences(last.things, things, differing);
        for (const [i, group] of groups.entries())
          noteDifferences(last.groups[i] ?? new Map(), group, differing);
      }
      for (const id of differing) {
        const thing = things.get(id);
        if (thing === undefined) made.delete(id);
        else made.set(id, make(thing, id));
      }
      const ordered = !last || keepsOrder(last.things, things);
      const inOrder = (): Map<string, T> => new Map([...things.keys()].map((id) => [id, made.get(id) as T]));
      return { things, groups, made: ordered ? made : inOrder() };
    }).made;
  }

  /** Things by what they are about; a group that holds the same as last time is the same array. */
  grouped<T>(
    name: string,
    things: readonly T[],
    keyOf: (thing: T) => string | null,
  ): ReadonlyMap<string, readonly T[]> {
    type Grouped = { readonly of: readonly T[]; readonly groups: ReadonlyMap<string, readonly T[]> };
    return this.once<Grouped>(name, [things], (last) => {
      if (last && goesOn(things, last.of)) {
        const groups = new Map(last.groups);
        for (const [key, added] of grouped(things.slice(last.of.length), keyOf))
          groups.set(key, [...(groups.get(key) ?? []), ...added]);
        return { of: things, groups };
      }
      const groups = new Map(
        [...grouped(things, keyOf)].map(([key, group]) => {
          const before = last?.groups.get(key);
          return [key, before && isSame(before, group) ? before : group];
        }),
      );
      return { of: things, groups };
    }).groups;
  }
}
