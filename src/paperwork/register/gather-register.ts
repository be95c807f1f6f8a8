/** Gathers the register of a period from the state, each entry of the record looked at once. */
import { isNothing } from '../../ledger/amounts';
import type { Entry } from '../../ledger/entries/entry';
import { namedBy } from '../../ledger/standing';
import type { HistoryLine, State } from '../../ledger/state';
import type { Asked } from '../disposal/asked';
import { entrySays } from '../disposal/entry-says';
import { kindWords } from '../disposal/entry-words';
import { workshopOf } from '../disposal/gather';
import { notDetermined } from '../words';
import { aboutOf } from './about';
import { standingAt } from './at-moment';
import { chainOf } from './chain';
import { differences } from './differences';
import { groupOf, groups } from './groups';
import { type Days, isIn, type Period, periodOf } from './period';
import {
  type HeldEntry,
  type RegisterData,
  type RegisterLine,
  sealedRegister,
  type WasteLine,
} from './register-data';
import { groupWords, registerWords as w } from './register-words';
import { wasteLines } from './waste-lines';
import { writtenAmounts } from './written-amounts';

type Why = HeldEntry['why'];

/** Entries that correct or withdraw an entry, by its id. */
function changesIn(log: readonly Entry[]): ReadonlyMap<string, readonly Entry[]> {
  const changes = new Map<string, Entry[]>();
  for (const entry of log) {
    const named = namedBy(entry);
    if (named === null) continue;
    const known = changes.get(named);
    if (known) known.push(entry);
    else changes.set(named, [entry]);
  }
  return changes;
}

const isOfPeriod = (period: Period, { entry, at }: HistoryLine): boolean =>
  isIn(period, entry.happenedAt) || isIn(period, entry.writtenAt) || isIn(period, at);

/** Which entries stand in it and why: those of the period, what changes them and what they change, however far. */
function chosen(state: State, byId: ReadonlyMap<string, HistoryLine>, period: Period): Map<string, Why> {
  const whys = new Map<string, Why>();
  const changes = changesIn(state.log);
  const waiting: Entry[] = [];
  for (const line of state.history)
    if (isOfPeriod(period, line)) {
      whys.set(line.entry.id, 'period');
      waiting.push(line.entry);
    }
  const ofPeriod = waiting.length;
  for (let at = 0; at < waiting.length; at += 1) {
    const entry = waiting[at];
    if (!entry) continue;
    for (const change of changes.get(entry.id) ?? []) {
      if (whys.has(change.id)) continue;
      whys.set(change.id, 'change');
      waiting.push(change);
    }
  }
  for (const changed of waiting.slice(0, ofPeriod)) {
    for (let named = namedBy(changed); named !== null && !whys.has(named); ) {
      const entry = byId.get(named)?.entry;
      if (!entry) break;
      whys.set(named, 'changed');
      named = namedBy(entry);
    }
  }
  return whys;
}

type Context = {
  readonly asked: Asked;
  readonly byId: ReadonlyMap<string, HistoryLine>;
  readonly numberOf: (entryId: string) => number;
};

function lineOf({ asked, byId, numberOf }: Context, line: HistoryLine): RegisterLine {
  const { state } = asked;
  const { entry, standing, body: now, at, changedBy } = line;
  const named = namedBy(entry);
  const target = named === null ? undefined : byId.get(named)?.entry.body;
  return {
    number: numberOf(entry.id),
    id: entry.id,
    hash: entry.hash,
    group: groupOf(entry.body),
    kind: entry.body.kind,
    called: kindWords[entry.body.kind],
    says: entrySays(asked, entry.body, target),
    about: aboutOf(state, entry.body, target),
    amounts: writtenAmounts(entry.body),
    happenedAt: entry.happenedAt,
    writtenAt: entry.writtenAt,
    who: (entry.who === null ? undefined : state.people.get(entry.who)?.body.name) ?? notDetermined,
    standing,
    changedBy: changedBy.map((id) => ({
      number: numberOf(id),
      how: byId.get(id)?.entry.body.kind === 'entry-withdrawn' ? 'withdrawn' : 'corrected',
    })),
    ...(target === undefined || named === null ? {} : { changes: numberOf(named) }),
    ...(standing === 'corrected' && now !== null
      ? {
          now: {
            happenedAt: at,
            says: entrySays(asked, now, target),
            amounts: writtenAmounts(now),
            changed: differences(entry.body, now),
          },
        }
      : {}),
  };
}

