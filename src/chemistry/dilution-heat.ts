/**
 * Heat of diluting nitric acid, and how far it warms the mixture if nothing is lost and all goes in at once:
 * Q = n·(Φ(stock) − Φ(mixture)), ΔT = Q ÷ (m·c), where Φ is the heat that one mole gives as no end of water is added.
 * Source: Φ at 25 °C and heat capacity at 20 °C in reference/acid-dilution.json.
 */
import Decimal from 'decimal.js';
import { minus, over, plus, times } from '../quantities/expression';
import { exact, type Figure, given, within, workedOut } from '../quantities/figure';
import { acidDilution } from '../reference/tables';
import type { NitricAcid } from './acid-strength';
import { sourceOf } from './constants';
import { molarMass } from './formula';
import { type Between, between, type TableRow, tableReading } from './table-reading';

const { heat, heatCapacity, warmest } = acidDilution;

/** From no acid at all to one mole of water for each of acid. */
const heatRows: readonly TableRow<'fraction' | 'heat'>[] = [
  { fraction: new Decimal(0), heat: new Decimal(0), status: 'verified' as const },
  ...heat.rows
    .map((row) => ({
      fraction: new Decimal(1).div(new Decimal(row.water).plus(1)),
      heat: new Decimal(row.heat),
      status: row.status,
    }))
    .reverse(),
];

const capacityRows: readonly TableRow<'percent' | 'capacity'>[] = heatCapacity.rows.map((row) => ({
  percent: new Decimal(row.percent),
  capacity: new Decimal(row.capacity).times(acidDilution.calorie.value),
  status: row.status,
}));

/** Strengths are from the density table, which ends before these tables do. */
function inside(read: Between | undefined): Between {
  if (!read) throw new Error('a strength inside the density table is outside the tables of heat');
  return read;
}

const moleFraction = ({ percent }: NitricAcid): Figure<'1'> => {
  const acid = over(percent, molarMass('HNO3'));
  return workedOut({
    sentence: 'Share of the molecules that are acid',
    unit: '1',
    formula: over(acid, plus(acid, over(minus(1, percent), molarMass('H2O')))),
  });
};

/**
 * Heat that one mole of HNO3 in this acid gives as no end of water is added, kJ/mol: 19.73 at one mole of water, nothing
 * at the end. @param which names the acid: two readings of the table are off independently
 */
export function heatToNoEnd(acid: NitricAcid, which: 'stock' | 'mixture'): Figure<'kJ/mol'> {
  const fraction = moleFraction(acid);
  const read = inside(between(heatRows, fraction.value, 'fraction', 'heat'));
  return workedOut({
    sentence: `Heat left in the ${which}, to no end of water`,
    unit: 'kJ/mol',
    formula: tableReading({
      table: 'heat of dilution',
      origin: `table/heat-of-dilution/${which}`,
      sentence: `How well the table of heats is known, ${which}`,
      at: fraction,
      read,
      unit: 'kJ/mol',
      half: new Decimal(heat.uncertainty),
      source: heat.source,
    }),
    sources: [sourceOf({ source: heat.source, status: read.status })],
    note: heat.note,
  });
}

const capacitySpread = new Decimal(heatCapacity.uncertainty).div(100);

function heatCapacityOf({ percent }: NitricAcid): Figure<'kJ/(kg·K)'> {
  const read = inside(between(capacityRows, percent.value, 'percent', 'capacity'));
  return workedOut({
    sentence: 'Heat capacity of the mixture',
    unit: 'kJ/(kg·K)',
    formula: tableReading({
      table: 'heat capacity of nitric acid',
      origin: 'table/heat-capacity',
      sentence: 'How well the table of heat capacities is known',
      at: percent,
      read,
      unit: 'kJ/(kg·K)',
      half: read.value.times(capacitySpread),
      source: heatCapacity.source,
    }),
    sources: [sourceOf({ source: heatCapacity.source, status: read.status }), sourceOf(acidDilution.calorie)],
  });
}

export type Warming = { readonly heat: Figure<'kJ'>; readonly rise: Figure<'K'> };

type Mixed = {
  readonly stock: NitricAcid;
  readonly mixture: NitricAcid;
  /** HNO3 itself. */
  readonly pure: Figure;
  /** Of all the mixture. */
  readonly mass: Figure;
};

/** Heat of mixing the stock with pure water, and the rise if it is done all at once and nothing is lost. */
export function warmingOf({ stock, mixture, pure, mass }: Mixed): Warming {
  const all = workedOut({
    sentence: 'Heat of diluting',
    unit: 'kJ',
    formula: times(
      over(pure, molarMass('HNO3')),
      minus(heatToNoEnd(stock, 'stock'), heatToNoEnd(mixture, 'mixture')),
    ),
  });
  const rise = workedOut({
    sentence: 'Rise in temperature, all at once',
    unit: 'K',
    formula: over(all, times(mass, heatCapacityOf(mixture))),
    note: 'If nothing is lost. Slowly and with waits it stays cooler: read the thermometer.',
  });
  return { heat: all, rise };
}

const pureWater = (): Figure<'kJ/(kg·K)'> => {
  const capacity = capacityRows[0]?.capacity ?? new Decimal(0);
  return given({
    origin: 'table/heat-capacity/water',
    sentence: 'Heat capacity of water',
    value: capacity,
    unit: 'kJ/(kg·K)',
    how: 'constant',
    spread: within(capacity.times(capacitySpread)),
    decimals: 3,
    sources: [sourceOf({ source: heatCapacity.source, status: capacityRows[0]?.status ?? 'memory' })],
  });
};

/** How warm a mixture may become, °C. Source: reference/acid-dilution.json. */
export const warmestC = warmest.value;

/** What is left to `warmestC` from the room's temperature; undefined when the room is as warm as that. */
export function riseLeft(roomC: string): Figure<'K'> | undefined {
  const left = new Decimal(warmest.value).minus(roomC);
  if (left.lte(0)) return undefined;
  return given({
    origin: 'rise-left',
    sentence: `Rise that keeps it at ${warmest.value} °C`,
    value: left,
    unit: 'K',
    how: 'stated',
    spread: exact,
    decimals: roomC.split('.')[1]?.length ?? 0,
    sources: [sourceOf(warmest)],
    note: `${warmest.value} °C less the ${roomC} °C of the room.`,
  });
}

/**
 * Mass of stock that warms all the water by `left` at the most: counted as the first portion, which meets pure water and
 * gives all its heat, and as if the acid itself took none up. Every later portion warms less.
 * m = ΔT·m(water)·c(water)·M ÷ (w·Φ)
 */
export const portionMass = (stock: NitricAcid, water: Figure, left: Figure<'K'>): Figure<'kg'> =>
  workedOut({
    sentence: 'Acid in one portion, at most',
    unit: 'kg',
    formula: over(
      times(left, water, pureWater(), molarMass('HNO3')),
      times(stock.percent, heatToNoEnd(stock, 'stock')),
    ),
  });
