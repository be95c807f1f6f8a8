/**
 * What stays dissolved of each metal as a pot is brought up in pH, in its own liquor: beside fresh solids (the upper end) and
 * beside what they turn into with time (the lower end). Plain numbers, mg/L. Recommendations and constants:
 * reference/residuals.json and reference/equilibrium.json.
 */
import type { Figure } from '../../quantities/figure';
import { equilibrium } from '../../reference/equilibrium-tables';
import { residuals } from '../../reference/residual-tables';
import type { BaseId, Metal } from '../../reference/tables';
import type { SolidAsked, Titration } from '../equilibrium/pot';
import { componentOfMetal } from '../equilibrium/reaction';
import type { NoEquilibrium } from '../equilibrium/solve';
import { dissolved } from '../equilibrium/told';
import { molarMass } from '../formula';
import { type Load, metalsPresent, openMetals } from '../load';
import { alongDose, atPhAlong, type DosePoint, type PhSpan } from './along-dose';
import { likely, likelyTurn, sizeOf, titrationOf, treatedPot } from './treated-pot';

/** What a load does not tell and holds metals up all the same. */
export type Beside = {
  /** mol, as nitrate. */
  readonly ammonia?: Figure<'mol'>;
};

export type LevelsFailure =
  | { readonly code: 'acid-open' }
  | { readonly code: 'model-failed'; readonly failure: NoEquilibrium };

/** Dissolved beside fresh and beside aged solids, and in all, mg in a litre of the liquor as it came. */
export type MetalLevels = { readonly fresh: number; readonly aged: number; readonly all: number };

export type Levels = {
  readonly metals: readonly Metal[];
  /** Highest pH that the base reaches within the span asked for. */
  readonly ends: number;
  /** Undefined beyond what the base reaches. */
  readonly at: (pH: number) => LevelsAt | undefined;
  /** Liquors that do not tell of the acid or of a metal. */
  readonly openIn: readonly string[];
};

export type LevelsAt = {
  readonly pH: number;
  /** mol/kg */
  readonly ionicStrength: number;
  readonly of: ReadonlyMap<Metal, MetalLevels>;
};

export type Levelled =
  | { readonly ok: true; readonly value: Levels }
  | { readonly ok: false; readonly failure: LevelsFailure };

const ends = new Map(equilibrium.solids.map(({ id, high, low }) => [id, { high, low }]));

const withLogK = (id: string, logK: string | undefined): SolidAsked =>
  logK === undefined ? { id } : { id, logK: Number(logK) };

/** The most soluble published form of each solid. */
const fresh = ({ id }: SolidAsked): SolidAsked => withLogK(id, ends.get(id)?.high);

function aged({ id }: SolidAsked): SolidAsked {
  const into = residuals.aged.values[id];
  if (!into) return { id };
  return withLogK(into.id, into.end && ends.get(into.id)?.[into.end]);
}

function titrationBeside(titration: Titration, { ammonia }: Beside): Titration {
  if (!ammonia) return titration;
  const { liquor } = titration;
  const substances = new Map([...liquor.substances, ['NH4NO3', ammonia.value.toNumber()] as const]);
  return { ...titration, liquor: { ...liquor, substances } };
}

/** Metals of a load, iron(II) among the iron. */
export const metalsOf = (load: Load): readonly Metal[] => [
  ...new Set([...metalsPresent(load), ...(load.ironTwo ? (['Fe'] as const) : [])]),
];

export function levelsOf(load: Load, base: BaseId, span: PhSpan, beside: Beside = {}): Levelled {
  const pot = treatedPot(load, base);
  if (!pot) return { ok: false, failure: { code: 'acid-open' } };
  const amounts = likely(pot);
  // Beside plain hydroxide more copper stays than beside basic nitrate.
  const titration = titrationBeside(
    titrationOf(pot, amounts, { ...likelyTurn, copperFirst: 'hydroxide' }),
    beside,
  );
  const size = sizeOf(pot, amounts) + (beside.ammonia?.value.toNumber() ?? 0);
  const along = (kind: (solid: SolidAsked) => SolidAsked) =>
    alongDose({ ...titration, solids: titration.solids.map(kind) }, size, span);
  const [soluble, settled] = [along(fresh), along(aged)];
  if (!soluble.ok) return { ok: false, failure: { code: 'model-failed', failure: soluble.failure } };
  if (!settled.ok) return { ok: false, failure: { code: 'model-failed', failure: settled.failure } };
  const metals = metalsOf(load);
  return {
    ok: true,
    value: {
      metals,
      ends: soluble.points.reduce((most, { at }) => Math.max(most, at.pH), 0),
      at: (pH) => levelsAt(pH, load, metals, soluble.points, settled.points),
      openIn: [...new Set([...load.freeAcid.openIn, ...openMetals(load)])],
    },
  };
}

function levelsAt(
  pH: number,
  load: Load,
  metals: readonly Metal[],
  soluble: readonly DosePoint[],
  settled: readonly DosePoint[],
): LevelsAt | undefined {
  const ionicStrength = atPhAlong(soluble, pH, (at) => at.ionicStrength);
  if (ionicStrength === undefined) return undefined;
  const litres = load.volume.value.toNumber();
  const levels = (metal: Metal): MetalLevels => {
    const component = componentOfMetal(metal);
    const each = (molarMass(metal).value.toNumber() * 1000) / litres;
    const of = (points: readonly DosePoint[]) => atPhAlong(points, pH, (at) => dissolved(at, component));
    const upper = of(soluble) ?? 0;
    return {
      fresh: upper * each,
      // Where aged solids leave the base short of this pH, nothing is lower than beside the fresh ones.
      aged: Math.min(of(settled) ?? upper, upper) * each,
      all: allIn(load, metal) * (1000 / litres),
    };
  };
  return { pH, ionicStrength, of: new Map(metals.map((metal) => [metal, levels(metal)])) };
}

/** g, iron(II) among the iron. */
const allIn = (load: Load, metal: Metal): number =>
  (load.metals.get(metal)?.figure?.value.toNumber() ?? 0) +
  (metal === 'Fe' ? (load.ironTwo?.value.toNumber() ?? 0) : 0);
