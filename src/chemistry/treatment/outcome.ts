/**
 * What comes of a treatment that ends at its target: heat, gas, sludge, filtrate, and what goes on in it. The solids are those of
 * the equilibrium model at the target; volumes add up from water and partial volumes of the ions. Sources:
 * reference/liquor.json, reference/residuals.json.
 */
import { minus, notBelowNothing, over, plus, times } from '../../quantities/expression';
import { type Figure, read, within, workedOut } from '../../quantities/figure';
import type { Written } from '../../quantities/written';
import { residuals } from '../../reference/residual-tables';
import { type BaseId, bases, type Metal, metals } from '../../reference/tables';
import { carbonDioxide } from '../base-needed';
import { capital } from '../evidence';
import { molarMass, parsed } from '../formula';
import { type Warming, warming } from '../heat';
import { type Amount, type Load, nitrateIn } from '../load';
import { type Sludge, sludgeFrom } from '../sludge';
import { type GoesOn, liquidAfter, type Pores, poresOf, type Reached, waterDensity } from './liquid-after';
import { modelTells } from './model-tells';
import { type ModelHolds, modelHoldsAt } from './residual-ends';
import { metalsOf } from './residual-levels';
import { dissolvedShare, solidsAt } from './solids-at';
import { treatedPot } from './treated-pot';

export type OutcomeAsked = {
  /** Solids in the wet sludge; absent: as it drains through cloth. */
  readonly cakeSolids?: Figure<'%'>;
  /** Water that the base is stirred into. */
  readonly slurryWater?: Figure<'L'>;
};

export type Outcome = {
  readonly warming?: Warming;
  /** L at 20 °C; absent with a base that gives none. */
  readonly carbonDioxide?: Figure<'L'>;
  /** Absent where nothing comes down. */
  readonly sludge?: Sludge;
  readonly pores?: Pores;
  readonly inSludge: ReadonlyMap<Metal, Figure<'g'>>;
  /** Water that neutralising makes, counted in the filtrate. */
  readonly waterMade: Figure<'L'>;
  readonly filtrate: Figure<'L'>;
  readonly nitrate: {
    readonly moles: Amount<'mol'>;
    readonly mass?: Figure<'g'>;
    readonly asCalciumNitrate?: Figure<'g'>;
  };
  readonly goesOn: GoesOn;
  readonly ionicStrength: Figure<'mol/kg'>;
  readonly holds: ModelHolds;
  /** Metals of which more than half stays dissolved at the target. */
  readonly leaves: readonly Metal[];
  readonly openIn: readonly string[];
};

/** Solids content that a person states, to a fifth of it: a cake is never even. */
export const statedCakeSolids = (percent: Written<'%'>, origin: string): Figure<'%'> =>
  read({
    origin,
    sentence: 'Solids in the wet sludge, as stated',
    written: percent,
    unit: '%',
    how: 'stated',
    spread: (value) => within(value.times(0.2)),
  });

/** @param load that `reached` was worked out for */
export function outcomeOf(reached: Reached, load: Load, asked: OutcomeAsked = {}): Outcome {
  const { needed, at } = reached;
  const warm = warming(load, needed);
  const gas = carbonDioxide(needed);
  const sludge = sludgeFrom(load, needed, {
    solids: solidsAt(load, at),
    ...(asked.cakeSolids ? { cakeSolids: asked.cakeSolids } : {}),
  });
  const goesOn = goesOnWith(reached);
  const waterMade = waterMadeIn(reached, load);
  const nitrate = nitrateIn(load);
  const liquid = liquidAfter({
    reached,
    load,
    goesOn,
    waterMade,
    nitrate: nitrate.figure,
    slurryWater: asked.slurryWater,
  });
  const pores = sludge && poresOf(sludge, liquid);
  const ionicStrength = ionicStrengthOf(reached, load, asked.slurryWater);
  return {
    ...(warm ? { warming: warm } : {}),
    ...(gas ? { carbonDioxide: gas } : {}),
    ...(sludge ? { sludge } : {}),
    ...(pores ? { pores } : {}),
    inSludge: inSludgeOf(reached, load),
    waterMade,
    filtrate: workedOut({
      sentence: 'Filtrate',
      unit: 'L',
      formula: pores ? notBelowNothing(minus(liquid.volume, pores.volume)) : plus(liquid.volume),
    }),
    nitrate: { moles: nitrate, ...nitrateMasses(nitrate.figure) },
    goesOn,
    ionicStrength,
    holds: modelHoldsAt(ionicStrength.value.toNumber()),
    leaves: needed.leaves,
    openIn: needed.openIn,
  };
}

/** A value that the model tells at the target, for each mole of base, so that it grows as the base does. */
const perBase = ({ needed }: Reached, value: number): number =>
  value / Math.max(needed.hydroxide.value.toNumber(), 1e-12);

