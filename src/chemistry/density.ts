/**
 * Density of a nitrate liquor from what is dissolved:
 * ρ = ρ(water) + Σ cᵢ (Mᵢ − ρ(water) Vᵢ) − (a·c(acid) + b·c(nitrate of salts)) c(nitrate).
 * Good to about 1 % up to 3 mol/L of salt and 6 mol/L of acid. Source: reference/liquor.json.
 */
import { type Expression, minus, over, plus, times } from '../quantities/expression';
import { exact, type Figure, given, type Source, within, workedOut } from '../quantities/figure';
import { iron } from '../reference/iron-tables';
import { liquor, type Metal, metals } from '../reference/tables';
import { constant, sourceOf } from './constants';
import { capital } from './evidence';
import { molarMass } from './formula';
import { acidPerLitre, type Load, metalsPresent, molesOf, molesOfIronTwo } from './load';

const volumes = liquor.partialVolumes;

const partialVolume = (ion: string, value: string): Figure<'mL/mol'> =>
  given({
    origin: `constant/partial-volume/${ion}`,
    sentence: `Partial molal volume of ${ion}`,
    value,
    unit: 'mL/mol',
    how: 'constant',
    spread: exact,
    decimals: 2,
    sources: [sourceOf(volumes)],
  });

const nitrateVolume = partialVolume('NO3', volumes.values.NO3);

const water = constant('water-density', 'Density of water at 20 °C', liquor.waterDensity, 'kg/L');

type Fixed = '1' | 'mol/L' | 'kg/L';

const fixed = <U extends Fixed>(
  sentence: string,
  value: string,
  unit: U,
  sources: readonly Source[],
): Figure<U> =>
  given({
    origin: `constant/density/${sentence}`,
    sentence,
    value,
    unit,
    how: 'constant',
    spread: exact,
    decimals: value.split('.')[1]?.length ?? 0,
    sources,
  });

const fitSource = sourceOf(liquor.densityFit);
const one = fixed('One mole a litre, to take the unit away', '1', 'mol/L', [
  { title: 'The unit itself', status: 'computed' },
]);

/** How well the formula meets the tables: a factor of 1 with that spread. */
const fit = given({
  origin: 'model/density',
  sentence: 'How well the density formula fits',
  value: '1.00',
  unit: '1',
  how: 'constant',
  spread: within(Number(liquor.densityFit.uncertainty) / 100),
  decimals: 2,
  sources: [fitSource],
});

type Solute = {
  readonly gain: Figure<'kg/L'>;
  readonly nitrate: Figure<'mol/L'>;
  readonly bend: Figure<'kg/L'>;
};

/** How much less the density gains for each mole of nitrate beside it, kg/L at 1 mol/L of both. */
const bend = {
  acid: fixed('Fitted bend for acid', liquor.densityFit.acid, 'kg/L', [fitSource]),
  salt: fixed('Fitted bend for salt', liquor.densityFit.salt, 'kg/L', [fitSource]),
};

type Salt = {
  readonly name: string;
  readonly element: Metal;
  readonly charge: number;
  readonly n: Figure<'mol'> | undefined;
  readonly volume: Figure<'mL/mol'> | undefined;
};

const metalSalt = (metal: Metal, load: Load): Salt => {
  const volume = volumes.values[metal];
  return {
    name: metals[metal].name,
    element: metal,
    charge: Number(metals[metal].chargeInNitrate),
    n: molesOf(load, metal),
    volume: volume === undefined ? undefined : partialVolume(metal, volume),
  };
};

const ironTwoVolume = constant(
  'partial-volume/Fe(II)',
  'Partial molal volume of iron(II)',
  iron.partialVolume,
  'mL/mol',
);
const ironTwoSalt = (load: Load): Salt => ({
  name: 'iron(II)',
  element: 'Fe',
  charge: Number(iron.ironTwo.charge),
  n: molesOfIronTwo(load),
  volume: ironTwoVolume,
});

function saltOf({ name, element, charge, n, volume }: Salt, load: Load): Solute | undefined {
  // Of palladium and tin nobody here knows the volume: `uncounted` says that they are left out.
  if (!n || n.value.lte(0) || volume === undefined || load.volume.value.lte(0)) return undefined;
  const c = workedOut({
    sentence: `${capital(name)}, mol a litre`,
    unit: 'mol/L',
    formula: over(n, load.volume),
  });
  const ions: Expression = plus(
    minus(molarMass(element), times(water, volume)),
    times(charge, minus(molarMass('NO3'), times(water, nitrateVolume))),
  );
  return {
    gain: workedOut({
      sentence: `Density gained from ${name} nitrate`,
      unit: 'kg/L',
      formula: times(c, ions),
    }),
    nitrate: workedOut({
      sentence: `Nitrate with ${name}, mol a litre`,
      unit: 'mol/L',
      formula: times(charge, c),
    }),
    bend: bend.salt,
  };
}

function acidOf(load: Load): Solute | undefined {
  const acid = acidPerLitre(load);
  if (!acid || acid.value.lte(0)) return undefined;
  return {
    gain: workedOut({
      sentence: 'Density gained from free acid',
      unit: 'kg/L',
      formula: times(acid, minus(molarMass('HNO3'), times(water, nitrateVolume))),
    }),
    nitrate: acid,
    bend: bend.acid,
  };
}

/** What the straight sum overestimates in strong liquor: (Σ bendᵢ·cᵢ) × Σ c(nitrate). */
const overestimate = (solutes: readonly Solute[]): Figure<'kg/L'> =>
  workedOut({
    sentence: 'Less, since strong liquor gains less',
    unit: 'kg/L',
    formula: times(
      plus(...solutes.map((s) => times(s.bend, over(s.nitrate, one)))),
      over(plus(...solutes.map((s) => s.nitrate)), one),
    ),
  });

/** What is there and does not count, in words; undefined when all of it counts. */
function uncounted(load: Load): string | undefined {
  const names = metalsPresent(load)
    .filter((m) => volumes.values[m] === undefined)
    .map((m) => `${capital(metals[m].name)} is not counted: its volume in solution is not known here.`);
  const acid = load.freeAcid.figure ? [] : ['Free acid is not determined and not counted.'];
  const all = [...acid, ...names];
  return all.length === 0 ? undefined : all.join(' ');
}

/** Density of the load, kg/L at 20 °C: as measured if that still holds, else worked out. */
export function densityOf(load: Load): Figure<'kg/L'> {
  if (load.density) return load.density;
  const acid = acidOf(load);
  const salts = [...[...load.metals.keys()].map((m) => metalSalt(m, load)), ironTwoSalt(load)];
  const solutes = [...salts.flatMap((salt) => saltOf(salt, load) ?? []), ...(acid ? [acid] : [])];
  const note = uncounted(load);
  const sum: Expression = plus(water, ...solutes.map((s) => s.gain));
  return workedOut({
    sentence: 'Density, worked out from what is dissolved',
    unit: 'kg/L',
    formula: times(solutes.length === 0 ? sum : minus(sum, overestimate(solutes)), fit),
    sources: [fitSource],
    ...(note === undefined ? {} : { note }),
  });
}
