/**
 * Cases of kind `clock`: a rule, the day it starts from, and the day it is looked at. `lastDay` is start + N with the start
 * as day 0, `conservativeLastDay` a day less; both null where a rule has no clock, or nothing has started. A moment with a
 * zone falls on the day it has there; with an offset and no zone, on the day that is written.
 */
import * as z from 'zod/mini';
import { generator } from '../../src/reference/generator-tables';
import { calendarDay, daysBetween, type Period } from '../../src/rules/clocks/calendar-day';
import { retention } from '../../src/rules/clocks/retention';
import { timeLimit } from '../../src/rules/clocks/time-limit';
import type { Check, Outcome } from './outcome';

const Whole = z.union([z.int(), z.pipe(z.string().check(z.regex(/^\d+$/)), z.transform(Number))]);

export const ClockCase = z.object({
  id: z.string(),
  kind: z.literal('clock'),
  input: z.looseObject({
    rule: z.string(),
    start: z.nullable(z.string()),
    on: z.optional(z.string()),
    zone: z.optional(z.string()),
    timeZone: z.optional(z.string()),
    /** Of the rule, where its name has no number. */
    days: z.optional(Whole),
    years: z.optional(Whole),
    /** To the site that takes the waste. */
    distanceMiles: z.optional(z.union([z.number(), z.string()])),
  }),
  expected: z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null()])),
});
type ClockCase = z.infer<typeof ClockCase>;

const referencePeriod = ({ value, unit }: { value: string; unit: string }): Period => ({
  count: Number(value),
  unit: unit === 'years' ? 'years' : 'days',
});

const { storage, proof, nearTheWork, inspection, retention: kept } = generator;

/** Rules that are named with no number, the first that fits. */
const named = (far: boolean): readonly (readonly [RegExp, Period | null])[] => [
  [/vsqg.*(under|below|less)/, null],
  [/vsqg.*1000|1000.*vsqg/, referencePeriod(storage.SQG)],
  [/vsqg|cesqg|very[- ]small/, null],
  [/lqg.*exception|exception.*lqg/, referencePeriod(proof['LQG-report'])],
  [/lqg.*(ask|inquir|contact)/, referencePeriod(proof['LQG-ask'])],
  [/exception/, referencePeriod(proof['SQG-report'])],
  [/lqg|large/, referencePeriod(storage.LQG)],
  [/sqg|small/, referencePeriod(far ? storage['SQG-far'] : storage.SQG)],
  [/satellite|\bsaa?t?\b|excess|near[- ]the[- ]work/, referencePeriod(nearTheWork.days)],
  [/inspect|week/, referencePeriod(inspection)],
  [/retention|record/, referencePeriod(kept.USA)],
  [/recover|treat/, referencePeriod(storage['EU-recovery'])],
  [/^eu\b|landfill|dispos/, referencePeriod(storage['EU-disposal'])],
];

const unitOf = (written: string | undefined, rule: string): Period['unit'] | 'weeks' => {
  const first = written?.[0];
  if (first === 'y') return 'years';
  if (first === 'm') return 'months';
  if (first === 'w') return 'weeks';
  return first === undefined && /retention|record|^eu\b|landfill/.test(rule) ? 'years' : 'days';
};

/** The last number of a rule's name that is a time and no amount: "LOCAL-120", "EU-storage-1y", "satellite-55gal-3d". */
function periodInName(rule: string): Period | undefined {
  const numbers = [
    ...rule.matchAll(
      /(\d+)[\s-]*(days?|d|weeks?|w|months?|years?|yr|y|us gal|gal|kg|lb|l|mi|miles|km)?(?![a-z])/g,
    ),
  ];
  const last = numbers.filter(([, , unit]) => !/^(us gal|gal|kg|lb|l|mi|miles|km)$/.test(unit ?? '')).at(-1);
  if (!last) return undefined;
  // No law keeps anything for a hundred years: such a number alone counts days.
  const unit = last[2] === undefined && Number(last[1]) >= 100 ? 'days' : unitOf(last[2], rule);
  return unit === 'weeks' ? { count: 7 * Number(last[1]), unit: 'days' } : { count: Number(last[1]), unit };
}

