/** Wastes of a time by mass: what arose by kind and month, what stood here, and what left with whom. */
import { plus } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import { dayAfter, monthOf } from '../rules/clocks/calendar-day';
import type { StreamKind } from '../safety/stream-kind';
import type { Contents } from './container-load';
import { tellsNothing } from './container-load';
import { massOfContents } from './container-mixture';
import { followed } from './contents';
import type { Amount } from './entries/containers';
import { looseMassOf, massOfStream } from './generation';
import type { ContentsPart, HandOverState, State } from './state';
import { kindsOfParts } from './waste-kinds';
import { arosenAt, type CameAs, cameAs } from './year-arising';
import { type Days, type When, whenIn } from './year-days';
import type { Flows } from './year-flows';
import type { Leaving } from './year-shelf';

export type Kilograms = Figure<'kg'>;

/** `kg` is null where neither a scale nor a density tells it. */
export type YearWaste = {
  readonly streamId: string;
  readonly kind: StreamKind;
  readonly month: string;
  readonly as: CameAs;
  readonly kg: Kilograms | null;
};

/** The sum of what has a mass, absent where nothing has; what has none, by name: the sum is at least. */
export type Weighed = { readonly sum?: Kilograms; readonly unweighed: readonly string[] };

export const weighedOf = (
  sentence: string,
  all: readonly { readonly id: string; readonly kg: Kilograms | null }[],
): Weighed => {
  const masses = all.flatMap(({ kg }) => kg ?? []);
  const unweighed = all.flatMap(({ id, kg }) => (kg === null ? [id] : []));
  return masses.length === 0
    ? { unweighed }
    : { sum: workedOut({ sentence, unit: 'kg', formula: plus(...masses) }), unweighed };
};

/** Every calendar month that the time touches, in order. */
export function monthsOf({ first, last }: Days): readonly string[] {
  const months: string[] = [];
  for (let day = `${first.slice(0, 7)}-01`; day <= last; day = dayAfter(day, { count: 1, unit: 'months' }))
    months.push(day.slice(0, 7));
  return months;
}

/** Every waste that arose in the time, in the order in which they did. */
export function wastesIn(state: State, days: Days, zone: string): readonly YearWaste[] {
  const when = whenIn(days, zone);
  return [...arosenAt(state)]
    .filter(([, at]) => when(at) === 'in')
    .toSorted(([, a], [, b]) => (a < b ? -1 : a > b ? 1 : 0))
    .flatMap(([streamId, at]): YearWaste[] => {
      const stream = state.streams.get(streamId);
      if (!stream) return [];
      const { stream: kind } = stream.body;
      const kg = massOfStream(state, stream);
      return [{ streamId, kind, month: monthOf(at, zone), as: cameAs(state, stream), kg }];
    });
}

/** Containers in which something was found that nobody knows, with the month. */
export function foundIn(
  state: State,
  days: Days,
  zone: string,
): readonly { readonly containerId: string; readonly month: string }[] {
  const when = whenIn(days, zone);
  return [...state.containers.values()].flatMap(({ body, doubtfulSince: since, contents }) =>
    since !== null && contents.length === 0 && when(since) === 'in'
      ? [{ containerId: body.containerId, month: monthOf(since, zone) }]
      : [],
  );
}

export type Stood = {
  readonly id: string;
  readonly of: 'container' | 'stream';
  /** Empty where nobody knows. */
  readonly kinds: readonly StreamKind[];
  readonly kg: Kilograms | null;
};

type Parts = ReadonlyMap<string, readonly ContentsPart[]>;

/** Parts of every container by what had happened until then. */
function partsBy(state: State, isPast: (at: string) => boolean): Parts {
  const { containers: opened, streams, treatments } = state;
  const marks = new Map([...opened].map(([id, container]) => [id, container.marks]));
  const { pots } = followed(
    state.happenings.filter(({ at }) => isPast(at)),
    { opened, marks, streams, treatments },
  );
  return new Map([...pots].map(([id, pot]) => [id, [...pot.parts.values()]]));
}

