/** The paper of a year, set from its data alone. */
import { momentText } from '../dates';
import type { Block, DrawingBlock, Paper, PaperDocument } from '../document';
import { notDetermined } from '../words';
import { balanceBlocks, silverBlocks } from './balance-blocks';
import { heading, small } from './cells';
import { leftBlocks } from './left-blocks';
import { aroseBlocks, glanceBlocks, hereBlocks } from './waste-blocks';
import { type YearData, yearText } from './year-data';
import { yearPaperWords as w } from './year-words';

export type YearPaper = {
  readonly paper: Extract<Paper, 'A4' | 'Letter'>;
  /** Drawn by whoever can; the tables say the same. */
  readonly plots: readonly DrawingBlock[];
};

function frontBlocks(data: YearData): Block[] {
  const { period, over, madeAt, zone, workshop, confirms, cautions } = data;
  const made = momentText(madeAt, zone);
  return [
    {
      kind: 'facts',
      facts: [
        { term: w.period, says: w.periodText(period.first, period.last, over, made, zone) },
        { term: w.authority, says: workshop.authority },
        { term: w.confirmsTerm, says: confirms },
      ],
    },
    ...cautions.map((text): Block => ({ kind: 'caution', text })),
  ];
}

function endBlocks({ counting, notDetermined: open, lastEntry, contentHash }: YearData): Block[] {
  return [
    heading(1, w.notDeterminedTitle),
    { kind: 'list', items: open },
    heading(1, w.counting),
    { kind: 'list', items: counting },
    small(w.working),
    ...(lastEntry === notDetermined ? [] : [small(w.lastEntry(lastEntry.number, lastEntry.hash))]),
    small(w.contentHash(contentHash)),
  ];
}

export function yearPaper(data: YearData, { paper, plots }: YearPaper): PaperDocument {
  const { period, workshop, madeAt, zone, lastEntry } = data;
  const made = momentText(madeAt, zone);
  const last = lastEntry === notDetermined ? null : lastEntry;
  return {
    title: `${w.title}, ${w.days(period.first, period.last)}`,
    language: data.language,
    subject: w.subject(period.first, period.last),
    author: workshop.name,
    createdAt: madeAt,
    paper,
    masthead: { line: w.mastheadLine(workshop, made, data.madeBy) },
    runningHead: w.runningHead(w.days(period.first, period.last), workshop.name, made),
    footLines: [
      w.footCaution,
      w.footHashes(last?.number ?? null, last?.hash.slice(0, 16) ?? '', data.contentHash.slice(0, 16)),
    ],
    pageWords: w.pageWords,
    ...(data.demo ? { watermark: w.demo } : {}),
    parts: [
      ...frontBlocks(data),
      ...glanceBlocks(data),
      { kind: 'signatures', lines: w.signs.map((label) => ({ label })) },
      ...aroseBlocks(data, plots),
      ...leftBlocks(data),
      ...balanceBlocks(data),
      ...silverBlocks(data),
      ...hereBlocks(data),
      ...endBlocks(data),
    ],
  };
}

/** @example fileName(data, 'pdf') // 'year-2026-01-01-to-2026-12-31.pdf' */
export const fileName = ({ demo, period }: YearData, format: 'pdf' | 'json'): string =>
  `${demo ? 'invented-' : ''}year-${period.first}-to-${period.last}.${format}`;

/** The same data as a file that goes inside the PDF. */
export const attachmentOf = (data: YearData) => ({
  name: fileName(data, 'json'),
  bytes: new TextEncoder().encode(yearText(data)),
  mime: 'application/json',
  description: w.attachment,
});
