/**
 * Cases of kind `solubility_vs_pH`: what of a metal stays dissolved beside one solid at a held pH. Results may be nested as
 * metal → solid → set. Tolerance: dissolved 5 % above 1e-8 mol; null where it is above 0.2 mol/kg or cannot be held.
 */
import * as z from 'zod/mini';
import type { Component } from '../../src/chemistry/equilibrium/reaction';
import { type SolubilityPoint, solubility } from '../../src/chemistry/equilibrium/solubility';
import { isKnownSolid } from '../../src/chemistry/equilibrium/system';
import { componentOf } from './elements';
import { absolute, type Check, compared, decimals, digits, type Outcome, relative, worstOf } from './outcome';

const Row = z.object({
  pH: z.number(),
  dissolved_mol_per_kgw: z.nullable(z.number()),
  ionic_strength: z.optional(z.number()),
  a_w: z.optional(z.number()),
});
type Row = z.infer<typeof Row>;
const ResultSet = z.object({ rows: z.array(Row).check(z.minLength(1)) });
const Solids = z.record(
  z.string().check(z.refine(isKnownSolid, 'a solid that the model does not hold')),
  z.record(z.string(), ResultSet),
);

export const SolubilityCase = z.object({
  id: z.string(),
  kind: z.literal('solubility_vs_pH'),
  background_mol_per_kgw: z.record(
    z.string().check(z.refine((name) => name in componentOf, 'a background that the model does not hold')),
    z.number().check(z.positive()),
  ),
  results: z.record(z.string(), Solids),
});
type SolubilityCase = z.infer<typeof SolubilityCase>;

const models = { 'app-sit': 'sit', 'app-davies': 'davies' } as const;
/** Above this a case gives null: outside any meaning, mol/kg. */
const most = 0.2;
/** g/mol, only to hand out mg/kg as the cases do. */
const trace = 1e-8;

export function evaluateSolubility(c: SolubilityCase): Outcome {
  const background = new Map<Component, number>(
    Object.entries(c.background_mol_per_kgw).flatMap(([name, n]) => {
      const component = componentOf[name];
      return component ? [[component, n] as const] : [];
    }),
  );
  const checks: Check[] = [];
  const notes: string[] = [];
  const computed = Object.fromEntries(
    Object.entries(c.results).map(([metal, solids]) => [
      metal,
      Object.fromEntries(
        Object.entries(solids).map(([solid, sets]) => {
          if (!Object.keys(models).some((set) => set in sets))
            checks.push({ ok: false, line: `${metal} ${solid}: no result set of ours to compare with` });
          return [solid, forSolid(`${metal} ${solid}`, solid, sets, background, checks, notes)];
        }),
      ),
    ]),
  );
  if (checks.length === 0) checks.push({ ok: false, line: 'nothing expected' });
  return { checks, computed, notes };
}

function forSolid(
  name: string,
  solid: string,
  sets: Readonly<Record<string, z.infer<typeof ResultSet>>>,
  background: ReadonlyMap<Component, number>,
  checks: Check[],
  notes: string[],
) {
  const computed: Record<string, { rows: Row[] }> = {};
  for (const [set, model] of Object.entries(models)) {
    const expected = sets[set]?.rows ?? Object.values(sets)[0]?.rows ?? [];
    const points = solubility(
      { model, solid: { id: solid }, background },
      expected.map((r) => r.pH),
    );
    computed[set] = { rows: points.map(row) };
    if (!sets[set]) continue;
    for (const [i, e] of expected.entries()) {
      const found = computed[set].rows[i];
      checks.push(
        found ? against(`${name} ${set} at pH ${e.pH}`, e, found) : { ok: false, line: `${name}: no row` },
      );
    }
  }
  for (const [set, { rows }] of Object.entries(sets))
    if (!(set in models)) notes.push(spread(name, set, rows, computed));
  return computed;
}

const row = ({ pH, dissolved, at }: SolubilityPoint): Row =>
  dissolved === undefined || dissolved > most
    ? { pH, dissolved_mol_per_kgw: null }
    : {
        pH,
        dissolved_mol_per_kgw: digits(dissolved),
        ...(at ? { ionic_strength: decimals(at.ionicStrength, 5), a_w: decimals(at.waterActivity, 5) } : {}),
      };

function against(name: string, e: Row, c: Row): Check {
  const dissolved = compared(name, e.dissolved_mol_per_kgw, c.dissolved_mol_per_kgw, aboveTrace, 0.05);
  const rest: Check[] = [];
  if (e.dissolved_mol_per_kgw !== null && e.ionic_strength !== undefined)
    rest.push(compared('ionic_strength', e.ionic_strength, c.ionic_strength ?? null, relative, 0.01));
  if (e.dissolved_mol_per_kgw !== null && e.a_w !== undefined)
    rest.push(compared('a_w', e.a_w, c.a_w ?? null, absolute, 0.002));
  return worstOf([dissolved, ...rest], dissolved.line);
}

const aboveTrace = (e: number, c: number): number =>
  e > trace ? relative(e, c) : Math.max(0, c - trace) / trace;

function spread(
  name: string,
  set: string,
  rows: readonly Row[],
  computed: Record<string, { rows: Row[] }>,
): string {
  const decades = rows.flatMap((e) => {
    const ours = computed['app-sit']?.rows.find((r) => r.pH === e.pH)?.dissolved_mol_per_kgw;
    return e.dissolved_mol_per_kgw && ours ? [Math.abs(Math.log10(ours / e.dissolved_mol_per_kgw))] : [];
  });
  return `spread: ${name} by ${set} is up to ${Math.max(0, ...decades).toFixed(1)} decades from app-sit`;
}
