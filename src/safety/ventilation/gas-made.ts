/**
 * Nitrous gas that metal and nitric acid make, from the dilute route (nitric oxide, n ÷ 3 for a metal of charge n) to the
 * strong one (nitrogen dioxide, n). Neither the metal nor the acid may be used twice: where acid is short, the gas is what
 * the acid can make, a mole for four of it by the dilute route and for two by the strong one. Tin takes one acid for each
 * mole of gas by either. Reactions: reference/dissolution.json.
 */
import { acidStrength, type StrengthFailure } from '../../chemistry/acid-strength';
import { sourceOf } from '../../chemistry/constants';
import { weighed } from '../../chemistry/evidence';
import { molarMass, reaction } from '../../chemistry/formula';
import { volumeRead } from '../../chemistry/liquor';
import { type Operand, over, plus, times } from '../../quantities/expression';
import { between, type Figure, given, workedOut } from '../../quantities/figure';
import { nitrousGas } from '../../reference/nitrous-gas-tables';
import { dissolution, liquor, type Metal, metals } from '../../reference/tables';
import type { GassingCharge } from './station-schema';

export type Route = 'dilute' | 'strong';

export type GasMade = {
  readonly dilute: Figure<'mol'>;
  readonly strong: Figure<'mol'>;
  /** The most, with its range down to the dilute route: nobody knows which it will be. */
  readonly all: Figure<'mol'>;
  /** The route that acid of this strength usually takes; `either` between the two. */
  readonly usual: Route | 'either';
  readonly limitedBy: 'metal' | 'acid';
  /** Acid, or liquor with free acid in it. */
  readonly volume: Figure<'L'>;
  /** HNO3 itself in the charge. */
  readonly acid: Figure<'mol'>;
  /** All of the metal, and the gas of it with acid to spare: of a leach only. */
  readonly metal?: Figure<'g'>;
  readonly withAcidToSpare?: Figure<'mol'>;
  /** Copper that the free acid may dissolve: of cementation only. */
  readonly copper?: Figure<'g'>;
};

export type NoGas =
  | ({ readonly code: 'acid-outside-table' } & Pick<StrengthFailure, 'low' | 'high'>)
  | {
      readonly code: 'no-metal' | 'no-acid' | 'no-gas-from-these';
    };

export type GasMadeResult =
  | { readonly ok: true; readonly value: GasMade }
  | { readonly ok: false; readonly failure: NoGas };

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
type Bound = { readonly most: Figure<'mol'>; readonly toSpare: Figure<'mol'> };

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

type Masses = readonly { readonly metal: Metal; readonly mass: Figure<'g'> }[];

const boundOfMasses = (masses: Masses, acid: Figure<'mol'>, route: Route): Bound | undefined => {
  const parts = masses.flatMap(({ metal, mass }) => gasOf(mass, metal, route) ?? []);
  return parts.length === 0 ? undefined : bound(parts, acid, route);
};

