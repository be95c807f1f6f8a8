/** The chain of each device in a register: entries that stand there whole, and hashes of those between them. */
import type { Head, Wrong } from '../../ledger/verify';
import type { RegisterData } from './register-data';
import type { FileWrong, Found, Placed } from './wrong';

/** One place in the chain of a device: an entry, or its hash alone. */
type Node = { readonly counter: number; readonly hash: string; readonly of: Placed | null };

function nodesOf(placed: readonly Placed[], links: RegisterData['links']): ReadonlyMap<string, Node[]> {
  const chains = new Map<string, Node[]>();
  const put = (device: string, node: Node): void => {
    const chain = chains.get(device);
    if (chain) chain.push(node);
    else chains.set(device, [node]);
  };
  for (const one of placed) {
    const { entry } = one;
    if (entry) put(entry.device, { counter: entry.counter, hash: entry.hash, of: one });
  }
  for (const { device, first, hashes } of links)
    hashes.forEach((hash, at) => {
      put(device, { counter: first + at, hash, of: null });
    });
  for (const chain of chains.values()) chain.sort((a, b) => a.counter - b.counter);
  return chains;
}

function wrongInChain(before: Node | undefined, { counter, of }: Node): Wrong | null {
  if (before && counter !== before.counter + 1)
    return { code: 'counter-gap', expected: before.counter + 1, found: counter };
  const stated = of?.entry?.previous;
  if (stated === undefined) return null;
  if (counter === 1)
    return stated === null ? null : { code: 'previous-does-not-match', stated, expected: null };
  const expected = before?.hash;
  if (expected === undefined || stated === expected) return null;
  return { code: 'previous-does-not-match', stated, expected };
}

type Span = Pick<RegisterData['period'], 'from' | 'until'>;

/**
 * Whether the chain shows that nothing written in the period is left out: all from the entry before the first of the period to
 * the one after its last stand here whole, or, where none was written, two that follow each other around it.
 * @param chain each counter once
 */
function showsAll(chain: readonly Node[], { from, until }: Span, head: Head | undefined): boolean {
  const writtenAt = ({ of }: Node): string => of?.entry?.writtenAt ?? '';
  const within = (node: Node): boolean => writtenAt(node) >= from && writtenAt(node) < until;
  const isFirst = (at: number): boolean => chain[at]?.counter === 1;
  const isLast = (at: number): boolean => chain[at]?.counter === head?.counter;
  const first = chain.findIndex(within);
  if (first >= 0) {
    const last = chain.findLastIndex(within);
    const begins = isFirst(first) ? first : first - 1;
    const ends = isLast(last) ? last : last + 1;
    const around = chain.slice(Math.max(0, begins), ends + 1);
    return begins >= 0 && ends < chain.length && around.every(({ of }) => of !== null);
  }
  return chain.some((node, at) => {
    if (node.of === null) return false;
    const next = chain[at + 1];
    if (writtenAt(node) >= until) return isFirst(at);
    return next ? next.of !== null && writtenAt(next) >= until : isLast(at);
  });
}

/** Each device's chain from its first entry here to its last; the first names a hash that nothing here can be held against. */
export function wrongInChains(placed: readonly Placed[], { links, heads, period }: RegisterData) {
  const found: Found[] = [];
  const wrong: FileWrong[] = [];
  const lasts = new Map(heads.map((head) => [head.device, head]));
  const chains = nodesOf(placed, links);
  for (const { device } of heads)
    if (!chains.has(device)) wrong.push({ of: 'chain', code: 'not-shown', device });
  for (const [device, chain] of chains) {
    let before: Node | undefined;
    for (const node of chain) {
      if (before?.counter === node.counter) {
        if (node.of) found.push({ ...node.of, why: { code: 'twice' } });
        else wrong.push({ of: 'chain', code: 'link-twice', device });
        continue;
      }
      const why = wrongInChain(before, node);
      // A gap before a hash alone is told of the next entry that stands here.
      const named = node.of ?? chain.find(({ counter, of }) => counter > node.counter && of !== null)?.of;
      if (why && named) found.push({ number: named.number, id: named.id, why });
      before = node;
    }
    if (chain.at(-1)?.of === null) wrong.push({ of: 'chain', code: 'not-shown', device });
    const head = lasts.get(device);
    const reached = !head || !before || head.counter < before.counter;
    const once = chain.filter((node, at) => node.counter !== chain[at - 1]?.counter);
    if (!showsAll(once, period, head)) wrong.push({ of: 'chain', code: 'not-shown', device });
    if (reached || (head.counter === before?.counter && head.hash !== before.hash))
      wrong.push({ of: 'chain', code: 'head-differs', device });
  }
  return { found, wrong };
}
