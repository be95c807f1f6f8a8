/** Facts put in order and grouped by what they are about. */
import type { PlainBody } from './entries/body';
import type { Told, Trouble } from './state';

type Thing = { readonly entryId: string; readonly at: string };

/** In the order in which they happened; what happened at the same moment stays in the order of the log. */
export const asHappened = <T extends Thing>(things: readonly T[]): T[] =>
  [...things].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));

/** Things by id; the first of an id counts, a second is a trouble. */
export function byId<B extends PlainBody>(
  facts: readonly Told<B>[],
  idOf: (body: B) => string,
  troubles: Trouble[],
): Map<string, Told<B>> {
  const things = new Map<string, Told<B>>();
  for (const fact of facts) {
    const id = idOf(fact.body);
    if (things.has(id)) troubles.push({ entryId: fact.entryId, code: 'opened-twice', subject: id });
    else things.set(id, fact);
  }
  return things;
}

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

export const mapped = <A, B>(map: ReadonlyMap<string, A>, as: (value: A, key: string) => B): Map<string, B> =>
  new Map([...map].map(([key, value]) => [key, as(value, key)]));
