/**
 * A formula as data: it is computed, differentiated and printed from the one expression, so that the working a person
 * reads can never differ from what was computed.
 */
import Decimal from 'decimal.js';
import type { Figure } from './figure';
import { chordsOf, coverage, halfWidths, merged, noSlopes, type Slopes, scaled } from './slopes';
import { combine, type Dimension, meaningOf, sameDimension, type Unit } from './unit';

export type Expression =
  | { readonly op: 'number'; readonly value: Decimal }
  | { readonly op: 'figure'; readonly figure: Figure }
  | { readonly op: 'sum'; readonly terms: readonly Expression[] }
  | { readonly op: 'difference'; readonly from: Expression; readonly less: Expression }
  | { readonly op: 'product'; readonly factors: readonly Expression[] }
  | { readonly op: 'quotient'; readonly over: Expression; readonly under: Expression }
  /** A pure number to the power of a whole number, or its root. */
  | { readonly op: 'power'; readonly of: Expression; readonly times: number; readonly root: number }
  /** The natural logarithm of a pure number, or e to its power. */
  | { readonly op: 'ln' | 'exp'; readonly of: Expression }
  /** `of`, or nothing where it came out below: an amount that is used up is gone, not negative. */
  | { readonly op: 'not-below-nothing'; readonly of: Expression }
  | {
      /**
       * A value read from a table or a solver `at` one or several places, in `unit`; each slope is per coherent unit of its
       * place (1, not %).
       */
      readonly op: 'reading';
      readonly table: string;
      readonly at: readonly { readonly of: Expression; readonly slope: Decimal }[];
      readonly value: Decimal;
      readonly unit: Unit;
    };

/** A figure, an expression, or an exact pure number such as the 2 of "copper takes two". */
export type Operand = Figure | Expression | number;

export const expression = (operand: Operand): Expression => {
  if (typeof operand === 'number') return { op: 'number', value: new Decimal(operand) };
  return 'op' in operand ? operand : { op: 'figure', figure: operand };
};

export const plus = (...terms: Operand[]): Expression => ({ op: 'sum', terms: terms.map(expression) });
export const minus = (from: Operand, less: Operand): Expression => ({
  op: 'difference',
  from: expression(from),
  less: expression(less),
});
export const times = (...factors: Operand[]): Expression => ({
  op: 'product',
  factors: factors.map(expression),
});
/** `of` multiplied with itself, `count` factors in all. */
export const power = (of: Operand, count: number): Expression => ({
  op: 'power',
  of: expression(of),
  times: count,
  root: 1,
});
/** The number that gives `of` when `degree` of it are multiplied. */
export const root = (of: Operand, degree: number): Expression => ({
  op: 'power',
  of: expression(of),
  times: 1,
  root: degree,
});
/** Natural logarithm of a pure number above nothing. */
export const ln = (of: Operand): Expression => ({ op: 'ln', of: expression(of) });
/** e to the power of a pure number. */
export const exp = (of: Operand): Expression => ({ op: 'exp', of: expression(of) });
export const notBelowNothing = (of: Operand): Expression => ({ op: 'not-below-nothing', of: expression(of) });
export const over = (top: Operand, under: Operand): Expression => ({
  op: 'quotient',
  over: expression(top),
  under: expression(under),
});

/** Value in coherent units (g, L, mol, kJ, K), its dimension, and its slope against every origin of uncertainty. */
export type Evaluated = {
  readonly value: Decimal;
  readonly dimension: Dimension;
  readonly slopes: Slopes;
};

const added = (a: Evaluated, b: Evaluated, sign: 1 | -1): Evaluated => {
  if (!sameDimension(a.dimension, b.dimension)) throw new Error('terms of a sum differ in unit');
  return {
    value: a.value.plus(b.value.times(sign)),
    dimension: a.dimension,
    slopes: merged(a.slopes, scaled(b.slopes, sign)),
  };
};

const multiplied = (a: Evaluated, b: Evaluated): Evaluated => ({
  value: a.value.times(b.value),
  dimension: combine(a.dimension, b.dimension, 1),
  slopes: merged(scaled(a.slopes, b.value.toNumber()), scaled(b.slopes, a.value.toNumber())),
});

const divided = (a: Evaluated, b: Evaluated): Evaluated => {
  const value = a.value.div(b.value);
  const under = b.value.toNumber();
  return {
    value,
    dimension: combine(a.dimension, b.dimension, -1),
    slopes: merged(scaled(a.slopes, 1 / under), scaled(b.slopes, -value.toNumber() / under)),
  };
};

type Bend = {
  /** Finite over the whole range of what it is taken of. */
  readonly curve: (x: number) => number;
  readonly tangent: number;
  readonly value: Decimal;
};

/**
 * What bends: three washes that each leave 0.3, or 0.5 where they work badly, leave 0.03 or 0.13, and the tangent at 0.3
 * says 0.08. So each side of the range follows the chord to the end of the base, not the tangent.
 */
