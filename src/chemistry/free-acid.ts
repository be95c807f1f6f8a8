/** Free nitric acid in a liquor: from a titration, from charged minus consumed, or from pH with its honest spread. */
import Decimal from 'decimal.js';
import { minus, notBelowNothing, over, plus, times } from '../quantities/expression';
import { between, type Figure, given, read, workedOut } from '../quantities/figure';
import type { Unit } from '../quantities/unit';
import type { Written } from '../quantities/written';
import { dissolution, evidence, liquor, type Metal, metals } from '../reference/tables';
import { acidFromPh, beyondPaper, type PhEvidence } from './acid-from-ph';
import { acidStrength, type WrittenStrength } from './acid-strength';
import { constant, sourceOf } from './constants';
import {
  assumedBetween,
  type Known,
  type KnownMetal,
  type StatedSpread,
  spreadFor,
  usualSpread,
} from './evidence';
import { molarMass, ratio } from './formula';

type Volume = Written<'L' | 'mL' | 'US gal'>;
type Molarity = Written<'mol/L'>;

export type AcidEvidence =
  | { readonly by: 'titration'; readonly result: Molarity; readonly spread?: StatedSpread | undefined }
  | {
      readonly by: 'titration-volumes';
      readonly sample: Volume;
      readonly titrant: Volume;
      readonly titrantStrength: Molarity;
    }
  | PhEvidence
  | { readonly by: 'charged-minus-consumed'; readonly volume: Volume; readonly strength: WrittenStrength }
  | { readonly by: 'assumed'; readonly low: Molarity; readonly high: Molarity }
  | { readonly by: 'not-determined' };

export type KnownAcid = Known<'mol', 'mol/L'> & {
  /** The metals took more than was charged: by so much. */
  readonly short?: Figure<'mol'>;
};

const perLitreName = 'Free nitric acid a litre';

const fromPerLitre = (perLitre: Figure<'mol/L'>, volume: Figure<'L'>): KnownAcid => ({
  perLitre,
  all: workedOut({ sentence: 'Free nitric acid in all', unit: 'mol', formula: times(perLitre, volume) }),
});

const measuredVolume = (written: Volume, origin: string, sentence: string): Figure<'L'> =>
  read({ origin, sentence, written, unit: 'L', how: 'reading', spread: (v) => between(v, v, v) });

/**
 * What of the titrant iron(III) may have taken, mol/L: it drops before pH 4, three hydroxides each, and is counted again as
 * a metal that takes base. Nothing is likely, since people stop where they see it; all of it is the most.
 */
function takenByIron(iron: Figure<'g/L'>, origin: string): Figure<'mol/L'> {
  const { hydroxideTaken } = metals.Fe;
  return workedOut({
    sentence: 'Titrant that iron(III) may have taken',
    unit: 'mol/L',
    formula: times(
      given({
        origin: `${origin}/iron-in-it`,
        sentence: 'Share of the iron that dropped before the end point',
        value: 0,
        unit: '1',
        how: 'assumed',
        spread: between(0, 0, 1),
        decimals: 0,
        sources: [sourceOf(metals.Fe)],
      }),
      Number(hydroxideTaken),
      over(iron, molarMass('Fe')),
    ),
  });
}

/**
 * c = V(titrant) × c(titrant) ÷ V(sample), the spread of the end point being that of a usual titration.
 * @param iron in the same liquor, as iron(III): the low end is lower by what it may have taken
 */
function titrated(
  found: Extract<AcidEvidence, { by: 'titration-volumes' }>,
  iron: Figure<'g/L'> | undefined,
  origin: string,
): Figure<'mol/L'> {
  const endPoint = given({
    origin: `${origin}/end-point`,
    sentence: 'How well the end point was seen',
    value: 1,
    unit: '1',
    how: 'stated',
    spread: usualSpread('titration')(new Decimal(1)),
    decimals: 0,
    sources: [sourceOf(evidence.titration)],
  });
  const strength = read({
    origin: `${origin}/titrant-strength`,
    sentence: 'Strength of the titrant',
    written: found.titrantStrength,
    unit: 'mol/L',
    how: 'stated',
    spread: usualSpread('strength'),
    sources: [sourceOf(evidence.strength)],
  });
  const seen = over(
    times(measuredVolume(found.titrant, `${origin}/titrant`, 'Titrant used'), strength, endPoint),
    measuredVolume(found.sample, `${origin}/sample`, 'Sample titrated'),
  );
  const metalsToo = 'Metals that drop before the end point are counted as acid: stop at about pH 4.';
  return workedOut({
    sentence: perLitreName,
    unit: 'mol/L',
    formula: iron?.value.gt(0) ? minus(seen, takenByIron(iron, origin)) : seen,
    note: iron?.value.gt(0)
      ? `${metalsToo} Iron(III) drops before that: the low end leaves out up to three for each iron.`
      : metalsToo,
  });
}

/**
 * How the metals dissolved. The gas that forms sets what they took: nitric oxide from dilute acid is the least, nitrogen
 * dioxide from strong acid the most; the truth lies between, so each metal's share runs from the one to the other with
 * one common position.
 * @param strength of the acid as charged
 */
