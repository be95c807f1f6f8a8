/**
 * Diluting nitric acid with water at 20 °C. HNO3 and total mass are conserved; volumes follow from the density table, so
 * that the mixture takes less room than its parts:
 * m(acid) = V·ρ(wanted)·w(wanted) ÷ w(stock), m(water) = V·ρ(wanted) − m(acid).
 * Source: density table named in reference/nitric-acid.json.
 */
import Decimal from 'decimal.js';
import { type Expression, minus, over, plus, times } from '../quantities/expression';
import { exact, type Figure, given, read, workedOut } from '../quantities/figure';
import { inUnit } from '../quantities/quantity';
import type { Written } from '../quantities/written';
import { evidence, liquor } from '../reference/tables';
import {
  acidByMass,
  densityOfAcid,
  molarityOf,
  type NitricAcid,
  type WrittenStrength,
  wantedAcid,
} from './acid-strength';
import { constant, sourceOf } from './constants';
import { portionMass, riseLeft, type Warming, warmingOf } from './dilution-heat';
import { usualSpread } from './evidence';

type VolumeUnit = 'L' | 'mL' | 'US gal';
export type WrittenVolume = Written<VolumeUnit>;
type MassUnit = 'kg' | 'g';

export type DilutionFailure =
  | {
      readonly code: 'outside-table';
      readonly which: 'stock' | 'wanted';
      readonly low: string;
      readonly high: string;
      readonly unit: WrittenStrength['unit'];
    }
  /** As strong as the stock or stronger: water makes nothing stronger. */
  | { readonly code: 'not-weaker' }
  /** No acid at all is wanted, or poured. */
  | { readonly code: 'no-acid' }
  | { readonly code: 'no-water' }
  | { readonly code: 'no-volume' };

type Failed = { readonly ok: false; readonly failure: DilutionFailure };

type Part = { readonly mass: Figure<MassUnit>; readonly volume: Figure<VolumeUnit> };

/** Acid and water, and what they make. */
export type Dilution = {
  readonly stock: NitricAcid;
  readonly mixture: NitricAcid;
  readonly acid: Part;
  readonly water: Part;
  readonly whole: Part;
  /** HNO3 itself, in the acid and in the mixture. */
  readonly pure: Figure<MassUnit>;
  readonly warming: Warming;
};
export type Diluted = { readonly ok: true; readonly dilution: Dilution } | Failed;

const failed = (failure: DilutionFailure): Failed => ({ ok: false, failure });

/** Grams beside millilitres, else kilograms. */
const massUnitBeside = (unit: VolumeUnit): MassUnit => (unit === 'mL' ? 'g' : 'kg');

const waterDensity = constant('water-density', 'Density of water at 20 °C', liquor.waterDensity, 'kg/L');

function stockOf(written: WrittenStrength): { readonly ok: true; readonly stock: NitricAcid } | Failed {
  const stock = acidByMass(written, 'dilution/stock');
  if (!stock.ok) return failed({ ...stock.failure, which: 'stock', unit: written.unit });
  return stock.percent.value.isZero() ? failed({ code: 'no-acid' }) : { ok: true, stock };
}

type Wanted = {
  readonly stock: WrittenStrength;
  readonly wanted: WrittenStrength;
  /** Of the mixture, at 20 °C. */
  readonly volume: WrittenVolume;
};

/**
 * Acid and water for a wanted strength and volume of the mixture. Fails when a strength is outside the density table
 * (0 to 70 %), the wanted one is not below the stock, nothing or only water is wanted.
 * @example recipeFor({ stock: 68 %, wanted: 10 %, volume: 1 L }) // 0.110 L of acid, 0.901 L of water
 */
export function recipeFor({ stock: stocked, wanted: aim, volume: written }: Wanted): Diluted {
  const found = stockOf(stocked);
  if (!found.ok) return found;
  const mixture = wantedAcid(aim, 'dilution/wanted');
  if (!mixture.ok) return failed({ ...mixture.failure, which: 'wanted', unit: aim.unit });
  const { stock } = found;
  if (mixture.percent.value.gte(stock.percent.value)) return failed({ code: 'not-weaker' });
  if (mixture.percent.value.isZero()) return failed({ code: 'no-acid' });
  if (new Decimal(written.value).isZero()) return failed({ code: 'no-volume' });
  return { ok: true, dilution: partsFor(stock, mixture, written) };
}

const pureIn = (mass: Figure, { percent }: NitricAcid, unit: MassUnit): Figure<MassUnit> =>
  workedOut({ sentence: 'Nitric acid itself in the mixture', unit, formula: times(mass, percent) });

