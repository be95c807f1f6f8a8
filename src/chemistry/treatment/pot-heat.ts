/**
 * Heat as a second witness. Base cannot warm a pot more than if all of it met acid and nothing were lost; how much less it is
 * tells little, since pots stand and cool, so that is a doubt and no contradiction.
 */
import { over, plus, times } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import { liquor } from '../../reference/tables';
import { ranged } from '../constants';
import { densityOf } from '../density';
import { heatPerAcid } from '../heat';
import type { Contradiction, Doubt } from './pot-contradictions';
import type { PotBefore } from './pot-knowledge';
import { doseOf, type PotReading } from './pot-readings';

/** Beyond the high end of what it may warm: thermometers, a warm shed. */
const allowance = { factor: 1.25, kelvin: 5 };
/** Below this part of what it should warm, where that is so many kelvin at least, it is too cool. */
const cool = { part: 0.2, kelvin: 5 };

/** Base that went in, mol, by what was known of it. */
const molesIn = ({ known, pot }: PotBefore, dose: Figure<'g'>): Figure<'mol'> => {
  const perMole = known.unsure[pot.parts.length]?.figure;
  if (!perMole) throw new Error('no grams for a mole');
  return workedOut({ sentence: 'Base that went in', unit: 'mol', formula: over(dose, perMole) });
};

/** Rise if so much hydroxide met acid and nothing were lost, K. */
function riseOf(
  { asked }: PotBefore,
  hydroxide: Figure<'mol'>,
  dose: Figure<'g'>,
  sentence: string,
): Figure<'K'> {
  const capacity = ranged('heat-capacity', 'Heat capacity of the liquor', liquor.heatCapacity, 'kJ/(kg·K)');
  const heat = workedOut({
    sentence: 'Heat as it meets acid',
    unit: 'kJ',
    formula: times(hydroxide, heatPerAcid(asked.base)),
  });
  const mass = workedOut({
    sentence: 'Mass of liquor and base',
    unit: 'kg',
    formula: plus(times(asked.load.volume, densityOf(asked.load)), dose),
  });
  return workedOut({
    sentence,
    unit: 'K',
    formula: over(heat, times(mass, capacity)),
    signed: true,
    note: 'As if no heat were lost.',
  });
}

type Warm = { readonly reading: number; readonly rise: number; readonly dose: Figure<'g'> };

/** Readings with a thermometer after the first of them, and how much warmer each is than that. */
function warmSince(readings: readonly PotReading[]): readonly Warm[] {
  const warm = readings.flatMap((one, reading) =>
    one.temperature ? [{ reading, celsius: Number(one.temperature.value), dose: doseOf(one) }] : [],
  );
  const [first, ...later] = warm;
  return later.map(({ reading, celsius, dose }) => ({
    reading,
    rise: celsius - (first?.celsius ?? 0),
    dose,
  }));
}

/**
 * Readings that are warmer than the base that went in can make them. What went in before the first thermometer reading
 * counts as well, on the side of fewer alarms.
 */
export const tooWarm = (before: PotBefore, readings: readonly PotReading[]): readonly Contradiction[] =>
  warmSince(readings).flatMap(({ reading, rise, dose }) => {
    const most = riseOf(before, molesIn(before, dose), dose, 'Most that it may have warmed');
    const limit = Math.max(0, most.high.toNumber()) * allowance.factor + allowance.kelvin;
    return rise > limit ? [{ code: 'too-warm', reading, rise, most }] : [];
  });

/** Whether the last reading, and none before it, is nearly as warm as its acid should make it; the first must be of the bare liquor. */
export function tooCool(before: PotBefore, readings: readonly PotReading[]): readonly Doubt[] {
  const [first] = readings.filter(({ temperature }) => temperature);
  const warm = warmSince(readings);
  const last = warm.at(-1);
  const acid = before.pot.parts.find(({ of }) => of === 'acid')?.amount;
  if (!first || !last || !acid || doseOf(first).value.gt(0)) return [];
  const went = molesIn(before, last.dose);
  const met = went.value.lt(acid.value) ? went : acid;
  const least = riseOf(before, met, last.dose, 'Least that it should have warmed');
  const rise = Math.max(...warm.map((one) => one.rise));
  const low = least.low.toNumber();
  return low >= cool.kelvin && rise < cool.part * low
    ? [{ code: 'too-cool', reading: last.reading, rise, least }]
    : [];
}
