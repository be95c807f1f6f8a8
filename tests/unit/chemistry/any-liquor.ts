/** Any liquor of the trade, and what a point of it must hold, by sums of our own over what was put in. */
import fc from 'fast-check';
import { kilogramsPerMole } from '../../../src/chemistry/equilibrium/activity';
import type { Gas, Titration } from '../../../src/chemistry/equilibrium/pot';
import type { Equilibrium } from '../../../src/chemistry/equilibrium/solve';
import { broughtBy, hydroxideIn, totalsOf } from '../../../src/chemistry/equilibrium/substances';
import { carbonDioxide, phaseOf } from '../../../src/chemistry/equilibrium/system';
import { dissolved, inSolids } from '../../../src/chemistry/equilibrium/told';

/** Nitrate of each metal, and the hydroxide that one of it takes. */
const metals: Readonly<Record<string, number>> = {
  'Cu(NO3)2': 2,
  'Ni(NO3)2': 2,
  'Zn(NO3)2': 2,
  'Fe(NO3)3': 3,
  AgNO3: 1,
  'Pb(NO3)2': 2,
  'Pd(NO3)2': 2,
  'Ba(NO3)2': 0,
  'Sn(NO3)4': 4,
  'Al(NO3)3': 3,
};
const takes = new Map(Object.entries({ ...metals, HNO3: 1, NH4NO3: 1 }));

export const hydroxides = ['Ca(OH)2', 'CaO', 'Mg(OH)2', 'NaOH'] as const;
const carbonates = ['CaCO3', 'Na2CO3', 'NaHCO3'] as const;

export const ofMetals = [
  'Cu(OH)2(s)',
  'Cu2(OH)3NO3(s)',
  'Cu2(OH)3Cl(s)',
  'Ni(OH)2(s)',
  'Zn(OH)2(am)',
  'Ferrihydrite',
  'Ag2O(s)',
  'AgCl(s)',
  'PbO:0.33H2O(s)',
  'Pd(OH)2(am)',
  'Ba(NO3)2(s)',
  'Barite',
  'SnO2(am)',
  'Al(OH)3(am)',
  'Gypsum',
];
/** What the base itself may be left as. */
export const ofBases = ['Ca(OH)2(portlandite)', 'Mg(OH)2(brucite)'];
export const ofCarbonate = [
  'Malachite',
  'NiCO3(s)',
  'ZnCO3:H2O(s)',
  'Cerussite',
  'Hydrocerussite',
  'Witherite',
  'Calcite',
  'Ag2CO3(s)',
];

/** Evenly over the powers of ten: whole numbers, as most doubles lie next to nought. */
export const between = (low: number, high: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 10_000 }).map((i) => low * (high / low) ** (i / 10_000));

/** From none to well past what the liquor takes, as a share of it; now and then hardly any. */
export const anyDose: fc.Arbitrary<number> = fc.oneof(
  { arbitrary: fc.integer({ min: 0, max: 140_000 }).map((i) => i / 100_000), weight: 20 },
  { arbitrary: fc.double({ min: 0, max: 1e-6, noNaN: true }), weight: 1 },
);

const substances = fc
  .record(
    {
      HNO3: between(0.001, 6),
      ...Object.fromEntries(Object.keys(metals).map((formula) => [formula, between(1e-6, 0.5)])),
      NH4NO3: between(1e-3, 1),
      NaCl: between(1e-3, 0.5),
      Na2SO4: between(1e-3, 0.2),
    },
    { requiredKeys: ['HNO3'] },
  )
  .map((parts) => new Map<string, number>(Object.entries(parts)));

type Asked = { readonly reagents?: readonly string[]; readonly gas?: readonly Gas[] };

export const anyGas: readonly Gas[] = ['none', 'open', 'vent', 'leaves', 'closed'];

/** mol/kg acid 0.001 to 6, each metal 1e-6 to 0.5 or not there, ammonia, chloride, sulfate; every solid may form. */
export const anyTitration = ({
  reagents = [...hydroxides, ...carbonates],
  gas = anyGas,
}: Asked = {}): fc.Arbitrary<Titration> =>
  fc.record({
    model: fc.constantFrom('sit', 'davies'),
    liquor: fc.record({ substances, waterKilograms: fc.constant(1) }),
    reagent: fc.constantFrom(...reagents),
    solids: fc.constant([...ofMetals, ...ofBases, ...ofCarbonate].map((id) => ({ id }))),
    gas: fc.constantFrom(...gas),
  });

/** mol of hydroxide that all of the liquor takes. */
export const demand = ({ liquor }: Titration): number =>
  [...liquor.substances].reduce((sum, [formula, n]) => sum + n * (takes.get(formula) ?? 0), 0);

export const anyDoses = (most: number): fc.Arbitrary<readonly number[]> =>
  fc.array(anyDose, { minLength: 1, maxLength: most });

/** What was put in up to a dose, mol. */
export const putIn = ({ liquor, reagent }: Titration, base: number) =>
  totalsOf([
    ...[...liquor.substances].map(([formula, n]) => [broughtBy(formula), n] as const),
    [broughtBy(reagent), base / hydroxideIn(reagent)] as const,
  ]);

/** Largest gap between what was put in and what is found, as a share of the sizes in the sum. `gas`: mol of CO2 in all. */
export function largestGap(titration: Titration, base: number, at: Equilibrium, gas: number): number {
  const { of } = putIn(titration, base);
  const gasParts = phaseOf(carbonDioxide).parts.of;
  return Math.max(
    ...at.system.components.map((component, k) => {
      const out = [
        dissolved(at, component),
        inSolids(at, component),
        gas * (gasParts.get(component) ?? 0),
        -(of.get(component) ?? 0),
      ];
      const size = Math.max(...out.map(Math.abs), at.moles[k] ?? 0);
      return Math.abs(out.reduce((a, b) => a + b, 0)) / Math.max(size, 1e-300);
    }),
  );
}

/** Charge in solution as a share of all charges. */
export function chargeLeft({ system, moles }: Equilibrium): number {
  const charges = [...moles].map((n, j) => n * (system.charge[j] ?? 0));
  const sum = charges.reduce((a, b) => a + b, 0);
  return Math.abs(sum) / charges.reduce((a, b) => a + Math.abs(b), 0);
}

/** mol of water found: free, in species, in solids and in the gas. */
export function waterFound(at: Equilibrium, gas: number): number {
  const species = [...at.moles].reduce((sum, n, j) => sum + n * (at.system.water[j] ?? 0), 0);
  const solids = [...at.solids].reduce(
    (sum, [id, n]) => sum + (id === carbonDioxide ? 0 : n * phaseOf(id).parts.water),
    0,
  );
  return at.water / kilogramsPerMole + species + solids + gas * phaseOf(carbonDioxide).parts.water;
}
