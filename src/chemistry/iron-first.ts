/**
 * Copper onto iron first: Fe + Cu²⁺ → Fe²⁺ + Cu, and all else that takes iron on the way: silver, palladium, iron(III),
 * free acid. What goes on to the lime stage is iron(II), which takes as much base as the copper did. Reactions and
 * what is usual: reference/iron.json.
 */
import { minus, notBelowNothing, over, plus, times } from '../quantities/expression';
import { exact, type Figure, given, workedOut } from '../quantities/figure';
import { iron } from '../reference/iron-tables';
import type { BaseId, Metal } from '../reference/tables';
import { type BaseNeeded, baseNeeded, type StatedPurity } from './base-needed';
import { ranged } from './constants';
import {
  type AcidFirst,
  acidAtIron,
  baseForAmmonium,
  copperThatStays,
  dissolvedFrom,
  fromAcid,
  noble,
  type Parts,
  partsOf,
} from './iron-taken';
import { type Load, openMetals } from './load';
import { type Sludge, sludgeFrom } from './sludge';

export type IronPlan = {
  readonly acid: AcidFirst;
  /** Iron put in over what dissolves, %; absent: what is usual. */
  readonly excess?: Figure<'%'>;
  readonly base: BaseId;
  readonly purity?: StatedPurity | undefined;
};

/** Base, and the sludge it gives, of one way. */
export type BaseWay = { readonly mass: Figure<'g'>; readonly sludge?: Figure<'g'> };

export type IronFirst = {
  /** Iron to put in, and per gram of copper that goes down. */
  readonly iron: Figure<'g'>;
  readonly ironPerCopper: Figure<'1'>;
  /** Copper that goes down, and all that goes down, dry. */
  readonly copper: Figure<'g'>;
  readonly cement: Figure<'g'>;
  readonly copperLeft: Figure<'g'>;
  readonly copperLeftPerLitre: Figure<'mg/L'>;
  /** Iron(II) in the liquor afterwards. */
  readonly ironGoingOn: Figure<'g'>;
  readonly ironGoingOnPerLitre: Figure<'g/L'>;
  readonly ammonium: Figure<'mol'>;
  readonly nitricOxide: Figure<'L'>;
  /** Base for the acid before the iron goes in; absent where none is brought down. */
  readonly baseFirst?: Figure<'g'>;
  /** Base for what the iron leaves, to the lime stage's pH; at the high end for the ammonium that it may have made, too. */
  readonly baseAfter: Figure<'g'>;
  /** Both together, against the base for the liquor as it stands. */
  readonly withIron: BaseWay;
  readonly without: BaseWay;
  readonly baseChange: Figure<'g'>;
  readonly sludgeChange?: Figure<'g'>;
  /** The liquor afterwards, as it goes to the lime stage. */
  readonly after: Load;
  /** Liquors that do not tell of copper, of acid, or of a metal that others tell of. */
  readonly openIn: readonly string[];
};

/** Why nothing can be worked out. */
export type NoIron = 'copper-open' | 'no-copper' | 'acid-open';

export type IronFirstResult =
  | { readonly ok: true; readonly value: IronFirst }
  | { readonly ok: false; readonly failure: NoIron };

/** The liquor afterwards: its copper down to a trace, its silver and palladium gone, all its iron as iron(II). */
function loadAfterIron(load: Load, copperLeft: Figure<'g'>, ironTwo: Figure<'g'>): Load {
  const { density: _, ...rest } = load;
  const after = new Map([...load.metals].filter(([m]) => m !== 'Ag' && m !== 'Pd' && m !== 'Fe'));
  after.set('Cu', { figure: copperLeft, openIn: load.metals.get('Cu')?.openIn ?? [] });
  return {
    ...rest,
    metals: after,
    freeAcid: {
      figure: given({
        origin: 'iron/acid-after',
        sentence: 'Free acid after the iron',
        value: 0,
        unit: 'mol',
        how: 'assumed',
        spread: exact,
        note: 'Iron goes on dissolving until it is used up.',
      }),
      openIn: load.freeAcid.openIn,
    },
    ironTwo,
  };
}

/** Only the acid that base takes before the iron goes in. */
function acidOnly(load: Load, acid: Figure<'mol'>, left: Figure<'mol'>): Load | undefined {
  if (left === acid) return undefined;
  return {
    volume: load.volume,
    metals: new Map<Metal, { openIn: readonly string[] }>(),
    freeAcid: {
      figure: workedOut({
        sentence: 'Free acid that base takes first',
        unit: 'mol',
        formula: notBelowNothing(minus(acid, left)),
      }),
      openIn: load.freeAcid.openIn,
    },
  };
}

type Treated = { readonly needed: BaseNeeded; readonly sludge: Sludge | undefined };

function treated(plan: IronPlan, load: Load | undefined): Treated | undefined {
  const needed = load && baseNeeded(plan.base, load, plan.purity);
  return needed && { needed, sludge: sludgeFrom(load, needed) };
}

const sum = (sentence: string, parts: readonly Figure<'g'>[]): Figure<'g'> | undefined =>
  parts.length === 0 ? undefined : workedOut({ sentence, unit: 'g', formula: plus(...parts) });

function wayOf(parts: readonly Treated[], how: string): BaseWay | undefined {
  const mass = sum(
    `Base in all, ${how}`,
    parts.map(({ needed }) => needed.mass),
  );
  const sludge = sum(
    `Sludge, dry, ${how}`,
    parts.flatMap((p) => p.sludge?.dry ?? []),
  );
  return mass && { mass, ...(sludge ? { sludge } : {}) };
}

