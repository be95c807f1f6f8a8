/** One page for whoever stands before the load when something goes wrong. */
import { type Block, table } from '../document';
import { joined } from '../words';
import type { DisposalData } from './disposal-data';
import type { Emergency } from './set-data';
import { setPaperWords as w } from './set-paper-words';

function callBlocks({ telephones, equipment }: Emergency): Block {
  return {
    kind: 'columns',
    left: [
      { kind: 'heading', level: 2, text: w.callHead },
      {
        kind: 'facts',
        facts: telephones.map(({ who, number }) => ({ term: number, says: who })),
      },
    ],
    right: [
      { kind: 'heading', level: 2, text: w.haveHead },
      { kind: 'list', items: equipment.map(({ says }) => says) },
    ],
    shares: [40, 60],
  };
}

function hazardBlocks({ hazards }: Emergency, all: number): Block {
  if (hazards.length === 0) return { kind: 'paragraph', text: w.noHazard };
  return table(
    [
      { key: 'is', head: w.mayBe, share: 46 },
      { key: 'gases', head: w.gases, share: 36 },
      { key: 'not', head: w.notUsed, share: 42 },
    ],
    hazards.flatMap(({ title, is, gases, notUsed, containers }) => [
      {
        kind: 'note' as const,
        text: [
          { text: `${title}: `, strong: true },
          { text: w.ofContainers(containers, containers.length === all) },
        ],
      },
      {
        kind: 'cells' as const,
        cells: {
          is,
          gases: gases.join(' '),
          not: notUsed.join(' '),
        },
      },
    ]),
  );
}

function cardBlocks({ title, say, steps }: Emergency['cards'][number]): Block[] {
  return [
    {
      kind: 'paragraph',
      text: [
        { text: w.cardTitle(title), strong: true },
        ...steps.flatMap(({ do: act, more }, at) => [
          { text: ` ${at + 1}\u00a0${act} `, strong: true },
          { text: [...(/ Say this:$/.test(act) ? [`“${say.join(' ')}”`] : []), ...more, ''].join(' ') },
        ]),
      ],
    },
  ];
}

/** Cards in two columns of about the same length. */
function measures({ cards }: Emergency): Block[] {
  if (cards.length === 0) return [];
  const weight = ({ steps, say }: Emergency['cards'][number]): number =>
    2 +
    steps.reduce((sum, one) => sum + one.do.length + one.more.join(' ').length, say.join(' ').length) / 50;
  type Filling = { readonly blocks: Block[]; height: number };
  const columns: readonly [Filling, Filling] = [
    { blocks: [], height: 0 },
    { blocks: [], height: 0 },
  ];
  for (const card of cards) {
    const [left, right] = columns;
    const shorter = left.height <= right.height ? left : right;
    shorter.blocks.push(...cardBlocks(card));
    shorter.height += weight(card);
  }
  const [{ blocks: left }, { blocks: right }] = columns;
  return [{ kind: 'columns', left, right }];
}

export const emergencyBlocks = ({ emergency, containers }: DisposalData): Block[] => [
  { kind: 'part-head', title: w.parts.emergency, anchor: 'emergency', line: w.emergencyLine },
  callBlocks(emergency),
  hazardBlocks(emergency, containers.length),
  ...measures(emergency),
];

/** Where each sentence is from and how well that is known, behind everything else. */
export function emergencySources({ emergency }: DisposalData): Block[] {
  const { hazards, cards, equipment } = emergency;
  const told = [
    ...hazards.map(({ title, source, status }) => ({ what: title, source, status })),
    ...equipment.map(({ says, source, status }) => ({ what: says, source, status })),
    ...cards.flatMap(({ steps }) =>
      steps.map(({ do: act, source, status }) => ({ what: act, source, status })),
    ),
  ];
  const bySource = new Map<string, string[]>();
  for (const { what, source, status } of told) {
    const key = `${source}: ${status}`;
    bySource.set(key, [...(bySource.get(key) ?? []), what]);
  }
  return [
    { kind: 'heading', level: 1, text: w.emergencySources },
    ...[...bySource].map(
      ([source, whats]): Block => ({
        kind: 'paragraph',
        size: 'small',
        text: [{ text: source, strong: true }, { text: `\u2002${joined([...new Set(whats)].map(quoted))}` }],
      }),
    ),
  ];
}

const quoted = (text: string): string => `“${text}”`;
