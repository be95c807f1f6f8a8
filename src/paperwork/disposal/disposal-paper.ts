/** The disposal paper of one or several containers, set from its data alone. */
import { momentText } from '../dates';
import type { Block, Drawing, Paper, PaperDocument } from '../document';
import { joined } from '../words';
import { entriesBlocks, publishedBlocks, workingBlocks } from './appendix';
import { candidatesBlocks } from './candidate-blocks';
import { listBlocks, sheetBlocks } from './container-sheet';
import { type DisposalData, jsonText } from './disposal-data';
import { paperWords as w } from './paper-words';
import { placeBlocks } from './place-blocks';

export type DisposalPaper = {
  readonly paper: Extract<Paper, 'A4' | 'Letter'>;
  /** Whether the working of every figure is printed; it is in the data inside the file either way. */
  readonly working: boolean;
  /** The drawn vessels by container id; a container without one gets none. */
  readonly drawings: ReadonlyMap<string, Drawing>;
};

/** One container: its sheet is the first page. Several: a list first, then each on a page of its own. */
function parts(data: DisposalData, { drawings, working }: DisposalPaper): readonly Block[] {
  const [only, ...more] = data.containers;
  const single = only !== undefined && more.length === 0;
  const sheets = data.containers.flatMap((container): Block[] => [
    ...(single ? [] : [{ kind: 'page-break' } as const]),
    ...sheetBlocks(data, container, drawings.get(container.containerId), single),
  ]);
  return [
    ...(single ? [] : listBlocks(data)),
    ...sheets,
    ...(single ? [] : [{ kind: 'page-break' } as const]),
    ...placeBlocks(data),
    ...candidatesBlocks(data),
    ...workingBlocks(data, working),
    ...publishedBlocks(data, working),
    ...entriesBlocks(data),
  ];
}

/** The paper as plain data for the PDF; the vessels are drawn by whoever can, the data says the same in words. */
export function disposalPaper(data: DisposalData, wanted: DisposalPaper): PaperDocument {
  const codes = data.containers.map(({ code }) => code);
  const [only] = codes;
  const single = codes.length === 1 && only !== undefined;
  const title = single ? w.sheetTitle : w.setTitle;
  const made = momentText(data.madeAt, data.zone);
  return {
    title,
    language: data.language,
    subject: w.subject(joined(codes)),
    author: data.workshop.name,
    createdAt: data.madeAt,
    paper: wanted.paper,
    masthead: {
      line: w.mastheadLine(data.workshop, made, data.madeBy),
      ...(single ? { code: only } : {}),
    },
    runningHead: w.runningHead(
      title,
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
