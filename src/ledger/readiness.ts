/**
 * What is still missing or doubtful before containers leave together, beside the flags of each: codes, no sentences. It keeps
 * nothing from leaving and no paper from being made: what is open stays visible in it.
 */
import Decimal from 'decimal.js';
import type { Metal } from '../reference/tables';
import type { Matter, ThingId } from '../safety/must-not-meet/matter';
import { meetings, refusedMeeting } from '../safety/must-not-meet/meetings';
import type { ContainerFigures } from './container-figures';
import { isDoubted } from './container-life';
import { phOf } from './container-ph';
import { duesOf } from './due';
import { hasLabels } from './has-labels';
import { reportedElements } from './lab-levels';
import { contentsSide } from './meeting-sides';
import type { ContainerState, State, StreamState, Told } from './state';

export type Substance = Metal | 'acid';
export type Look = 'ph' | 'colour' | 'layers';

/** What one waste does not tell; of the container where `streamId` is null. */
export type Untold = {
  readonly streamId: string | null;
  /** By evidence that can be added later. */
  readonly substances: readonly Substance[];
  /** Those of them of which others in the container tell: what is known is at least there. */
  readonly partly: readonly Substance[];
  /** Seen or read as it was logged. */
  readonly looks: readonly Look[];
  /** How much liquor its wet solids hold. */
  readonly heldLiquor: boolean;
};

export type Gap =
  | { readonly code: 'empty' | 'not-closed' | 'unaccounted' }
  | { readonly code: 'gone' | 'held'; readonly since: string }
  /** `made` is when the last one was; null where there was none. */
  | { readonly code: 'label-not-made'; readonly made: string | null }
  | { readonly code: 'storage-over'; readonly day: string; readonly daysOver: number }
  | { readonly code: 'untold'; readonly untold: Untold };

const nothingUntold = { substances: [], partly: [], looks: [], heldLiquor: false } as const;

const isUntreated = ({ contents }: ContainerState): boolean =>
  contents.every(({ treatedBy }) => treatedBy.length === 0);

/** Substances by the waste that does not tell them; null: by none in particular. A laboratory may have told of all of it. */
function silentOn({ reports }: ContainerState, { load, metals, acid }: ContainerFigures) {
  const silent = new Map<string | null, { substance: Substance; partly: boolean }[]>();
  const add = (substance: Substance, openIn: readonly string[], told: boolean): void => {
    const by = openIn.length > 0 ? openIn : told ? [] : [null];
    for (const id of by) silent.set(id, [...(silent.get(id) ?? []), { substance, partly: told }]);
  };
  if (!load) return silent;
  const reported: ReadonlySet<string> = reportedElements(reports);
  for (const { metal, all, openIn } of metals)
    if (!reported.has(metal)) add(metal, openIn, all !== undefined);
  add('acid', acid.openIn, acid.figure !== undefined);
  return silent;
}

/** What a liquor as it was logged can tell by being looked at; what was treated looks otherwise. */
function looksOf(state: State, container: ContainerState, figures: ContainerFigures, stream: StreamState) {
  const { liquid, colour, layers } = stream.body;
  if (!liquid || !isUntreated(container)) return [];
  const noPh = !liquid.ph && phOf(state, container, figures.load) === undefined;
  const looks: readonly (readonly [Look, boolean])[] = [
    ['ph', noPh],
    ['colour', colour === undefined],
    ['layers', layers === undefined],
  ];
  return looks.flatMap(([look, open]) => (open ? [look] : []));
}

/** So much has to come out, as finely as it is read off, until it is no longer over its limit; L. */
export const tooFullBy = ({ holds, limit }: { readonly holds: string; readonly limit: string }): Decimal =>
  new Decimal(holds).minus(limit).toDecimalPlaces(1, Decimal.ROUND_UP);

/** Of each waste in it, then of the container as a whole. */
export function untoldIn(
  state: State,
  container: ContainerState,
  figures: ContainerFigures,
): readonly Untold[] {
  const silent = silentOn(container, figures);
  const streamIds = new Set([
    ...container.contents.flatMap(({ streamId }) => streamId ?? []),
    ...[...silent.keys()].flatMap((id) => id ?? []),
    ...figures.silent,
  ]);
  const of = (streamId: string | null): Untold => {
    const stream = state.streams.get(streamId ?? '');
    const found = silent.get(streamId) ?? [];
    return {
      streamId,
      substances: found.map(({ substance }) => substance),
      partly: found.flatMap(({ substance, partly }) => (partly ? [substance] : [])),
      looks: stream ? looksOf(state, container, figures, stream) : [],
      heldLiquor: streamId !== null && figures.silent.includes(streamId),
    };
  };
  const treatedPh =
    !isUntreated(container) && figures.load && phOf(state, container, figures.load) === undefined
      ? [{ ...nothingUntold, streamId: null, looks: ['ph'] } as const]
      : [];
  return [...[...streamIds].map(of), of(null), ...treatedPh].filter(
    ({ substances, looks, heldLiquor }) => substances.length + looks.length > 0 || heldLiquor,
  );
}

const lastOf = (moments: readonly string[]): string | null => moments.toSorted().at(-1) ?? null;

