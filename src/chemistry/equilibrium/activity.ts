/**
 * Activity coefficients and water activity at 25 °C.
 * SIT: ln γ = −z² D + Σ ε(i,k) m(k), D = A√I ÷ (1 + 1.5√I), neutral species 1;
 *   ln a(w) = −(Σm ÷ 55.51) φ, φ = 1 + (ln 10 ÷ Σm) { −2A ÷ 1.5³ [t − 2 ln t − 1/t] + Σ ε m m }, t = 1 + 1.5√I.
 * Davies: log γ = −A z² (√I ÷ (1 + √I) − 0.3 I), neutral 0.1 I, a(w) = 1 − 0.017 Σm.
 * Source: reference/equilibrium.json.
 */
import { equilibrium } from '../../reference/equilibrium-tables';
import { molarMass } from '../formula';
import { at } from './floats';
import { addRow, rowTimes } from './sparse';
import { strengthAt, waterAt } from './surroundings';
import type { ActivityModel, System } from './system';

const A = Number(equilibrium.debyeHueckel.value) * Math.LN10;
const size = Number(equilibrium.ionSize.value);
const davies = {
  linear: Number(equilibrium.davies.linear),
  neutral: Number(equilibrium.davies.neutral) * Math.LN10,
  water: Number(equilibrium.davies.water),
};
/** Beyond some 50 mol/kg the straight line of Davies would reach nothing: it is held just above. */
const leastWater = 0.01;

/** kg of one mole of water. */
export const kilogramsPerMole = molarMass('H2O').value.toNumber() / 1000;

/** Below this an ionic strength is taken for this one where it is divided by, mol/kg. */
const thin = 1e-12;

/** ln γ of an ion of charge one, and of a neutral species, by the ionic strength alone; and how both rise with it. */
type ByStrength = {
  readonly ion: number;
  readonly neutral: number;
  readonly ionSlope: number;
  readonly neutralSlope: number;
};

export function byStrength(model: ActivityModel, ionicStrength: number): ByStrength {
  const root = Math.sqrt(Math.max(ionicStrength, thin));
  const t = 1 + (model === 'sit' ? size : 1) * root;
  const [ion, ionSlope] = [(-A * root) / t, -A / (2 * root * t * t)];
  if (model === 'sit') return { ion, ionSlope, neutral: 0, neutralSlope: 0 };
  return {
    ion: ion + A * davies.linear * ionicStrength,
    ionSlope: ionSlope + A * davies.linear,
    neutral: davies.neutral * ionicStrength,
    neutralSlope: davies.neutral,
  };
}

/** ln γ of every species in the surroundings told. */
export function writeActivity(system: System, around: Float64Array, lnGamma: Float64Array): void {
  const { ion, neutral } = byStrength(system.model, at(around, strengthAt));
  for (let j = 0; j < lnGamma.length; j++) {
    const z = at(system.charge, j);
    lnGamma[j] = (z === 0 ? neutral : z * z * ion) + rowTimes(system.feeling.pull, j, around);
  }
}

/**
 * The surroundings that the species make: all but ln kg, which is left as it is.
 * @param molality mol/kg water of every species
 */
export function writeSurroundings(system: System, molality: Float64Array, around: Float64Array): void {
  const { adds, pull, size: places } = system.feeling;
  around.fill(0, 0, places - 1);
  let sum = 0;
  for (let j = 0; j < molality.length; j++) {
    sum += at(molality, j);
    addRow(adds, j, at(molality, j), around);
  }
  if (system.model === 'davies') {
    around[waterAt] = Math.log(Math.max(1 - davies.water * sum, leastWater));
    return;
  }
  let pairs = 0;
  for (let j = 0; j < molality.length; j++) pairs += at(molality, j) * rowTimes(pull, j, around);
  const t = 1 + size * Math.sqrt(at(around, strengthAt));
  const debye = ((-2 * A) / size ** 3) * (t - 2 * Math.log(t) - 1 / t);
  // Σm φ, so that pure water needs no division; each pair was met from both sides.
  around[waterAt] = -kilogramsPerMole * (sum + debye + pairs / 2);
}

/** How ln of the water activity rises with the molality of each species, kg/mol. @param made the surroundings they make */
export function writeWaterSlope(system: System, made: Float64Array, slope: Float64Array): void {
  if (system.model === 'davies') {
    const activity = Math.exp(at(made, waterAt));
    slope.fill(activity > leastWater ? -davies.water / activity : 0);
    return;
  }
  const { ionSlope } = byStrength('sit', at(made, strengthAt));
  // By Gibbs and Duhem the water loses what the ions gain.
  const byIons = 2 * at(made, strengthAt) * ionSlope;
  for (let j = 0; j < slope.length; j++) {
    const z = at(system.charge, j);
    slope[j] = -kilogramsPerMole * (1 + (byIons * z * z) / 2 + rowTimes(system.feeling.pull, j, made));
  }
}
