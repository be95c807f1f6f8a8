/** A planned stage as the page shows it. */
import Decimal from 'decimal.js';
import type { Expected } from '../../chemistry/treatment/expected-ph';
import type { PlanFailure, Portion } from '../../chemistry/treatment/plan';
import type { PlanTold, StageTold } from '../../ledger/treatment-plan';
import type { Figure } from '../../quantities/figure';
import { type DecimalSign, formatNumber } from '../../quantities/format';
import { bases } from '../../reference/tables';
import { words } from '../words';
import { phText } from './pot-plot';
import { treatmentWords as w } from './words';

const thin = '\u202f';

export type PortionRow = {
  readonly number: string;
  readonly grams: string;
  readonly soFar: string;
  readonly pH: string;
  readonly kind: Portion['kind'];
};

const weighed = (grams: Decimal, sign: DecimalSign): string =>
  formatNumber(grams, grams.decimalPlaces(), sign);

function expectedText(expected: Expected | undefined, sign: DecimalSign): string {
  if (!expected) return w.notExpected;
  const [low, high] = [phText(expected.low, sign), phText(expected.high, sign)];
  return low === high ? low : `${low} ${words.to} ${high}`;
}

export const portionRows = ({ portions }: StageTold, sign: DecimalSign): readonly PortionRow[] =>
  portions.map(({ grams, soFar, kind, expected }, i) => ({
    number: `${i + 1}`,
    grams: weighed(grams, sign),
    soFar: weighed(soFar, sign),
    pH: expectedText(expected, sign),
    kind,
  }));

export type PlanRow = {
  readonly key: string;
  readonly title: string;
  readonly second?: string;
  readonly figure: Figure;
};

/** The rows of a stage; their keys are those of `planFigures`. @param n from 1 */
export function stageRows(stage: StageTold, n: number, sign: DecimalSign): readonly PlanRow[] {
  const { base, needed, byHeat, byFoam, heldBy, gas, wait, largest, portionWater } = stage;
  const key = (what: string): string => `stage-${n}-${what}`;
  const held = (by: StageTold['heldBy']) => (byFoam && heldBy === by ? { second: w.holds } : {});
  return [
    { key: key('needed'), title: w.stageNeeded, figure: needed },
    { key: key('by-heat'), title: w.byHeat, figure: byHeat, ...held('heat') },
    ...(byFoam ? [{ key: key('by-foam'), title: w.byFoam, figure: byFoam, ...held('foam') }] : []),
    {
      key: key('slurry'),
      title: w.slurry(`${weighed(largest, sign)}${thin}g`),
      second: w.stirredInOf[base] ?? w.stirredIn,
      figure: portionWater,
    },
    { key: key('wait'), title: w.wait, figure: wait },
    ...(gas ? [{ key: key('gas'), title: w.gasOf, figure: gas }] : []),
  ];
}

/** The rows of the whole plan. */
export const wholeRows = ({ time, solids, water }: PlanTold): readonly PlanRow[] => [
  { key: 'time', title: w.time, second: w.timeSecond, figure: time },
  { key: 'water', title: w.slurryAll, figure: water },
  ...(solids ? [{ key: 'solids', title: w.solids, figure: solids }] : []),
];

/** The figures of a plan by the name that stands in the address of their working. */
export const planFigures = (plan: PlanTold): ReadonlyMap<string, Figure> =>
  new Map(
    [...plan.stages.flatMap((stage, i) => stageRows(stage, i + 1, '.')), ...wholeRows(plan)].map(
      ({ key, figure }) => [key, figure] as const,
    ),
  );

/** Why there is no plan, and what to do. */
export function planFault({ why }: PlanFailure, base: StageTold['base'], sign: DecimalSign): string {
  switch (why.code) {
    case 'stalls':
      return w.planFails.stalls(bases[base].name, phText(why.pH, sign));
    case 'too-many-portions':
      return w.planFails['too-many-portions'](formatNumber(new Decimal(why.count), 0, sign));
    case 'acid-open':
    case 'model-failed':
    case 'headspace-open':
    case 'nothing-left':
      return w.planFails[why.code];
  }
}