function partsFor(stock: NitricAcid, mixture: NitricAcid, written: WrittenVolume): Dilution {
  const massUnit = massUnitBeside(written.unit);
  const weighed = (sentence: string, formula: Expression) => workedOut({ sentence, unit: massUnit, formula });
  const measured = (sentence: string, mass: Figure, density: Figure) =>
    workedOut({ sentence, unit: written.unit, formula: over(mass, density) });
  const volume = volumeWanted(written);
  const mass = weighed('Mass of the mixture', times(volume, mixture.density));
  const pure = pureIn(mass, mixture, massUnit);
  const acid = weighed('Mass of acid to take', over(pure, stock.percent));
  const water = weighed('Mass of water to take', minus(mass, acid));
  return {
    stock,
    mixture,
    acid: { mass: acid, volume: measured('Acid to take', acid, stock.density) },
    water: { mass: water, volume: measured('Water to take', water, waterDensity) },
    whole: { mass, volume },
    pure,
    warming: warmingOf({ stock, mixture, pure, mass }),
  };
}

const volumeWanted = (written: WrittenVolume): Figure<VolumeUnit> =>
  given({
    origin: 'dilution/volume',
    sentence: 'Volume wanted',
    value: written.value,
    unit: written.unit,
    how: 'stated',
    spread: exact,
    decimals: written.value.split('.')[1]?.length ?? 0,
  });

type Poured = {
  readonly stock: WrittenStrength;
  readonly acid: WrittenVolume;
  readonly water: WrittenVolume;
};

const poured = (written: WrittenVolume, name: 'acid' | 'water', sentence: string): Figure<VolumeUnit> =>
  read({
    origin: `dilution/${name}`,
    sentence,
    written,
    unit: written.unit,
    how: 'reading',
    spread: usualSpread('vessel-scale'),
    sources: [sourceOf(evidence['vessel-scale'])],
  });

/**
 * What results when this acid goes into that water. Fails when the stock is outside the density table, or acid or water
 * is missing. Volume of the mixture in the unit of the water.
 */
export function mixtureOf({ stock: stocked, acid: acidWritten, water: waterWritten }: Poured): Diluted {
  const found = stockOf(stocked);
  if (!found.ok) return found;
  if (inUnit(acidWritten, 'L').isZero()) return failed({ code: 'no-acid' });
  if (inUnit(waterWritten, 'L').isZero()) return failed({ code: 'no-water' });
  return { ok: true, dilution: partsOf(found.stock, acidWritten, waterWritten) };
}

function partsOf(stock: NitricAcid, acidWritten: WrittenVolume, waterWritten: WrittenVolume): Dilution {
  const massUnit = massUnitBeside(waterWritten.unit);
  const weighed = (sentence: string, formula: Expression) => workedOut({ sentence, unit: massUnit, formula });
  const acidVolume = poured(acidWritten, 'acid', 'Acid poured');
  const waterVolume = poured(waterWritten, 'water', 'Water poured');
  const acid = weighed('Mass of acid', times(acidVolume, stock.density));
  const water = weighed('Mass of water', times(waterVolume, waterDensity));
  const mass = weighed('Mass of the mixture', plus(acid, water));
  const pure = pureIn(acid, stock, massUnit);
  const mixture = byMassOf(
    workedOut({ sentence: 'Strength of the mixture', unit: '%', formula: over(pure, mass) }),
  );
  const volume = workedOut({
    sentence: 'Volume of the mixture',
    unit: waterWritten.unit,
    formula: over(mass, mixture.density),
  });
  return {
    stock,
    mixture,
    acid: { mass: acid, volume: acidVolume },
    water: { mass: water, volume: waterVolume },
    whole: { mass, volume },
    pure,
    warming: warmingOf({ stock, mixture, pure, mass }),
  };
}

/** Weaker than a stock inside the table, so inside it too. */
function byMassOf(percent: Figure<'%'>): NitricAcid {
  const density = densityOfAcid(percent, 'mixture');
  if (!density) throw new Error('a mixture weaker than its stock is outside the density table');
  return { percent, density, molarity: molarityOf(percent, density, 'mixture') };
}

/**
 * Whether the mixture may pass the warmest it may become (40 °C) from the room's temperature, by the high end of the rise,
 * and then how much acid may go in at a time.
 */
export type Pouring =
  | { readonly kind: 'slowly' }
  | { readonly kind: 'in-portions'; readonly portion: Figure<VolumeUnit> }
  | { readonly kind: 'room-too-warm' };

export function pouringAt({ stock, acid, water: into, warming }: Dilution, roomC: string): Pouring {
  const left = riseLeft(roomC);
  if (!left) return { kind: 'room-too-warm' };
  if (warming.rise.high.lte(left.value)) return { kind: 'slowly' };
  const portion = workedOut({
    sentence: 'Acid in one portion, at most',
    unit: acid.volume.unit,
    formula: over(portionMass(stock, into.mass, left), stock.density),
    note: 'Let it cool to the room between two portions. The low end is the one to keep to.',
  });
  return { kind: 'in-portions', portion };
}
