/** The receipt of a hand-over that has been, set from its data alone. */
import { calendarDayText, momentText } from '../dates';
import { paperWords as p } from '../disposal/paper-words';
import { strong } from '../disposal/printed';
import {
  type Attachment,
  type Block,
  type Paper,
  type PaperDocument,
  type SignatureLine,
  table,
} from '../document';
import { signatureDrawing } from '../signature-data';
import { joined, notDetermined } from '../words';
import type { ReceiptData } from './receipt-data';
import { receiptWords as w } from './receipt-words';

const facts = (told: readonly (readonly [string, string])[]): Block => ({
  kind: 'facts',
  facts: told.map(([term, says]) => ({ term, says })),
});

const partiesOf = ({ workshop, collector, ...data }: ReceiptData): Block => ({
  kind: 'columns',
  left: [
    { kind: 'heading', level: 2, text: w.from },
    facts([
      [p.name, workshop.name],
      [p.address, workshop.address],
      [w.generatorNumber, workshop.generatorNumber],
      [w.telephone, workshop.telephone],
    ]),
  ],
  right: [
    { kind: 'heading', level: 2, text: w.to },
    facts([
      [p.name, collector.name],
      [w.licence, collector.licence],
      [w.contact, collector.contact],
      [w.driver, data.driver],
      [w.vehicle, data.vehicle],
      [w.document, data.document],
      [w.destination, data.destination],
    ]),
  ],
});

const tableOf = ({ containers }: ReceiptData): Block =>
  table(
    [
      { key: 'code', head: w.code, share: 10 },
      { key: 'what', head: w.what, share: 30 },
      { key: 'recorded', head: w.recorded, share: 18 },
      { key: 'agreed', head: w.theirs, share: 16 },
      { key: 'compared', head: w.comparison, share: 24 },
      { key: 'since', head: w.since, share: 24 },
    ],
    containers.flatMap(({ code, what, recorded, agreed, comparison, difference, note, since }) => [
      {
        kind: 'cells' as const,
        cells: {
          code: strong(code),
          what,
          recorded,
          agreed,
          compared: difference === undefined ? comparison : strong(`${comparison}, ${difference}`),
          since,
        },
      },
      ...(note === undefined ? [] : [{ kind: 'note' as const, text: `${code}: ${note}` }]),
    ]),
  );

type Signed = ReceiptData['signatures']['generator'];

function lineOf(signature: Signed, whose: string, empty: string, zone: string): SignatureLine {
  if (signature === 'not signed') return { label: empty };
  const { name, signedAt } = signature;
  return {
    label: w.signedBy(whose, name, momentText(signedAt, zone), 'typed' in signature),
    drawn: signatureDrawing(signature, w.signatureOf(name)),
  };
}

function sinceBlocks({ returned, proofs, awaited, proofDue }: ReceiptData): Block[] {
  const day = (on: string): string => (on === notDetermined ? on : calendarDayText(on));
  return [
    ...(returned.length === 0 ? [] : [{ kind: 'heading', level: 1, text: w.returned } as const]),
    ...returned.map(
      ({ on, containers, saidBy, why, document }): Block => ({
        kind: 'mark',
        mark: 'wrong',
        text: w.returnedLine(day(on), containers, saidBy, why, document),
      }),
    ),
    { kind: 'heading', level: 1, text: w.proofs },
    ...proofs.map(
      ({ on, containers, saidBy, treatedHow, document, datedOn }): Block => ({
        kind: 'paragraph',
        text: w.proofLine(day(on), containers, saidBy, treatedHow, document, day(datedOn)),
      }),
    ),
    awaited.length === 0
      ? { kind: 'paragraph', text: w.noneAwaited }
      : { kind: 'mark', mark: 'due', text: w.awaited(awaited, proofDue) },
  ];
}

export type ReceiptPaper = { readonly paper: Extract<Paper, 'A4' | 'Letter'> };

export function receiptPaper(data: ReceiptData, { paper }: ReceiptPaper): PaperDocument {
  const { workshop, zone, signatures } = data;
  const made = momentText(data.madeAt, zone);
  const codes = data.containers.map(({ code }) => code);
  return {
    title: w.title,
    language: data.language,
    subject: w.subject(joined(codes)),
    author: workshop.name,
    createdAt: data.madeAt,
    paper,
    masthead: { line: w.paperLine(workshop.name, made, data.madeBy) },
    runningHead: w.runningHead(workshop.name, made),
    footLines: [
      p.footHashes(data.lastEntry.number, data.lastEntry.hash.slice(0, 16), data.contentHash.slice(0, 16)),
    ],
    pageWords: p.pageWords,
    ...(data.demo ? { watermark: p.demo } : {}),
    parts: [
      partiesOf(data),
      facts([
        [w.handedOver, momentText(data.handedOverAt, zone)],
        [w.set, data.setHash === notDetermined ? notDetermined : w.setHash(data.setHash)],
        ...(data.note === undefined ? [] : [[w.note, data.note] as const]),
      ]),
      tableOf(data),
      {
        kind: 'together',
        parts: [
          { kind: 'paragraph', text: w.meaning },
          {
            kind: 'signatures',
            lines: [
              lineOf(signatures.generator, w.generator, w.generatorSigns, zone),
              lineOf(signatures.collector, w.collector, w.collectorSigns, zone),
            ],
          },
        ],
      },
      ...sinceBlocks(data),
      {
        kind: 'caution',
        text: data.cautions.map((text, at) => ({ text: at === 0 ? text : ` ${text}`, strong: at === 0 })),
      },
      { kind: 'paragraph', size: 'small', text: p.lastEntry(data.lastEntry.number, data.lastEntry.hash) },
      { kind: 'paragraph', size: 'small', text: p.contentHash(data.contentHash) },
    ],
  };
}

/** @example receiptFileName(data, 'pdf') // 'receipt-2026-05-17-C-07.pdf' */
export function receiptFileName(
  { demo, handedOverAt, containers }: ReceiptData,
  format: 'pdf' | 'json',
): string {
  const codes =
    containers.length > 3
      ? p.fileCount(containers.length)
      : containers
          .map(({ code }) => code.replaceAll('\u2011', '-').replace(/[^\p{L}\p{N}-]+/gu, '-'))
          .join('_');
  return `${demo ? 'invented-' : ''}receipt-${handedOverAt.slice(0, 10)}-${codes}.${format}`;
}

export const receiptAttachment = (data: ReceiptData): Attachment => ({
  name: receiptFileName(data, 'json'),
  bytes: new TextEncoder().encode(`${JSON.stringify(data, null, 2)}\n`),
  mime: 'application/json',
  description: w.attachment,
});
