/** Nitric acid: strength from % w/w, mol/L or density, by the published density table at 20 °C. */
import Decimal from 'decimal.js';
import { over, times } from '../quantities/expression';
import { type Figure, read, type Source, within, workedOut } from '../quantities/figure';
import { inUnit } from '../quantities/quantity';
import type { Written } from '../quantities/written';
import { evidence, nitricAcid } from '../reference/tables';
import { sourceOf } from './constants';
import { molarMass } from './formula';

type Row = { readonly percent: Decimal; readonly density: Decimal };

/** Rows from pure water (0.9982 kg/L at 20 °C) to 70 %. */
const rows: readonly Row[] = [
  { percent: new Decimal(0), density: new Decimal('0.9982') },
  ...nitricAcid.rows.map((r) => ({ percent: new Decimal(r.percent), density: new Decimal(r.density) })),
];

const tableSource: Source = sourceOf({ source: nitricAcid.source, status: 'verified' });

export type StrengthFailure = { readonly code: 'outside-table'; readonly low: string; readonly high: string };
type Strength =
  | { readonly ok: true; readonly molarity: Figure<'mol/L'> }
  | { readonly ok: false; readonly failure: StrengthFailure };

export type WrittenStrength = Written<'%' | 'mol/L' | 'kg/L'>;

const outside = (a: Decimal | undefined, b: Decimal | undefined): Strength => ({
  ok: false,
  failure: { code: 'outside-table', low: String(a), high: String(b) },
});

/** Straight line between the two rows around `x`; undefined outside the table. */
function between(x: Decimal, from: keyof Row, to: keyof Row): { value: Decimal; slope: Decimal } | undefined {
  const upper = rows.findIndex((row) => row[from].gte(x));
  const [a, b] = [rows[Math.max(upper - 1, 0)], rows[Math.max(upper, 1)]];
  if (upper < 0 || !a || !b || x.lt(a[from])) return undefined;
  const slope = b[to].minus(a[to]).div(b[from].minus(a[from]));
  return { value: a[to].plus(slope.times(x.minus(a[from]))), slope };
}

/** Density of nitric acid of `percent` w/w at 20 °C, kg/L; undefined above 70 %. */
export const densityAt = (percent: Decimal): Decimal | undefined =>
  between(percent, 'percent', 'density')?.value;

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
        percent,
      ),
      molarMass('HNO3'),
    ),
    sources: [tableSource],
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
  const given = { origin, sentence, how: 'stated' as const, spread: strengthSpread };
  if (written.unit === '%') return fromPercent(read({ ...given, written, unit: '%' }));
  if (written.unit === 'mol/L') return { ok: true, molarity: read({ ...given, written, unit: 'mol/L' }) };
  const density = read({
    ...given,
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
      sources: [tableSource],
    }),
  );
}
