/**
 * The account of a time, usually a calendar year: wastes by kind and month, what was handed over, what each substance came
 * from and went to, what silver cost in waste. What had happened before the first day is what is known of it now: a correction
 * made later counts. A determined waste does not arise again beside what the record held before; both are shown.
 */
import { capital, weighed } from '../chemistry/evidence';
import { plus } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import { type Metal, metalSymbols, metals } from '../reference/tables';
import { calendarDay } from '../rules/clocks/calendar-day';
import type { StreamKind } from '../safety/stream-kind';
import { isNothing, readableDifference } from './amounts';
import type { Agent } from './entries/treatments';
import type { State, Upset } from './state';
import type { CameAs } from './year-arising';
import { type Accounted, type Balance, balanceOf } from './year-balance';
import { type CodedRow, codedRows } from './year-codes';
import { type Days, whenIn } from './year-days';
import { type Flows, flowsOf } from './year-flows';
import {
  countedOf,
  foundIn,
  monthsOf,
  type Stood,
  stoodOf,
  type Weighed,
  type Went,
  wastesIn,
  weighedOf,
  wentIn,
  type YearWaste,
} from './year-masses';
import { type SilverYield, silverYield } from './year-silver';

export type KindRow = {
  readonly kind: StreamKind;
  readonly mass: Weighed;
  readonly streamIds: readonly string[];
};

export type MonthRow = {
  readonly month: string;
  readonly mass: Weighed;
  readonly kinds: readonly KindRow[];
  /** Containers in which something was found that nobody knows: it has no mass. */
  readonly found: readonly string[];
};

export type AgentUsed = { readonly agent: Agent; readonly mass: Figure<'kg'>; readonly treatments: number };

export type YearAccount = {
  readonly days: Days;
  readonly wastes: readonly YearWaste[];
  /** What arose: no leach liquor that went on to cementation, nothing that is left of treating, nothing told a second time. */
  readonly arose: Weighed;
  readonly kinds: readonly KindRow[];
  readonly months: readonly MonthRow[];
  /** What is left out of what arose, by why. */
  readonly besides: readonly {
    readonly as: CameAs;
    readonly mass: Weighed;
    readonly kinds: readonly KindRow[];
  }[];
  readonly found: readonly string[];
  readonly stood: { readonly start: readonly Stood[]; readonly end: readonly Stood[] };
  readonly heldAtStart: Weighed;
  readonly heldAtEnd: Weighed;
  readonly went: Went;
  readonly handedOver: Weighed;
  readonly codes: readonly CodedRow[];
  /** Of each substance that is told of anywhere. */
  readonly balances: readonly Balance[];
  /** Substances that no waste of the time tells of. */
  readonly toldNowhere: readonly Accounted[];
  readonly notFollowed: Flows['notFollowed'];
  /** Wastes of which more was put into containers than was logged. */
  readonly overPlaced: readonly string[];
  /** What contradicts itself in the time. */
  readonly upsets: readonly Upset[];
  readonly silver: SilverYield;
  readonly agents: readonly AgentUsed[];
};

export const accounted: readonly Accounted[] = [...metalSymbols, 'acid'];

const rowsByKind = (wastes: readonly YearWaste[]): readonly KindRow[] =>
  [...new Set(wastes.map(({ kind }) => kind))].map((kind) => {
    const own = wastes.filter((waste) => waste.kind === kind);
    return { kind, mass: massOf('Waste of this kind', own), streamIds: own.map(({ streamId }) => streamId) };
  });

const massOf = (sentence: string, wastes: readonly YearWaste[]): Weighed =>
  weighedOf(
    sentence,
    wastes.map(({ streamId, kg }) => ({ id: streamId, kg })),
  );

function agentsIn(state: State, days: Days, zone: string): readonly AgentUsed[] {
  const when = whenIn(days, zone);
  const doses = [...state.treatments.values()].flatMap((treatment) =>
    treatment.doses.filter(({ at }) => when(at) === 'in'),
  );
  return [...new Set(doses.map(({ body }) => body.agent))].map((agent) => {
    const own = doses.filter(({ body }) => body.agent === agent);
    const masses = own.map(({ entryId, body }) => weighed(body.mass, `entry/${entryId}/mass`, 'Weighed in'));
    const sentence = `${capital(agent.replaceAll('-', ' '))} used, as sold`;
    return {
      agent,
      mass: workedOut({ sentence, unit: 'kg', formula: plus(...masses) }),
      treatments: new Set(own.map(({ body }) => body.treatmentId)).size,
    };
  });
}

function upsetsIn(state: State, days: Days, zone: string): readonly Upset[] {
  const when = whenIn(days, zone);
  const at = new Map(state.history.map((line) => [line.entry.id, line.at]));
  return state.upsets.filter(({ entryId }) => when(at.get(entryId) ?? '1970-01-01T00:00:00.000Z') === 'in');
}

