/** Nitric acid: strength from % w/w, mol/L or density, by the published density table at 20 °C. */
import Decimal from 'decimal.js';
import { over, times } from '../quantities/expression';
import { type Figure, given, read, type Source, within, workedOut } from '../quantities/figure';
import { inUnit } from '../quantities/quantity';
import type { Written } from '../quantities/written';
import { evidence, liquor, nitricAcid } from '../reference/tables';
import { sourceOf } from './constants';
import { molarMass } from './formula';

type Row = {
  readonly percent: Decimal;
  readonly density: Decimal;
  readonly status: Source['status'];
};

/** Rows from pure water (0.9982 kg/L at 20 °C) to 70 %. */
const rows: readonly Row[] = [
  {
    percent: new Decimal(0),
    density: new Decimal(liquor.waterDensity.value),
    status: liquor.waterDensity.status,
  },
  ...nitricAcid.rows.map((r) => ({
    percent: new Decimal(r.percent),
    density: new Decimal(r.density),
    status: r.status,
  })),
];

export type StrengthFailure = { readonly code: 'outside-table'; readonly low: string; readonly high: string };
type Strength =
  | { readonly ok: true; readonly molarity: Figure<'mol/L'> }
  | { readonly ok: false; readonly failure: StrengthFailure };

export type WrittenStrength = Written<'%' | 'mol/L' | 'kg/L'>;

const outside = (a: Decimal | undefined, b: Decimal | undefined): Strength => ({
  ok: false,
  failure: { code: 'outside-table', low: String(a), high: String(b) },
});

type Column = 'percent' | 'density';
type Between = { readonly value: Decimal; readonly slope: Decimal; readonly source: Source };

/** Straight line between the two rows around `x`, seen in print only if both were; undefined outside the table. */
function between(x: Decimal, from: Column, to: Column): Between | undefined {
  const upper = rows.findIndex((row) => row[from].gte(x));
  const [a, b] = [rows[Math.max(upper - 1, 0)], rows[Math.max(upper, 1)]];
  if (upper < 0 || !a || !b || x.lt(a[from])) return undefined;
  const slope = b[to].minus(a[to]).div(b[from].minus(a[from]));
  const used = [a, b].filter((row) => !(row === a ? b : a)[from].eq(x));
  const status = used.find((row) => row.status !== 'verified')?.status ?? 'verified';
  return {
    value: a[to].plus(slope.times(x.minus(a[from]))),
    slope,
    source: sourceOf({ source: nitricAcid.source, status }),
  };
}

/** Density of nitric acid of `percent` w/w at 20 °C, kg/L; undefined above 70 %. */
export const densityAt = (percent: Decimal): Decimal | undefined =>
  between(percent, 'percent', 'density')?.value;

/** How well the table itself is known: a factor of 1 on what is read from it. */
const tableItself = (density: Between): Figure<'1'> =>
  given({
    origin: 'table/nitric-acid-density',
    sentence: 'How well the table of densities is known',
    value: 1,
    unit: '1',
    how: 'constant',
    spread: within(new Decimal(nitricAcid.uncertainty).div(density.value)),
    decimals: 0,
    sources: [density.source],
  });

const strengthSpread = (value: Decimal) => within(value.times(evidence.strength.value).div(100));

/** mol of HNO3 per litre, from % and the density there: c = ρ·w ÷ M. */
function fromPercent(percent: Figure<'%'>): Strength {
  const density = between(percent.value, 'percent', 'density');
  if (!density) return outside(rows[0]?.percent, rows[rows.length - 1]?.percent);
  const molarity = workedOut({
    sentence: 'Strength of the acid, from % by mass',
    unit: 'mol/L',
    formula: over(
      times(
        {
          op: 'reading',
          table: 'density of nitric acid',
          at: { op: 'figure', figure: percent },
          value: density.value,
          unit: 'kg/L',
          slope: density.slope.times(100),
        },
        tableItself(density),
        percent,
      ),
      molarMass('HNO3'),
    ),
    sources: [density.source],
  });
  return { ok: true, molarity };
}

/**
 * Strength of nitric acid as mol/L from what is on the bottle. Fails with the ends of the table when outside
 * 0 to 70 % (density 0.9982 to 1.4134 kg/L).
 * Source: density table named in reference/nitric-acid.json.
 */
export function acidStrength(written: WrittenStrength, origin: string): Strength {
  const sentence = 'Strength of the acid as stated';
  const stated = { origin, sentence, how: 'stated' as const, spread: strengthSpread };
  if (written.unit === '%') return fromPercent(read({ ...stated, written, unit: '%' }));
  if (written.unit === 'mol/L') return { ok: true, molarity: read({ ...stated, written, unit: 'mol/L' }) };
  const density = read({
    ...stated,
    sentence: 'Density of the acid',
    written,
    unit: 'kg/L',
    how: 'reading',
    spread: () => within(0),
  });
  const percent = between(inUnit(written, 'kg/L'), 'density', 'percent');
  if (!percent) return outside(rows[0]?.density, rows[rows.length - 1]?.density);
  return fromPercent(
    workedOut({
      sentence: 'Strength of the acid, % by mass',
      unit: '%',
      formula: {
        op: 'reading',
        table: 'strength of nitric acid',
        at: { op: 'figure', figure: density },
        value: percent.value,
        unit: '%',
        slope: percent.slope.div(1000),
      },
      sources: [percent.source],
    }),
  );
}
