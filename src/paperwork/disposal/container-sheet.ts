/** The sheet of one container: a page of its own within the set. */
import { calendarDayText } from '../dates';
import type { Block, Drawing } from '../document';
import { pictogram } from '../labels/pictograms';
import { qrDrawing } from '../labels/qr-drawing';
import { pictogramWords } from '../labels/words';
import { capital, notDetermined } from '../words';
import type { ContainerData, DisposalData } from './disposal-data';
import { labBlocks } from './lab-blocks';
import { paperWords as w } from './paper-words';
import { dayOr } from './printed';
import { massText } from './quantity-text';
import { setPaperWords as s } from './set-paper-words';
import { compositionOf } from './sheet-tables';

type Leave = Exclude<ContainerData['mustLeaveBy'], string>;

/** The careful day, and beside it the other reading of "no more than so many days". */
const leaveDays = ({ day, otherDay }: Leave): string =>
  otherDay === undefined || otherDay === day
    ? calendarDayText(day)
    : w.leaveDays(calendarDayText(day), calendarDayText(otherDay));

function mustLeave({ mustLeaveBy, firstWasteIn }: ContainerData): string {
  if (mustLeaveBy === notDetermined && firstWasteIn !== notDetermined) return w.mustLeaveOpen;
  if (typeof mustLeaveBy === 'string') return mustLeaveBy;
  const { days, from, saidBy, saidOn } = mustLeaveBy;
  const counted = from === undefined ? days : w.daysFrom(days, calendarDayText(from));
  return w.mustLeave(leaveDays(mustLeaveBy), counted, saidBy, calendarDayText(saidOn));
}

const factsOf = (c: ContainerData): Block => ({
  kind: 'facts',
  facts: [
    { term: w.whatItIs, says: c.whatItIs },
    { term: w.howItArose, says: c.howItArose.length === 0 ? notDetermined : c.howItArose.join(' ') },
    ...(c.treated ? [{ term: w.treatment, says: c.treated.join(' ') }] : []),
    { term: w.state, says: w.stateText(c.state, c.layers) },
    { term: w.colour, says: c.colour },
    { term: w.ph, says: c.ph },
    {
      term: w.container,
      says: `${w.vessel(c.capacity, c.material, c.vessel, c.cap)} ${w.fillText(c.fill)} ${w.massText(massText(c.quantity))} ${w.standsText(c.place, c.tray)}`,
    },
    { term: w.firstIn, says: w.since(dayOr(c.firstWasteIn), mustLeave(c)) },
  ],
});

const mustNotMeet = (c: ContainerData): Block => ({
  kind: 'paragraph',
  text:
    c.mustNotMeet.length === 0
      ? notDetermined
      : w.nevers([...new Set(c.mustNotMeet.map(({ rule }) => rule))]),
});

const statement = /(?:EU)?H\d{3}[A-Za-z]*/g;

/** Each statement with its words, as far as candidates have them. */
function inWords({ laws }: ContainerData, says: string): string {
  const meanings = new Map(
    (laws?.candidates ?? []).flatMap(({ code, means }) => {
      const [name] = code.match(statement) ?? [];
      return name === undefined || means === undefined ? [] : [[name, means.replace(/\.$/, '')] as const];
    }),
  );
  return says.replace(statement, (name) => w.statement(name, meanings.get(name)));
}

/** Where no entry is taken, the one that the rules look at first, with how it stands. */
function nearest({ carriage }: ContainerData, says: string): string {
  const [best] = carriage.entries;
  if (says !== notDetermined || best === undefined) return says;
  return s.nearest(best.number, best.name, best.class, best.packingGroup, best.standing);
}

/** As on the label. */
const pictograms = ({ pictograms: ids }: ContainerData): readonly Drawing[] =>
  ids.map((id) => ({ ...pictogram(id, pictogramWords[id]), printWidth: 24 }));

function candidates(c: ContainerData): Block {
  return {
    kind: 'facts',
    facts: c.candidates.map(({ what, says }, at) => ({
      term: w.shortOf(what),
      says: at === 0 ? inWords(c, says) : at === 2 ? nearest(c, says) : says,
    })),
  };
}

/** What is wrong or doubtful stands above everything else. */
const flagLines = (c: ContainerData): Block[] =>
  c.flags.length === 0
    ? []
    : [{ kind: 'mark', mark: 'wrong', text: [{ text: c.flags.join(' '), strong: true }] }];

const openLine = ({ notDetermined: open }: ContainerData): Block => ({
  kind: 'mark',
  mark: 'unknown',
  text: open.length === 0 ? s.nothingOpenHere : `${open.map(capital).join('. ')}.`,
});

const cornerOf = ({ link, code }: ContainerData): { readonly corner?: Drawing } =>
  link === undefined ? {} : { corner: { ...qrDrawing(link, s.label(code)), printWidth: 48 } };

export const sheetAnchor = ({ containerId }: ContainerData): string => `sheet ${containerId}`;

export function sheetBlocks(data: DisposalData, c: ContainerData, drawing: Drawing | undefined): Block[] {
  const facts = factsOf(c);
  const head: Block = drawing
    ? {
        kind: 'columns',
        shares: [23, 77],
        left: [{ kind: 'drawing', drawing, caption: w.drawn }],
        right: [facts],
      }
    : facts;
  return [
    {
      kind: 'part-head',
      title: s.sheetTitle,
      line: `${data.workshop.name}, ${data.workshop.address}`,
      code: c.code,
      anchor: sheetAnchor(c),
      ...cornerOf(c),
    },
    ...flagLines(c),
    head,
    { kind: 'heading', level: 2, text: w.composition },
    compositionOf(c),
    ...labBlocks(c),
    {
      kind: 'columns',
      left: [{ kind: 'heading', level: 2, text: w.codes, beside: pictograms(c) }, candidates(c)],
      right: [
        { kind: 'heading', level: 2, text: w.mustNotMeet },
        mustNotMeet(c),
        { kind: 'heading', level: 2, text: s.openHere },
        openLine(c),
      ],
    },
  ];
}
