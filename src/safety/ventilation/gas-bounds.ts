/**
 * The most gas by one route, of metal and nitric acid. Neither may be used twice: where acid is short, the gas is what the
 * acid can make, a mole for four of it by the dilute route and for two by the strong one. Tin takes one acid for each mole of
 * gas by either. Reactions: reference/dissolution.json.
 */
import { sourceOf } from '../../chemistry/constants';
import { molarMass, reaction } from '../../chemistry/formula';
import { type Operand, over, plus, times } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import { nitrousGas } from '../../reference/nitrous-gas-tables';
import { dissolution, type Metal, metals } from '../../reference/tables';

export type Route = 'dilute' | 'strong';

const source = sourceOf(dissolution);

/** Moles of metal, gas and acid in a reaction, as it is balanced. */
type Balance = { readonly metal: number; readonly gas: number; readonly acidForGas: number };

function balanceOf(metal: Metal, route: Route): Balance | undefined {
  const text = dissolution.reactions[metal]?.[route];
  if (!text) return undefined;
  const moles = reaction(text);
  const [solid, acid] = [-(moles.get(metal) ?? 0), -(moles.get('HNO3') ?? 0)];
  const gas = moles.get(route === 'strong' ? 'NO2' : 'NO') ?? 0;
  if (!solid || !gas || !acid) throw new Error(`"${text}" makes no gas by the ${route} route`);
  return { metal: solid, gas, acidForGas: acid / gas };
}

/** Gas of one metal with acid to spare. */
type Part = { readonly gas: Figure<'mol'>; readonly acidForGas: number };

function gasOf(mass: Figure<'g'>, metal: Metal, route: Route): Part | undefined {
  const balance = balanceOf(metal, route);
  if (!balance) return undefined;
  const moles = times(balance.gas, over(mass, molarMass(metal)));
  return {
    gas: workedOut({
      sentence: `Gas of ${metals[metal].name}, ${route} route`,
      unit: 'mol',
      formula: balance.metal === 1 ? moles : over(moles, balance.metal),
      sources: [source],
    }),
    acidForGas: balance.acidForGas,
  };
}

/** The most gas by one route, and what it would be with acid to spare. */
export type Bound = { readonly most: Figure<'mol'>; readonly toSpare: Figure<'mol'> };

/**
 * The most that metal and acid allow. With `q` acid for a mole of gas it is no more than acid ÷ q, and what takes less acid
 * than that makes (q − own) ÷ q of its gas on top: of all such bounds the lowest is the gas itself. They are compared by their
 * high ends, so that more of either never has a lower one.
 */
function bound(parts: readonly Part[], acid: Figure<'mol'>, route: Route): Bound {
  const sentence = `Gas at the most, ${route} route`;
  const figure = (formula: ReturnType<typeof plus>) =>
    workedOut({ sentence, unit: 'mol', formula, sources: [source] });
  const [first, ...others] = parts;
  const toSpare = first && others.length === 0 ? first.gas : figure(plus(...parts.map(({ gas }) => gas)));
  const byAcid = [...new Set(parts.map(({ acidForGas }) => acidForGas))].map((q) => {
    const leaner = parts.filter(({ acidForGas }) => acidForGas < q);
    const more = leaner.map(({ gas, acidForGas }): Operand => times(q - acidForGas, gas));
    return figure(over(more.length === 0 ? acid : plus(acid, ...more), q));
  });
  return { most: byAcid.reduce((least, b) => (b.high.lt(least.high) ? b : least), toSpare), toSpare };
}

export type Masses = readonly { readonly metal: Metal; readonly mass: Figure<'g'> }[];

export const boundOfMasses = (masses: Masses, acid: Figure<'mol'>, route: Route): Bound | undefined => {
  const parts = masses.flatMap(({ metal, mass }) => gasOf(mass, metal, route) ?? []);
  return parts.length === 0 ? undefined : bound(parts, acid, route);
};

/** Of what the metal may be: by the strong route the worst, by the dilute route the least; acid as the worst takes it. */
export function boundOfUnknown(mass: Figure<'g'>, acid: Figure<'mol'>, route: Route): Bound | undefined {
  const each = nitrousGas.unknownMetal.metals.flatMap((metal) => gasOf(mass, metal, route) ?? []);
  const [first, ...rest] = each;
  if (!first) return undefined;
  const worse = (a: Part, b: Part) =>
    route === 'strong' ? b.gas.value.gt(a.gas.value) : b.gas.value.lt(a.gas.value);
  const picked = rest.reduce((a, b) => (worse(a, b) ? b : a), first);
  const acids = each.map(({ acidForGas }) => acidForGas);
  const acidForGas = route === 'strong' ? Math.min(...acids) : Math.max(...acids);
  return bound([{ gas: picked.gas, acidForGas }], acid, route);
}

/** By the acid alone: there is more copper than it can take. */
export const boundOfAcid = (acid: Figure<'mol'>, route: Route): Bound => {
  const most = workedOut({
    sentence: `Gas at the most, ${route} route`,
    unit: 'mol',
    formula: over(acid, balanceOf('Cu', route)?.acidForGas ?? 1),
    sources: [source],
  });
  return { most, toSpare: most };
};
