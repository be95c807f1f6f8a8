/**
 * Cases of kind `activity_coefficients`: log10 γ and water activity in a plain salt at pH 7. Tolerance: 0.005 in log10 γ,
 * 0.001 in water activity, 0.5 % in ionic strength.
 */
import * as z from 'zod/mini';
import { atPh } from '../../src/chemistry/equilibrium/at-ph';
import { type Component, components } from '../../src/chemistry/equilibrium/reaction';
import { solverOf } from '../../src/chemistry/equilibrium/solve';
import { broughtBy } from '../../src/chemistry/equilibrium/substances';
import { systemOf } from '../../src/chemistry/equilibrium/system';
import { absolute, type Check, compared, decimals, type Outcome, relative, worstOf } from './outcome';

const Row = z.object({
  background: z.string(),
  mol_per_kgw: z.number().check(z.positive()),
  ionic_strength: z.number(),
  a_w: z.number(),
  log10_gamma: z.record(z.string(), z.number()),
});
type Row = z.infer<typeof Row>;
export const ActivityCase = z.object({
  id: z.string(),
  kind: z.literal('activity_coefficients'),
  results: z.record(z.string(), z.object({ rows: z.array(Row).check(z.minLength(1)) })),
});
type ActivityCase = z.infer<typeof ActivityCase>;

const models = { 'app-sit': 'sit', 'app-davies': 'davies' } as const;
/** Enough of everything else for its species to be there, too little to matter, mol/kg. */
const little = 1e-12;

export function evaluateActivity(c: ActivityCase): Outcome {
  const checks: Check[] = [];
  const computed: Record<string, { rows: unknown[] }> = {};
  for (const [set, model] of Object.entries(models)) {
    const expected = c.results[set];
    if (!expected) continue;
    const rows = expected.rows.map((e) => ({ e, found: run(model, e) }));
    computed[set] = { rows: rows.map(({ found }) => found) };
    checks.push(
      ...rows.map(({ e, found }) => against(`${set} ${e.mol_per_kgw} mol/kg ${e.background}`, e, found)),
    );
  }
  if (checks.length === 0) checks.push({ ok: false, line: 'no result set of ours to compare with' });
  return { checks, computed, notes: [] };
}

type Found = Row | undefined;

function run(model: 'sit' | 'davies', { background, mol_per_kgw, log10_gamma }: Row): Found {
  const brought = broughtBy(background).of;
  const totals = new Map<Component, number>(
    components.filter((name) => name !== 'H+').map((name) => [name, little]),
  );
  for (const [name, each] of brought) totals.set(name, each * mol_per_kgw);
  const solved = brought.has('H+') ? atItsOwnPh(model, totals) : atSeven(model, totals);
  if (!solved.ok) return undefined;
  const { system, lnGamma, ionicStrength, waterActivity } = solved.value;
  const gamma = (id: string): number => (lnGamma[system.species.indexOf(id)] ?? Number.NaN) / Math.LN10;
  return {
    background,
    mol_per_kgw,
    ionic_strength: decimals(ionicStrength, 5),
    a_w: decimals(waterActivity, 5),
    log10_gamma: Object.fromEntries(Object.keys(log10_gamma).map((id) => [id, decimals(gamma(id), 4)])),
  };
}

/** A salt: nitrate is whatever makes it electroneutral at pH 7. */
function atSeven(model: 'sit' | 'davies', totals: ReadonlyMap<Component, number>) {
  const salts = new Map([...totals].filter(([name]) => name !== 'NO3-'));
  return atPh({ model, totals: salts, kilograms: 1, phases: [] })(7);
}

/** An acid or a base has the pH that it has. */
function atItsOwnPh(model: 'sit' | 'davies', totals: ReadonlyMap<Component, number>) {
  return solverOf(systemOf(model, new Set(totals.keys()), []))({ of: totals, water: 0 }, { kilograms: 1 });
}

function against(name: string, e: Row, c: Found): Check {
  if (!c) return { ok: false, line: `${name}: no equilibrium` };
  const checks = [
    compared('ionic_strength', e.ionic_strength, c.ionic_strength, relative, 0.005),
    compared('a_w', e.a_w, c.a_w, absolute, 0.001),
    ...Object.entries(e.log10_gamma).map(([id, x]) =>
      compared(`log10 gamma ${id}`, x, c.log10_gamma[id] ?? null, absolute, 0.005),
    ),
  ];
  const worst = Math.max(
    ...Object.entries(e.log10_gamma).map(([id, x]) => absolute(x, c.log10_gamma[id] ?? Number.NaN)),
  );
  return worstOf(
    checks,
    `${name}: a_w expected ${e.a_w}, computed ${c.a_w}; worst log10 gamma off by ${worst.toExponential(1)}`,
  );
}