/** With what the ammonium takes that the iron made of so much acid; the sludge is that of the metals. */
function withAmmonium(stage: Treated, acid: Figure<'mol'>): Treated {
  const { base, mass, hydroxide } = stage.needed;
  const each = workedOut({
    sentence: 'Base as sold for a mole of hydroxide',
    unit: 'g/mol',
    formula: over(mass, hydroxide),
  });
  const more = baseForAmmonium(acid, base, each);
  if (!more) return stage;
  const { sentence } = mass;
  const all = workedOut({
    sentence,
    unit: 'g',
    formula: plus(mass, more),
    ...(more.note ? { note: more.note } : {}),
  });
  return { ...stage, needed: { ...stage.needed, mass: all } };
}

/** What the lime stage takes with iron first and without it, and the differences. */
function bases(plan: IronPlan, load: Load, first: Load | undefined, after: Load, byIron: Figure<'mol'>) {
  const [before, atFirst, last] = [treated(plan, load), treated(plan, first), treated(plan, after)];
  const atLast = last && withAmmonium(last, byIron);
  const without = before && wayOf([before], 'without iron');
  const withIron = atLast && wayOf(atFirst ? [atFirst, atLast] : [atLast], 'with iron first');
  if (!without || !withIron || !atLast) return undefined;
  const change = (sentence: string, a: Figure<'g'>, b: Figure<'g'>) =>
    workedOut({ sentence, unit: 'g', formula: minus(a, b) });
  return {
    ...(atFirst ? { baseFirst: atFirst.needed.mass } : {}),
    baseAfter: atLast.needed.mass,
    withIron,
    without,
    baseChange: change('Base with iron first, less base without', withIron.mass, without.mass),
    ...(withIron.sludge && without.sludge
      ? {
          sludgeChange: change(
            'Sludge with iron first, less sludge without',
            withIron.sludge,
            without.sludge,
          ),
        }
      : {}),
  };
}

function cementOf(load: Load, copper: Figure<'g'>): Figure<'g'> {
  const others = noble.flatMap((metal) => load.metals.get(metal)?.figure ?? []);
  return workedOut({
    sentence: 'Cement, dry: copper with what goes down beside it',
    unit: 'g',
    formula: plus(copper, ...others),
    note: 'Iron scraps, rust and basic salts in it come on top.',
  });
}

const litre = <U extends 'g/L' | 'mg/L'>(sentence: string, mass: Figure<'g'>, load: Load, unit: U) =>
  workedOut({ sentence, unit, formula: over(mass, load.volume) });

/** Iron to put in, what goes down and what goes on. */
function ironFigures(load: Load, parts: Parts, copperLeft: Figure<'g'>, plan: IronPlan) {
  const dissolved = dissolvedFrom(parts);
  const excess = plan.excess ?? ranged('iron/excess', 'Iron over what dissolves, usual', iron.excess, '%');
  const needed = workedOut({
    sentence: 'Iron to put in',
    unit: 'g',
    formula: times(dissolved, ranged('iron/air', 'What air takes besides', iron.air, '1'), plus(1, excess)),
  });
  const goingOn = parts.ironThree
    ? workedOut({
        sentence: 'Iron(II) going on, with the iron that was there',
        unit: 'g',
        formula: plus(dissolved, parts.ironThree),
      })
    : dissolved;
  return {
    iron: needed,
    ironPerCopper: workedOut({
      sentence: 'Iron put in for each gram of copper that goes down',
      unit: '1',
      formula: over(needed, parts.copper),
    }),
    copper: parts.copper,
    cement: cementOf(load, parts.copper),
    copperLeft,
    copperLeftPerLitre: litre('Copper left a litre', copperLeft, load, 'mg/L'),
    ironGoingOn: goingOn,
    ironGoingOnPerLitre: litre('Iron(II) going on, a litre', goingOn, load, 'g/L'),
    ...fromAcid(parts.acid),
  };
}

/**
 * Copper cemented on iron, and the lime stage after it against the lime stage alone. Nickel, zinc and lead are counted as
 * staying. Ranges of what is usual are common practice; nothing here replaces a strip before the lime.
 */
export function ironFirst(load: Load, plan: IronPlan): IronFirstResult {
  const copper = load.metals.get('Cu')?.figure;
  const acid = load.freeAcid.figure;
  if (!copper) return { ok: false, failure: 'copper-open' };
  if (!acid) return { ok: false, failure: 'acid-open' };
  const copperLeft = copperThatStays(load, copper);
  if (copperLeft === copper) return { ok: false, failure: 'no-copper' };
  const left = acidAtIron(load, acid, plan.acid);
  const down = workedOut({
    sentence: 'Copper that goes down',
    unit: 'g',
    formula: minus(copper, copperLeft),
  });
  const parts = partsOf(load, down, left);
  const figures = ironFigures(load, parts, copperLeft, plan);
  const after = loadAfterIron(load, copperLeft, figures.ironGoingOn);
  const lime = bases(plan, load, acidOnly(load, acid, left), after, left);
  if (!lime) return { ok: false, failure: 'acid-open' };
  const openIn = [...new Set([...load.freeAcid.openIn, ...openMetals(load)])];
  return { ok: true, value: { ...figures, ...lime, after, openIn } };
}
