/**
 * Going through a checklist. A run is plain data; every function returns a new one. Time comes in as ISO text.
 * The rules of being interrupted are the record's own: what was seen half an hour ago is not seen now.
 */
import { asksWhere, type Door, doorsFor, type Item } from './checklist-item';
import type { Checklist } from './checklist-schema';
import { inThisRun, limitsIn, stationAnswer, withWorkedOut, workedOutFrom } from './in-this-run';
import { type AnswerFailure, judge, stopOf } from './judge-answer';
import type { Answered, Context, Given, Run } from './run-schema';

/** Away for longer than this, the open question is asked again. Common practice, no published figure. */
const AWAY_MS = 10 * 60_000;
/** A confirmation sooner than this after the question appeared was not looked at. Judgement, to be tried with people. */
const LOOK_MS = 800;
/** So many of them one after the other are told. Judgement as well. */
export const quickInARow = 3;
const HOUR_MS = 3_600_000;

export type Standing =
  | {
      readonly state: 'next';
      readonly run: Run;
      readonly item: Item;
      readonly number: number;
      readonly of: number;
      readonly tooQuick: boolean;
    }
  | {
      readonly state: 'stopped';
      readonly run: Run;
      readonly item: Item;
      readonly answered: Answered;
      readonly doors: readonly Door[];
      readonly card?: string;
    }
  | {
      readonly state: 'complete';
      readonly run: Run;
      readonly answered: readonly Answered[];
      readonly stillToAsk: readonly Item[];
      readonly tooQuick: boolean;
    };

export type RunFailure =
  | AnswerFailure
  | { readonly code: 'run-stopped' }
  | { readonly code: 'run-complete' }
  | { readonly code: 'not-complete' }
  | { readonly code: 'not-stopped' }
  | { readonly code: 'nothing-to-undo' }
  /** The app knows another station: `movedTo` it first. */
  | { readonly code: 'another-station' }
  | { readonly code: 'no-such-item'; readonly item: string }
  /** Away too long: `resume` first. */
  | { readonly code: 'interrupted'; readonly minutes: number }
  /** The first answers are older than the list is valid: `resume` gives a fresh run. */
  | { readonly code: 'out-of-date' };

export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly failure: RunFailure };

const refused = (failure: RunFailure) => ({ ok: false, failure }) as const;
const done = <T>(value: T) => ({ ok: true, value }) as const;
/** A list, and what it is gone through for. */
type Of = Pick<Run, 'list' | 'context'>;

const since = (from: string, to: string): number => Date.parse(to) - Date.parse(from);

const saidIn = (run: Run, id: string): string | undefined =>
  run.answered.find(({ item }) => item === id)?.answer;

/** Items asked at this pause point, with those left out whose condition is not met. */
const askedBefore = (run: Run): readonly Item[] =>
  run.list.items.filter(
    ({ when, onlyIf }) =>
      when === undefined && (onlyIf === undefined || saidIn(run, onlyIf.item) === onlyIf.answer),
  );

const itemOf = (run: Run, id: string): Item => {
  const item = run.list.items.find((one) => one.id === id);
  if (!item) throw new Error(`no item ${id} in ${run.list.id}`);
  return inThisRun(item, run.context);
};

/** Sooner than a person can look. @param opened when the question appeared */
export function isQuick(opened: string, at: string): boolean {
  const took = since(opened, at);
  return took >= 0 && took < LOOK_MS;
}

/** The last of them were sooner than a person can look, three in a row; told once for every three. */
export function isTooQuick(told: readonly { readonly quick?: boolean | undefined }[]): boolean {
  const streak = told.length - 1 - told.findLastIndex(({ quick }) => !quick);
  return streak > 0 && streak % quickInARow === 0;
}

/** Whether its confirmations are too quick. */
function tooQuick({ answered }: Run): boolean {
  const confirmed = answered.filter(
    ({ kind, verdict }) => kind === 'confirm' && verdict !== 'not-applicable',
  );
  if (confirmed.length === 0 || confirmed.at(-1) !== answered.at(-1)) return false;
  return isTooQuick(confirmed);
}

/**
 * Items for during and after the step that have no answer in order yet.
 * @param later what was answered to them, in order
 */