function massHeld(
  state: State,
  id: string,
  parts: readonly ContentsPart[],
  contents: Contents,
): Pick<Stood, 'kinds' | 'kg'> {
  const { kinds, unaccounted } = kindsOfParts(state, parts);
  const unknown = unaccounted || contents.unaccounted || tellsNothing(contents) || isDoubtful(state, id);
  return { kinds, kg: unknown ? null : massOfContents(contents, kinds) };
}

const isDoubtful = (state: State, id: string): boolean =>
  (state.containers.get(id)?.doubtfulSince ?? null) !== null;

function standingOf(state: State, flows: Flows, side: 'start' | 'end', parts: Parts): readonly Stood[] {
  const containers = [...flows.standing[side]].map(
    ([id, contents]): Stood => ({
      id,
      of: 'container',
      ...massHeld(state, id, parts.get(id) ?? [], contents),
    }),
  );
  const loose = [...flows.loose[side]].flatMap(([id, rest]): Stood[] => {
    const stream = state.streams.get(id);
    if (!stream) return [];
    return [{ id, of: 'stream', kinds: [stream.body.stream], kg: looseMassOf(state, stream, rest) }];
  });
  return [...containers, ...loose];
}

/** What stood here before the first day and after the last. */
export function stoodOf(
  state: State,
  flows: Flows,
  days: Days,
  zone: string,
): { readonly start: readonly Stood[]; readonly end: readonly Stood[] } {
  const when = whenIn(days, zone);
  const until = (...which: When[]) => partsBy(state, (at) => which.includes(when(at)));
  return {
    start: standingOf(state, flows, 'start', until('before')),
    end: standingOf(state, flows, 'end', until('before', 'in')),
  };
}

/** A container of a load, or one that went some other way. */
export type WentPart = {
  readonly containerId: string;
  readonly kinds: readonly StreamKind[];
  /** Null where nothing tells it. */
  readonly kg: Kilograms | null;
  /** What the collector read or wrote. */
  readonly agreed: Amount | null;
  /** It came back within the time, or had left already with another: it is counted there, or not at all. */
  readonly counts: boolean;
  /** What it held may have changed since: what the laws make of it now need not be of what left. */
  readonly changedSince: boolean;
};

/** `mass` is of the containers that count. */
export type Load = {
  readonly handOver: HandOverState;
  readonly parts: readonly WentPart[];
  readonly mass: Weighed;
};

/** Of the containers that count. */
export const countedOf = (sentence: string, parts: readonly WentPart[]): Weighed =>
  weighedOf(
    sentence,
    parts.filter(({ counts }) => counts).map(({ containerId, kg }) => ({ id: containerId, kg })),
  );

export type Went = {
  readonly loads: readonly Load[];
  /** Containers that went some other way than by a hand-over. */
  readonly otherwise: readonly WentPart[];
};

export function wentIn(state: State, { leavings }: Flows, days: Days, zone: string): Went {
  const when = whenIn(days, zone);
  const partsAt = new Map<string, Parts>();
  const part = ({ containerId, at, contents, cameBack }: Leaving, agreed: Amount | null): WentPart => {
    const parts = partsAt.get(at) ?? partsBy(state, (moment) => moment <= at);
    partsAt.set(at, parts);
    const movements = state.containers.get(containerId)?.movements ?? [];
    return {
      containerId,
      ...massHeld(state, containerId, parts.get(containerId) ?? [], contents),
      agreed,
      counts: !cameBack,
      changedSince: movements.some((movement) => movement.at > at),
    };
  };
  const loads = [...state.handOvers.values()].filter(({ at }) => when(at) === 'in');
  return {
    loads: loads.map((handOver): Load => {
      const parts = handOver.parts.map(({ containerId, agreed = null }): WentPart => {
        const left = leavings.find(
          (one) => one.containerId === containerId && one.handOverId === handOver.body.handOverId,
        );
        return left
          ? part(left, agreed)
          : { containerId, kinds: [], kg: null, agreed, counts: false, changedSince: false };
      });
      return { handOver, parts, mass: countedOf('Handed over in this load', parts) };
    }),
    otherwise: leavings.flatMap((left) => (left.handOverId === null ? [part(left, null)] : [])),
  };
}