/** When something was last told that a label says. */
function labelledChangedAt(state: State, container: ContainerState): string | null {
  const { movements, answers, reports, determined, marks, treatmentIds } = container;
  const doses = treatmentIds.flatMap((id) => state.treatments.get(id)?.doses ?? []);
  const doubts = marks.filter(({ body }) => ['contents-doubtful', 'contents-known'].includes(body.mark));
  const told: readonly Pick<Told<unknown>, 'at'>[] = [
    ...movements,
    ...answers,
    ...reports,
    ...doses,
    ...doubts,
    ...(determined ? [determined] : []),
  ];
  return lastOf(told.map(({ at }) => at));
}

function labelGap(state: State, container: ContainerState): readonly Gap[] {
  const { containerId } = container.body;
  const made = lastOf(
    [...state.papers.values()].flatMap(({ at, body }) =>
      hasLabels(body) && body.containerIds.includes(containerId) ? [at] : [],
    ),
  );
  const changed = labelledChangedAt(state, container);
  return made === null || (changed !== null && made < changed) ? [{ code: 'label-not-made', made }] : [];
}

function storageGap(state: State, container: ContainerState, now: string, zone: string): readonly Gap[] {
  return duesOf(state, container, now, zone).flatMap(({ kind, day, daysLeft }) =>
    kind === 'leave' && daysLeft < 0 ? [{ code: 'storage-over', day, daysOver: -daysLeft }] : [],
  );
}

/** Of one container; what flags say of it is not told again. @param zone where the workshop is */
export function gapsOf(
  state: State,
  container: ContainerState,
  figures: ContainerFigures,
  { now, zone }: { readonly now: string; readonly zone: string },
): readonly Gap[] {
  const { goneSince, heldSince, closedAt, contents } = container;
  if (goneSince !== null) return [{ code: 'gone', since: goneSince }];
  const doubted = isDoubted(state, container);
  const empty = contents.length === 0 && !doubted;
  if (empty) return [{ code: 'empty' }];
  return [
    ...(heldSince === null ? [] : [{ code: 'held', since: heldSince } as const]),
    ...storageGap(state, container, now, zone),
    ...(closedAt === null ? [{ code: 'not-closed' } as const] : []),
    ...labelGap(state, container),
    ...(figures.contents.unaccounted ? [{ code: 'unaccounted' } as const] : []),
    ...untoldIn(state, container, figures).map((untold) => ({ code: 'untold', untold }) as const),
  ];
}

/** What a place has not said of itself, and rules that nobody entered. */
export type PlaceGap =
  | 'workshop'
  | 'generator-number'
  | 'authority'
  | 'collector'
  | 'licence'
  | 'laws'
  | 'storage-days'
  | 'treatment-allowed';

export function gapsOfPlace({ workshop, rules }: State): readonly PlaceGap[] {
  const told = workshop?.body;
  const open: Readonly<Record<PlaceGap, boolean>> = {
    // With it comes the emergency number.
    workshop: told === undefined,
    'generator-number': told !== undefined && told.generatorNumber === undefined,
    authority: told !== undefined && told.authority === undefined,
    collector: told !== undefined && told.collector === undefined,
    licence: told?.collector !== undefined && told.collector.licence === undefined,
    laws: !rules.has('laws'),
    'storage-days': !rules.has('storage-days'),
    'treatment-allowed': !rules.has('treatment-allowed'),
  };
  return (Object.keys(open) as PlaceGap[]).filter((gap) => open[gap]);
}

/** Two things of different containers that must not meet, and the containers that hold the one and the other. */
export type Apart = {
  readonly a: ThingId;
  readonly b: ThingId;
  readonly by: string;
  readonly withA: readonly string[];
  readonly withB: readonly string[];
};

/** Containers that hold the same things. How strong its acid is makes a difference to a vessel, and to no other waste. */
type Alike = { readonly side: readonly Matter[]; readonly ids: readonly string[] };

function alikeAmong(state: State, containerIds: readonly string[]): readonly Alike[] {
  const found = new Map<string, Alike>();
  for (const id of containerIds) {
    const side = contentsSide(state, id).map(({ acid, ...matter }): Matter => matter);
    const key = JSON.stringify(side);
    found.set(key, { side, ids: [...(found.get(key)?.ids ?? []), id] });
  }
  return [...found.values()];
}

const each = (ids: readonly string[]): readonly string[] => [...new Set(ids)];

/** What stands together among them and must not meet, should two of them break. Nothing found is no statement. */
export function apartAmong(state: State, containerIds: readonly string[]): readonly Apart[] {
  const found = new Map<string, Apart>();
  const alike = alikeAmong(state, containerIds);
  alike.forEach((one, at) => {
    for (const other of alike.slice(one.ids.length > 1 ? at : at + 1)) {
      const meeting = refusedMeeting(meetings(one.side, other.side));
      if (!meeting) continue;
      const turned = meeting.a > meeting.b;
      const [a, b] = turned ? [meeting.b, meeting.a] : [meeting.a, meeting.b];
      const [first, second] = turned ? [other, one] : [one, other];
      const key = `${a} ${b}`;
      const before = found.get(key) ?? { a, b, by: meeting.by, withA: [], withB: [] };
      found.set(key, {
        ...before,
        withA: each([...before.withA, ...first.ids]),
        withB: each([...before.withB, ...second.ids]),
      });
    }
  });
  return [...found.values()];
}