export function stillToAsk(
  { list, context }: Of,
  later: readonly { readonly item: string; readonly stopped: boolean }[],
): readonly Item[] {
  const isSettled = (id: string): boolean => later.findLast(({ item }) => item === id)?.stopped === false;
  return list.items
    .filter(({ id, when }) => when !== undefined && !isSettled(id))
    .map((item) => inThisRun(item, context));
}

function stopped(run: Run, answered: Answered): Standing {
  const item = itemOf(run, answered.item);
  const doors = doorsFor(item, stopOf(answered));
  return {
    state: 'stopped',
    run,
    item,
    answered,
    doors,
    ...(item.card === undefined ? {} : { card: item.card }),
  };
}

/** Where a run stands: the next question, a stop, or its end. */
export function standing(run: Run): Standing {
  const last = run.answered.at(-1);
  if (last?.verdict === 'stops') return stopped(run, last);
  const asked = askedBefore(run);
  const open = asked.find(({ id }) => saidIn(run, id) === undefined);
  if (open === undefined)
    return {
      state: 'complete',
      run,
      answered: run.answered,
      stillToAsk: stillToAsk(
        run,
        run.later.map(({ item, verdict }) => ({ item, stopped: verdict === 'stops' })),
      ),
      tooQuick: tooQuick(run),
    };
  return {
    state: 'next',
    run,
    item: inThisRun(open, run.context),
    number: asked.indexOf(open) + 1,
    of: asked.length,
    tooQuick: tooQuick(run),
  };
}

/** One answer to one item of a list, as it is kept. @param opened when the question appeared */
export function answeredAs(run: Of, item: Item, given: Given, opened: string, at: string): Outcome<Answered> {
  const judged = judge(item, given);
  if (!judged.ok) return judged;
  const from = workedOutFrom(item, run.context);
  return done({
    item: item.id,
    ask: item.ask,
    look: item.look,
    kind: item.kind,
    ...(item.kind === 'reading' ? { unit: item.unit, ...limitsIn(item) } : {}),
    ...(item.kind === 'reading' && item.range !== undefined ? { range: item.range } : {}),
    ...(from === undefined ? {} : { from }),
    ...(item.own === undefined ? {} : { own: item.own }),
    ...judged.value,
    openedAt: opened,
    at,
    ...(given.kind === 'confirm' && isQuick(opened, at) ? { quick: true as const } : {}),
  });
}

/** An answer of where one works, with what is wrong there: it is no better for being tapped. */
function atPlace({ place }: Context, answered: Answered): Answered {
  if (place?.amiss === undefined) return answered;
  const { says, stops } = place.amiss;
  return { ...answered, verdict: stops ? 'stops' : 'noted', reason: says };
}

/** Where one works, answered by the app, where it knows the station. */
function stationIn(list: Checklist, context: Context, at: string): readonly Answered[] {
  const { place } = context;
  const known = place?.kind === undefined ? null : stationAnswer(list, place.kind);
  if (!place || !known) return [];
  const kept = answeredAs({ list, context }, known.item, { kind: 'choice', answer: known.answer }, at, at);
  return kept.ok ? [{ ...atPlace(context, kept.value), byApp: place.name }] : [];
}

/** Opens a list; its first question appears at `at`. */
export const begin = (list: Checklist, context: Context, at: string): Run => ({
  list,
  context,
  begunAt: at,
  openedAt: at,
  answered: [...stationIn(list, context, at)],
  overcome: [],
  later: [],
  breaks: [],
});

/** At another place, written down or not, the list begins again; what stopped it stays told. */
export function movedTo(run: Run, place: Context['place'], at: string): Run {
  const { place: _, ...context } = run.context;
  const stops = run.answered.filter(({ verdict }) => verdict === 'stops');
  const moved = begin(run.list, { ...context, ...(place ? { place } : {}) }, at);
  return { ...moved, overcome: [...run.overcome, ...stops] };
}

/** Whether a person says to work elsewhere than at the station that the app knows. */
function isElsewhere({ list, context }: Run, item: Item, given: Given): boolean {
  const known = context.place?.kind === undefined ? null : stationAnswer(list, context.place.kind);
  return known?.item.id === item.id && given.kind === 'choice' && given.answer !== known.answer;
}

