/**
 * Nitric acid: strength as % w/w, mol/L or density, each from any other by the published density table at 20 °C.
 * c = ρ(w)·w ÷ M, with the density ρ straight between the rows of the table.
 */
import Decimal from 'decimal.js';
import { over, times } from '../quantities/expression';
import { exact, type Figure, given, read, workedOut } from '../quantities/figure';
import { inUnit } from '../quantities/quantity';
import type { Written } from '../quantities/written';
import { evidence, liquor, nitricAcid } from '../reference/tables';
import { sourceOf } from './constants';
import { usualSpread } from './evidence';
import { molarMass } from './formula';
import { type Between, between, rowsAround, type TableRow, tableReading } from './table-reading';

/** `acid` is kg of HNO3 in 100 L: density × %. */
type Column = 'percent' | 'density' | 'acid';

const row = (percent: Decimal, density: Decimal, status: TableRow<Column>['status']): TableRow<Column> => ({
  percent,
  density,
  acid: percent.times(density),
  status,
});

/** Rows from pure water (0.9982 kg/L at 20 °C) to 70 %. */
const rows: readonly TableRow<Column>[] = [
  row(new Decimal(0), new Decimal(liquor.waterDensity.value), liquor.waterDensity.status),
  ...nitricAcid.rows.map((r) => row(new Decimal(r.percent), new Decimal(r.density), r.status)),
];

export type WrittenStrength = Written<'%' | 'mol/L' | 'kg/L'>;

/** The ends of the table in the unit that was written. */
export type StrengthFailure = {
  readonly code: 'outside-table';
  readonly low: string;
  readonly high: string;
};

type Failed = { readonly ok: false; readonly failure: StrengthFailure };
type Strength = { readonly ok: true; readonly molarity: Figure<'mol/L'> } | Failed;

/** Nitric acid by all three measures of its strength. */
export type NitricAcid = {
  readonly percent: Figure<'%'>;
  readonly density: Figure<'kg/L'>;
  readonly molarity: Figure<'mol/L'>;
};
type ByMass = ({ readonly ok: true } & NitricAcid) | Failed;

/** kg of HNO3 in 100 L for each mol/L. */
const acidPerMolarity = (): Decimal => molarMass('HNO3').value.div(10);

const ends: Readonly<Record<WrittenStrength['unit'], (row: TableRow<Column> | undefined) => string>> = {
  '%': (end) => String(end?.percent),
  'kg/L': (end) => String(end?.density),
  'mol/L': (end) => end?.acid.div(acidPerMolarity()).toDecimalPlaces(2, Decimal.ROUND_DOWN).toString() ?? '',
};

const outside = (unit: WrittenStrength['unit']): Failed => ({
  ok: false,
  failure: { code: 'outside-table', low: ends[unit](rows[0]), high: ends[unit](rows.at(-1)) },
});

/** Density of nitric acid of `percent` w/w at 20 °C, kg/L; undefined above 70 %. */
export const densityAt = (percent: Decimal): Decimal | undefined =>
  between(rows, percent, 'percent', 'density')?.value;

/**
 * % w/w of acid with `acid` kg of HNO3 in 100 L: the exact inverse of ρ(w)·w with ρ = k + s·w between two rows, that is
 * w = (√(k² + 4·s·acid) − k) ÷ 2s.
 */
function percentOf(acid: Decimal): Between | undefined {
  const around = rowsAround<Column>(rows, acid, 'acid');
  if (!around) return undefined;
  const [a, b, status] = around;
  const s = b.density.minus(a.density).div(b.percent.minus(a.percent));
  const k = a.density.minus(s.times(a.percent));
  const root = k.pow(2).plus(s.times(acid).times(4)).sqrt();
  return { value: root.minus(k).div(s.times(2)), slope: new Decimal(1).div(root), status };
}

type Told = {
  readonly written: WrittenStrength;
  readonly origin: string;
  /** It is what somebody wants, and exact; else it is what stands on a bottle. */
  readonly wanted: boolean;
};

const stated = 'Strength of the acid as stated';
const wantedStrength = 'Strength wanted';
const sentences = {
  stated: { '%': stated, 'mol/L': stated, 'kg/L': 'Density of the acid' },
  wanted: { '%': wantedStrength, 'mol/L': wantedStrength, 'kg/L': 'Density wanted' },
} as const;

/** The strength as it was told, in its own unit. A density is as good as a hydrometer; 0.5 % of it is 1.6 % acid. */
function told<U extends WrittenStrength['unit']>({ written, origin, wanted }: Told, unit: U): Figure<U> {
  const sentence = sentences[wanted ? 'wanted' : 'stated'][unit];
  if (wanted)
    return given({
      origin,
      sentence,
      value: inUnit(written, unit),
      unit,
      how: 'stated',
      spread: exact,
      decimals: written.value.split('.')[1]?.length ?? 0,
    });
  const usual = unit === 'kg/L' ? 'density' : 'strength';
  return read({
    origin,
    sentence,
    written,
    unit,
    how: unit === 'kg/L' ? 'reading' : 'stated',
    spread: usualSpread(usual),
    sources: [sourceOf(evidence[usual])],
  });
}

