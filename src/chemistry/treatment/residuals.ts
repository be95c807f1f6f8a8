/**
 * What of each metal stays in the filtrate at a pH, as a band of whole powers of ten: lower end beside aged solids, upper end
 * beside fresh ones × 3, 5 or 10 by ionic strength, both raised to what lime and settle reaches in the long run, neither more
 * than there is. Powers of ten, since sets of constants that look alike differ by 40 (nickel) and 300 (copper): anything finer
 * would claim what nobody knows. Recommendation and factors: reference/residuals.json.
 */
import Decimal from 'decimal.js';
import { over, plus, times } from '../../quantities/expression';
import { exact, type Figure, given, workedOut } from '../../quantities/figure';
import { residuals as told } from '../../reference/residual-tables';
import { type BaseId, type Metal, metals } from '../../reference/tables';
import { sourceOf } from '../constants';
import { capital } from '../evidence';
import type { Load } from '../load';
import { modelTells } from './model-tells';
import {
  type DecadeBand,
  decadesAround,
  type EndBy,
  factorAt,
  type ModelHolds,
  modelHoldsAt,
  type NotPredicted,
  notPredicted,
  plainEnds,
} from './residual-ends';
import {
  type Beside,
  type LevelsAt,
  type LevelsFailure,
  levelsOf,
  type MetalLevels,
} from './residual-levels';

/** A metal counts as all dissolved when more than this part of it is. */
const wholly = 0.99;

export type Residual =
  | {
      readonly metal: Metal;
      readonly predicted: true;
      readonly band: DecadeBand;
      /** The ends before rounding; the band holds their ranges too. */
      readonly low: Figure<'mg/L'>;
      readonly high: Figure<'mg/L'>;
      readonly madeBy: { readonly low: EndBy; readonly high: EndBy };
      /** Beside fresh solids nothing of it comes down. */
      readonly allDissolved: boolean;
    }
  | { readonly metal: Metal; readonly predicted: false; readonly why: NotPredicted };

export type ResidualsAt = {
  readonly pH: number;
  /** mol/kg */
  readonly ionicStrength: number;
  readonly holds: ModelHolds;
  readonly residuals: readonly Residual[];
  /** Liquors that do not tell of the acid or of a metal. */
  readonly openIn: readonly string[];
};

export type ResidualsFailure =
  | LevelsFailure
  /** The base ends at this pH, whatever goes in. */
  | { readonly code: 'stalls'; readonly pH: number };

export type ResidualsResult =
  | { readonly ok: true; readonly value: ResidualsAt }
  | { readonly ok: false; readonly failure: ResidualsFailure };

/** @param pH at which it is filtered */
export function residualsAt(load: Load, base: BaseId, pH: number, beside: Beside = {}): ResidualsResult {
  const levels = levelsOf(load, base, { from: pH, to: pH }, beside);
  if (!levels.ok) return levels;
  const at = levels.value.at(pH);
  if (!at) return { ok: false, failure: { code: 'stalls', pH: levels.value.ends } };
  return {
    ok: true,
    value: {
      pH,
      ionicStrength: at.ionicStrength,
      holds: modelHoldsAt(at.ionicStrength),
      residuals: levels.value.metals.map((metal) => residualOf(metal, at, load, beside)),
      openIn: levels.value.openIn,
    },
  };
}

export function residualOf(metal: Metal, at: LevelsAt, load: Load, beside: Beside): Residual {
  const why = notPredicted(metal, at, load, beside);
  const levels = at.of.get(metal);
  if (why || !levels) return { metal, predicted: false, why: why ?? 'too-strong' };
  const { by } = plainEnds(metal, levels, at.ionicStrength);
  const low = endFigure(metal, at, levels, by.low, 'low', load);
  const high = endFigure(metal, at, levels, by.high, 'high', load);
  return {
    metal,
    predicted: true,
    // There may be less of it in all than stays dissolved beside aged solids.
    band: decadesAround(Decimal.min(low.low, allFigure(metal, load, 'In all').low), high.high),
    low,
    high,
    madeBy: by,
    allDissolved: levels.fresh > wholly * levels.all,
  };
}

/** One end with its working. */
function endFigure(
  metal: Metal,
  at: LevelsAt,
  { fresh, aged }: MetalLevels,
  by: EndBy,
  end: 'low' | 'high',
  load: Load,
): Figure<'mg/L'> {
  const name = capital(metals[metal].name);
  const sentence = `${name} left in the filtrate, ${end === 'low' ? 'at least' : 'at most'}`;
  if (by === 'technology') return floorFigure(metal, sentence);
  if (by === 'all-there-is') return allFigure(metal, load, sentence);
  const beside = end === 'low' ? 'aged solids' : 'fresh solids';
  const reading = modelTells({
    sentence: `${name} dissolved beside ${beside}`,
    pH: at.pH,
    value: end === 'low' ? aged : fresh,
    unit: 'mg/L',
    ...(end === 'low' ? { sources: [sourceOf(told.aged)] } : {}),
    note: `In the liquor itself, ionic strength ${at.ionicStrength.toPrecision(2)} mol/kg, 25 °C; for a litre of it as it came.`,
  });
  return end === 'low'
    ? { ...reading, sentence }
    : workedOut({ sentence, unit: 'mg/L', formula: times(reading, aboveFigure(at.ionicStrength)) });
}

const aboveFigure = (ionicStrength: number): Figure<'1'> =>
  given({
    origin: 'residuals/above',
    sentence: 'Times what the model says, by ionic strength',
    value: factorAt(ionicStrength),
    unit: '1',
    how: 'constant',
    spread: exact,
    decimals: 0,
    sources: [sourceOf(told.above)],
    ...(told.above.note === undefined ? {} : { note: told.above.note }),
  });

const floorFigure = (metal: Metal, sentence: string): Figure<'mg/L'> =>
  given({
    origin: `residuals/floor/${metal}`,
    sentence,
    value: told.floor.values[metal] ?? '0',
    unit: 'mg/L',
    how: 'constant',
    spread: exact,
    decimals: 2,
    sources: [sourceOf(told.floor)],
    note: `The model says less; ${told.floor.title.toLowerCase()}. ${told.floor.note ?? ''}`.trim(),
  });

function allFigure(metal: Metal, load: Load, sentence: string): Figure<'mg/L'> {
  const all = [load.metals.get(metal)?.figure, metal === 'Fe' ? load.ironTwo : undefined].filter(
    (figure) => figure !== undefined,
  );
  return workedOut({
    sentence,
    unit: 'mg/L',
    formula: over(plus(...all), load.volume),
    note: 'All there is of it.',
  });
}