const outOfDate = (run: Run, at: string): boolean => since(run.begunAt, at) >= run.list.validHours * HOUR_MS;

/** Answers the open question. */
export function answer(run: Run, given: Given, at: string): Outcome<Standing> {
  const now = standing(run);
  if (now.state === 'stopped') return refused({ code: 'run-stopped' });
  if (now.state === 'complete') return refused({ code: 'run-complete' });
  if (outOfDate(run, at)) return refused({ code: 'out-of-date' });
  const away = since(run.openedAt, at);
  if (away > AWAY_MS) return refused({ code: 'interrupted', minutes: Math.floor(away / 60_000) });
  if (isElsewhere(run, now.item, given)) return refused({ code: 'another-station' });
  const kept = answeredAs(run, now.item, given, run.openedAt, at);
  if (!kept.ok) return kept;
  const context = withWorkedOut(run.context, given);
  const told = asksWhere(now.item) ? atPlace(context, kept.value) : kept.value;
  return done(standing({ ...run, context, openedAt: at, answered: [...run.answered, told] }));
}

/** Takes the last answer that a person gave back, as if it had not been given: a finger slipped. */
export function back(run: Run): Outcome<Run> {
  const at = run.answered.findLastIndex(({ byApp }) => byApp === undefined);
  const last = run.answered[at];
  if (last === undefined) return refused({ code: 'nothing-to-undo' });
  return done({ ...run, openedAt: last.openedAt, answered: run.answered.slice(0, at) });
}

/** Through a door: what stopped was made right, and the question is open again. That it stopped stays told. */
export function answerAgain(run: Run): Outcome<Run> {
  const last = run.answered.at(-1);
  if (last?.verdict !== 'stops') return refused({ code: 'not-stopped' });
  return done({ ...run, answered: run.answered.slice(0, -1), overcome: [...run.overcome, last] });
}

export type Resumed =
  | { readonly how: 'go-on'; readonly run: Run }
  /** Show the last two answers, "still true?", and ask the open question again. */
  | {
      readonly how: 'look-again';
      readonly run: Run;
      readonly said: readonly Answered[];
      readonly minutes: number;
    }
  | { readonly how: 'restart'; readonly run: Run; readonly minutes: number };

/** Coming back to a run: after a reload, a call, a fire in the yard. A complete run is left as it is. */
export function resume(run: Run, now: string): Resumed {
  const { state } = standing(run);
  const away = since(run.openedAt, now);
  const minutes = Math.floor(away / 60_000);
  if (state === 'complete') return { how: 'go-on', run };
  if (outOfDate(run, now)) return { how: 'restart', run: begin(run.list, run.context, now), minutes };
  if (away <= AWAY_MS || state === 'stopped') return { how: 'go-on', run };
  const said = run.answered.filter(({ byApp }) => byApp === undefined).slice(-2);
  const breaks = [...run.breaks, { from: run.openedAt, to: now }];
  return { how: 'look-again', run: { ...run, openedAt: now, breaks }, said, minutes };
}

/** Answers an item of during or after the step. A stop says what to do now; the item stays to be asked. */
export function answerLater(run: Run, itemId: string, given: Given, at: string): Outcome<Standing> {
  if (standing(run).state !== 'complete') return refused({ code: 'not-complete' });
  const known = run.list.items.some(({ id, when }) => id === itemId && when !== undefined);
  if (!known) return refused({ code: 'no-such-item', item: itemId });
  const kept = answeredAs(run, itemOf(run, itemId), given, at, at);
  if (!kept.ok) return kept;
  // Nothing is known of when the question appeared, so nothing is said of how quick the answer was.
  const { quick: _, ...told } = kept.value;
  const after = { ...run, later: [...run.later, told] };
  return done(told.verdict === 'stops' ? stopped(after, told) : standing(after));
}

/** Everything that was answered, stops made right included, in the order it was said. */
export const toldIn = (run: Run): readonly Answered[] =>
  [...run.answered, ...run.overcome, ...run.later].sort((a, b) => since(b.at, a.at));

/** Who is there or checks, as named in the answers; the latest named. */
export const secondIn = (run: Run) => run.answered.findLast(({ who }) => who !== undefined)?.who;
