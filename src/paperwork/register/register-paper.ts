/** The register of a period as a paper, set from its data alone. */
import { type DecimalSign, formatWritten } from '../../quantities/format';
import { calendarDayText, momentText } from '../dates';
import { type Block, type Paper, type PaperDocument, table } from '../document';
import { capital } from '../words';
import { chainBlocks } from './chain-blocks';
import { groups } from './groups';
import { type RegisterData, type RegisterLine, registerText } from './register-data';
import { eventWords, groupWords, registerWords as w } from './register-words';

export type RegisterPaper = { readonly paper: Extract<Paper, 'A4' | 'Letter'>; readonly sign: DecimalSign };

const heading = (level: 1 | 2, text: string): Block => ({ kind: 'heading', level, text });
const small = (text: string): Block => ({ kind: 'paragraph', size: 'small', text });

/** As many digits of a hash as tell entries apart on paper; all of them are in the data. */
const hashPrinted = 10;

/** As many amounts of one entry as a line bears; all of them are in the data. */
const amountsPrinted = 6;

function amountsText(amounts: RegisterLine['amounts'], sign: DecimalSign): string {
  const said = amounts
    .slice(0, amountsPrinted)
    .map(({ what, value, unit }) => w.amount(what, formatWritten({ value, unit }, sign), unit));
  const more = amounts.length - said.length;
  return [...said, ...(more > 0 ? [w.moreAmounts(more)] : [])].join('; ') || w.nothing;
}

function frontBlocks({
  period,
  zone,
  workshop,
  counts,
  cautions,
  notDetermined,
  contentHash,
}: RegisterData): Block[] {
  return [
    {
      kind: 'facts',
      facts: [
        { term: w.period, says: w.periodText(period.firstDay, period.lastDay, zone) },
        { term: w.authority, says: workshop.authority },
        { term: w.confirms, says: w.confirmsText(workshop.authority) },
        { term: w.hash, says: contentHash },
      ],
    },
    ...cautions.map((text): Block => ({ kind: 'caution', text })),
    heading(1, w.holds),
    table(
      [
        { key: 'part', head: w.part, share: 60 },
        { key: 'lines', head: w.lines, share: 20, align: 'right' },
        { key: 'corrected', head: w.corrected, share: 20, align: 'right' },
        { key: 'withdrawn', head: w.withdrawn, share: 20, align: 'right' },
      ],
      counts.map(({ name, lines, corrected, withdrawn }) => ({
        kind: 'cells' as const,
        cells: {
          part: name,
          lines: String(lines),
          corrected: String(corrected),
          withdrawn: String(withdrawn),
        },
      })),
    ),
    heading(2, w.notDeterminedTitle),
    { kind: 'list', items: notDetermined },
    { kind: 'signatures', lines: w.signs.map((label) => ({ label })) },
  ];
}

function standingBlocks(title: string, standing: RegisterData['opening']): Block[] {
  return [
    heading(1, w.standsHere(title)),
    standing.length === 0
      ? small(w.noContainers)
      : table(
          [
            { key: 'code', head: w.code, share: 12 },
            { key: 'vessel', head: w.vessel, share: 28 },
            { key: 'holds', head: w.held, share: 26 },
            { key: 'wastes', head: w.wastes, share: 64 },
          ],
          standing.map(({ code, vessel, holds, wastes }) => ({
            kind: 'cells' as const,
            cells: {
              code: { text: code, strong: true },
              vessel,
              holds,
              wastes: wastes.join('; ') || w.nothingIn,
            },
          })),
        ),
  ];
}

function wasteBlocks({ waste }: RegisterData): Block[] {
  return [
    heading(1, w.chronological),
    waste.length === 0
      ? small(w.noWaste)
      : table(
          [
            { key: 'number', head: w.entry, share: 10, align: 'right' },
            { key: 'day', head: w.day, share: 23 },
            { key: 'event', head: w.event, share: 13 },
            { key: 'quantity', head: w.quantity, share: 20 },
            { key: 'nature', head: w.nature, share: 34 },
            { key: 'origin', head: w.origin, share: 25 },
            { key: 'destination', head: w.destination, share: 26 },
            { key: 'method', head: w.method, share: 26 },
          ],
          waste.map((line) => ({
            kind: 'cells' as const,
            cells: {
              number: String(line.number),
              day: calendarDayText(line.day),
              event: { text: eventWords[line.event], strong: line.event === 'left' },
              quantity: line.quantity,
              nature: line.nature,
              origin: line.origin,
              destination: w.carried(line.destination, line.mode),
              method: w.methodPaper(line.method, line.document),
            },
          })),
        ),
  ];
}

