/** Amounts of each component, and of water, that substances bring into a liquor. */
import { parsed } from '../formula';
import { type Component, chargeOf, components } from './reaction';

/** Totals over solution and solids, mol; H+ is what is left when every other ion is taken out, so hydroxide counts −1. */
export type Totals = { readonly of: ReadonlyMap<Component, number>; readonly water: number };

const ionOf = new Map<string, Component>([
  ...components
    .filter((c) => chargeOf(c) > 0 && c !== 'H+')
    .map((c) => [c.replace(/[+-]\d*$/, ''), c] as const),
  ['Cl', 'Cl-'],
  ['S', 'SO4-2'],
  ['C', 'CO3-2'],
]);

/** Ammonia and ammonium groups in a formula: nitrogen that is not nitrate. */
const ammoniaIn = (formula: string): number =>
  [...formula.matchAll(/\(?NH[34]\)?(\d*)/g)].reduce(
    (sum, [whole, n]) => sum + (whole.startsWith('(') ? Number(n || 1) : 1),
    0,
  );

/**
 * What one mole of a neutral substance brings: "HNO3", "Cu(NO3)2", "NH4NO3", "Ca(OH)2", "NaHCO3". Metals are taken in the
 * charge that the model gives them. Throws for an element that the model does not hold.
 */
export function broughtBy(formula: string): Totals {
  const atoms = parsed(formula);
  const of = new Map<Component, number>();
  const ammonia = ammoniaIn(formula);
  let oxygen = atoms.get('O') ?? 0;
  let charge = 0;
  const add = (component: Component, count: number, oxygenEach = 0) => {
    if (count === 0) return;
    of.set(component, count);
    oxygen -= oxygenEach * count;
    charge += chargeOf(component) * count;
  };
  const oxygenIn: Partial<Record<Component, number>> = { 'SO4-2': 4, 'CO3-2': 3 };
  for (const [element, count] of atoms) {
    if (element === 'O' || element === 'H') continue;
    if (element === 'N') {
      add('NH3', ammonia);
      add('NO3-', count - ammonia, 3);
      continue;
    }
    const component = ionOf.get(element);
    if (!component) throw new Error(`the model does not hold ${element} of ${formula}`);
    add(component, count, oxygenIn[component] ?? 0);
  }
  if (charge !== 0) of.set('H+', -charge);
  return { of, water: oxygen };
}

/** Hydroxide that one mole of a base stands for: carbonate counts two. */
export function hydroxideIn(formula: string): number {
  const { of } = broughtBy(formula);
  return -(of.get('H+') ?? 0) + 2 * (of.get('CO3-2') ?? 0) + (of.get('NH3') ?? 0);
}

/** Sum of totals, each times its amount in mol. */
export function totalsOf(parts: Iterable<readonly [Totals, number]>): Totals {
  const of = new Map<Component, number>();
  let water = 0;
  for (const [part, amount] of parts) {
    water += part.water * amount;
    for (const [component, each] of part.of) of.set(component, (of.get(component) ?? 0) + each * amount);
  }
  return { of, water };
}
