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

type One = { readonly restsOn: readonly unknown[]; readonly made: unknown };

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

  /** Of each thing what `make` gives, made anew only for those that rest on something else than last time. */
  each<V, T>(
    name: string,
    things: ReadonlyMap<string, V>,
    from: readonly unknown[],
    restsOn: (thing: V, id: string) => readonly unknown[],
    make: (thing: V, id: string) => T,
  ): ReadonlyMap<string, T> {
    type Each = { readonly ones: ReadonlyMap<string, One>; readonly made: ReadonlyMap<string, T> };
    return this.once<Each>(name, [things, ...from], (last) => {
      const ones = new Map<string, One>();
      const made = new Map<string, T>();
      for (const [id, thing] of things) {
        const now = [thing, ...restsOn(thing, id)];
        const before = last?.ones.get(id);
        const one = before && isSame(before.restsOn, now) ? before : { restsOn: now, made: make(thing, id) };
        ones.set(id, one);
        made.set(id, one.made as T);
      }
      return { ones, made };
    }).made;
  }

  /** Things by what they are about; a group that holds the same as last time is the same array. */
  grouped<T>(
    name: string,
    things: readonly T[],
    keyOf: (thing: T) => string | null,
  ): ReadonlyMap<string, readonly T[]> {
    return this.once<ReadonlyMap<string, readonly T[]>>(name, [things], (last) => {
      if (!last) return grouped(things, keyOf);
      return new Map(
        [...grouped(things, keyOf)].map(([key, group]) => {
          const before = last.get(key);
          return [key, before && isSame(before, group) ? before : group];
        }),
      );
    });
  }
}
