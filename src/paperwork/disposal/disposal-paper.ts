/** The set of disposal papers of one or several containers, from its data alone: cover, list, statement, sheets, what to do if it goes wrong, carriage, receipt, appendices. */
import { momentText } from '../dates';
import type { Block, Contents, Drawing, Paper, PaperDocument } from '../document';
import { receiptForm } from '../receipt/receipt-form';
import { joined } from '../words';
import { entriesBlocks, publishedBlocks, workingBlocks } from './appendix';
import { candidatesBlocks } from './candidate-blocks';
import { sheetAnchor, sheetBlocks } from './container-sheet';
import { coverBlocks } from './cover';
import { type DisposalData, jsonText } from './disposal-data';
import { emergencyBlocks, emergencySources } from './emergency-blocks';
import { listBlocks } from './list-blocks';
import { paperWords as w } from './paper-words';
import { placeBlocks } from './place-blocks';
import { setPaperWords as s } from './set-paper-words';
import { basesOf } from './sheet-tables';
import { statementBlocks } from './statement-blocks';
import { transportBlocks } from './transport-blocks';

/** Where the list of contents finds the labels, which are drawn after the last page of the paper. */
export const labelsAnchor = 'labels';

export type DisposalPaper = {
  readonly paper: Extract<Paper, 'A4' | 'Letter'>;
  /** Whether the working of every figure is printed; it is in the data inside the file either way. */
  readonly working: boolean;
  /** The drawn vessels by container id; a container without one gets none. */
  readonly drawings: ReadonlyMap<string, Drawing>;
  /** Whether labels come after it. */
  readonly labels?: boolean;
};

/** As many sheets as a list of contents names one by one; more are named together. */
const namedSheets = 12;

function sheetItems({ containers }: DisposalData): Contents['items'] {
  const [first] = containers;
  if (first === undefined) return [];
  if (containers.length > namedSheets)
    return [{ title: s.parts.sheets(containers.length), anchor: sheetAnchor(first) }];
  return containers.map((c) => ({
    title: s.parts.sheet(c.code),
    anchor: sheetAnchor(c),
  }));
}

const contentsOf = (data: DisposalData, labels: boolean): Contents['items'] => [
  { title: s.parts.list, anchor: 'list' },
  { title: s.parts.statement, anchor: 'statement' },
  ...sheetItems(data),
  { title: s.parts.emergency, anchor: 'emergency' },
  { title: s.parts.transport, anchor: 'transport' },
  { title: s.parts.receipt, anchor: 'receipt' },
  { title: s.parts.place, anchor: 'place' },
  ...(labels ? [{ title: s.parts.labels, anchor: labelsAnchor }] : []),
];

/** Each begins on a page of its own. */
const onPages = (parts: readonly (readonly Block[])[]): Block[] =>
  parts.flatMap((blocks): readonly Block[] => [{ kind: 'page-break' }, ...blocks]);

function parts(data: DisposalData, { drawings, working, labels = false }: DisposalPaper): readonly Block[] {
  return [
    ...coverBlocks(data, contentsOf(data, labels)),
    ...onPages([
      listBlocks(data),
      statementBlocks(data),
      ...data.containers.map((c) => sheetBlocks(data, c, drawings.get(c.containerId))),
      emergencyBlocks(data),
      transportBlocks(data),
      receiptForm(data),
      [
        ...placeBlocks(data),
        ...candidatesBlocks(data),
        ...data.containers.flatMap((c) => basesOf(data, c)),
        ...workingBlocks(data, working),
        ...publishedBlocks(data, working),
        ...emergencySources(data),
        ...entriesBlocks(data),
      ],
    ]),
  ];
}

/** The paper as plain data for the PDF; the vessels are drawn by whoever can, the data says the same in words. */
export function disposalPaper(data: DisposalData, wanted: DisposalPaper): PaperDocument {
  const codes = data.containers.map(({ code }) => code);
  const made = momentText(data.madeAt, data.zone);
  return {
    title: w.setTitle,
    language: data.language,
    subject: w.subject(joined(codes)),
    author: data.workshop.name,
    createdAt: data.madeAt,
    paper: wanted.paper,
    masthead: { line: s.coverLine(codes.length) },
    runningHead: w.runningHead(
      w.setTitle,
      codes.length > 4 ? w.count(codes.length) : joined(codes),
      data.workshop.name,
      made,
    ),
    footLines: [
      w.footCaution,
      w.footHashes(data.lastEntry.number, data.lastEntry.hash.slice(0, 16), data.contentHash.slice(0, 16)),
    ],
    pageWords: w.pageWords,
    ...(data.demo ? { watermark: w.demo } : {}),
    parts: parts(data, wanted),
  };
}

/** Codes as a file may be called after them; more than three are counted. */
const fileCodes = ({ containers }: DisposalData): string =>
  containers.length > 3
    ? w.fileCount(containers.length)
    : containers
        .map(({ code }) => code.replaceAll('\u2011', '-').replace(/[^\p{L}\p{N}-]+/gu, '-'))
        .join('_');

/** @example fileName(data, 'pdf') // 'disposal-C-07-2026-05-14.pdf' */
export const fileName = (data: DisposalData, format: 'pdf' | 'json'): string =>
  `${data.demo ? 'invented-' : ''}disposal-${fileCodes(data)}-${data.madeAt.slice(0, 10)}.${format}`;

/** The same data as a file that goes inside the PDF. */
export const attachmentOf = (data: DisposalData) => ({
  name: fileName(data, 'json'),
  bytes: new TextEncoder().encode(jsonText(data)),
  mime: 'application/json',
  description: w.attachment,
});
