/** Photos of the record as addresses that an `<img>` can show, given back when nobody looks any more. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { type PhotoFound, useShell } from '../shell';

export type Sight =
  | { readonly state: 'there'; readonly url: string }
  | Exclude<PhotoFound, { readonly state: 'there' }>;

const sightOf = (found: PhotoFound): Sight =>
  found.state === 'there' ? { state: 'there', url: URL.createObjectURL(found.picture) } : found;

const giveBack = (sight: Sight | undefined): void => {
  if (sight?.state === 'there') URL.revokeObjectURL(sight.url);
};

/** What is to be seen of each photo, by its hash; nothing of one that is still being opened. */
export function useSights(hashes: readonly string[]): ReadonlyMap<string, Sight> {
  const { photo } = useShell();
  const [sights, show] = useState<ReadonlyMap<string, Sight>>(new Map());
  // What has been asked for; with its sight once it was given.
  const asked = useRef(new Map<string, Sight | undefined>());
  const wanted = hashes.join(' ');
  useEffect(() => {
    const open = async (hash: string): Promise<void> => {
      asked.current.set(hash, undefined);
      const sight = sightOf(await photo(hash));
      // Not wanted any more, or the page was left.
      if (!asked.current.has(hash)) return giveBack(sight);
      asked.current.set(hash, sight);
      show((before) => new Map(before).set(hash, sight));
    };
    const want = new Set(wanted.split(' ').filter((hash) => hash !== ''));
    for (const [hash, sight] of asked.current)
      if (!want.has(hash)) {
        asked.current.delete(hash);
        giveBack(sight);
        show((before) => new Map([...before].filter(([of]) => of !== hash)));
      }
    for (const hash of want) if (!asked.current.has(hash)) void open(hash);
  }, [wanted, photo]);
  useEffect(
    () => () => {
      for (const sight of asked.current.values()) giveBack(sight);
      asked.current.clear();
    },
    [],
  );
  return sights;
}
