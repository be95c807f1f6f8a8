/** pH against base as a plot: the likely line, its range hatched, where metals leave, and what is aimed at. */
import Decimal from 'decimal.js';
import type { DoseCurve, PhPoint } from '../../chemistry/treatment/dose-curve';
import { phAt } from '../../chemistry/treatment/expected-ph';
import type { PlannedStage } from '../../chemistry/treatment/plan';
import { modelHoldsAt } from '../../chemistry/treatment/residual-ends';
import type { WhichPh } from '../../chemistry/treatment/which-ph';
import { type DecimalSign, formatNumber } from '../../quantities/format';
import { type BaseId, bases, type Metal } from '../../reference/tables';
import type { PlotCursor } from '../../ui/plot/plot-cursor';
import type { PlotLayer, PlotPoint, PlotSpec } from '../../ui/plot/plot-spec';
import { stillDissolved } from './decades';
import { treatmentWords as w } from './words';

/** Somewhere along it the liquor is stronger than the model reaches. */
export const isRough = ({ points }: DoseCurve): boolean =>
  points.some(({ ionicStrength }) => modelHoldsAt(ionicStrength) === 'outside');

/** What is aimed at: one pH, or a window. */
export type Aim = { readonly low: number; readonly high: number };

export type PotPlotAsked = {
  readonly base: BaseId;
  readonly curve: DoseCurve;
  readonly aim: Aim;
  /** g as sold to the pH wanted; absent where the base does not get there. */
  readonly dose: { readonly x: number; readonly y: number } | undefined;
  /** What stays dissolved against pH; absent where the model does not tell. */
  readonly which: WhichPh | undefined;
  readonly sign: DecimalSign;
};

const thin = '\u202f';
const phDecimals = 1;
/** The model has no constants that can be believed for these. */
const unpredicted: ReadonlySet<Metal> = new Set<Metal>(['Pd', 'Sn']);

/** The curve is coarse where it is steep: through the dose it goes where it was worked out. */
function withDose(points: readonly PhPoint[], dose: PotPlotAsked['dose']): readonly PlotPoint[] {
  const all = line(points);
  return dose
    ? [...all.filter(([x]) => x < dose.x), [dose.x, dose.y], ...all.filter(([x]) => x > dose.x)]
    : all;
}

const line = (points: readonly PhPoint[]): readonly PlotPoint[] =>
  points.map(({ grams, pH }) => [grams, pH] as const);

/** No paper and hardly a meter reads below 0. */
export const phText = (pH: number, sign: DecimalSign): string =>
  pH < 0 ? w.belowZero : formatNumber(new Decimal(pH), phDecimals, sign);

/** Three digits: a place on a drawing, not a figure. */
function gramsText(grams: number, sign: DecimalSign): string {
  const rounded = new Decimal(grams).toSignificantDigits(3);
  return `${formatNumber(rounded, rounded.decimalPlaces(), sign)}${thin}g`;
}

/** A pH typed with its own digits: 9, 9.5, 9.25. */
export const aimText = (pH: number, sign: DecimalSign): string =>
  formatNumber(new Decimal(pH), Math.max(phDecimals, new Decimal(pH).decimalPlaces()), sign);

function aimLayer({ low, high }: Aim, sign: DecimalSign): PlotLayer {
  return low === high
    ? { kind: 'limit', axis: 'y', at: low, word: w.plotAim(aimText(low, sign)) }
    : {
        kind: 'window',
        axis: 'y',
        from: low,
        to: high,
        word: w.plotWindow(aimText(low, sign), aimText(high, sign)),
      };
}

function summaryOf({ curve, sign }: PotPlotAsked): string {
  const [first, last] = [curve.points.at(0), curve.points.at(-1)];
  const rises =
    first && last
      ? [w.plotSummary(phText(first.pH, sign), phText(last.pH, sign), gramsText(last.grams, sign))]
      : [];
  const leaves = curve.leaving.map(({ metal, pH, grams }) =>
    w.plotLeaves(metal, phText(pH, sign), gramsText(grams, sign)),
  );
  return [...(isRough(curve) ? [w.rough] : []), ...rises, ...leaves].join(' ');
}

/** Symbols at the steps; a metal that is down before anything went in has none. */
const steps = (curve: DoseCurve): readonly PlotLayer[] =>
  curve.leaving
    .filter(({ grams, metal }) => grams > 0 && !unpredicted.has(metal))
    .map(({ metal, grams, pH }) => ({ kind: 'step', x: grams, y: pH, word: metal }));

export function potPlot(asked: PotPlotAsked): PlotSpec {
  const { base, curve, aim, dose, sign } = asked;
  const points = withDose(curve.points, dose);
  return {
    title: w.plot(bases[base].name.toLowerCase()),
    summary: summaryOf(asked),
    sign,
    x: { label: bases[base].name.toLowerCase(), unit: 'g', from: 0 },
    y: { label: w.plotPh, from: Math.min(0, Math.floor(curve.soonest[0]?.pH ?? 0)), to: 14 },
    layers: [
      { kind: 'band', name: w.plotRange, low: line(curve.latest), high: line(curve.soonest) },
      { kind: 'line', name: w.plotLine, points, ...(isRough(curve) ? { word: w.plotRough } : {}) },
      aimLayer(aim, sign),
      ...steps(curve),
      ...(dose
        ? [{ kind: 'dots' as const, name: w.plotDose, are: 'expected' as const, points: [dose] }]
        : []),
    ],
  };
}

const cursorSteps = 200;

/** What the plot says at so many grams. */
export function potCursor(asked: PotPlotAsked): PlotCursor {
  const { curve, sign, dose, which } = asked;
  const points = withDose(curve.points, dose).map(([grams, pH]) => ({ grams, pH }));
  const most = curve.points.at(-1)?.grams ?? 0;
  return {
    label: w.cursor,
    from: 0,
    to: most,
    step: most / cursorSteps,
    start: dose?.x ?? most / 2,
    onAt: (grams) => {
      const pH = phAt(points, grams) ?? 0;
      const metals = which ? stillDissolved({ which, points: curve.points, grams, pH }, sign) : '';
      const read = w.reading(gramsText(grams, sign), phText(pH, sign));
      return metals === '' ? read : `${read} ${w.stillDissolved(metals)}`;
    },
  };
}

/** The curve of a stage from where the one before ended; undefined where the model tells none. */
export function stagePlot(
  { base, pH, needed, curve }: PlannedStage,
  sign: DecimalSign,
): { readonly spec: PlotSpec; readonly cursor: PlotCursor } | undefined {
  if (!curve) return undefined;
  const dose = { x: needed.value.toNumber(), y: pH };
  const asked: PotPlotAsked = { base, curve, aim: { low: pH, high: pH }, dose, which: undefined, sign };
  return { spec: potPlot(asked), cursor: potCursor(asked) };
}
