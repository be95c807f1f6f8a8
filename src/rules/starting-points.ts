/**
 * What laws say where a workshop's own authority may say more: starting points to take over one by one, with their text, or to
 * replace. None of them fills anything in by itself.
 */

import { sourceOf } from '../chemistry/constants';
import type { Source } from '../quantities/figure';
import { generator } from '../reference/generator-tables';
import type { Constant } from '../reference/tables';

export type StartId = 'us-federal' | 'eu';

export type StartedRule =
  | 'storage-days'
  | 'near-work-limit'
  | 'near-work-days'
  | 'inspection-days'
  | 'month-limit'
  | 'on-site-limit'
  | 'proof-days'
  | 'retention-years';

export type StartingPoint = {
  readonly start: StartId;
  readonly rule: StartedRule;
  /** For whom it is: a small generator, waste before disposal. */
  readonly forWhom: string;
  readonly value: string;
  readonly unit: string;
  /** The place in the law alone: "40 CFR 262.16(b)". */
  readonly cite: string;
  readonly source: Source;
  readonly note?: string;
};

/** Titles of sources say after a colon what stands there, and in brackets at their end where it was read; a paragraph, "(c)", is part of the place. */
const placeIn = (title: string): string =>
  (title.split(':')[0] ?? title).replace(/ \((?![a-z]\))[^()]*\)$/, '');

const { storage, nearTheWork, inspection, month, onSite, proof, retention } = generator;

function point(start: StartId, rule: StartedRule, forWhom: string, of: Constant): StartingPoint {
  const { value, unit, note } = of;
  const source = sourceOf(of);
  const told = note === undefined ? {} : { note };
  return { start, rule, forWhom, value, unit, cite: placeIn(source.title), source, ...told };
}

/** The shortest year there is, so that the count in days never ends after the one in years. */
const daysOfYear = 365;

const inDays = (of: Constant): Constant => ({
  ...of,
  value: String(Number(of.value) * daysOfYear),
  unit: 'days',
  note: [`${of.value} ${Number(of.value) === 1 ? 'year' : 'years'} in the text.`, of.note]
    .filter((part) => part !== undefined)
    .join(' '),
});

export const startingPoints: readonly StartingPoint[] = [
  point('us-federal', 'storage-days', 'small generator', storage.SQG),
  point('us-federal', 'storage-days', 'small generator, 200 miles or more to go', storage['SQG-far']),
  point('us-federal', 'storage-days', 'large generator', storage.LQG),
  point('eu', 'storage-days', 'before disposal', inDays(storage['EU-disposal'])),
  point('eu', 'storage-days', 'before recovery or treatment', inDays(storage['EU-recovery'])),
  point('us-federal', 'near-work-limit', 'beside the work', nearTheWork.volume),
  point('us-federal', 'near-work-days', 'beside the work', nearTheWork.days),
  point('us-federal', 'inspection-days', 'small and large generators', inspection),
  point('us-federal', 'month-limit', 'to stay a very small generator', month.smallest),
  point('us-federal', 'month-limit', 'large generator from this on', month.large),
  point('us-federal', 'on-site-limit', 'very small generator: less than this', onSite.VSQG.limit),
  point('us-federal', 'on-site-limit', 'small generator', onSite.SQG.limit),
  point('us-federal', 'proof-days', 'to ask where the signed copy is', proof['LQG-ask']),
  point('us-federal', 'proof-days', 'to report that it is missing', proof['SQG-report']),
  point('us-federal', 'retention-years', 'manifests and determinations', retention.USA),
  point('eu', 'retention-years', 'records of hazardous waste', retention.EU),
];

export const startingPointsFor = (rule: string): readonly StartingPoint[] =>
  startingPoints.filter((one) => one.rule === rule);

/** The strictest of these laws' starting points, shown where nobody has said; undefined where they have none. */
export function strictest(rule: StartedRule, of: readonly StartId[]): StartingPoint | undefined {
  const points = startingPointsFor(rule).filter(({ start }) => of.includes(start));
  // Records are kept the longer of two times; all else is held to the smaller.
  const sign = rule === 'retention-years' ? -1 : 1;
  return points.toSorted((a, b) => sign * (Number(a.value) - Number(b.value)))[0];
}