const overPlaced = (state: State): readonly string[] =>
  [...state.streams.values()].flatMap(({ body, placed, amount }) =>
    isNothing(readableDifference(placed, amount)) ? [] : [body.streamId],
  );

const others: readonly CameAs[] = ['in-work', 'left-of-treating', 'determined'];

function made(state: State, days: Days, zone: string): YearAccount {
  const flows = flowsOf(state, days, zone);
  const wastes = wastesIn(state, days, zone);
  const arose = wastes.filter(({ as }) => as === 'arose');
  const found = foundIn(state, days, zone);
  const stood = stoodOf(state, flows, days, zone);
  const went = wentIn(state, flows, days, zone);
  const all = accounted.map((of) => balanceOf(state, flows, of));
  return {
    days,
    wastes,
    arose: massOf('Waste that arose', arose),
    kinds: rowsByKind(arose),
    months: monthsOf(days).map((month): MonthRow => {
      const own = arose.filter((waste) => waste.month === month);
      const ids = found.filter((one) => one.month === month).map(({ containerId }) => containerId);
      return {
        month,
        mass: massOf('Waste that arose in the month', own),
        kinds: rowsByKind(own),
        found: ids,
      };
    }),
    besides: others.flatMap((as) => {
      const own = wastes.filter((waste) => waste.as === as);
      return own.length === 0
        ? []
        : [{ as, mass: massOf('Waste beside what arose', own), kinds: rowsByKind(own) }];
    }),
    found: found.map(({ containerId }) => containerId),
    stood,
    heldAtStart: weighedOf('Waste here at the start', stood.start),
    heldAtEnd: weighedOf('Waste here at the end', stood.end),
    went,
    handedOver: countedOf(
      'Waste handed over',
      went.loads.flatMap(({ parts }) => parts),
    ),
    codes: codedRows(state, went),
    balances: all.filter(({ sumIn, sumOut }) => sumIn || sumOut),
    toldNowhere: all.flatMap(({ of, sumIn, sumOut }) => (sumIn || sumOut ? [] : [of])),
    notFollowed: flows.notFollowed,
    overPlaced: overPlaced(state),
    upsets: upsetsIn(state, days, zone),
    silver: silverYield(state, days, zone),
    agents: agentsIn(state, days, zone),
  };
}

const known = new WeakMap<State, Map<string, YearAccount>>();

const keyOf = ({ first, last }: Days, zone: string): string => `${first} ${last} ${zone}`;

/** The account if it was worked out already: a page of a long record is drawn before it is. */
export const knownYear = (state: State, days: Days, zone: string): YearAccount | undefined =>
  known.get(state)?.get(keyOf(days, zone));

/** Worked out once for a state. @param zone where the workshop is */
export function yearAccount(state: State, days: Days, zone: string): YearAccount {
  const ofState = known.get(state) ?? new Map<string, YearAccount>();
  known.set(state, ofState);
  const account = knownYear(state, days, zone) ?? made(state, days, zone);
  ofState.set(keyOf(days, zone), account);
  return account;
}

/** A metal in the waste that arose, month by month, where it is known; `most`: the month with most of it. */
export type MetalMonths = {
  readonly of: Metal;
  readonly months: readonly { readonly month: string; readonly sum?: Figure<'g'> }[];
  readonly most: string | null;
};

/** Of the months given, in order. */
export function metalByMonth(
  { wastes, balances }: YearAccount,
  of: Metal,
  months: readonly string[],
): MetalMonths | null {
  const monthOfWaste = new Map(wastes.map(({ streamId, month }) => [streamId, month]));
  const parts = balances.find((one) => one.of === of)?.ins.find(({ line }) => line === 'arose')?.parts;
  if (!parts) return null;
  const sums = months.map((month) => {
    const own = parts.filter((part) => monthOfWaste.get(part.of.id) === month);
    if (own.length === 0) return { month };
    const formula = plus(...own.map(({ figure }) => figure));
    const sentence = `${capital(metals[of].name)} in waste that arose in the month`;
    return { month, sum: workedOut({ sentence, unit: 'g', formula }) };
  });
  const [most] = sums
    .flatMap(({ month, sum }) => (sum ? [{ month, sum }] : []))
    .toSorted((a, b) => b.sum.value.cmp(a.sum.value));
  return { of, months: sums, most: most?.month ?? null };
}

/** Calendar years that the record tells of, and this one, the latest first. @param now UTC */
export function yearsTold(state: State, now: string, zone: string): readonly string[] {
  const latest = Number(calendarDay(now, zone).slice(0, 4));
  const first = state.history.reduce(
    (so, { at }) => Math.min(so, Number(calendarDay(at, zone).slice(0, 4))),
    latest,
  );
  return Array.from({ length: latest - first + 1 }, (_, back) => String(latest - back));
}

/** Of a calendar year, "2028". */
export const yearDays = (year: string): Days => ({ first: `${year}-01-01`, last: `${year}-12-31` });