/** Of what papers say of the workshop, what a register does. */
function workshopIn(state: State): RegisterData['workshop'] {
  const told = workshopOf(state);
  const { name, address, generatorNumber, emergencyNumber } = told;
  const { authority, collector, hazardousWasteCounter } = told;
  return { name, address, generatorNumber, emergencyNumber, authority, collector, hazardousWasteCounter };
}

const countsOf = (lines: readonly RegisterLine[]): RegisterData['counts'] =>
  groups.map((group) => {
    const own = lines.filter((line) => line.group === group);
    const count = (standing: RegisterLine['standing']) =>
      own.filter((line) => line.standing === standing).length;
    return {
      group,
      name: groupWords[group],
      lines: own.length,
      corrected: count('corrected'),
      withdrawn: count('withdrawn'),
    };
  });

function notDeterminedOf(
  state: State,
  period: Period,
  lines: readonly RegisterLine[],
  waste: readonly WasteLine[],
  closing: RegisterData['closing'],
): string[] {
  const { generatorNumber, authority } = workshopOf(state);
  const open = w.notDetermined;
  const left = waste.filter(({ event }) => event === 'left');
  const count = (told: readonly WasteLine[], key: 'destination' | 'document' | 'quantity'): number =>
    told.filter((line) => line[key] === notDetermined).length;
  const nobody = lines.filter(({ who }) => who === notDetermined).length;
  const doubtful = closing.flatMap(({ containerId, code }) => {
    const since = state.containers.get(containerId)?.doubtfulSince ?? null;
    return since !== null && since < period.until ? [code] : [];
  });
  const unplaced = [...state.streams.values()].filter(
    (stream) => isIn(period, stream.at) && !isNothing(stream.unplaced),
  ).length;
  const said = (n: number, text: (n: number) => string): string[] => (n === 0 ? [] : [text(n)]);
  return [
    open.always,
    ...(generatorNumber === notDetermined ? [open.generator] : []),
    ...(authority === notDetermined ? [open.authority] : []),
    ...said(nobody, open.nobody),
    ...said(
      count(
        waste.filter(({ event }) => event !== 'proof' && event !== 'came-back'),
        'quantity',
      ),
      open.quantity,
    ),
    ...said(count(left, 'destination'), open.destination),
    ...said(count(left, 'document'), open.document),
    ...said(unplaced, open.unplaced),
    ...(doubtful.length === 0 ? [] : [open.doubtful(doubtful)]),
  ];
}

/**
 * Everything that the register of these days says.
 * @throws RangeError where the first day is after the last
 * @throws where the record is empty
 */
export function registerData(days: Days, asked: Asked): RegisterData {
  const { state, now, zone, madeBy, demo } = asked;
  if (state.log.length === 0) throw new Error('a register needs a record');
  const period = periodOf(days, zone);
  const byId = new Map(state.history.map((line) => [line.entry.id, line]));
  const numbers = new Map(state.log.map(({ id }, index) => [id, index + 1]));
  const numberOf = (entryId: string): number => numbers.get(entryId) ?? 0;
  const whys = chosen(state, byId, period);
  const { beside, links, heads } = chainOf(state.log, new Set(whys.keys()), period);
  const listed = state.history.filter(({ entry: { id } }) =>
    ['period', 'change'].includes(whys.get(id) ?? ''),
  );
  const lines = listed.map((line) => lineOf({ asked, byId, numberOf }, line));
  const waste = wasteLines(asked, period, numberOf);
  const closing = standingAt(asked, period.until <= now ? period.until : `${now}~`);
  return sealedRegister({
    v: 1,
    kind: 'register',
    language: 'en',
    demo,
    madeAt: now,
    zone,
    madeBy: madeBy ?? notDetermined,
    period,
    workshop: workshopIn(state),
    cautions: [...w.cautions],
    proves: [...w.proves],
    doesNotProve: [...w.doesNotProve],
    notDetermined: notDeterminedOf(state, period, lines, waste, closing),
    counts: countsOf(lines),
    opening: standingAt(asked, period.from),
    closing,
    waste,
    lines,
    entries: state.log.flatMap((entry) => {
      const why = whys.get(entry.id) ?? (beside.has(entry.id) ? 'chain' : undefined);
      return why ? [{ number: numberOf(entry.id), why, entry }] : [];
    }),
    links,
    heads,
  });
}
