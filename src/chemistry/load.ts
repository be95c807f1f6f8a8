/**
 * The load of a container: what came in with each liquor, less what was taken out, mixed evenly.
 * An amount that some of the liquors do not tell stays open: the sum over the others is "at least".
 */
import Decimal from 'decimal.js';
import { minus, over, plus, times } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import type { Unit } from '../quantities/unit';
import { iron } from '../reference/iron-tables';
import { type Metal, metalSymbols, metals } from '../reference/tables';
import { capital } from './evidence';
import { molarMass } from './formula';
import type { Liquor } from './liquor';

/** An amount, and the names of the liquors that do not tell theirs. */
export type Amount<U extends Unit> = {
  /** Sum over the liquors that tell; absent when none does. */
  readonly figure?: Figure<U>;
  readonly openIn: readonly string[];
  /** One of them names it and does not tell it. */
  readonly named?: true;
};

export type Load = {
  readonly volume: Figure<'L'>;
  readonly metals: ReadonlyMap<Metal, Amount<'g'>>;
  readonly freeAcid: Amount<'mol'>;
  /** Iron that went in as metal and is dissolved as iron(II); the iron among `metals` is iron(III). */
  readonly ironTwo?: Figure<'g'>;
  /** As measured, while nothing else has been mixed in. */
  readonly density?: Figure<'kg/L'>;
};

/** One thing that happened to a container's liquid, in order. Volumes are figures, so that a reading stays one thing. */
export type Movement =
  /** A liquor, or a part of one, poured in. */
  | { readonly kind: 'in'; readonly name: string; readonly liquor: Liquor; readonly part?: Figure<'L'> }
  /** Something mixed already, such as the contents of another container, or the liquor that a wet residue holds. */
  | { readonly kind: 'in-mixed'; readonly load: Load; readonly part?: Figure<'L'> }
  | { readonly kind: 'out'; readonly part: Figure<'L'> }
  /** Water that went off: what is dissolved stays. */
  | { readonly kind: 'dry'; readonly lost: Figure<'L'> };

const grams = (sentence: string, formula: Parameters<typeof workedOut>[0]['formula']) =>
  workedOut({ sentence, unit: 'g' as const, formula });
const moles = (sentence: string, formula: Parameters<typeof workedOut>[0]['formula']) =>
  workedOut({ sentence, unit: 'mol' as const, formula });

/** A whole liquor as a load; what it does not tell is open in it. */
export function loadOf(liquor: Liquor, name: string): Load {
  const known = (metal: Metal): Amount<'g'> => {
    const found = liquor.metals.get(metal);
    if (!found) return { openIn: [name], ...(liquor.open.includes(metal) ? { named: true } : {}) };
    return { figure: found.best.all, openIn: found.best.atLeast ? [name] : [] };
  };
  return {
    volume: liquor.volume,
    metals: new Map(metalSymbols.map((metal) => [metal, known(metal)])),
    freeAcid: liquor.freeAcid
      ? { figure: liquor.freeAcid.best.all, openIn: liquor.freeAcid.best.atLeast ? [name] : [] }
      : { openIn: [name] },
    ...(liquor.density ? { density: liquor.density } : {}),
  };
}

/** Each amount of a load changed in the same way. */
function mapped(
  load: Load,
  volume: Figure<'L'>,
  metal: (a: Figure<'g'>, m: Metal) => Figure<'g'>,
  acid: (a: Figure<'mol'>) => Figure<'mol'>,
): Load {
  const one = <U extends Unit>(a: Amount<U>, f: (x: Figure<U>) => Figure<U>): Amount<U> =>
    a.figure ? { ...a, figure: f(a.figure) } : a;
  return {
    ...load,
    volume,
    metals: new Map([...load.metals].map(([m, a]) => [m, one(a, (x) => metal(x, m))])),
    freeAcid: one(load.freeAcid, acid),
    ...(load.ironTwo ? { ironTwo: metal(load.ironTwo, 'Fe') } : {}),
  };
}

/** A liquid can be logged as none: nothing can be said of a litre of it. */
const isEmpty = (load: Load): boolean => load.volume.value.lte(0);

/** A part of its volume, times what all of it holds; of a liquid that was logged as none, any part is all of it. */
const share = (all: Figure, volume: Figure<'L'>, load: Load) =>
  isEmpty(load) ? times(all) : times(all, over(volume, load.volume));

/** What of a load a part of its volume holds. */
export function partOfVolume(load: Load, volume: Figure<'L'>): Load {
  return mapped(
    load,
    volume,
    (a, m) => grams(`${capital(metals[m].name)} in the part taken over`, share(a, volume, load)),
    (a) => moles('Free nitric acid in the part taken over', share(a, volume, load)),
  );
}

/** What stays when a part is taken out of an evenly mixed container. */
function without(load: Load, taken: Figure<'L'>): Load {
  const volume = workedOut({ sentence: 'Volume that stays', unit: 'L', formula: minus(load.volume, taken) });
  return mapped(
    load,
    volume,
    (a, m) => grams(`${capital(metals[m].name)} that stays`, share(a, volume, load)),
    (a) => moles('Free nitric acid that stays', share(a, volume, load)),
  );
}

/** The same in less liquid. A density that was measured before is not that of what is left. */
function driedBy({ density: _, ...load }: Load, lost: Figure<'L'>): Load {
  const volume = workedOut({
    sentence: 'Volume left of which water went off',
    unit: 'L',
    formula: minus(load.volume, lost),
  });
  return { ...load, volume };
}

