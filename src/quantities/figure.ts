/**
 * A figure is a number that can show its working: value, unit, range, how it is known, the formula with its inputs, and
 * the published sources. All computing rooms return figures; a number that is not one is not shown to anybody.
 *
 * Uncertainty is first-order propagation after JCGM 100:2008 (GUM), equation 10: u² = Σ (∂f/∂xᵢ · uᵢ)² over the
 * independent origins xᵢ. Every figure carries its slope against each origin, so inputs that share an origin (one volume
 * reading behind two loads) are combined with their correlation. An origin may be wider on one side; the two sides are
 * then combined apart, a convention of ours that is the GUM's own result when both sides are equal. Ranges are ± 2 u,
 * about 19 times in 20.
 */
import Decimal from 'decimal.js';
import { type Expression, evaluate, figuresIn } from './expression';
import { converted, type Quantity, quantity } from './quantity';
import { coverage, halfWidths, noSlopes, type Slope, type Slopes, sides } from './slopes';
import { meaningOf, sameDimension, type Unit } from './unit';
import { halfLastDigit, type Written } from './written';

/** How a value is known. The first eight are evidence of a person's own; the others are the book's. */
export type How =
  | 'assay'
  | 'photometer'
  | 'strip'
  | 'titration'
  | 'weighing'
  | 'reading'
  | 'assumed'
  | 'stated'
  | 'typical'
  | 'worked-out'
  | 'constant';

/** Where a value was published, and whether somebody of us read it there. */
export type Source = {
  readonly title: string;
  readonly status: 'verified' | 'memory' | 'computed' | 'common practice';
};

export interface Figure<U extends Unit = Unit> {
  /** What it is, in words a person reads: "Copper in the liquor". */
  readonly sentence: string;
  readonly value: Quantity<U>;
  readonly unit: U;
  /** Ends of the range that holds about 19 times in 20; equal to the value where it is exact. */
  readonly low: Quantity<U>;
  readonly high: Quantity<U>;
  readonly how: How;
  /** Decimals that were written or printed; absent for a worked-out figure, whose digits follow its range. */
  readonly decimals?: number;
  /** More decimals for use inside a formula, where the digits written do not hold the value in this unit. */
  readonly formulaDecimals?: number;
  readonly formula?: Expression;
  readonly inputs: readonly Figure[];
  readonly sources: readonly Source[];
  readonly note?: string;
  /** In coherent units (g, L, mol, kJ, K), by origin. */
  readonly slopes: Slopes;
}

/** How far from the value an origin may lie: about 19 times in 20 it is within. Absolute, in the unit of the figure. */
export type Spread = { readonly minus: Decimal; readonly plus: Decimal };

export const exact: Spread = { minus: new Decimal(0), plus: new Decimal(0) };
export const within = (half: Decimal.Value): Spread => ({
  minus: new Decimal(half),
  plus: new Decimal(half),
});
export const between = (low: Decimal.Value, value: Decimal.Value, high: Decimal.Value): Spread => ({
  minus: new Decimal(value).minus(low),
  plus: new Decimal(high).minus(value),
});

const isNone = (spread: Spread) => spread.minus.isZero() && spread.plus.isZero();

type Given<U extends Unit> = {
  /** Names the thing that is uncertain; figures with the same origin rise and fall together. */
  readonly origin: string;
  readonly sentence: string;
  readonly value: Decimal.Value;
  readonly unit: U;
  readonly how: How;
  readonly spread: Spread;
  readonly decimals?: number;
  readonly formulaDecimals?: number;
  readonly sources?: readonly Source[];
  readonly note?: string;
};

/** A figure that is not worked out from others: read, measured, assumed, or printed in a book. */
export function given<U extends Unit>(g: Given<U>): Figure<U> {
  const { factor } = meaningOf(g.unit);
  const value = quantity(g.value, g.unit);
  const slope: Slope = {
    slope: 1,
    minus: g.spread.minus.times(factor).toNumber() / coverage,
    plus: g.spread.plus.times(factor).toNumber() / coverage,
    sentence: g.sentence,
    how: g.how,
  };
  return {
    sentence: g.sentence,
    value,
    unit: g.unit,
    low: floored(value, value.minus(g.spread.minus), g.unit),
    high: quantity(value.plus(g.spread.plus), g.unit),
    how: g.how,
    ...(g.decimals === undefined ? {} : { decimals: g.decimals }),
    ...(g.formulaDecimals === undefined ? {} : { formulaDecimals: g.formulaDecimals }),
    inputs: [],
    sources: g.sources ?? [],
    ...(g.note === undefined ? {} : { note: g.note }),
    slopes: isNone(g.spread) ? noSlopes : new Map([[g.origin, slope]]),
  };
}

