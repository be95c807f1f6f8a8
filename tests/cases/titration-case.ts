/**
 * Cases of kind `titration`: 1 kg of water with what is in it, a base in equal steps, each step in equilibrium. Both models
 * are run and compared with the result sets of the same name. Tolerances: base to a pH 0.5 %; pH 0.05, or, where the curve is
 * steep, the same pH within 0.5 % of the base; dissolved 5 % above 1e-8 mol; solids 0.5 % of the metal.
 */
import * as z from 'zod/mini';
import { carbonDioxide, isKnownSolid } from '../../src/chemistry/equilibrium/system';
import { type Point, titrate } from '../../src/chemistry/equilibrium/titration';
import { dissolved, inSolids, saturation } from '../../src/chemistry/equilibrium/told';
import { componentOf, substanceOf } from './elements';
import { absolute, type Check, compared, decimals, digits, type Outcome, relative, worstOf } from './outcome';

const Amount = z.number().check(z.nonnegative());
const Row = z.object({
  base_mol: Amount,
  pH: z.number(),
  ionic_strength: z.optional(Amount),
  water_kg: z.optional(Amount),
  a_w: z.optional(Amount),
  dissolved_mol: z.optional(z.record(z.string(), Amount)),
  solid_mol: z.optional(z.record(z.string(), Amount)),
  precipitated_mol: z.optional(z.record(z.string(), z.number())),
  log_pCO2: z.optional(z.number()),
  co2_released_mol: z.optional(z.number()),
});
type Row = z.infer<typeof Row>;
const ResultSet = z.object({
  base_mol_to_pH: z.optional(z.record(z.string(), z.nullable(z.number()))),
  rows: z.optional(z.array(Row)),
});
type ResultSet = z.infer<typeof ResultSet>;

export const TitrationCase = z.object({
  id: z.string(),
  kind: z.literal('titration'),
  input: z.object({
    composition_mol_per_kg_water: z.record(z.string(), Amount),
    reagent: z.string(),
    total_base_mol: Amount,
    steps: z.int().check(z.positive(), z.maximum(100_000)),
    solids_allowed: z.array(z.string().check(z.refine(isKnownSolid, 'a solid that the model does not hold'))),
    co2: z.enum(['none', 'open', 'vent', 'closed']),
    temperature_C: z.optional(z.literal(25)),
  }),
  results: z.record(z.string(), ResultSet),
});
type TitrationCase = z.infer<typeof TitrationCase>;

/** Row by row what the case tells, as this book computes it. */
type Computed = { base_mol_to_pH: Record<string, number | null>; rows: Row[] };

const models = { 'app-sit': 'sit', 'app-davies': 'davies' } as const;
type OwnSet = keyof typeof models;
export const ownSets = Object.keys(models) as OwnSet[];

/** pH values to which the base is told even where a case asks for none. */
const usualPh = ['2', '3', '4', '5', '6', '7', '8', '8.5', '9', '9.5', '10', '10.5', '11', '11.5', '12'];

export function evaluateTitration(c: TitrationCase): Outcome {
  const checks: Check[] = [];
  const computed: Record<string, Computed> = {};
  for (const set of ownSets) {
    const expected = c.results[set];
    const found = run(c, models[set], expected);
    if (typeof found === 'string') {
      checks.push({ ok: false, line: `${set}: ${found}` });
      continue;
    }
    computed[set] = found;
    if (expected) checks.push(...against(set, expected, found));
  }
  if (!ownSets.some((set) => c.results[set]))
    checks.push({ ok: false, line: `no result set ${ownSets.join(' or ')} to compare with` });
  return { checks, computed, notes: spread(c, computed) };
}

function run(c: TitrationCase, model: 'sit' | 'davies', expected: ResultSet | undefined): Computed | string {
  const { composition_mol_per_kg_water, reagent, total_base_mol, steps, solids_allowed, co2 } = c.input;
  const titrated = titrate(
    {
      model,
      liquor: {
        substances: new Map(
          Object.entries(composition_mol_per_kg_water).map(([name, n]) => [substanceOf(name), n]),
        ),
        waterKilograms: 1,
      },
      reagent,
      solids: solids_allowed.map((id) => ({ id })),
      gas: co2,
    },
    Array.from({ length: steps + 1 }, (_, i) => (total_base_mol * i) / steps),
  );
  if (!titrated.ok)
    return `no equilibrium at ${titrated.failure.base} mol of base (gap ${titrated.failure.gap})`;
  const names = namesIn(c, expected);
  const rows = titrated.value.map((point) => row(point, names, solids_allowed, co2));
  const asked = Object.keys(expected?.base_mol_to_pH ?? {});
  const toPh = (asked.length > 0 ? asked : usualPh).map((pH) => [pH, baseTo(rows, Number(pH))] as const);
  return { base_mol_to_pH: Object.fromEntries(toPh), rows };
}