/** @returns null for a rule that has no clock */
function periodOf({ rule, days, years, distanceMiles }: ClockCase['input']): Period | null {
  if (days !== undefined) return { count: days, unit: 'days' };
  if (years !== undefined) return { count: years, unit: 'years' };
  const name = rule
    .toLowerCase()
    .replace(/\bone\b/, '1')
    .replace(/\bthree\b/, '3')
    // A section of the law is no time.
    .replace(/(40 ?cfr ?)?\d+\.\d+(\(\w+\))*/g, '');
  const miles = distanceMiles === undefined ? undefined : Number(distanceMiles);
  const far = miles !== undefined && miles >= Number(storage.far.value);
  // The longer time is no free choice: nearer than that, the shorter one holds.
  if (/sqg.*270/.test(name) && miles !== undefined && !far) return referencePeriod(storage.SQG);
  const inName = periodInName(name.replace(/1[ ,]?000[\s-]*(kg)?/, ''));
  if (inName) return inName;
  const found = named(far).find(([words]) => words.test(name));
  if (!found) throw new Error(`no rule that this knows: ${rule}`);
  return found[1];
}

/** "2026-03-28", or a moment: "2026-03-28T23:30:00Z", with "[Europe/Berlin]" after it or a zone beside it. */
function dayOf(written: string, zone: string | undefined): string {
  const [, moment = written, inside] = /^([^[]+)(?:\[(.+)\])?$/.exec(written) ?? [];
  const where = inside ?? zone;
  const isMoment = /T.*(Z|[+-]\d\d:?\d\d)$/.test(moment);
  return isMoment && where !== undefined ? calendarDay(moment, where) : moment.slice(0, 10);
}

/** Other names of what is computed, as a case may have them. */
const alsoCalled: Readonly<Record<string, string>> = {
  carefulLastDay: 'conservativeLastDay',
  daysLeft: 'daysLeftToLastDay',
  daysLeftToConservative: 'daysLeftToConservativeLastDay',
  daysLeftToCarefulLastDay: 'daysLeftToConservativeLastDay',
  conservativeDaysLeft: 'daysLeftToConservativeLastDay',
  ...{ deadline: 'lastDay', due: 'lastDay', dueDay: 'lastDay' },
  expired: 'over',
  overdue: 'over',
};

/** Words are no result: a day, a number, yes or no, null are. */
const isProse = (value: string | number | boolean | null): boolean =>
  typeof value === 'string' && !/^[-\d]/.test(value);

/** What is compared. Any other result that a case expects is missing; what else it says in words is told. */
const values = [
  ...['lastDay', 'conservativeLastDay', 'daysLeftToLastDay', 'daysLeftToConservativeLastDay'],
  ...['over', 'daysElapsed', 'keepThrough'],
];

function clock(input: ClockCase['input']): Readonly<Record<string, string | number | boolean | null>> {
  const period = periodOf(input);
  const zone = input.zone ?? input.timeZone;
  if (period === null || input.start === null) {
    const keys = ['lastDay', 'conservativeLastDay', 'daysLeftToLastDay', 'daysLeftToConservativeLastDay'];
    return { ...Object.fromEntries(keys.map((key) => [key, null])), over: false };
  }
  const start = dayOf(input.start, zone);
  const on = input.on === undefined ? start : dayOf(input.on, zone);
  const limit = timeLimit(start, period, on);
  return {
    lastDay: limit.lastDay,
    conservativeLastDay: limit.carefulLastDay,
    daysLeftToLastDay: limit.daysLeft,
    daysLeftToConservativeLastDay: limit.carefulDaysLeft,
    over: limit.daysLeft < 0,
    daysElapsed: daysBetween(start, on),
    ...(period.unit === 'years'
      ? { keepThrough: retention(start, period.count, on)?.keepThrough ?? null }
      : {}),
  };
}

export function evaluateClock({ input, expected }: ClockCase): Outcome {
  const computed = clock(input);
  const nameOf = (key: string): string => alsoCalled[key] ?? key;
  const isCompared = (key: string): boolean =>
    values.includes(nameOf(key)) || !isProse(expected[key] ?? null);
  const checks = Object.entries(expected).flatMap(([key, wanted]): Check[] => {
    const name = nameOf(key);
    if (!isCompared(key)) return [];
    const found = Object.hasOwn(computed, name) ? computed[name] : 'not computed';
    return [{ ok: String(found) === String(wanted), line: `${key}: expected ${wanted}, computed ${found}` }];
  });
  if (checks.length === 0) checks.push({ ok: false, line: 'nothing expected' });
  const left = Object.keys(expected).filter((key) => !isCompared(key));
  return { checks, computed, notes: left.map((key) => `not compared: ${key}`) };
}
