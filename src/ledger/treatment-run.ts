/**
 * A treatment while it runs, from what was written down alone: the stage it is in, what went in, what was read against
 * it, until when to wait, how warm it became. What is left to add is worked out in `run-outlook.ts`.
 */
import { constant, ranged } from '../chemistry/constants';
import { minus, plus } from '../quantities/expression';
import { exact, type Figure, given, read, within, workedOut } from '../quantities/figure';
import { type Quantity, quantity } from '../quantities/quantity';
import type { Written } from '../quantities/written';
import { dosing } from '../reference/dosing-tables';
import type { BaseId, Metal } from '../reference/tables';
import { minutesAfter } from '../safety/stated-time';
import { asHeld } from './amounts';
import type { Agent, DoseAdded, PotRead } from './entries/treatments';
import type { Told, TreatmentState } from './state';
import type { PhReading } from './treatment';

/** A pH reading with what of the stage's agent was in by then, g as sold. */
export type ReadPoint = {
  readonly reading: PhReading;
  readonly grams: Quantity<'g'>;
  /** Doses of the stage by then. */
  readonly doses: readonly Told<DoseAdded>[];
  /** Before the least wait after the last of them: not all of it may have gone in solution. */
  readonly early: boolean;
};

export type RunningStage = {
  /** From 0, in the order of the plan. */
  readonly index: number;
  readonly agent: Agent;
  /** Absent where the stage has none: copper onto iron. */
  readonly targetPh: string | null;
  readonly isLast: boolean;
  /** Doses of its agent since it began. */
  readonly doses: readonly Told<DoseAdded>[];
  readonly grams: Quantity<'g'>;
  readonly points: readonly ReadPoint[];
  /** Something else went in during the stage. */
  readonly foreign: boolean;
};

type Step = Told<DoseAdded | PotRead>;

const before = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
const byTime = (a: Step, b: Step): number => before(a.at, b.at) || before(a.entryId, b.entryId);
const isDose = (step: Step): step is Told<DoseAdded> => step.body.kind === 'dose-added';
const hasPh = (step: Step): step is PhReading => step.body.kind === 'pot-read' && step.body.ph !== undefined;

/** Doses and readings in the order in which they happened; of the same moment, as they were written. */
export const stepsOf = ({ doses, readings }: TreatmentState): readonly Step[] =>
  [...doses, ...readings].sort(byTime);

type Going = {
  index: number;
  doses: Told<DoseAdded>[];
  grams: Quantity<'g'>;
  points: ReadPoint[];
  foreign: boolean;
};

const fresh = (index: number): Going => ({
  index,
  doses: [],
  grams: quantity(0, 'g'),
  points: [],
  foreign: false,
});

const waitOf = (base: BaseId): Figure<'min'> =>
  ranged(`wait/${base}`, 'Wait before the reading', dosing.wait[base], 'min');

/** From then on a reading counts; undefined after iron, which takes days. */
const settledAfter = ({ at, body }: Told<DoseAdded>): string | undefined =>
  body.agent === 'iron' ? undefined : minutesAfter(at, waitOf(body.agent).low.toNumber());

const isEarly = (dose: Told<DoseAdded> | undefined, at: string): boolean =>
  dose !== undefined && at < (settledAfter(dose) ?? '');

/**
 * The stages that a treatment has been through, and last the one it is in: the next begins with a dose of its agent, or when the
 * pH of the one before was read.
 */
export function stagesSoFar(treatment: TreatmentState): readonly RunningStage[] {
  const { stages, targetPh: end } = treatment.body;
  let now = fresh(0);
  const over: Going[] = [];
  const goOn = (index: number): void => {
    over.push(now);
    now = fresh(index);
  };
  const target = (index: number): string | null =>
    stages[index]?.targetPh?.value ?? (index === stages.length - 1 ? end?.value : undefined) ?? null;
  for (const step of stepsOf(treatment)) {
    if (isDose(step)) {
      const { agent, mass } = step.body;
      const later = stages.findIndex((stage, i) => i > now.index && stage.agent === agent);
      if (stages[now.index]?.agent !== agent && later > 0) goOn(later);
      if (stages[now.index]?.agent !== agent) now.foreign = true;
      else {
        now.doses.push(step);
        now.grams = quantity(now.grams.plus(asHeld(mass).mass), 'g');
      }
    } else if (hasPh(step)) {
      now.points.push({
        reading: step,
        grams: now.grams,
        doses: [...now.doses],
        early: isEarly(now.doses.at(-1), step.at),
      });
      const wanted = target(now.index);
      const reached = wanted !== null && Number(step.body.ph.value.value) >= Number(wanted);
      if (reached && now.index < stages.length - 1) goOn(now.index + 1);
    }
  }
  return [...over, now].map((going) => ({
    ...going,
    agent: stages[going.index]?.agent ?? 'iron',
    targetPh: target(going.index),
    isLast: going.index === stages.length - 1,
  }));
}

/** The stage that a treatment is in. */
export function stageOf(treatment: TreatmentState): RunningStage {
  const now = stagesSoFar(treatment).at(-1);
  if (!now) throw new Error('no stage');
  return now;
}

/** What was read since the last dose. */
function readSince(treatment: TreatmentState): readonly Told<PotRead>[] {
  const steps = stepsOf(treatment);
  return steps.slice(steps.findLastIndex(isDose) + 1).filter((step) => !isDose(step)) as Told<PotRead>[];
}

