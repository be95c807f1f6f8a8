/**
 * Units: what each symbol means, as a factor to the coherent set (g, L, mol, kJ, K, s) and a dimension. A litre is a cubic
 * decimetre, so that an opening in metres times a speed comes out in litres: the coherent length is the decimetre.
 * A new unit is one line in `table`; a compound such as "kJ/(kg·K)" is read from its parts.
 * Source: BIPM, The International System of Units, 9th edition (2019), prefixes and litre; the US gallon, the avoirdupois
 * pound, the foot and the inch are exact by definition (NIST Special Publication 811, appendix B).
 */
import Decimal from 'decimal.js';

type Base = 'g' | 'dm' | 'mol' | 'kJ' | 'K' | 's';

/** A currency by its three letters of ISO 4217. Each is a dimension of its own, so that two of them never add up. */
export type Currency = Uppercase<string>;

/** Exponent of each base unit and currency; an absent one is 0. */
export type Dimension = Readonly<Partial<Record<Base | Currency, number>>>;

type Meaning = { readonly factor: Decimal; readonly dimension: Dimension };

const of = (factor: string, dimension: Dimension): Meaning => ({ factor: new Decimal(factor), dimension });

const table = {
  '1': of('1', {}),
  '%': of('0.01', {}),
  /** Of a gas: parts of its volume in a million of air. */
  ppm: of('0.000001', {}),
  g: of('1', { g: 1 }),
  mg: of('0.001', { g: 1 }),
  kg: of('1000', { g: 1 }),
  lb: of('453.59237', { g: 1 }),
  L: of('1', { dm: 3 }),
  mL: of('0.001', { dm: 3 }),
  'US gal': of('3.785411784', { dm: 3 }),
  'm³': of('1000', { dm: 3 }),
  'ft³': of('28.316846592', { dm: 3 }),
  mol: of('1', { mol: 1 }),
  mmol: of('0.001', { mol: 1 }),
  kJ: of('1', { kJ: 1 }),
  K: of('1', { K: 1 }),
  s: of('1', { s: 1 }),
  min: of('60', { s: 1 }),
  h: of('3600', { s: 1 }),
  days: of('86400', { s: 1 }),
  m: of('10', { dm: 1 }),
  cm: of('0.1', { dm: 1 }),
  in: of('0.254', { dm: 1 }),
  ft: of('3.048', { dm: 1 }),
  'm²': of('100', { dm: 2 }),
} as const satisfies Record<string, Meaning>;

type Simple = keyof typeof table;

/** A unit symbol: one of the table, one over another, one over a product in brackets, or a currency in place of the upper one. */
export type Unit = Simple | Currency | `${Simple | Currency}/${Simple}` | `${Simple}/(${Simple}·${Simple})`;

const isCurrency = (symbol: string): symbol is Currency => /^[A-Z]{3}$/.test(symbol);

const simple = (symbol: string): Meaning => {
  if (isCurrency(symbol)) return of('1', { [symbol]: 1 });
  const meaning = (table as Record<string, Meaning>)[symbol];
  if (!meaning) throw new Error(`no such unit: ${symbol}`);
  return meaning;
};

const combined = (a: Dimension, b: Dimension, sign: 1 | -1): Dimension => {
  const sum: Partial<Record<Base | Currency, number>> = { ...a };
  for (const [base, exponent] of Object.entries(b) as [Base | Currency, number][]) {
    const total = (sum[base] ?? 0) + sign * exponent;
    if (total === 0) delete sum[base];
    else sum[base] = total;
  }
  return sum;
};

/** Dimension of a product (`sign` 1) or quotient (`sign` −1). */
export const combine = combined;

/** Few units, asked for by every figure. */
const meanings = new Map<Unit, Meaning>();

/** What a unit means. @example meaningOf('mg/L').factor // 0.001 (g/L) */
export function meaningOf(unit: Unit): Meaning {
  const known = meanings.get(unit) ?? readFromParts(unit);
  meanings.set(unit, known);
  return known;
}

function readFromParts(unit: Unit): Meaning {
  const [over, under] = unit.split('/') as [string, string | undefined];
  const top = simple(over);
  if (under === undefined) return top;
  return under
    .replace(/[()]/g, '')
    .split('·')
    .map(simple)
    .reduce(
      (whole, part) => ({
        factor: whole.factor.div(part.factor),
        dimension: combined(whole.dimension, part.dimension, -1),
      }),
      top,
    );
}

export const sameDimension = (a: Dimension, b: Dimension): boolean =>
  a === b || Object.keys(combined(a, b, -1)).length === 0;
