/**
 * Activity coefficients and water activity at 25 °C.
 * SIT: ln γ = −z² D + Σ ε(i,k) m(k), D = A√I ÷ (1 + 1.5√I), neutral species 1;
 *   ln a(w) = −(Σm ÷ 55.51) φ, φ = 1 + (ln 10 ÷ Σm) { −2A ÷ 1.5³ [t − 2 ln t − 1/t] + Σ ε m m }, t = 1 + 1.5√I.
 * Davies: log γ = −A z² (√I ÷ (1 + √I) − 0.3 I), neutral 0.1 I, a(w) = 1 − 0.017 Σm.
 * Source: reference/equilibrium.json.
 */
import { equilibrium } from '../../reference/equilibrium-tables';
import { molarMass } from '../formula';
import { add, at } from './floats';
import type { System } from './system';

const A = Number(equilibrium.debyeHueckel.value) * Math.LN10;
const size = Number(equilibrium.ionSize.value);
const davies = {
  linear: Number(equilibrium.davies.linear),
  neutral: Number(equilibrium.davies.neutral) * Math.LN10,
  water: Number(equilibrium.davies.water),
};

/** kg of one mole of water. */
export const kilogramsPerMole = molarMass('H2O').value.toNumber() / 1000;

/**
 * Around the species: ionic strength (mol/kg), ln of the water activity, and how ln γ falls as the ionic strength grows
 * with everything else held: by `ionSlope` z² for an ion, by `neutralSlope` for a neutral species (kg/mol).
 */
export type Surroundings = {
  readonly ionicStrength: number;
  readonly lnWater: number;
  readonly ionSlope: number;
  readonly neutralSlope: number;
};

/** Below this an ionic strength is taken for this one where it is divided by, mol/kg. */
const thin = 1e-9;

/** Writes ln γ of every species into `lnGamma`. @param molality mol/kg water of every species */
export function writeActivity(system: System, molality: Float64Array, lnGamma: Float64Array): Surroundings {
  let sum = 0;
  let twice = 0;
  for (let j = 0; j < molality.length; j++) {
    const [m, z] = [at(molality, j), at(system.charge, j)];
    sum += m;
    twice += m * z * z;
  }
  const ionicStrength = twice / 2;
  return system.model === 'sit'
    ? specificInteraction(system, molality, lnGamma, ionicStrength, sum)
    : afterDavies(system, lnGamma, ionicStrength, sum);
}

function specificInteraction(
  system: System,
  molality: Float64Array,
  lnGamma: Float64Array,
  ionicStrength: number,
  sum: number,
): Surroundings {
  const root = Math.sqrt(ionicStrength);
  const t = 1 + size * root;
  const D = (A * root) / t;
  for (let j = 0; j < lnGamma.length; j++) lnGamma[j] = -D * at(system.charge, j) ** 2;
  let pairs = 0;
  for (const { a, b, epsilon } of system.pairs) {
    const [ma, mb] = [at(molality, a), at(molality, b)];
    add(lnGamma, a, epsilon * mb);
    add(lnGamma, b, epsilon * ma);
    pairs += epsilon * ma * mb;
  }
  const debye = ((-2 * A) / size ** 3) * (t - 2 * Math.log(t) - 1 / t);
  // Σm φ, so that pure water needs no division.
  return {
    ionicStrength,
    lnWater: -kilogramsPerMole * (sum + debye + pairs),
    ionSlope: A / (2 * Math.sqrt(Math.max(ionicStrength, thin)) * t * t),
    neutralSlope: 0,
  };
}

function afterDavies(
  system: System,
  lnGamma: Float64Array,
  ionicStrength: number,
  sum: number,
): Surroundings {
  const root = Math.sqrt(ionicStrength);
  const ion = -A * (root / (1 + root) - davies.linear * ionicStrength);
  for (let j = 0; j < lnGamma.length; j++) {
    const z = at(system.charge, j);
    lnGamma[j] = z === 0 ? davies.neutral * ionicStrength : ion * z * z;
  }
  // Beyond some 50 mol/kg the straight line would reach nothing: it is held just above.
  return {
    ionicStrength,
    lnWater: Math.log(Math.max(1 - davies.water * sum, 0.01)),
    ionSlope: A * (1 / (2 * Math.sqrt(Math.max(ionicStrength, thin)) * (1 + root) ** 2) - davies.linear),
    neutralSlope: -davies.neutral,
  };
}
