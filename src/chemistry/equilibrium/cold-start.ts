/** Where to begin when nothing is known of the neighbourhood. */
import { kilogramsPerMole, writeActivity, writeSurroundings } from './activity';
import { add, at } from './floats';
import type { Start, Water } from './solve';
import { rowTimes } from './sparse';
import type { Totals } from './substances';
import { waterAt } from './surroundings';
import type { System } from './system';

/** mol/kg that a component begins with at least. */
const least = 1e-12;
/** Sweeps at most, and the ratio of what reacts to what is there at which they end. */
const sweeps = 40;
const near = Math.log(1.5);

/**
 * Everything dissolved, coefficients to match uncomplexed ions; then each component brought near its balance by continuous
 * fractions; then a component of each solid lowered until none is supersaturated.
 */
export function coldStart(system: System, totals: Totals, water: Water): Start {
  const kilograms = 'kilograms' in water ? water.kilograms : water.moles * kilogramsPerMole;
  const molality = new Float64Array(system.species.length);
  const wanted = Float64Array.from(system.components, (c) => (totals.of.get(c) ?? 0) / kilograms);
  for (const [k, c] of system.components.entries()) {
    // Alkali is owed hydrogen ion: begin at pH 12. The components come first among the species.
    molality[k] = c === 'H+' && at(wanted, k) <= 0 ? least : Math.max(at(wanted, k), least);
  }
  const around = new Float64Array(system.feeling.size);
  around[system.feeling.size - 1] = Math.log(kilograms);
  writeSurroundings(system, molality, around);
  const lnGamma = new Float64Array(system.species.length);
  writeActivity(system, around, lnGamma);
  const lnActivity = Float64Array.from(
    system.components,
    (_, k) => Math.log(at(molality, k)) + at(lnGamma, k),
  );
  const lnWater = at(around, waterAt);
  bringNear(
    system,
    wanted,
    lnActivity,
    (j) => at(system.lnK, j) + at(system.water, j) * lnWater - at(lnGamma, j),
  );
  return { lnActivity, around, phases: desaturate(system, lnActivity, lnWater) };
}

/**
 * Each sweep multiplies the activity of every component by what is there of it over what its species take; species that
 * hold it negatively, as hydroxide does hydrogen ion, count to what is there.
 */
function bringNear(
  system: System,
  wanted: Float64Array,
  lnActivity: Float64Array,
  lnRest: (j: number) => number,
): void {
  const { starts, columns, values } = system.nu;
  const n = system.components.length;
  const [taken, there, highest] = [new Float64Array(n), new Float64Array(n), new Float64Array(n).fill(1)];
  for (let sweep = 0; sweep < sweeps; sweep++) {
    for (let k = 0; k < n; k++) {
      taken[k] = Math.max(-at(wanted, k), 0);
      there[k] = Math.max(at(wanted, k), 0);
    }
    for (let j = 0; j < system.species.length; j++) {
      const m = Math.exp(Math.min(lnRest(j) + rowTimes(system.nu, j, lnActivity), 300));
      for (let a = starts[j] as number; a < (starts[j + 1] as number); a++) {
        const [k, x] = [columns[a] as number, at(values, a)];
        if (x > 0) add(taken, k, x * m);
        else add(there, k, -x * m);
        if (sweep === 0) highest[k] = Math.max(at(highest, k), Math.abs(x));
      }
    }
    let farthest = 0;
    for (let k = 0; k < n; k++) {
      const ratio = Math.log(at(there, k) / at(taken, k));
      if (!Number.isFinite(ratio)) continue;
      farthest = Math.max(farthest, Math.abs(ratio));
      add(lnActivity, k, ratio / at(highest, k));
    }
    if (farthest < near) return;
  }
}

/** Lowers a component of each solid that is supersaturated, or held. @returns the phases that are held */
function desaturate(system: System, lnActivity: Float64Array, lnWater: number): number[] {
  const held: number[] = [];
  for (const [p, phase] of system.phases.entries()) {
    if (phase.held) held.push(p);
    let over = phase.water * lnWater - phase.lnK;
    for (const [k, x] of phase.nu.entries()) over += x * at(lnActivity, k);
    const lowered = phase.nu.findIndex((x) => x > 0);
    if (lowered >= 0 && (over > 0 || phase.held)) add(lnActivity, lowered, -over / at(phase.nu, lowered));
  }
  return held;
}