/** Amounts have no negative end, however wide they are; a difference that came out negative keeps both its ends. */
const floored = <U extends Unit>(value: Decimal, low: Decimal, unit: U): Quantity<U> =>
  quantity(value.isNegative() ? low : Decimal.max(0, low), unit);

type Read<U extends Unit> = Omit<Given<U>, 'value' | 'decimals' | 'spread'> & {
  readonly written: Written<Unit>;
  /** Beyond the half last digit that every reading hides; the larger of the two counts. */
  readonly spread: (value: Quantity<U>) => Spread;
};

/** A figure that a person wrote, in the unit the computation wants; the digits written are kept. */
export function read<U extends Unit>(r: Read<U>): Figure<U> {
  const value = converted(r.written.value, r.written.unit, r.unit);
  const half = converted(halfLastDigit(r.written.value), r.written.unit, r.unit);
  const own = r.spread(value);
  return given({
    ...r,
    value,
    ...decimalsOf(value, half),
    spread: { minus: Decimal.max(own.minus, half), plus: Decimal.max(own.plus, half) },
  });
}

/**
 * Decimals of a reading in the unit of the computation: those of its last digit. Where the units are no power of ten apart
 * (gallons, pounds) a formula has as many more as keep the value itself, so that it comes out as printed.
 */
function decimalsOf(value: Decimal, half: Decimal): Pick<Figure, 'decimals' | 'formulaDecimals'> {
  const decimals = Math.max(0, -half.times(2).e);
  const own = value.decimalPlaces();
  return own <= decimals ? { decimals } : { decimals, formulaDecimals: Math.min(own, decimals + 4) };
}

type Worked<U extends Unit> = {
  readonly sentence: string;
  readonly unit: U;
  readonly formula: Expression;
  /** It is no amount but lies between two: its range goes below nothing. */
  readonly signed?: true;
  readonly sources?: readonly Source[];
  readonly note?: string;
};

/** A figure worked out from others. Throws when the formula does not come out in `unit`. */
export function workedOut<U extends Unit>(w: Worked<U>): Figure<U> {
  const result = evaluate(w.formula);
  const { factor, dimension } = meaningOf(w.unit);
  if (!sameDimension(result.dimension, dimension)) throw new Error(`"${w.sentence}" is not in ${w.unit}`);
  const value = quantity(result.value.div(factor), w.unit);
  const { minus, plus } = halfWidths(result.slopes);
  const low = value.minus(new Decimal(minus).div(factor));
  return {
    sentence: w.sentence,
    value,
    unit: w.unit,
    low: w.signed ? quantity(low, w.unit) : floored(value, low, w.unit),
    high: quantity(value.plus(new Decimal(plus).div(factor)), w.unit),
    how: 'worked-out',
    formula: w.formula,
    inputs: figuresIn(w.formula),
    sources: w.sources ?? [],
    ...(w.note === undefined ? {} : { note: w.note }),
    slopes: result.slopes,
  };
}

/** An origin's own part of a figure's range, in the figure's unit: what the page "what widens the range" lists. */
export type Part<U extends Unit> = {
  readonly sentence: string;
  readonly minus: Quantity<U>;
  readonly plus: Quantity<U>;
};

/** The parts of a figure's range, widest first. Their squares add up to the square of the range on either side. */
export function partsOfRange<U extends Unit>(figure: Figure<U>): readonly Part<U>[] {
  const { factor } = meaningOf(figure.unit);
  const inUnit = (side: number) => quantity(new Decimal(side * coverage).div(factor), figure.unit);
  return [...figure.slopes.values()]
    .map((slope) => ({ sentence: slope.sentence, ...sides(slope) }))
    .map((p) => ({ sentence: p.sentence, minus: inUnit(p.minus), plus: inUnit(p.plus) }))
    .filter((p) => !(p.minus.isZero() && p.plus.isZero()))
    .sort((a, b) => Decimal.max(b.minus, b.plus).cmp(Decimal.max(a.minus, a.plus)));
}

/** Width of a figure's range, from end to end, in its unit. */
export const width = (figure: Figure): Decimal => figure.high.minus(figure.low);

/** How the origin with the largest part in a figure's range is known; its own way of knowing where it is exact. */
export function mostlyKnownBy(figure: Figure): How {
  const size = (slope: Slope): number => Math.max(sides(slope).minus, sides(slope).plus);
  const [widest] = [...figure.slopes.values()]
    .filter(({ how }) => how !== 'constant')
    .sort((a, b) => size(b) - size(a));
  return widest?.how ?? figure.how;
}