/** An amount in a text with the decimal sign of the reader. */
const withSign = (text: string | null, sign: DecimalSign): string | null =>
  text?.replace(/^(-?\d+)\.(\d+)(?=\u2009|$)/, `$1${sign}$2`) ?? null;

function becameOf(line: RegisterLine, zone: string, sign: DecimalSign): string[] {
  if (line.changedBy.length === 0) return [];
  if (line.standing === 'withdrawn') return [w.withdrawnBy(line.changedBy)];
  if (!line.now) return [w.changedBefore(line.changedBy)];
  const now = [
    ...(line.now.changed.length > 0
      ? line.now.changed.map(({ of, was, is }) =>
          w.changed({ of, was: withSign(was, sign), is: withSign(is, sign) }),
        )
      : [w.sameAgain]),
    ...(line.now.happenedAt === line.happenedAt ? [] : [momentText(line.now.happenedAt, zone)]),
  ];
  return [w.correctedBy(line.changedBy, now.join('; '))];
}

/** "waste logged: leach liquor. Corrected by 31; now: …" */
function whatText(line: RegisterLine, zone: string, sign: DecimalSign): string {
  const { called, says, changes } = line;
  const said = says.startsWith(called) ? says : `${called}: ${says}`;
  const of = changes === undefined ? '' : ` (${w.changes(changes)})`;
  return [`${capital(said)}${of}.`.replace(/([.?!])\.$/, '$1'), ...becameOf(line, zone, sign)].join(' ');
}

function whenText({ happenedAt, writtenAt }: RegisterLine, zone: string): string {
  const [happened, written] = [momentText(happenedAt, zone), momentText(writtenAt, zone)];
  return happened === written ? happened : `${happened}; ${w.writtenLater(written)}`;
}

function groupBlocks({ lines, zone }: RegisterData, sign: DecimalSign): Block[] {
  return groups.flatMap((group): Block[] => {
    const own = lines.filter((line) => line.group === group);
    if (own.length === 0) return [];
    return [
      heading(1, w.groupTitle(groupWords[group], own.length)),
      table(
        [
          { key: 'number', head: w.entry, share: 11, align: 'right' },
          { key: 'when', head: w.when, share: 23 },
          { key: 'about', head: w.about, share: 15 },
          { key: 'what', head: w.what, share: 54 },
          { key: 'amounts', head: w.amounts, share: 33 },
          { key: 'who', head: w.who, share: 21 },
          { key: 'hash', head: w.hash, share: 24 },
        ],
        own.map((line) => ({
          kind: 'cells' as const,
          cells: {
            number: String(line.number),
            when: whenText(line, zone),
            about: line.about.map(({ code }) => code).join(', ') || w.nothing,
            what: whatText(line, zone, sign),
            amounts: amountsText(line.amounts, sign),
            who: line.who,
            hash: line.hash.slice(0, hashPrinted),
          },
        })),
      ),
    ];
  });
}

export function registerPaper(data: RegisterData, { paper, sign }: RegisterPaper): PaperDocument {
  const { period, workshop, madeAt, zone, lines } = data;
  const made = momentText(madeAt, zone);
  return {
    title: w.title,
    language: data.language,
    subject: w.subject(period.firstDay, period.lastDay),
    author: workshop.name,
    createdAt: madeAt,
    paper,
    masthead: { line: w.mastheadLine(workshop, made, data.madeBy) },
    runningHead: w.runningHead(w.days(period.firstDay, period.lastDay), workshop.name, made),
    footLines: [w.footCaution, w.footHash(data.contentHash.slice(0, 16))],
    pageWords: w.pageWords,
    ...(data.demo ? { watermark: w.demo } : {}),
    parts: [
      ...frontBlocks(data),
      ...standingBlocks(w.opening, data.opening),
      ...standingBlocks(madeAt < period.until ? w.soFar : w.closing, data.closing),
      ...wasteBlocks(data),
      ...(lines.length === 0 ? [small(w.none)] : groupBlocks(data, sign)),
      ...chainBlocks(data),
    ],
  };
}

/** @example fileName(data, 'pdf') // 'register-2026-01-01-to-2026-03-31.pdf' */
export const fileName = ({ demo, period }: RegisterData, format: 'pdf' | 'json'): string =>
  `${demo ? 'invented-' : ''}register-${period.firstDay}-to-${period.lastDay}.${format}`;

/** The same data as a file that goes inside the PDF. */
export const attachmentOf = (data: RegisterData) => ({
  name: fileName(data, 'json'),
  bytes: new TextEncoder().encode(registerText(data)),
  mime: 'application/json',
  description: w.attachment,
});
