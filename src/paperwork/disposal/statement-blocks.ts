/** The statement of the generator as it is printed, with its signature or a line for one. */
import { calendarDayText, momentText } from '../dates';
import { type Block, type SignatureLine, table } from '../document';
import { signatureDrawing } from '../signature-data';
import { joined } from '../words';
import type { DisposalData } from './disposal-data';
import { strong } from './printed';
import type { Statement } from './set-data';
import { setPaperWords as w } from './set-paper-words';

function dilutedBlocks(diluted: Statement['diluted']): Block[] {
  if (diluted.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: w.diluted },
    table(
      [
        { key: 'on', head: w.when, share: 16 },
        { key: 'what', head: w.what, share: 40 },
        { key: 'codes', head: w.codes, share: 24 },
        { key: 'laws', head: w.laws, share: 30 },
      ],
      diluted.map(({ on, what, codes, laws }) => ({
        kind: 'cells' as const,
        cells: { on: calendarDayText(on), what, codes: strong(joined(codes)), laws: joined(laws) },
      })),
    ),
  ];
}

function lineOf({ statement: { signature }, zone }: DisposalData): SignatureLine {
  if (signature === 'not signed') return { label: w.signs };
  const { name, signedAt } = signature;
  return {
    label: w.signedBy(name, momentText(signedAt, zone), 'typed' in signature),
    drawn: signatureDrawing(signature, w.signatureOf(name)),
  };
}

export function statementBlocks(data: DisposalData): Block[] {
  const { says, diluted } = data.statement;
  const [opening = '', ...rest] = says;
  return [
    {
      kind: 'part-head',
      title: w.parts.statement,
      anchor: 'statement',
      line: w.statementLine,
    },
    { kind: 'paragraph', text: [{ text: opening, strong: true }] },
    { kind: 'list', items: rest, numbered: true },
    ...dilutedBlocks(diluted),
    { kind: 'signatures', lines: [lineOf(data)] },
  ];
}
