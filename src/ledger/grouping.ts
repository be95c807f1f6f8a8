/** Facts put in order and grouped by what they are about. */
import type { PlainBody } from './entries/body';
import type { Told, Trouble } from './state';

type Thing = { readonly at: string };

const inOrder = new WeakMap<readonly Thing[], readonly Thing[]>();

/** In the order in which they happened; what happened at the same moment stays in the order of the log. Once for a list. */
export function asHappened<T extends Thing>(things: readonly T[]): readonly T[] {
  const known = inOrder.get(things);
  if (known) return known as readonly T[];
  const sorted = things.toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  inOrder.set(things, sorted);
  return sorted;
}

export type ById<B> = {
  readonly things: ReadonlyMap<string, Told<B>>;
  readonly troubles: readonly Trouble[];
};

/** Things by id; the first of an id counts, a second is a trouble. */
export function byId<B extends PlainBody>(facts: readonly Told<B>[], idOf: (body: B) => string): ById<B> {
  const things = new Map<string, Told<B>>();
  const troubles: Trouble[] = [];
  for (const fact of facts) {
    const id = idOf(fact.body);
    if (things.has(id)) troubles.push({ entryId: fact.entryId, code: 'opened-twice', subject: id });
    else things.set(id, fact);
  }
  return { things, troubles };
}

/** The last of each id. */
export const lastById = <T>(things: readonly T[], idOf: (thing: T) => string): ReadonlyMap<string, T> =>
  new Map(things.map((thing) => [idOf(thing), thing]));

export function grouped<T>(
  things: Iterable<T>,
  keyOf: (thing: T) => string | null,
): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const thing of things) {
    const key = keyOf(thing);
    if (key === null) continue;
    const group = groups.get(key);
    if (group) group.push(thing);
    else groups.set(key, [thing]);
  }
  return groups;
}
