/** All containers of a set, a row each, with their sum. */
import { calendarDayText } from '../dates';
import { type Block, table } from '../document';
import { notDetermined } from '../words';
import type { ContainerData, DisposalData } from './disposal-data';
import { paperWords as p } from './paper-words';
import { strong } from './printed';
import { holdsText, massText } from './quantity-text';
import { setPaperWords as w } from './set-paper-words';

/** What of a container is wrong or not determined, in one cell. */
function openOf(c: ContainerData): string {
  const always = new Set(['Cu', 'Ni', 'HNO3']);
  const names = c.substances
    .filter(({ symbol, inAll }) => always.has(symbol) && inAll === notDetermined)
    .map(({ name }) => name.toLowerCase());
  const said = [...c.flags, ...(names.length > 0 && !c.empty ? [p.notKnown(names)] : [])];
  return said.length === 0 ? p.nothingFlagged : said.join(' ');
}

const rowOf = (c: ContainerData) =>
  ({
    kind: 'cells',
    cells: {
      code: strong(c.code),
      what: c.whatItIs,
      vessel: p.vesselShort(c.capacity, c.vessel, c.material, c.cap),
      holds: holdsText(c.quantity),
      mass: massText(c.quantity),
      leave: typeof c.mustLeaveBy === 'string' ? c.mustLeaveBy : calendarDayText(c.mustLeaveBy.day),
      open: openOf(c),
    },
  }) as const;

export function listBlocks(data: DisposalData): Block[] {
  const { load } = data;
  return [
    { kind: 'part-head', title: w.parts.list, anchor: 'list', line: w.listLine },
    table(
      [
        { key: 'code', head: p.code, share: 10 },
        { key: 'what', head: p.whatItIs, share: 30 },
        { key: 'vessel', head: w.vessel, share: 19 },
        { key: 'holds', head: w.holds, share: 14 },
        { key: 'mass', head: w.massHead, share: 17 },
        { key: 'leave', head: p.mustLeaveBy, share: 18 },
        { key: 'open', head: p.open, share: 30 },
      ],
      [
        ...data.containers.map(rowOf),
        {
          kind: 'cells',
          cells: {
            code: strong(w.total),
            what: strong(w.containers(load.containers)),
            vessel: p.seeSheets,
            holds: strong(holdsText(load)),
            mass: strong(massText(load)),
            leave: p.earliest(earliestOf(data)),
            open: p.sumNote([...new Set([...load.withoutLiquid, ...load.withoutMass])]),
          },
        },
      ],
    ),
  ];
}

/** The first day by which one of them must have left. */
function earliestOf({ containers }: DisposalData): string {
  const days = containers.flatMap(({ mustLeaveBy }) =>
    typeof mustLeaveBy === 'string' ? [] : [mustLeaveBy.day],
  );
  const [first] = days.sort();
  return first === undefined ? notDetermined : calendarDayText(first);
}