/** Elements that the case's rows tell, else all that are in the liquor or the base. */
function namesIn(c: TitrationCase, expected: ResultSet | undefined): string[] {
  const told = new Set((expected?.rows ?? []).flatMap((r) => Object.keys(r.dissolved_mol ?? {})));
  if (told.size > 0) return [...told];
  const formulas = `${Object.keys(c.input.composition_mol_per_kg_water).map(substanceOf).join(' ')} ${c.input.reagent}`;
  const has = (name: string): boolean => new RegExp(`${name}(?![a-z])`).test(formulas);
  return Object.keys(componentOf).filter((name) => name !== 'SO4' && has(name));
}

/** log10 of a pressure where there is no carbonate at all. */
const noCarbonate = -99.99;

function row(
  { base, at, gas }: Point,
  names: readonly string[],
  solids: readonly string[],
  co2: string,
): Row {
  const amount = (name: string): number => {
    const component = componentOf[name];
    return component ? dissolved(at, component) : Number.NaN;
  };
  const solid = solids.flatMap((id) => {
    const n = at.solids.get(id) ?? 0;
    return n > 0 ? [[id, digits(n)] as const] : [];
  });
  return {
    base_mol: decimals(base, 9),
    pH: decimals(at.pH, 4),
    ionic_strength: decimals(at.ionicStrength, 5),
    water_kg: decimals(at.water, 6),
    a_w: decimals(at.waterActivity, 5),
    dissolved_mol: Object.fromEntries(names.map((name) => [name, digits(amount(name))])),
    solid_mol: Object.fromEntries(solid),
    precipitated_mol: precipitated({ base, at, gas }, names),
    ...(co2 === 'none'
      ? {}
      : {
          log_pCO2: decimals(saturation(at, carbonDioxide) ?? noCarbonate, 3),
          co2_released_mol: digits(gas),
        }),
  };
}

const notMetals = ['NO3', 'NH3', 'C', 'Cl', 'S', 'SO4', 'Na'];

function precipitated({ at }: Point, names: readonly string[]): Record<string, number> {
  return Object.fromEntries(
    names
      .filter((name) => !notMetals.includes(name))
      .map((name) => [name, digits(inSolids(at, componentOf[name] ?? 'H+'))]),
  );
}

/** Base at which the straight lines between the rows first reach a pH; null where they do not. */
function baseTo(rows: readonly Row[], pH: number): number | null {
  for (const [i, b] of rows.entries()) {
    const a = rows[i - 1];
    if (!a || a.pH > pH || b.pH < pH) continue;
    const part = b.pH === a.pH ? 0 : (pH - a.pH) / (b.pH - a.pH);
    return decimals(a.base_mol + part * (b.base_mol - a.base_mol), 5);
  }
  return null;
}

function against(set: string, expected: ResultSet, computed: Computed): Check[] {
  const toPh = Object.entries(expected.base_mol_to_pH ?? {}).map(([pH, base]) =>
    compared(`${set} base to pH ${pH}`, base, computed.base_mol_to_pH[pH] ?? null, relative, 0.005),
  );
  const rows = (expected.rows ?? []).map((e) => rowAgainst(set, e, computed.rows));
  if (toPh.length + rows.length === 0) return [{ ok: false, line: `${set}: nothing expected` }];
  return [...toPh, ...rows];
}

