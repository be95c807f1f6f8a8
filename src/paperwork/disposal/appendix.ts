/** Behind the sheets: the working of every figure, what it stands on, the rules of what must not meet, the entries. */
import { momentText } from '../dates';
import { type Block, type Cell, table } from '../document';
import { statusWords, paperWords as w } from '../words';
import { rangeText } from './container-sheet';
import type { ContainerData, DisposalData, WorkingLine } from './disposal-data';

const strong = (text: string): Cell => ({ text, strong: true });

const sourceText = ({ sources, note }: WorkingLine): string =>
  [
    ...sources.map(({ title, status }) => `${title}: ${statusWords[status] ?? status}`),
    ...(note ? [note] : []),
  ].join('. ');

const result = ({ result: { likely, unit } }: WorkingLine): Cell =>
  unit === '1' ? likely : { text: likely, unit };

function workedTable(lines: readonly WorkingLine[]): Block {
  return table(
    [
      { key: 'id', head: w.line, share: 6 },
      { key: 'what', head: w.what, share: 34 },
      { key: 'formula', head: w.formula, share: 48 },
      { key: 'result', head: w.result, share: 18, align: 'right' },
      { key: 'from', head: w.from, share: 14 },
    ],
    lines.map((line) => ({
      kind: 'cells' as const,
      cells: {
        id: strong(line.id),
        what: line.sentence,
        formula: line.formula ?? line.howKnown,
        result: result(line),
        from: line.from.length === 0 ? line.howKnown : line.from.join(' '),
      },
    })),
  );
}

function readTable(lines: readonly WorkingLine[]): Block {
  return table(
    [
      { key: 'id', head: w.line, share: 6 },
      { key: 'what', head: w.what, share: 36 },
      { key: 'result', head: w.withRange, share: 34 },
      { key: 'source', head: w.source, share: 50 },
    ],
    lines.map((line) => ({
      kind: 'cells' as const,
      cells: {
        id: strong(line.id),
        what: line.sentence,
        result: rangeText(line.result),
        source:
          [line.kind === 'evidence' ? line.howKnown : '', sourceText(line)]
            .filter((text) => text !== '')
            .join('. ') || w.exact,
      },
    })),
  );
}

const ofKind = ({ working }: DisposalData, kind: WorkingLine['kind']) =>
  working.filter((line) => line.kind === kind);

/** Readings first, then what was worked out, container by container; a line that two need stands with the first. */
export function workingBlocks(data: DisposalData): Block[] {
  const worked = ofKind(data, 'worked-out');
  const evidence = ofKind(data, 'evidence');
  if (evidence.length === 0 && worked.length === 0) return [];
  return [
    { kind: 'heading', level: 1, text: w.evidence },
    readTable(evidence),
    ...data.containers.flatMap(({ containerId, code }): Block[] => {
      const own = worked.filter((line) => line.containerId === containerId);
      return own.length === 0 ? [] : [{ kind: 'heading', level: 1, text: w.working(code) }, workedTable(own)];
    }),
    { kind: 'paragraph', size: 'small', text: w.workingNote },
  ];
}

const rulesOf = ({ containers }: DisposalData): readonly ContainerData['mustNotMeet'][number][] => [
  ...new Map(
    containers.flatMap(({ mustNotMeet }) => mustNotMeet.map((rule) => [rule.never, rule] as const)),
  ).values(),
];

export function publishedBlocks(data: DisposalData): Block[] {
  const published = ofKind(data, 'published');
  const rules = rulesOf(data);
  return [
    ...(published.length === 0
      ? []
      : [{ kind: 'heading', level: 1, text: w.published } as const, readTable(published)]),
    ...(rules.length === 0
      ? []
      : [
          { kind: 'heading', level: 1, text: w.mustNotMeet } as const,
          table(
            [
              { key: 'never', head: w.never, share: 32 },
              { key: 'happens', head: w.happens, share: 42 },
              { key: 'source', head: w.source, share: 40 },
            ],
            rules.map(({ never, happens, source, status }) => ({
              kind: 'cells' as const,
              cells: { never: strong(never), happens, source: `${source}: ${statusWords[status] ?? status}` },
            })),
          ),
        ]),
  ];
}

/** The entries behind all containers, each once. */
export function entriesBlocks({ containers, zone }: DisposalData): Block[] {
  const entries = [
    ...new Map(
      containers.flatMap((container) => container.entries.map((entry) => [entry.id, entry])),
    ).values(),
  ].sort((a, b) => a.number - b.number);
  if (entries.length === 0) return [];
  return [
    { kind: 'heading', level: 1, text: w.entries },
    table(
      [
        { key: 'number', head: w.entry, share: 7, align: 'right' },
        { key: 'when', head: w.when, share: 20 },
        { key: 'what', head: w.what, share: 48 },
        { key: 'who', head: w.who, share: 15 },
        { key: 'hash', head: w.hash, share: 20 },
      ],
      entries.map(({ number, happenedAt, kind, says, who, hash }) => ({
        kind: 'cells' as const,
        cells: {
          number: String(number),
          when: momentText(happenedAt, zone),
          what: kind === says ? kind : `${kind}: ${says}`,
          who,
          hash: hash.slice(0, 16),
        },
      })),
    ),
    { kind: 'paragraph', size: 'small', text: w.entriesNote },
  ];
}
