/**
 * Nitrous gas that a charge makes, from the dilute route (nitric oxide, n ÷ 3 for a metal of charge n) to the strong one
 * (nitrogen dioxide, n).
 */
import { acidStrength, type StrengthFailure } from '../../chemistry/acid-strength';
import { sourceOf } from '../../chemistry/constants';
import { weighed } from '../../chemistry/evidence';
import { molarMass, reaction } from '../../chemistry/formula';
import { volumeRead } from '../../chemistry/liquor';
import { over, plus, times } from '../../quantities/expression';
import { between, type Figure, given, workedOut } from '../../quantities/figure';
import { nitrousGas } from '../../reference/nitrous-gas-tables';
import { dissolution, liquor, metals } from '../../reference/tables';
import { boundOfAcid, boundOfMasses, boundOfUnknown, type Masses, type Route } from './gas-bounds';
import type { GassingCharge } from './station-schema';

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
