/**
 * Density of a nitrate liquor from what is dissolved:
 * ρ = ρ(water) + Σ cᵢ (Mᵢ − ρ(water) Vᵢ) − (a·c(acid) + b·c(nitrate of salts)) c(nitrate).
 * Good to about 1 % up to 3 mol/L of salt and 6 mol/L of acid. Source: reference/liquor.json.
 */
import { type Expression, minus, over, plus, times } from '../quantities/expression';
import { exact, type Figure, given, within, workedOut } from '../quantities/figure';
import { liquor, type Metal, metals } from '../reference/tables';
import { constant, sourceOf } from './constants';
import { molarMass } from './formula';
import { acidPerLitre, type Load, molesOf } from './load';

const volumes = liquor.partialVolumes;

const partialVolume = (ion: string): Figure<'mL/mol'> =>
  given({
    origin: `constant/partial-volume/${ion}`,
    sentence: `Partial molal volume of ${ion}`,
    value: volumes.values[ion] ?? '0',
    unit: 'mL/mol',
    how: 'constant',
    spread: exact,
    decimals: 2,
    sources: [sourceOf(volumes)],
  });

const water = constant('water-density', 'Density of water at 20 °C', liquor.waterDensity, 'kg/L');

const pure = <U extends '1' | 'mol/L' | 'kg/L'>(sentence: string, value: string, unit: U): Figure<U> =>
  given({
    origin: '',
    sentence,
    value,
    unit,
    how: 'constant',
    spread: exact,
    decimals: value.split('.')[1]?.length ?? 0,
    sources: [sourceOf(liquor.densityFit)],
  });

const one = pure('One mole a litre', '1', 'mol/L');

/** How well the formula meets the tables: a factor of 1 with that spread. */
const fit = given({
  origin: 'model/density',
  sentence: 'How well the density formula fits',
  value: 1,
  unit: '1',
  how: 'constant',
  spread: within(Number(liquor.densityFit.uncertainty) / 100),
  decimals: 0,
  sources: [sourceOf(liquor.densityFit)],
});

type Solute = { readonly gain: Figure<'kg/L'>; readonly nitrate: Figure<'mol/L'> };

function solute(metal: Metal, load: Load): Solute | undefined {
  const n = molesOf(load, metal);
  if (!n || n.value.lte(0)) return undefined;
  const charge = Number(metals[metal].chargeInNitrate);
  const c = workedOut({
    sentence: `${metals[metal].name}, mol a litre`,
    unit: 'mol/L',
    formula: over(n, load.volume),
  });
  const ions: Expression = plus(
    minus(molarMass(metal), times(water, partialVolume(metal))),
    times(charge, minus(molarMass('NO3'), times(water, partialVolume('NO3')))),
  );
  return {
    gain: workedOut({
      sentence: `Density gained from ${metals[metal].name} nitrate`,
      unit: 'kg/L',
      formula: times(c, ions),
    }),
    nitrate: workedOut({
      sentence: `Nitrate with ${metals[metal].name}, mol a litre`,
      unit: 'mol/L',
      formula: times(charge, c),
    }),
  };
}

/** Density of the load, kg/L at 20 °C: as measured if that still holds, else worked out. */
export function densityOf(load: Load): Figure<'kg/L'> {
  if (load.density) return load.density;
  const acid = acidPerLitre(load);
  const salts = [...load.metals.keys()].flatMap((m) => solute(m, load) ?? []);
  const acidGain = acid && times(acid, minus(molarMass('HNO3'), times(water, partialVolume('NO3'))));
  const formula: Expression = plus(water, ...salts.map((s) => s.gain), ...(acidGain ? [acidGain] : []));
  const nitrates = [...(acid ? [acid] : []), ...salts.map((s) => s.nitrate)];
  const parts = [
    ...(acid ? [times(pure('Fit, acid', liquor.densityFit.acid, 'kg/L'), over(acid, one))] : []),
    ...salts.map((s) => times(pure('Fit, salt', liquor.densityFit.salt, 'kg/L'), over(s.nitrate, one))),
  ];
  const corrected =
    parts.length === 0 ? formula : minus(formula, times(plus(...parts), over(plus(...nitrates), one)));
  return workedOut({
    sentence: 'Density, worked out from what is dissolved',
    unit: 'kg/L',
    formula: times(corrected, fit),
    sources: [sourceOf(liquor.densityFit)],
    ...(acid ? {} : { note: 'Free acid is not determined and not counted.' }),
  });
}
