/**
 * What is known before the first reading, as the fit takes it: the logarithm of each amount, of the grams for a mole of base
 * and of how far the model is off, with their spread, and how they hang together. Two amounts that rest on one volume rise
 * and fall together; that is read from the origins of their figures.
 */
import type { Figure } from '../../quantities/figure';
import { dot, type Matrix, rootOf } from './matrices';

/** One quantity that the readings may move. */
export type Unsure = {
  readonly figure: Figure;
  /** ln of the value, in the unit of the figure; of an offset the value itself. */
  readonly middle: number;
  /** Standard uncertainty of that, and of the figure itself. */
  readonly spread: number;
  readonly own: number;
};

export type KnownBefore = {
  readonly unsure: readonly Unsure[];
  /** Lower triangle: each row says how a quantity is made of independent ones of spread one. */
  readonly root: Matrix;
};

/** An amount whose range reaches down to nothing is taken to be at least so much of its high end. */
const least = 1 / 16;
/** A range holds two standard uncertainties on either side. */
const ends = 4;

const meanSide = (s: { readonly minus: number; readonly plus: number }): number => (s.minus + s.plus) / 2;

/** Covariance of two figures in coherent units, from the origins that they share. */
function together(a: Figure, b: Figure): number {
  let sum = 0;
  for (const [origin, slope] of a.slopes) {
    const other = b.slopes.get(origin);
    if (other) sum += slope.slope * other.slope * meanSide(slope) ** 2;
  }
  return sum;
}

function unsureOf(figure: Figure): Unsure {
  const high = Math.max(figure.high.toNumber(), 1e-9);
  const low = Math.max(figure.low.toNumber(), high * least);
  const value = figure.value.toNumber();
  const own = Math.sqrt(together(figure, figure));
  return {
    figure,
    middle: Math.log(value > low || low > high * least ? value : Math.sqrt(low * high)),
    spread: own === 0 ? 0 : Math.log(high / low) / ends,
    own,
  };
}

const offsetOf = (figure: Figure): Unsure => {
  const own = Math.sqrt(together(figure, figure));
  return { figure, middle: figure.value.toNumber(), spread: own, own };
};

/**
 * @param amounts in units that are coherent (mol, g, 1)
 * @param offsets what is added to something, on either side of nothing
 */
export function knownBefore(amounts: readonly Figure[], offsets: readonly Figure[]): KnownBefore {
  const unsure = [...amounts.map(unsureOf), ...offsets.map(offsetOf)];
  const root = rootOf(
    unsure.map((a) =>
      unsure.map((b) => {
        const size = a.own * b.own;
        return size === 0 ? 0 : (together(a.figure, b.figure) / size) * a.spread * b.spread;
      }),
    ),
  );
  return { unsure, root };
}

/** The quantities at a place given in independent ones of spread one. */
export const placed = ({ unsure, root }: KnownBefore, place: readonly number[]): number[] =>
  unsure.map(({ middle }, i) => middle + dot(root[i] ?? [], place));
