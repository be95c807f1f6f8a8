/**
 * Heat as a second witness: base cannot warm a pot more than if all of it met acid and nothing were lost. How much less it
 * is tells nothing, since pots stand and cool.
 */
import { over, plus, times } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import { liquor } from '../../reference/tables';
import { ranged } from '../constants';
import { densityOf } from '../density';
import { heatPerAcid } from '../heat';
import type { Contradiction } from './pot-contradictions';
import type { PotBefore } from './pot-knowledge';
import { doseOf, type PotReading } from './pot-readings';

/** Beyond the high end of what it may warm: thermometers, a warm shed. */
const allowance = { factor: 1.25, kelvin: 5 };

/** Rise if all that went in met acid and nothing were lost, K. */
function mostRise({ asked, known, pot }: PotBefore, dose: Figure<'g'>): Figure<'K'> {
  const perMole = known.unsure[pot.parts.length]?.figure;
  if (!perMole) throw new Error('no grams for a mole');
  const capacity = ranged('heat-capacity', 'Heat capacity of the liquor', liquor.heatCapacity, 'kJ/(kg·K)');
  const heat = workedOut({
    sentence: 'Heat if all of it met acid',
    unit: 'kJ',
    formula: times(over(dose, perMole), heatPerAcid(asked.base)),
  });
  const mass = workedOut({
    sentence: 'Mass of liquor and base',
    unit: 'kg',
    formula: plus(times(asked.load.volume, densityOf(asked.load)), dose),
  });
  return workedOut({
    sentence: 'Most that it may have warmed',
    unit: 'K',
    formula: over(heat, times(mass, capacity)),
    signed: true,
    note: 'As if all of it met acid and no heat were lost.',
  });
}

/** Readings that are warmer than the base that went in since the first one can make them. */
export function warmth(before: PotBefore, readings: readonly PotReading[]): readonly Contradiction[] {
  const warm = readings.flatMap(({ temperature }, reading) =>
    temperature ? [{ reading, celsius: Number(temperature.value) }] : [],
  );
  const [first, ...later] = warm;
  if (!first) return [];
  return later.flatMap(({ reading, celsius }) => {
    const one = readings[reading];
    if (!one) return [];
    // Base that went in before the first thermometer reading counts as well: on the side of fewer alarms.
    const most = mostRise(before, doseOf(one));
    const rise = celsius - first.celsius;
    const limit = Math.max(0, most.high.toNumber()) * allowance.factor + allowance.kelvin;
    return rise > limit ? [{ code: 'too-warm', reading, rise, most }] : [];
  });
}