/** Of what the metal may be: by the strong route the worst, by the dilute route the least; acid as the worst takes it. */
function boundOfUnknown(mass: Figure<'g'>, acid: Figure<'mol'>, route: Route): Bound | undefined {
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
const boundOfAcid = (acid: Figure<'mol'>, route: Route): Bound => {
  const most = workedOut({
    sentence: `Gas at the most, ${route} route`,
    unit: 'mol',
    formula: over(acid, balanceOf('Cu', route)?.acidForGas ?? 1),
    sources: [source],
  });
  return { most, toSpare: most };
};

/** The most, down to what the dilute route makes. */
function spanning(dilute: Figure<'mol'>, strong: Figure<'mol'>): Figure<'mol'> {
  const share = dilute.value.div(strong.value);
  return workedOut({
    sentence: 'Nitrous gas, counted as nitrogen dioxide',
    unit: 'mol',
    formula: times(
      strong,
      given({
        origin: `ventilation/route/${share}`,
        sentence: 'Share of the most gas that comes of it: by the dilute route less',
        value: 1,
        unit: '1',
        how: 'constant',
        spread: between(share, 1, 1),
        sources: [source],
      }),
    ),
    sources: [sourceOf(nitrousGas.counted)],
    note: nitrousGas.counted.text,
  });
}

function usualRoute(molarity: Figure<'mol/L'>): GasMade['usual'] {
  const { low, high } = liquor.strongAcidFrom;
  if (molarity.value.lt(low)) return 'dilute';
  return molarity.value.gte(high) ? 'strong' : 'either';
}

const failed = (failure: NoGas): GasMadeResult => ({ ok: false, failure });

/** Copper that acid dissolves when it makes as little gas of it as it can: that takes the least acid. */
function copperDissolved(acid: Figure<'mol'>): Figure<'g'> {
  const moles = reaction(dissolution.reactions.Cu?.dilute ?? '');
  return workedOut({
    sentence: 'Copper that the free acid may dissolve',
    unit: 'g',
    formula: over(times(-(moles.get('Cu') ?? 0), acid, molarMass('Cu')), -(moles.get('HNO3') ?? 0)),
    sources: [source],
  });
}

function massesOf(charge: Extract<GassingCharge, { step: 'leach' }>): Masses | Figure<'g'> {
  const { metals: told } = charge;
  if (told.known === 'total') return weighed(told.mass, 'charge/metal', 'Metal, nobody knows which');
  return told.masses.map(({ metal, mass }, i) => ({
    metal,
    mass: weighed(mass, `charge/${i}/${metal}`, `Charge of ${metals[metal].name}`),
  }));
}

const isMasses = (told: Masses | Figure<'g'>): told is Masses => Array.isArray(told);

function wholeOf(masses: Masses): Figure<'g'> {
  const [first, ...others] = masses;
  if (first && others.length === 0) return first.mass;
  const formula = plus(...masses.map(({ mass }) => mass));
  return workedOut({ sentence: 'Metal in the charge', unit: 'g', formula });
}

function ofLeach(charge: Extract<GassingCharge, { step: 'leach' }>, acid: Figure<'mol'>) {
  const told = massesOf(charge);
  const metal = isMasses(told) ? wholeOf(told) : told;
  const by = (route: Route) =>
    isMasses(told) ? boundOfMasses(told, acid, route) : boundOfUnknown(told, acid, route);
  return { metal, dilute: by('dilute'), strong: by('strong') };
}

/**
 * Gas of a charge, in moles, with its range from the dilute route to the strong. Fails where there is no metal or no acid,
 * where none of the metals makes gas, and where the strength of the acid is outside the table of densities.
 * @example 50 g of copper in acid to spare: 1.574 mol by the strong route, 0.525 mol by the dilute one
 */
export function gasMade(charge: GassingCharge): GasMadeResult {
  const strength = acidStrength(charge.acid.strength, 'charge/strength');
  if (!strength.ok) return failed({ ...strength.failure, code: 'acid-outside-table' });
  const volume = volumeRead(charge.acid.volume, 'charge/volume', 'Volume of the acid');
  const acid = workedOut({
    sentence: charge.step === 'leach' ? 'Nitric acid in the charge' : 'Free acid in the liquor',
    unit: 'mol',
    formula: times(volume, strength.molarity),
  });
  if (acid.value.isZero()) return failed({ code: 'no-acid' });
  const usual = usualRoute(strength.molarity);
  if (charge.step === 'cementation') {
    const [dilute, strong] = [boundOfAcid(acid, 'dilute').most, boundOfAcid(acid, 'strong').most];
    const all = spanning(dilute, strong);
    const copper = copperDissolved(acid);
    return { ok: true, value: { dilute, strong, all, usual, limitedBy: 'acid', volume, acid, copper } };
  }
  const { metal, dilute, strong } = ofLeach(charge, acid);
  if (metal.value.isZero()) return failed({ code: 'no-metal' });
  if (!dilute || !strong || strong.most.value.isZero()) return failed({ code: 'no-gas-from-these' });
  return {
    ok: true,
    value: {
      dilute: dilute.most,
      strong: strong.most,
      all: spanning(dilute.most, strong.most),
      usual,
      limitedBy: strong.most === strong.toSpare ? 'metal' : 'acid',
      volume,
      acid,
      metal,
      withAcidToSpare: strong.toSpare,
    },
  };
}
