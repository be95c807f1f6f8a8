/** The sheet of one container, the list of several, and the place they stand in. */
import { calendarDayText } from '../dates';
import { type Block, type Drawing, table } from '../document';
import { notDetermined } from '../words';
import type { ContainerData, DisposalData } from './disposal-data';
import { paperWords as w } from './paper-words';
import { dayOr, strong } from './printed';
import { basesOf, compositionOf } from './sheet-tables';

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
    { term: w.state, says: w.stateText(c.state, c.colour, c.layers, c.ph) },
    {
      term: w.container,
      says: `${w.vessel(c.capacity, c.material, c.vessel, c.cap)} ${w.standsText(c.place, c.tray)} ${w.fillText(c.fill)}`,
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

const candidates = (c: ContainerData): Block => ({
  kind: 'facts',
  facts: c.candidates.map(({ what, says }) => ({ term: w.shortOf(what), says })),
});

/** Who must confirm what: the same for every container of a workshop. */
function confirmers({ containers }: DisposalData): string {
  const byWho = new Map<string, Set<string>>();
  for (const { what, confirms } of containers.flatMap(({ candidates: all }) => all))
    byWho.set(confirms, (byWho.get(confirms) ?? new Set()).add(what.toLowerCase()));
  return [...byWho].map(([who, whats]) => w.whoConfirms(who, [...whats])).join(' ');
}

const cautionOf = (data: DisposalData): Block => ({
  kind: 'caution',
  text: [...data.cautions, confirmers(data)].map((text, at) => ({
    text: at === 0 ? text : ` ${text}`,
    strong: at === 0,
  })),
});

const signatures: Block = {
  kind: 'signatures',
  lines: [{ label: w.generatorSigns }, { label: w.collectorSigns }],
};

/** What is wrong or doubtful stands above everything else. */
const flagLines = (c: ContainerData): Block[] =>
  c.flags.length === 0
    ? []
    : [{ kind: 'mark', mark: 'wrong', text: [{ text: c.flags.join(' '), strong: true }] }];

/** In a set of several, a sheet has its own title, and its caution says where the whole of it stands. */
const inSet = (c: ContainerData): Block[] => [
  { kind: 'heading', level: 1, text: w.sheetOf(c.code) },
  { kind: 'mark', mark: 'candidate', text: [{ text: w.seeFirstPage, strong: true }] },
];

/** The first page of a container; `single` when the paper's own head names it. */
export function sheetBlocks(
  data: DisposalData,
  c: ContainerData,
  drawing: Drawing | undefined,
  single: boolean,
): Block[] {
  const facts = factsOf(c);
  const head: Block = drawing
    ? {
        kind: 'columns',
        shares: [26, 74],
        left: [{ kind: 'drawing', drawing, caption: w.drawn }],
        right: [facts],
      }
    : facts;
  return [
    ...(single ? [] : inSet(c)),
    ...flagLines(c),
    head,
    { kind: 'heading', level: 2, text: w.composition },
    compositionOf(c),
    ...basesOf(data, c),
    {
      kind: 'columns',
      shares: [44, 56],
      left: [{ kind: 'heading', level: 2, text: w.codes }, candidates(c)],
      right: [{ kind: 'heading', level: 2, text: w.mustNotMeet }, mustNotMeet(c)],
    },
    ...(single ? [{ kind: 'together', parts: [cautionOf(data), signatures] } as const] : []),
  ];
}

/** All containers of the paper, a row each; one signing is for all of them. */
export function listBlocks(data: DisposalData): Block[] {
  return [
    { kind: 'heading', level: 1, text: w.list(data.containers.length) },
    table(
      [
        { key: 'code', head: w.code, share: 10 },
        { key: 'what', head: w.whatItIs, share: 40 },
        { key: 'holds', head: w.holds, share: 16 },
        { key: 'leave', head: w.mustLeaveBy, share: 16 },
        { key: 'open', head: w.open, share: 30 },
      ],
      data.containers.map((c) => ({
        kind: 'cells' as const,
        cells: {
          code: strong(c.code),
          what: c.whatItIs,
          holds: c.fill.holds,
          leave: typeof c.mustLeaveBy === 'string' ? c.mustLeaveBy : leaveDays(c.mustLeaveBy),
          open: openOf(c),
        },
      })),
    ),
    { kind: 'together', parts: [cautionOf(data), signatures] },
  ];
}

/** What of a container is wrong or not determined, in one cell. */
function openOf(c: ContainerData): string {
  const always = new Set(['Cu', 'Ni', 'HNO3']);
  const names = c.substances
    .filter(({ symbol, inAll }) => always.has(symbol) && inAll === notDetermined)
    .map(({ name }) => name.toLowerCase());
  const said = [...c.flags, ...(names.length > 0 ? [w.notKnown(names)] : [])];
  return said.length === 0 ? w.nothingFlagged : said.join(' ');
}