export function routeOf(strength: Figure<'mol/L'>, origin: string): Figure<'1'> {
  const strongFrom = constant('strong-acid-from', 'Strong acid from', liquor.strongAcidFrom, 'mol/L');
  const likely = strength.value.gte(strongFrom.value) ? 1 : 0;
  return given({
    origin: `${origin}/route`,
    sentence: 'Share of the metal that dissolved with brown gas',
    value: likely,
    unit: '1',
    how: 'assumed',
    spread: between(0, likely, 1),
    decimals: 0,
    sources: [sourceOf(dissolution)],
    note: dissolution.note,
  });
}

/** Acid charged, mol: volume × strength; undefined where the table of nitric acid does not know the strength. */
export function acidCharged(
  found: { readonly volume: Volume; readonly strength: WrittenStrength },
  origin: string,
):
  | { readonly moles: Figure<'mol'>; readonly strength: Figure<'mol/L'>; readonly volume: Figure<'L'> }
  | undefined {
  const strength = acidStrength(found.strength, `${origin}/strength`);
  if (!strength.ok) return undefined;
  const volume = read({
    origin: `${origin}/volume`,
    sentence: 'Volume of acid charged',
    written: found.volume,
    unit: 'L',
    how: 'reading',
    spread: usualSpread('vessel-scale'),
    sources: [sourceOf(evidence['vessel-scale'])],
  });
  const moles = workedOut({
    sentence: 'Acid charged',
    unit: 'mol',
    formula: times(volume, strength.molarity),
  });
  return { moles, strength: strength.molarity, volume };
}

/** Acid charged less what the dissolved metals took, mol; `short` by how much they took more than there was. */
function chargedMinusConsumed(
  found: Extract<AcidEvidence, { by: 'charged-minus-consumed' }>,
  dissolved: ReadonlyMap<Metal, Pick<KnownMetal, 'all'>>,
  origin: string,
): Pick<KnownAcid, 'all' | 'short'> | undefined {
  const charged = acidCharged(found, origin);
  if (!charged) return undefined;
  const route = routeOf(charged.strength, origin);
  const taken = [...dissolved].map(([metal, { all }]) => acidTaken(metal, all, route));
  const all = workedOut({
    sentence: 'Free nitric acid in all',
    unit: 'mol',
    formula: taken.length === 0 ? plus(charged.moles) : notBelowNothing(minus(charged.moles, plus(...taken))),
    note: 'Acid lost as fume or taken by metals that were not determined is not counted.',
  });
  const short =
    taken.length === 0
      ? undefined
      : workedOut({
          sentence: 'Acid that the metals took beyond what was charged',
          unit: 'mol',
          formula: minus(plus(...taken), charged.moles),
        });
  return { all, ...(short?.value.gt(0) ? { short } : {}) };
}

/** Acid that dissolving a metal took, mol, by the route; from its oxide where it has no reaction with gas. */
export function acidTaken(metal: Metal, mass: Figure<'g'>, route: Figure<'1'>): Figure<'mol'> {
  const routes = dissolution.reactions[metal];
  const asOxide = new Decimal(metals[metal].chargeInNitrate);
  const dilute = routes ? ratio(routes.dilute, 'HNO3', metal) : asOxide;
  const strong = routes ? ratio(routes.strong, 'HNO3', metal) : asOxide;
  const exactRatio = (value: Decimal): Figure<'1'> =>
    given({
      origin: `ratio/${metal}`,
      sentence: `Acid per ${metals[metal].name}, mol per mol`,
      value,
      unit: '1',
      how: 'constant',
      spread: between(value, value, value),
      decimals: Math.min(value.decimalPlaces(), 4),
      sources: [sourceOf(dissolution)],
    });
  const each = strong.eq(dilute)
    ? exactRatio(dilute)
    : plus(exactRatio(dilute), times(route, exactRatio(strong.minus(dilute))));
  return workedOut({
    sentence: `Acid taken by ${metals[metal].name}`,
    unit: 'mol',
    formula: times(over(mass, molarMass(metal)), each),
  });
}

/** The free acid that one piece of evidence gives; undefined where it says that it is not known. */
export function acidFrom(
  found: AcidEvidence,
  volume: Figure<'L'>,
  dissolved: ReadonlyMap<Metal, KnownMetal>,
  origin: string,
): KnownAcid | undefined {
  switch (found.by) {
    case 'titration':
      return fromPerLitre(
        read({
          origin,
          sentence: perLitreName,
          written: found.result,
          unit: 'mol/L',
          how: 'titration',
          spread: spreadFor(found.spread, 'titration', 'mol/L' satisfies Unit),
          sources: found.spread ? [] : [sourceOf(evidence.titration)],
        }),
        volume,
      );
    case 'titration-volumes':
      return fromPerLitre(titrated(found, dissolved.get('Fe')?.perLitre, origin), volume);
    case 'ph':
      return {
        ...fromPerLitre(acidFromPh(found, origin, perLitreName), volume),
        ...(beyondPaper(found) ? { atLeast: true } : {}),
      };
    case 'charged-minus-consumed': {
      const known = chargedMinusConsumed(found, dissolved, origin);
      return (
        known && {
          ...known,
          perLitre: workedOut({ sentence: perLitreName, unit: 'mol/L', formula: over(known.all, volume) }),
        }
      );
    }
    case 'assumed':
      return fromPerLitre(assumedBetween(found.low, found.high, 'mol/L', origin, perLitreName), volume);
    case 'not-determined':
      return undefined;
  }
}
