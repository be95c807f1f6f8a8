/** Keeps typing smooth while figures take a while: wait until the typing rests, work out one thing at a time. */
import { useEffect, useState } from 'preact/hooks';

/** Long enough for the next digit to be typed. */
const restMs = 300;

/** The value once it has stayed for a moment; at once when it is the first. */
export function useSettled<T>(value: T): T {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), restMs);
    return () => clearTimeout(timer);
  }, [value]);
  return settled;
}

/**
 * What takes a while, worked out after the page has been drawn; until then what stood there before, or nothing yet.
 * @param basis what it rests on: the same object as long as it would come out the same
 */
export function useLater<T>(workOut: () => T, basis: object): T | undefined {
  const [found, setFound] = useState<{ readonly value: T }>();
  useEffect(() => {
    const timer = setTimeout(() => setFound({ value: workOut() }), 0);
    return () => clearTimeout(timer);
  }, [basis]);
  return found?.value;
}

type Found<K, V, B> = { readonly basis: B; readonly map: ReadonlyMap<K, V> };

/**
 * What `workOut` gives for each key, one after the other, with the page drawn between.
 * @param basis what they rest on: the same object or text as long as they would come out the same
 */
export function useOneByOne<K, V, B>(
  keys: readonly K[],
  workOut: (key: K) => V,
  basis: B,
): ReadonlyMap<K, V> {
  const [found, setFound] = useState<Found<K, V, B>>({ basis, map: new Map() });
  useEffect(() => {
    let map: ReadonlyMap<K, V> = new Map();
    let timer: ReturnType<typeof setTimeout>;
    const next = (at: number): void => {
      const key = keys[at];
      if (key === undefined) return;
      map = new Map([...map, [key, workOut(key)]]);
      setFound({ basis, map });
      timer = setTimeout(next, 0, at + 1);
    };
    timer = setTimeout(next, 0, 0);
    return () => clearTimeout(timer);
  }, [basis]);
  return found.basis === basis ? found.map : new Map();
}
