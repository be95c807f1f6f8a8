/** Behind the sheets: the working of every figure, what it stands on, the rules of what must not meet, the entries. */
import { momentText } from '../dates';
import { type Block, type Cell, table } from '../document';
import { capital, statusWords } from '../words';
import type { ContainerData, DisposalData, WorkingLine } from './disposal-data';
import { paperWords as w } from './paper-words';
import { rangeText, strong } from './printed';

type NeverLine = ContainerData['mustNotMeet'][number];

/** Sources by number, in the order in which the lines name them; several lines share one. */
function sourcesOf(data: DisposalData, whole: boolean): ReadonlyMap<string, string> {
  const lines = data.working.filter(({ kind }) => kind === 'evidence' || (whole && kind === 'published'));
  const texts = [
    ...lines.flatMap(({ sources }) => sources.map(sourceText)),
    ...rulesOf(data).map(ruleSource),
  ];
  return new Map([...new Set(texts)].map((text, at) => [text, `S${at + 1}`]));
}

const sourceText = ({ title, status }: WorkingLine['sources'][number]): string =>
  `${title}: ${statusWords[status] ?? status}`;

const ruleSource = ({ source, status }: NeverLine): string => sourceText({ title: source, status });

const result = ({ result: { likely, unit } }: WorkingLine): Cell =>
  unit === '1' ? likely : { text: likely, unit };

function workedTable(lines: readonly WorkingLine[]): Block {
  return table(
    [
      { key: 'id', head: w.line, share: 8 },
      { key: 'what', head: w.what, share: 33 },
      { key: 'formula', head: w.formula, share: 54 },
      { key: 'result', head: w.result, share: 19, align: 'right' },
      { key: 'from', head: w.from, share: 17 },
    ],
    lines.map((line) => ({
      kind: 'cells' as const,
      cells: {
        id: strong(line.id),
        what: capital(line.sentence),
        formula: line.formula ?? line.howKnown,
        result: result(line),
        from: line.from.length === 0 ? line.howKnown : line.from.join(' '),
      },
    })),
  );
}

function readTable(lines: readonly WorkingLine[], sources: ReadonlyMap<string, string>): Block {
  const known = (line: WorkingLine): string => {
    const numbers = line.sources.map((source) => sources.get(sourceText(source)) ?? '');
    const how = line.kind === 'evidence' ? [line.howKnown] : [];
    return [...how, ...numbers].filter((text) => text !== '').join(', ') || w.exact;
  };
  return table(
    [
      { key: 'id', head: w.line, share: 8 },
      { key: 'what', head: w.what, share: 50 },
      { key: 'result', head: w.withRange, share: 46 },
      { key: 'source', head: w.source, share: 26 },
    ],
    lines.map((line) => ({
      kind: 'cells' as const,
      cells: {
        id: strong(line.id),
        what: line.sentence,
        result: rangeText(line.result),
        source: known(line),
      },
    })),
  );
}

const ofKind = ({ working }: DisposalData, kind: WorkingLine['kind']) =>
  working.filter((line) => line.kind === kind);

/** In a set, a reading says of which container it is. */
const named = ({ containers }: DisposalData, line: WorkingLine): WorkingLine => {
  const of = containers.length > 1 && containers.find(({ containerId }) => containerId === line.containerId);
  return of ? { ...line, sentence: w.ofContainer(of.code, line.sentence) } : line;
};

/** Readings first, then what was worked out, container by container; a line that two need stands with the first. */
/** @param whole or only the evidence it begins with */
export function workingBlocks(data: DisposalData, whole: boolean): Block[] {
  const worked = ofKind(data, 'worked-out');
  const evidence = ofKind(data, 'evidence').map((line) => named(data, line));
  if (evidence.length === 0 && worked.length === 0) return [];
  return [
    { kind: 'heading', level: 1, text: w.evidence },
    readTable(evidence, sourcesOf(data, whole)),
    ...data.containers.flatMap(({ containerId, code }): Block[] => {
      const own = worked.filter((line) => line.containerId === containerId);
      return own.length === 0 || !whole
        ? []
        : [{ kind: 'heading', level: 1, text: w.working(code) }, workedTable(own)];
    }),
    { kind: 'paragraph', size: 'small', text: whole ? w.workingNote : w.workingInside },
  ];
}

const rulesOf = ({ containers }: DisposalData): readonly NeverLine[] => [
  ...new Map(
    containers.flatMap(({ mustNotMeet }) => mustNotMeet.map((rule) => [rule.never, rule] as const)),
  ).values(),
];

function sourceBlocks(sources: ReadonlyMap<string, string>): Block[] {
  if (sources.size === 0) return [];
  return [
    { kind: 'heading', level: 1, text: w.sources },
    ...[...sources].map(
      ([text, number]): Block => ({
        kind: 'paragraph',
        size: 'small',
        text: [{ text: `${number}\u2002`, strong: true }, { text }],
      }),
    ),
  ];
}

export function publishedBlocks(data: DisposalData, whole: boolean): Block[] {
  const published = whole ? ofKind(data, 'published') : [];
  const rules = rulesOf(data);
  const sources = sourcesOf(data, whole);
  return [
    ...(published.length === 0
      ? []
      : [{ kind: 'heading', level: 1, text: w.published } as const, readTable(published, sources)]),
    ...(rules.length === 0
      ? []
      : [
          { kind: 'heading', level: 1, text: w.mustNotMeet } as const,
          table(
            [
              { key: 'never', head: w.never, share: 46 },
              { key: 'happens', head: w.happens, share: 56 },
              { key: 'source', head: w.source, share: 10 },
            ],
            rules.map((rule) => ({
              kind: 'cells' as const,
              cells: {
                never: strong(rule.never),
                happens: rule.happens,
                source: sources.get(ruleSource(rule)) ?? w.none,
              },
            })),
          ),
        ]),
    ...sourceBlocks(sources),
  ];
}

/** The entries behind all containers, each once. */
export function entriesBlocks({ containers, zone, lastEntry, contentHash }: DisposalData): Block[] {
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
    { kind: 'paragraph', size: 'small', text: w.lastEntry(lastEntry.number, lastEntry.hash) },
    { kind: 'paragraph', size: 'small', text: w.contentHash(contentHash) },
  ];
}
