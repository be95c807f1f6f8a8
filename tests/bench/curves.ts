/** How long curves take: liquors of one to ten metals, limed, each point in equilibrium. Bundled before it is run. */
import type { ActivityModel } from '../../src/chemistry/equilibrium/system';
import { titrate } from '../../src/chemistry/equilibrium/titration';

/** Nitrates, mol/kg, the most usual first. */
const metals: readonly (readonly [string, number])[] = [
  ['Cu(NO3)2', 0.2],
  ['Ni(NO3)2', 0.08],
  ['Zn(NO3)2', 0.03],
  ['Fe(NO3)3', 0.02],
  ['Ba(NO3)2', 0.02],
  ['Al(NO3)3', 0.01],
  ['Pb(NO3)2', 0.004],
  ['AgNO3', 0.001],
  ['Sn(NO3)4', 0.002],
  ['Pd(NO3)2', 0.001],
];
const solids = [
  'Cu(OH)2(s)',
  'Ni(OH)2(s)',
  'Zn(OH)2(am)',
  'Ferrihydrite',
  'Ba(NO3)2(s)',
  'Al(OH)3(am)',
  'PbO:0.33H2O(s)',
  'Ag2O(s)',
  'SnO2(am)',
  'Pd(OH)2(am)',
  'Ca(OH)2(portlandite)',
].map((id) => ({ id }));

export type Curve = { readonly model: ActivityModel; readonly points: number; readonly metals: number };

/** A curve from 1 mol/kg of acid to lime left over. @returns Newton's steps it took */
function runCurve({ model, points, metals: count }: Curve): number {
  const substances = new Map([['HNO3', 1], ...metals.slice(0, count)] as const);
  const bases = Array.from({ length: points }, (_, i) => (2.2 * i) / (points - 1));
  const liquor = { substances, waterKilograms: 1 };
  const titrated = titrate({ model, liquor, reagent: 'Ca(OH)2', solids, gas: 'none' }, bases);
  if (!titrated.ok) throw new Error(JSON.stringify(titrated.failure));
  return titrated.value.reduce((sum, { at }) => sum + at.steps, 0);
}

export const stepsOf = (curve: Curve): number => runCurve(curve);

/** Median milliseconds of each curve; all take turns, so that what else the machine does falls on all alike. */
export function timesOf(curves: readonly Curve[], rounds: number, warmUp: number): number[] {
  const times = curves.map((): number[] => []);
  for (let round = -warmUp; round < rounds; round++)
    for (const [i, curve] of curves.entries()) {
      const started = performance.now();
      runCurve(curve);
      if (round >= 0) times[i]?.push(performance.now() - started);
    }
  return times.map(median);
}

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  const [low, high] = [sorted[sorted.length - 1 - middle], sorted[middle]];
  return ((low ?? Number.NaN) + (high ?? Number.NaN)) / 2;
}

/** The power of x that y grows with: slope of a straight line through the logarithms, least squares. */
export function exponent(x: readonly number[], y: readonly number[]): number {
  const [lx, ly] = [x.map(Math.log), y.map(Math.log)];
  const mean = (a: readonly number[]) => a.reduce((s, v) => s + v, 0) / a.length;
  const [mx, my] = [mean(lx), mean(ly)];
  const along = lx.reduce((s, v, i) => s + (v - mx) * ((ly[i] ?? my) - my), 0);
  return along / lx.reduce((s, v) => s + (v - mx) ** 2, 0);
}
