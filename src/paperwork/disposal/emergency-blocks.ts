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
    shares: [48, 52],
  };
}

function hazardBlocks({ hazards }: Emergency, all: readonly string[]): Block {
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
        text: [{ text: `${title}: `, strong: true }, { text: w.ofContainers(containers, all) }],
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

const saysThis = (act: string): boolean => act.endsWith('Say this:');

function cardBlock({ title, say, steps }: Emergency['cards'][number]): Block {
  const words = w.say(say);
  const said = steps.some(({ do: act }) => saysThis(act));
  const card: Block = {
    kind: 'paragraph',
    text: [
      { text: w.cardTitle(title), strong: true },
      ...steps.flatMap(({ do: act, more }, at) => [
        { text: ` ${at + 1}\u00a0${act} `, strong: true },
        { text: [...(saysThis(act) ? [words] : []), ...more].join(' ') },
      ]),
      ...(said ? [] : [{ text: w.whenCalling, strong: true }, { text: words }]),
    ],
  };
  return { kind: 'together', parts: [card] };
}

export const emergencyBlocks = ({ emergency, containers }: DisposalData): Block[] => [
  { kind: 'part-head', title: w.parts.emergency, anchor: 'emergency', line: w.emergencyLine },
  callBlocks(emergency),
  hazardBlocks(
    emergency,
    containers.map(({ code }) => code),
  ),
  ...emergency.cards.map(cardBlock),
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