const tableSpread = new Decimal(nitricAcid.uncertainty);
const table = {
  origin: 'table/nitric-acid-density',
  sentence: 'How well the table of densities is known',
  source: nitricAcid.source,
} as const;

/** Acid as it comes, or what water made of it: names the figures. */
type Which = 'acid' | 'mixture';

/** Density of acid of `percent`, from the table; undefined above 70 %. */
export function densityOfAcid(percent: Figure<'%'>, which: Which): Figure<'kg/L'> | undefined {
  const found = between(rows, percent.value, 'percent', 'density');
  if (!found) return undefined;
  return workedOut({
    sentence: `Density of the ${which}`,
    unit: 'kg/L',
    formula: tableReading({
      ...table,
      table: 'density of nitric acid',
      at: percent,
      read: found,
      unit: 'kg/L',
      half: tableSpread,
    }),
    sources: [sourceOf({ source: nitricAcid.source, status: found.status })],
  });
}

/** mol of HNO3 in a litre: c = ρ·w ÷ M. */
export const molarityOf = (percent: Figure<'%'>, density: Figure<'kg/L'>, which: Which): Figure<'mol/L'> =>
  workedOut({
    sentence: `Strength of the ${which}, mol a litre`,
    unit: 'mol/L',
    formula: over(times(density, percent), molarMass('HNO3')),
  });

const percentFrom = (at: Figure, found: Between, half: Decimal, which: Which): Figure<'%'> =>
  workedOut({
    sentence: `Strength of the ${which}, % by mass`,
    unit: '%',
    formula: tableReading({ ...table, table: 'strength of nitric acid', at, read: found, unit: '%', half }),
    sources: [sourceOf({ source: nitricAcid.source, status: found.status })],
  });

function fromDensity(density: Figure<'kg/L'>, which: Which): ByMass {
  const found = between(rows, density.value, 'density', 'percent');
  if (!found) return outside('kg/L');
  // At the same density, a table of denser acid has less of it by mass.
  const percent = percentFrom(density, found, found.slope.times(tableSpread).negated(), which);
  return { ok: true, percent, density, molarity: molarityOf(percent, density, which) };
}

function fromMolarity(molarity: Figure<'mol/L'>, which: Which): ByMass {
  const each = acidPerMolarity();
  const found = percentOf(molarity.value.times(each));
  if (!found) return outside('mol/L');
  // At the same strength in mol/L, denser acid has less of it by mass: dw = −w·dρ ÷ (d(ρ·w)/dw).
  const half = found.slope.times(found.value).times(tableSpread).negated();
  const percent = percentFrom(molarity, { ...found, slope: found.slope.times(each) }, half, which);
  const density = densityOfAcid(percent, which);
  return density ? { ok: true, percent, density, molarity } : outside('mol/L');
}

function fromPercent(percent: Figure<'%'>, which: Which): ByMass {
  const density = densityOfAcid(percent, which);
  return density
    ? { ok: true, percent, density, molarity: molarityOf(percent, density, which) }
    : outside('%');
}

function byMass(acid: Told): ByMass {
  const which = acid.wanted ? 'mixture' : 'acid';
  switch (acid.written.unit) {
    case '%':
      return fromPercent(told(acid, '%'), which);
    case 'kg/L':
      return fromDensity(told(acid, 'kg/L'), which);
    case 'mol/L':
      return fromMolarity(told(acid, 'mol/L'), which);
  }
}

/**
 * Nitric acid by all three measures, from what is on the bottle. Fails with the ends of the table when outside 0 to 70 %
 * (density 0.9982 to 1.4134 kg/L, 15.70 mol/L).
 * Source: density table named in reference/nitric-acid.json.
 * @example acidByMass({ value: '68', unit: '%' }, 'stock') // 68 %, 1.4048 kg/L, 15.16 mol/L
 */
export const acidByMass = (written: WrittenStrength, origin: string): ByMass =>
  byMass({ written, origin, wanted: false });

/** The same of a strength that somebody wants: the number itself is exact. */
export const wantedAcid = (written: WrittenStrength, origin: string): ByMass =>
  byMass({ written, origin, wanted: true });

/** Strength in mol/L from what is on the bottle. One told in mol/L needs no table, so it may be above it. */
export function acidStrength(written: WrittenStrength, origin: string): Strength {
  if (written.unit !== 'mol/L') return acidByMass(written, origin);
  return { ok: true, molarity: told({ written, origin, wanted: false }, 'mol/L') };
}
