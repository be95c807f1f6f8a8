/** Which entries have to stand in a register, beside its own, for every gap in the chain of a device to show. */
import type { Entry } from '../../ledger/entries/entry';
import type { RegisterData } from './register-data';

const byDevice = (log: readonly Entry[]): ReadonlyMap<string, readonly Entry[]> => {
  const chains = new Map<string, Entry[]>();
  for (const entry of log) {
    const chain = chains.get(entry.device);
    if (chain) chain.push(entry);
    else chains.set(entry.device, [entry]);
  }
  for (const chain of chains.values()) chain.sort((a, b) => a.counter - b.counter);
  return chains;
};

type Chains = ReturnType<typeof byDevice>;

/**
 * Of each device, the last entry before those that were written in the period and the first after them, and what a clock that
 * was set wrongly put between; where a device wrote nothing then, the two that lie around it. With them a reader sees that nothing
 * that was written in the period is left out.
 */
function besides(chains: Chains, { from, until }: { readonly from: string; readonly until: string }) {
  const ids = new Set<string>();
  for (const chain of chains.values()) {
    const within = ({ writtenAt }: Entry) => writtenAt >= from && writtenAt < until;
    const first = chain.findIndex(within);
    const later = chain.findIndex(({ writtenAt }) => writtenAt >= until);
    const none = later < 0 ? chain.length : later;
    const around =
      first < 0
        ? chain.slice(Math.max(0, none - 1), none + 1)
        : chain.slice(Math.max(0, first - 1), chain.findLastIndex(within) + 2);
    for (const { id } of around) ids.add(id);
  }
  return ids;
}

/** Hashes of the entries between the first and the last that stand in the register whole, device by device, in runs. */
function linksBetween(chains: Chains, whole: ReadonlySet<string>): RegisterData['links'] {
  const links: RegisterData['links'] = [];
  for (const [device, chain] of chains) {
    const first = chain.findIndex(({ id }) => whole.has(id));
    const last = chain.findLastIndex(({ id }) => whole.has(id));
    let run: RegisterData['links'][number] | null = null;
    for (const { id, counter, hash } of first < 0 ? [] : chain.slice(first, last + 1)) {
      if (whole.has(id)) run = null;
      // An entry that the phone cannot read any more is in no list: the gap stays one.
      else if (run && counter === run.first + run.hashes.length) run.hashes.push(hash);
      else {
        run = { device, first: counter, hashes: [hash] };
        links.push(run);
      }
    }
  }
  return links;
}

const headsOf = (chains: Chains): RegisterData['heads'] =>
  [...chains.values()].flatMap((chain) => {
    const last = chain.at(-1);
    return last ? [{ device: last.device, counter: last.counter, hash: last.hash }] : [];
  });

/** @param whole entries that stand in it in any case, by id */
export function chainOf(
  log: readonly Entry[],
  whole: ReadonlySet<string>,
  period: { readonly from: string; readonly until: string },
) {
  const chains = byDevice(log);
  const beside = besides(chains, period);
  return { beside, links: linksBetween(chains, new Set([...whole, ...beside])), heads: headsOf(chains) };
}