function elementOf(base: BaseId): GoesOn['element'] {
  const atoms = parsed(bases[base].formula);
  if (atoms.has('Ca')) return 'Ca';
  return atoms.has('Mg') ? 'Mg' : 'Na';
}

/** All of the base that was needed is dissolved at the target: the dose is the least that reaches it. */
function goesOnWith({ needed }: Reached): GoesOn {
  const element = elementOf(needed.base);
  const { formula, hydroxidePerMol } = bases[needed.base];
  const each = (parsed(formula).get(element) ?? 1) / Number(hydroxidePerMol);
  const name = { Ca: 'Calcium', Mg: 'Magnesium', Na: 'Sodium' }[element];
  const moles = workedOut({
    sentence: `${name} left, filtrate and cake, as moles`,
    unit: 'mol',
    formula: times(each, needed.hydroxide),
    note: 'Grit that is coated counts with the sludge.',
  });
  return {
    element,
    moles,
    mass: workedOut({
      sentence: `${name} left, filtrate and cake`,
      unit: 'g',
      formula: times(moles, molarMass(element)),
    }),
  };
}

/** By the model: free water at the target, less the water that was there. */
function waterMadeIn(reached: Reached, load: Load): Figure<'L'> {
  const before = treatedPot(load, reached.needed.base)?.waterKilograms ?? 0;
  const each = modelTells({
    sentence: 'Water made by a mole of base',
    pH: reached.pH,
    value: perBase(reached, reached.at.water - before),
    unit: 'kg/mol',
  });
  return workedOut({
    sentence: 'Water that neutralising makes',
    unit: 'L',
    formula: over(times(reached.needed.hydroxide, each), waterDensity),
    signed: true,
  });
}

/** What of each metal is in the sludge by the model at the target; what it leaves is told as a band elsewhere. */
function inSludgeOf({ at, pH }: Reached, load: Load): ReadonlyMap<Metal, Figure<'g'>> {
  return new Map(
    metalsOf(load).flatMap((metal) => {
      const all = [load.metals.get(metal)?.figure, metal === 'Fe' ? load.ironTwo : undefined];
      const known = all.filter((figure) => figure !== undefined);
      const share = 1 - dissolvedShare(at, metal);
      if (known.length === 0 || share <= 0) return [];
      const { name } = metals[metal];
      const figure = workedOut({
        sentence: `${capital(name)} in the sludge`,
        unit: 'g',
        formula: times(
          plus(...known),
          modelTells({ sentence: `Share of ${name} that comes down`, pH, value: share, unit: '1' }),
        ),
      });
      return [[metal, figure] as const];
    }),
  );
}

function nitrateMasses(moles: Figure<'mol'> | undefined): Omit<Outcome['nitrate'], 'moles'> {
  if (!moles) return {};
  return {
    mass: workedOut({
      sentence: 'Nitrate left, filtrate and cake',
      unit: 'g',
      formula: times(moles, molarMass('NO3')),
      note: 'Lime, caustic and soda do not remove nitrate.',
    }),
    asCalciumNitrate: workedOut({
      sentence: 'Nitrate left, filtrate and cake, as calcium nitrate',
      unit: 'g',
      formula: over(times(moles, molarMass('Ca(NO3)2')), 2),
    }),
  };
}

/** Ionic strength at the target: it grows with the base and falls with the water, that of the slurry too. */
function ionicStrengthOf(
  reached: Reached,
  load: Load,
  slurryWater: Figure<'L'> | undefined,
): Figure<'mol/kg'> {
  const { at, needed, pH } = reached;
  const note = `The model of activities holds to about ${residuals.reach.formal.value} mol/kg, was used to ${residuals.reach.used.value}, and tells nothing beyond.`;
  const sentence = 'Ionic strength at the target';
  // A liquor that is there already takes no base to grow with.
  if (needed.hydroxide.value.lte(0))
    return modelTells({ sentence, pH, value: at.ionicStrength, unit: 'mol/kg', note });
  const each = perBase(reached, at.ionicStrength * at.water);
  const inLitre = at.water / load.volume.value.toNumber();
  const own = times(
    load.volume,
    modelTells({ sentence: 'Water in a litre of the liquor', pH, value: inLitre, unit: 'kg/L' }),
  );
  return workedOut({
    sentence,
    unit: 'mol/kg',
    formula: over(
      times(
        modelTells({
          sentence: 'Charge in solution for a mole of base',
          pH,
          value: each,
          unit: '1',
        }),
        needed.hydroxide,
      ),
      slurryWater ? plus(own, times(slurryWater, waterDensity)) : own,
    ),
    note,
  });
}