function bent(of: Evaluated, { curve, tangent, value }: Bend): Evaluated {
  if (!sameDimension(of.dimension, {}))
    throw new Error('only a pure number has powers, roots and logarithms');
  const base = of.value.toNumber();
  const { minus, plus } = halfWidths(of.slopes);
  const chord = (half: number, sign: 1 | -1): number =>
    half === 0 ? tangent : (sign * (curve(base + sign * half) - curve(base))) / half;
  const [below, above] = [chord(minus, -1), chord(plus, 1)];
  const slopes = new Map(
    [...of.slopes].map(([origin, s]) => {
      const { falling, rising } = chordsOf(s);
      const chords = {
        falling: falling * (falling < 0 ? above : below),
        rising: rising * (rising < 0 ? below : above),
      };
      return [origin, { ...s, slope: s.slope * tangent, chords }] as const;
    }),
  );
  return { value, dimension: {}, slopes };
}

function raised(of: Evaluated, times: number, root: number): Evaluated {
  const exponent = times / root;
  return bent(of, {
    curve: (x) => Math.max(0, x) ** exponent,
    tangent: exponent * of.value.toNumber() ** (exponent - 1),
    value: of.value.pow(root === 1 ? times : new Decimal(times).div(root)),
  });
}

/** A range that comes down to nothing would have no end below: it is followed to a millionth of the value. */
function logarithm(of: Evaluated): Evaluated {
  if (!of.value.gt(0)) throw new Error('only what is above nothing has a logarithm');
  const base = of.value.toNumber();
  return bent(of, {
    curve: (x) => Math.log(Math.max(x, base * 1e-6)),
    tangent: 1 / base,
    value: of.value.ln(),
  });
}

function exponential(of: Evaluated): Evaluated {
  return bent(of, { curve: Math.exp, tangent: Math.exp(of.value.toNumber()), value: of.value.exp() });
}

/** Names what may be left of something used up, after all that it was worked out from: the same for the same thing only. */
const leftOver = ({ value, slopes }: Evaluated): string => {
  const from = [...slopes].map(([origin, { slope }]) => `${slope} × ${origin}`).sort();
  return `left over/${value}/(${from.join(' + ')})`;
};

/**
 * What came out below nothing is nothing. It no longer follows what it was worked out from: only as much of the range as
 * lies above nothing is left, on its own.
 */
function usedUp(of: Evaluated): Evaluated {
  if (of.value.gt(0)) return of;
  const high = Math.max(0, of.value.toNumber() + halfWidths(of.slopes).plus);
  const left = {
    slope: 1,
    minus: 0,
    plus: high / coverage,
    sentence: 'What may be left of what looks used up',
    how: 'assumed' as const,
  };
  return {
    value: new Decimal(0),
    dimension: of.dimension,
    slopes: high === 0 ? noSlopes : new Map([[leftOver(of), left]]),
  };
}

/** Throws when units do not fit: a formula that does not come out in its unit is a programmer's error. */
export function evaluate(e: Expression): Evaluated {
  switch (e.op) {
    case 'number':
      return { value: e.value, dimension: {}, slopes: noSlopes };
    case 'figure': {
      const { factor, dimension } = meaningOf(e.figure.unit);
      return { value: e.figure.value.times(factor), dimension, slopes: e.figure.slopes };
    }
    case 'sum':
      return e.terms.map(evaluate).reduce((a, b) => added(a, b, 1));
    case 'difference':
      return added(evaluate(e.from), evaluate(e.less), -1);
    case 'product':
      return e.factors.map(evaluate).reduce(multiplied);
    case 'quotient':
      return divided(evaluate(e.over), evaluate(e.under));
    case 'power':
      return raised(evaluate(e.of), e.times, e.root);
    case 'ln':
      return logarithm(evaluate(e.of));
    case 'exp':
      return exponential(evaluate(e.of));
    case 'not-below-nothing':
      return usedUp(evaluate(e.of));
    case 'reading': {
      const { factor, dimension } = meaningOf(e.unit);
      const parts = e.at.map(({ of, slope }) => scaled(evaluate(of).slopes, slope.times(factor).toNumber()));
      return { value: e.value.times(factor), dimension, slopes: parts.reduce(merged, noSlopes) };
    }
  }
}

/** The figures that stand in a formula, each once, in the order in which they are read. */
export function figuresIn(e: Expression): Figure[] {
  const parts = (): Figure[] => {
    switch (e.op) {
      case 'number':
        return [];
      case 'figure':
        return [e.figure];
      case 'sum':
        return e.terms.flatMap(figuresIn);
      case 'difference':
        return [...figuresIn(e.from), ...figuresIn(e.less)];
      case 'product':
        return e.factors.flatMap(figuresIn);
      case 'quotient':
        return [...figuresIn(e.over), ...figuresIn(e.under)];
      case 'power':
      case 'ln':
      case 'exp':
      case 'not-below-nothing':
        return figuresIn(e.of);
      case 'reading':
        return e.at.flatMap(({ of }) => figuresIn(of));
    }
  };
  return [...new Set(parts())];
}