function rowAgainst(set: string, e: Row, rows: readonly Row[]): Check {
  const name = `${set} at ${e.base_mol} mol`;
  const i = rows.findIndex((r) => Math.abs(r.base_mol - e.base_mol) <= 1e-6 * Math.max(e.base_mol, 1e-3));
  const c = rows[i];
  if (!c) return { ok: false, line: `${name}: no step of the case's own input ends there` };
  const checks = [phAgainst(name, e, c, rows)];
  const optional = (key: 'ionic_strength' | 'water_kg' | 'a_w', tolerance: number) => {
    const [x, y] = [e[key], c[key]];
    if (x !== undefined) checks.push(compared(key, x, y ?? null, relative, tolerance));
  };
  optional('ionic_strength', 0.005);
  optional('water_kg', 0.002);
  optional('a_w', 0.002);
  const total = (metal: string): number =>
    (e.dissolved_mol?.[metal] ?? 0) + Math.abs(e.precipitated_mol?.[metal] ?? 0) || 1e-8;
  for (const [element, n] of Object.entries(e.dissolved_mol ?? {}))
    checks.push(compared(`dissolved ${element}`, n, c.dissolved_mol?.[element] ?? null, aboveTrace, 0.05));
  for (const [metal, n] of Object.entries(e.precipitated_mol ?? {}))
    checks.push(
      compared(`precipitated ${metal}`, n, c.precipitated_mol?.[metal] ?? null, partOf(total(metal)), 0.005),
    );
  const largest = Math.max(1e-8, ...Object.values(e.precipitated_mol ?? {}));
  for (const id of new Set([...Object.keys(e.solid_mol ?? {}), ...Object.keys(c.solid_mol ?? {})]))
    checks.push(
      compared(
        id,
        e.solid_mol?.[id] ?? 0,
        c.solid_mol?.[id] ?? 0,
        partOf(solidTotal(id, e) ?? largest),
        0.005,
      ),
    );
  const line = `${name}: pH expected ${e.pH}, computed ${c.pH}; worst dissolved ${worstDissolved(e, c)}`;
  return worstOf(checks, line);
}

/** Amount of the metal that a solid holds, in all. */
function solidTotal(id: string, e: Row): number | undefined {
  const metal = Object.keys(e.precipitated_mol ?? {}).find((m) => new RegExp(`^${m}(?![a-z])`).test(id));
  if (metal === undefined) return undefined;
  return (e.dissolved_mol?.[metal] ?? 0) + Math.abs(e.precipitated_mol?.[metal] ?? 0);
}

const trace = 1e-8;
const partOf = (total: number) => (e: number, c: number) => Math.abs(c - e) / total;
/** Amounts at or below 1e-8 mol only have to be traces as well. */
const aboveTrace = (e: number, c: number): number =>
  e > trace ? relative(e, c) : Math.max(0, c - trace) / trace;

function worstDissolved(e: Row, c: Row): string {
  const off = Object.entries(e.dissolved_mol ?? {}).map(
    ([element, n]) => [aboveTrace(n, c.dissolved_mol?.[element] ?? Number.NaN), element] as const,
  );
  const [worst] = off.sort((a, b) => b[0] - a[0]);
  return worst ? `${worst[1]} off by ${worst[0].toExponential(1)}` : 'none told';
}

/** On the steep parts a pH means little: there the base at the same pH is compared. */
function phAgainst(name: string, e: Row, c: Row, rows: readonly Row[]): Check {
  const straight = compared(`${name} pH`, e.pH, c.pH, absolute, 0.05);
  const base = straight.ok ? null : baseTo(rows, e.pH);
  if (base === null || e.base_mol === 0) return straight;
  return compared(`${name} base to pH ${e.pH} on a steep part`, e.base_mol, base, relative, 0.005);
}

/** How far other result sets lie from ours, only told. */
function spread(c: TitrationCase, computed: Record<string, Computed>): string[] {
  const own = computed['app-sit'];
  return Object.entries(c.results)
    .filter(([set]) => !(set in models))
    .map(([set, result]) => {
      const off = Object.entries(result.base_mol_to_pH ?? {}).flatMap(([pH, base]) => {
        const ours = own?.base_mol_to_pH[pH];
        return base === null || ours === null || ours === undefined || base === 0
          ? []
          : [[relative(base, ours), pH] as const];
      });
      const [worst] = off.sort((a, b) => b[0] - a[0]);
      return worst
        ? `spread: base to pH by ${set} is up to ${(100 * worst[0]).toFixed(1)} % from app-sit, at pH ${worst[1]}`
        : `spread: nothing to compare in ${set}`;
    });
}
