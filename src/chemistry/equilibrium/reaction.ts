/**
 * What a species or a solid is made of, read from its reaction as the reference data prints it: "2 H2O + Cu+2 = Cu(OH)2 + 2 H+"
 * makes Cu(OH)2 of one Cu+2 and two H2O less two H+.
 */

/** The ions, and ammonia, of which everything else in the liquor is made. Metals first, ligands after, H+ last. */
export const components = [
  'Cu+2',
  'Ni+2',
  'Zn+2',
  'Fe+3',
  'Ag+',
  'Pb+2',
  'Pd+2',
  'Ba+2',
  'Sn+4',
  'Al+3',
  'Mg+2',
  'Ca+2',
  'Na+',
  'NO3-',
  'Cl-',
  'SO4-2',
  'CO3-2',
  'NH3',
  'H+',
] as const;
export type Component = (typeof components)[number];

const isComponent = (name: string): name is Component => (components as readonly string[]).includes(name);

/** A metal by its symbol. Throws for one that the model does not hold. */
export function componentOfMetal(symbol: string): Component {
  const found = components.find((c) => c.replace(/[+-]\d*$/, '') === symbol);
  if (!found) throw new Error(`the model does not hold ${symbol}`);
  return found;
}

/** Numbers of each component, and of water, in one of it. */
export type Parts = { readonly of: ReadonlyMap<Component, number>; readonly water: number };

/** The charge that a name ends in. @example chargeOf('Cu2(OH)2+2') // 2 */
export function chargeOf(name: string): number {
  const [, sign, digits] = /([+-])(\d*)$/.exec(name) ?? [];
  return sign === undefined ? 0 : Number(`${sign}${digits || 1}`);
}

type Term = { readonly count: number; readonly name: string };

const terms = (side: string): Term[] =>
  side.split(' + ').map((text) => {
    const [, count, name] = /^(?:([\d.]+) )?(\S+)$/.exec(text.trim()) ?? [];
    if (name === undefined) throw new Error(`not a term of a reaction: "${text}"`);
    return { count: Number(count ?? 1), name };
  });

/** Parts of the one name in `reaction` that is neither a component nor water. Throws where there is not exactly one. */
export function partsIn(reaction: string): Parts {
  const [left = '', right = ''] = reaction.split(' = ');
  const all = [
    ...terms(left).map((t) => ({ ...t, side: -1 })),
    ...terms(right).map((t) => ({ ...t, side: 1 })),
  ];
  const made = all.filter((t) => !isComponent(t.name) && t.name !== 'H2O');
  const [one] = made;
  if (!one || made.length > 1 || one.count !== 1) throw new Error(`what does "${reaction}" make?`);
  const of = new Map<Component, number>();
  let water = 0;
  for (const { count, name, side } of all) {
    const part = -side * one.side * count;
    if (name === 'H2O') water += part;
    else if (isComponent(name)) of.set(name, (of.get(name) ?? 0) + part);
  }
  return { of, water };
}