/** Whether the pH of the last stage was read, and nothing went in since. */
export function isAtEnd(treatment: TreatmentState): boolean {
  const { isLast, targetPh, points } = stageOf(treatment);
  const last = points.at(-1)?.reading;
  if (!isLast || targetPh === null || !last || !readSince(treatment).includes(last)) return false;
  return Number(last.body.ph.value.value) >= Number(targetPh);
}

export type Look = {
  readonly dose: Told<DoseAdded>;
  readonly wait: Figure<'min'>;
  /** UTC. */
  readonly due: string;
  /** It was read before the least wait was over, and not since. */
  readonly early: boolean;
};

/**
 * When to read the pH after the last dose; null when it was read late enough, when nothing went in, after iron (which takes
 * days), and when the treatment has ended. It starts at the hour of the dose itself, so that nothing has to run meanwhile.
 */
export function nextLook(treatment: TreatmentState): Look | null {
  const dose = treatment.doses.at(-1);
  if (!dose || dose.body.agent === 'iron' || treatment.ended) return null;
  const wait = waitOf(dose.body.agent);
  const since = readSince(treatment).filter(({ body }) => body.ph !== undefined);
  if (since.some(({ at }) => !isEarly(dose, at))) return null;
  return { dose, wait, due: minutesAfter(dose.at, wait.value.toNumber()), early: since.length > 0 };
}

export type Warmed = {
  /** By the last portion: against the last reading before it. */
  readonly byPortion?: Figure<'K'>;
  /** Against the first reading of all. */
  readonly inAll?: Figure<'K'>;
  /** What one portion may warm it. */
  readonly allowed: Figure<'K'>;
  readonly over: boolean;
};

type Warmth = Told<PotRead> & {
  readonly body: { readonly temperature: NonNullable<PotRead['temperature']> };
};
const hasWarmth = (step: Step): step is Warmth =>
  step.body.kind === 'pot-read' && step.body.temperature !== undefined;

/** °C are K above the freezing point of water: a difference is the same in both. */
const aboveIce = ({ entryId, body: { temperature } }: Warmth): Figure<'K'> =>
  read({
    origin: `entry/${entryId}/temperature`,
    sentence: 'Read in the pot, above 0 °C',
    written: { value: temperature.value, unit: 'K' },
    unit: 'K',
    how: 'reading',
    spread: () => within(0),
  });

const rise = (sentence: string, from: Warmth, to: Warmth): Figure<'K'> =>
  workedOut({ sentence, unit: 'K', formula: minus(aboveIce(to), aboveIce(from)), signed: true });

/** What one portion may warm the liquor: as stated in the plan, or as is usual. */
export const allowedRise = (stated?: Written<'K'>): Figure<'K'> =>
  stated
    ? read({
        origin: 'plan/rise',
        sentence: 'Rise allowed for one portion',
        written: stated,
        unit: 'K',
        how: 'stated',
        spread: () => within(0),
      })
    : constant('warmest-portion', 'Rise allowed for one portion', dosing.warmest, 'K');

/** How warm the pot became, by the readings, against what one portion may warm it. */
export function warmedOf(treatment: TreatmentState, allowed: Figure<'K'>): Warmed {
  const steps = stepsOf(treatment);
  const readings = steps.filter(hasWarmth);
  const [first, last] = [readings.at(0), readings.at(-1)];
  const until = steps.slice(0, last ? steps.indexOf(last) : 0);
  const dosed = until.findLastIndex(isDose);
  const cooler = until.slice(0, Math.max(0, dosed)).findLast(hasWarmth);
  const byPortion = last && cooler ? rise('Warmed by the last portion', cooler, last) : undefined;
  const inAll =
    first && last && first !== last ? rise('Warmer than at the beginning', first, last) : undefined;
  return {
    ...(byPortion ? { byPortion } : {}),
    ...(inAll ? { inAll } : {}),
    allowed,
    over: byPortion?.value.gt(allowed.value) ?? false,
  };
}

/** The newest temperature, as written; null when none was read. */
export const lastWarmth = ({ readings }: TreatmentState): Warmth | null =>
  readings.findLast(hasWarmth) ?? null;

const nothingIn: Figure<'g'> = given({
  origin: 'nothing-in',
  sentence: 'Nothing is in yet',
  value: 0,
  unit: 'g',
  how: 'stated',
  spread: exact,
  decimals: 0,
});

/** What of the stage's agent went in, as weighed. */
export function dosedFigure({ doses }: Pick<RunningStage, 'doses'>): Figure<'g'> {
  if (doses.length === 0) return nothingIn;
  return workedOut({
    sentence: 'Put in so far in this stage',
    unit: 'g',
    formula: plus(
      ...doses.map(({ entryId, body }) =>
        read({
          origin: `entry/${entryId}`,
          sentence: 'Portion, as weighed',
          written: body.mass,
          unit: 'g',
          how: 'weighing',
          spread: () => within(0),
        }),
      ),
    ),
  });
}

/** Whole minutes from one moment to a later one, at least one: what is still to come is never shown as nothing. */
export const minutesTo = (due: string, now: string): number =>
  Math.max(1, Math.round((Date.parse(due) - Date.parse(now)) / 60_000));

/** Whole minutes since a moment. */
export const minutesSince = (past: string, now: string): number =>
  Math.max(0, Math.floor((Date.parse(now) - Date.parse(past)) / 60_000));

/** Metals measured in the clear liquid since the last dose, in the order in which they were. */
export function measuredSince(treatment: TreatmentState): readonly Metal[] {
  const found = readSince(treatment).flatMap(({ body }) => body.findings ?? []);
  return [...new Set(found.map(({ metal }) => metal))];
}