function summed<U extends 'g' | 'mol'>(a: Amount<U>, b: Amount<U>, sentence: string, unit: U): Amount<U> {
  const openIn = [...a.openIn, ...b.openIn.filter((name) => !a.openIn.includes(name))];
  const rest = { openIn, ...(a.named || b.named ? { named: true as const } : {}) };
  const one = a.figure ?? b.figure;
  if (!a.figure || !b.figure) return { ...(one ? { figure: one } : {}), ...rest };
  return { figure: workedOut({ sentence, unit, formula: plus(a.figure, b.figure) }), ...rest };
}

/** Two loads poured together. Volumes are added; what mixing takes from them is far below a reading on a vessel. */
export function together(a: Load, b: Load): Load {
  const ironTwo = [a.ironTwo, b.ironTwo].filter((iron) => iron !== undefined);
  return {
    volume: workedOut({ sentence: 'Volume in the container', unit: 'L', formula: plus(a.volume, b.volume) }),
    metals: new Map(
      metalSymbols.map((m) => [
        m,
        summed(
          a.metals.get(m) ?? { openIn: [] },
          b.metals.get(m) ?? { openIn: [] },
          `${capital(metals[m].name)} in the container`,
          'g',
        ),
      ]),
    ),
    freeAcid: summed(a.freeAcid, b.freeAcid, 'Free nitric acid in the container', 'mol'),
    ...(ironTwo.length > 0 ? { ironTwo: grams('Iron(II) in the container', plus(...ironTwo)) } : {}),
  };
}

/** The load after all movements; undefined when nothing came in, or when as much went out as was there. */
export function loadAfter(movements: readonly Movement[]): Load | undefined {
  let load: Load | undefined;
  for (const m of movements) {
    if (m.kind === 'dry') {
      if (load) load = driedBy(load, m.lost);
      continue;
    }
    if (m.kind === 'out') {
      if (load) load = without(load, m.part);
      if (load && isEmpty(load)) load = undefined;
      continue;
    }
    const whole = m.kind === 'in' ? loadOf(m.liquor, m.name) : m.load;
    const coming = m.part ? partOfVolume(whole, m.part) : whole;
    load = load ? together(load, coming) : coming;
  }
  return load;
}

/** Grams a litre of a metal in a load, where it is known. */
export function perLitre(load: Load, metal: Metal): Figure<'g/L'> | undefined {
  const all = load.metals.get(metal)?.figure;
  if (!all || isEmpty(load)) return undefined;
  return workedOut({
    sentence: `${capital(metals[metal].name)} a litre`,
    unit: 'g/L',
    formula: over(all, load.volume),
  });
}

/** Moles a litre of free acid in a load, where it is known. */
export function acidPerLitre(load: Load): Figure<'mol/L'> | undefined {
  const all = load.freeAcid.figure;
  if (!all || isEmpty(load)) return undefined;
  return workedOut({
    sentence: 'Free nitric acid a litre',
    unit: 'mol/L',
    formula: over(all, load.volume),
  });
}

/** Moles of a metal in a load, where it is known. */
export const molesOf = (load: Load, metal: Metal): Figure<'mol'> | undefined => {
  const all = load.metals.get(metal)?.figure;
  return all && moles(`${capital(metals[metal].name)}, as moles`, over(all, molarMass(metal)));
};

/** Moles of iron(II) in a load that iron went into; undefined in any other. */
export const molesOfIronTwo = ({ ironTwo }: Load): Figure<'mol'> | undefined =>
  ironTwo && moles('Iron(II), as moles', over(ironTwo, molarMass('Fe')));

/** Metals that are there with an amount above nothing. */
export const metalsPresent = (load: Load): readonly Metal[] =>
  [...load.metals].filter(([, a]) => a.figure?.high.gt(0)).map(([m]) => m);

/**
 * Nitrate in a load, mol: one for each free acid and as many as each metal carries as nitrate. Open where the acid or a
 * metal that was named is open, since nitrate is never taken for measured. Lime does not remove any of it.
 */
export function nitrateIn(load: Load): Amount<'mol'> {
  const parts = metalsPresent(load).flatMap((m) => {
    const n = molesOf(load, m);
    const charge = new Decimal(metals[m].chargeInNitrate).toNumber();
    if (!n || charge === 0) return [];
    return moles(`Nitrate with ${metals[m].name}`, times(charge, n));
  });
  const acid = load.freeAcid.figure;
  const openIn = [...new Set([...load.freeAcid.openIn, ...openMetals(load)])];
  if (!acid) return { openIn };
  const ironTwo = molesOfIronTwo(load);
  const withIron = ironTwo
    ? [moles('Nitrate with iron(II)', times(Number(iron.ironTwo.charge), ironTwo))]
    : [];
  return {
    figure: workedOut({
      sentence: 'Nitrate in all',
      unit: 'mol',
      formula: plus(acid, ...parts, ...withIron),
      note: 'Lime, caustic and soda do not remove nitrate.',
    }),
    openIn,
  };
}

/** Liquors that leave open how much they hold of copper, of nickel, or of a metal that one of them names or tells of. */
export const openMetals = (load: Load): readonly string[] => [
  ...new Set(
    [...load.metals].flatMap(([metal, { figure, named, openIn }]) =>
      figure || named || metal === 'Cu' || metal === 'Ni' ? openIn : [],
    ),
  ),
];

/** Moles a litre of nitrate in a load, where it is known. */
export function nitratePerLitre(load: Load): Figure<'mol/L'> | undefined {
  const all = nitrateIn(load).figure;
  if (!all || isEmpty(load)) return undefined;
  return workedOut({ sentence: 'Nitrate a litre', unit: 'mol/L', formula: over(all, load.volume) });
}
