/** The last part of a register: the chain of each device, what working the hashes out again proves, and what not. */
import { type Block, table } from '../document';
import { notDetermined } from '../words';
import type { RegisterData } from './register-data';
import { registerWords as w } from './register-words';

function devicesTable({ entries, links, heads }: RegisterData): Block {
  return table(
    [
      { key: 'device', head: w.device, share: 46 },
      { key: 'whole', head: w.heldWhole, share: 16, align: 'right' },
      { key: 'byHash', head: w.byHash, share: 16, align: 'right' },
      { key: 'reaches', head: w.reaches, share: 22 },
      { key: 'head', head: w.head, share: 44 },
    ],
    heads.map(({ device, counter, hash }) => {
      const own = entries.flatMap(({ entry }) => (entry.device === device ? [entry.counter] : []));
      const byHash = links.reduce((sum, link) => sum + (link.device === device ? link.hashes.length : 0), 0);
      const [first, last] = [own[0], own.at(-1)];
      return {
        kind: 'cells' as const,
        cells: {
          device,
          whole: String(own.length),
          byHash: String(byHash),
          reaches: first === undefined || last === undefined ? notDetermined : w.fromTo(first, last),
          head: w.headText(counter, hash.slice(0, 16)),
        },
      };
    }),
  );
}

export const chainBlocks = (data: RegisterData): Block[] => [
  { kind: 'heading', level: 1, text: w.chain },
  devicesTable(data),
  { kind: 'heading', level: 2, text: w.provesTitle },
  { kind: 'list', items: data.proves },
  { kind: 'heading', level: 2, text: w.doesNotProveTitle },
  { kind: 'list', items: data.doesNotProve },
  { kind: 'paragraph', size: 'small', text: w.howTo },
  { kind: 'paragraph', size: 'small', text: w.hashesInside },
  { kind: 'paragraph', size: 'small', text: w.contentHash(data.contentHash) },
];
