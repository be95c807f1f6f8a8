/** Things under what is said of them, each group where its first stood. */
export function grouped<T, K>(all: readonly T[], by: (one: T) => K): ReadonlyMap<K, readonly T[]> {
  const groups = new Map<K, readonly T[]>();
  for (const one of all) {
    const key = by(one);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return groups;
}
