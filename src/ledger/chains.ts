/** The chains of a record that may lack entries: what holds together, and where something is missing. */
import type { Entry } from './entries/entry';
import type { Head } from './verify';

/** What of an entry stands in a chain. */
export type Link = Pick<Entry, 'id' | 'device' | 'counter' | 'hash' | 'previous'>;

/** Entries `from` to `to` of a device are not there. */
export type Gap = { readonly device: string; readonly from: number; readonly to: number };

export const gapLength = ({ from, to }: Gap): number => to - from + 1;

/** Some of them may have come back since. */
export const isWithin = (gap: Gap, one: Gap): boolean =>
  one.device === gap.device && one.from <= gap.from && gap.to <= one.to;

/** This entry does not name the one before it: one of the two was changed and sealed anew. */
export type Break = { readonly device: string; readonly counter: number };

export type Chains = {
  readonly heads: readonly Head[];
  readonly gaps: readonly Gap[];
  readonly breaks: readonly Break[];
  /** Stands at a place where another one stands already; null as it should be. */
  readonly second: Link | null;
};

export const linkOf = ({ id, device, counter, hash, previous }: Link): Link => ({
  id,
  device,
  counter,
  hash,
  previous,
});

/** Links by device, each in the order of its counters. */
function byDevice(links: Iterable<Link>): ReadonlyMap<string, readonly Link[]> {
  const devices = new Map<string, Link[]>();
  for (const link of links) {
    const own = devices.get(link.device);
    if (own) own.push(link);
    else devices.set(link.device, [link]);
  }
  for (const own of devices.values()) own.sort((a, b) => a.counter - b.counter);
  return devices;
}

/**
 * Follows each device's chain from its first entry; across a gap it cannot be followed, and goes on behind it.
 * @param links in any order; of entries that are each whole in themselves
 */
export function chainsOf(links: Iterable<Link>): Chains {
  const heads: Head[] = [];
  const gaps: Gap[] = [];
  const breaks: Break[] = [];
  let second: Link | null = null;
  for (const [device, own] of byDevice(links)) {
    let before: Link | null = null;
    for (const link of own) {
      const expected: number = (before?.counter ?? 0) + 1;
      const { counter } = link;
      if (counter < expected) second ??= link;
      else if (counter > expected) gaps.push({ device, from: expected, to: counter - 1 });
      else if (link.previous !== (before?.hash ?? null)) breaks.push({ device, counter });
      before = link;
    }
    if (before) heads.push({ device, counter: before.counter, hash: before.hash });
  }
  return { heads, gaps, breaks, second };
}
