/**
 * The plan of a container's treatment: stages in portions, with what each takes in time, water and room. What a person
 * leaves open is filled in from the container and from what is usual.
 */
import Decimal from 'decimal.js';
import { constant } from '../chemistry/constants';
import { densityOf } from '../chemistry/density';
import { volumeRead } from '../chemistry/liquor';
import { openMetals } from '../chemistry/load';
import { waterDensity } from '../chemistry/treatment/liquid-after';
import { type PlanFailure, type PlannedStage, planOf } from '../chemistry/treatment/plan';
import { slurryWater } from '../chemistry/treatment/slurry-water';
import type { StageAsked } from '../chemistry/treatment/stage-before';
import { over, plus, times } from '../quantities/expression';
import { between, exact, type Figure, given, workedOut } from '../quantities/figure';
import type { Written } from '../quantities/written';
import { dosing } from '../reference/dosing-tables';
import type { BaseId } from '../reference/tables';
import { comesOf, perState, treatable } from './before-treatment';
import { freeSpace } from './free-space';
import { purityStated } from './purity-stated';
import type { State } from './state';

export type PlanChoice = {
  readonly stages: readonly StageAsked[];
  /** What one portion may warm the liquor; usual where absent. */
  readonly rise?: Written<'K'>;
  /** Free space over the liquor; what the container has left where absent. */
  readonly headspace?: Written<'L' | 'mL' | 'US gal'>;
};

export type StageTold = PlannedStage & {
  /** What keeps a portion from being larger. */
  readonly heldBy: 'heat' | 'foam';
  readonly count: Figure<'1'>;
  /** Waits of all its portions. */
  readonly time: Figure<'h'>;
  /** Water that carries it, in all. */
  readonly water: Figure<'L'>;
  /** The portion in its table that is largest, as weighed, g. */
  readonly largest: Decimal;
  /** For that portion. */
  readonly portionWater: Figure<'mL'>;
};

export type PlanTold = {
  readonly stages: readonly StageTold[];
  readonly time: Figure<'h'>;
  /** Dry solids in the slurry when all is in; absent where nothing is known to come down. */
  readonly solids?: Figure<'%'>;
  /** Of all stages. */
  readonly water: Figure<'L'>;
  /** The water may not find room in the container. */
  readonly overfull: boolean;
  /** Liquors that do not tell of the acid or of a metal: it is the plan of the least. */
  readonly openIn: readonly string[];
};

export type PlannedFor =
  | { readonly ok: true; readonly value: PlanTold }
  | { readonly ok: false; readonly failure: PlanFailure };

const statedRise = ({ value }: Written<'K'>): Figure<'K'> =>
  given({
    origin: 'plan/rise',
    sentence: 'Rise allowed for one portion',
    value,
    unit: 'K',
    how: 'stated',
    spread: exact,
    decimals: value.split('.')[1]?.length ?? 0,
  });

const usualRise = (): Figure<'K'> =>
  constant('warmest-portion', 'Rise allowed for one portion', dosing.warmest, 'K');

const choiceKey = ({ stages, rise, headspace }: PlanChoice): string =>
  JSON.stringify([stages.map(({ base, pH }) => [base, pH]), rise, headspace]);

const planByKey = perState((state: State, containerId: string, key: string): PlannedFor | undefined => {
  const load = treatable(state, containerId);
  if (!load) return undefined;
  const [stages, rise, room] = JSON.parse(key) as [
    [BaseId, number][],
    PlanChoice['rise'],
    PlanChoice['headspace'],
  ];
  const headspace = room
    ? volumeRead(room, 'plan/headspace', 'Free space over the liquor')
    : freeSpace(state, containerId);
  const planned = planOf({
    load,
    stages: stages.map(([base, pH]) => ({ base, pH })),
    purity: (base) => purityStated(state, base),
    rise: rise ? statedRise(rise) : usualRise(),
    ...(headspace ? { headspace } : {}),
  });
  if (!planned.ok) return planned;
  return { ok: true, value: toldOf(state, containerId, planned.stages.map(stageTold)) };
});

/** Undefined where no base may go in, or the free acid is open. */
export const planFor = (state: State, containerId: string, choice: PlanChoice): PlannedFor | undefined =>
  planByKey(state, containerId, choiceKey(choice));

/** All portions at the latest, the full ones alone at the soonest. */
function countOf({ portions }: PlannedStage): Figure<'1'> {
  const full = portions.filter(({ kind }) => kind === 'full').length;
  const likely = Math.ceil((full + portions.length) / 2);
  return given({
    origin: `plan/portions/${portions.length}/${full}`,
    sentence: 'Portions',
    value: likely,
    unit: '1',
    how: 'worked-out',
    spread: between(full, likely, portions.length),
    decimals: 0,
  });
}

function stageTold(stage: PlannedStage): StageTold {
  const count = countOf(stage);
  const { byHeat, byFoam, base, needed, portions, wait } = stage;
  const time = workedOut({ sentence: 'Waits in all', unit: 'h', formula: times(count, wait) });
  const largest = portions.reduce((most, { grams }) => Decimal.max(most, grams), new Decimal(0));
  return {
    ...stage,
    heldBy: byFoam?.low.lt(byHeat.low) ? 'foam' : 'heat',
    count,
    time,
    largest,
    water: slurryWater(base, needed, 'L'),
    portionWater: slurryWater(base, portionFigure(largest), 'mL'),
  };
}

const portionFigure = (grams: Decimal): Figure<'g'> =>
  given({
    origin: 'plan/portion',
    sentence: 'Largest portion',
    value: grams,
    unit: 'g',
    how: 'worked-out',
    spread: exact,
    decimals: grams.decimalPlaces(),
  });

function toldOf(state: State, containerId: string, stages: readonly StageTold[]): PlanTold {
  const water = workedOut({
    sentence: 'Water of all portions',
    unit: 'L',
    formula: plus(...stages.map((stage) => stage.water)),
  });
  const room = freeSpace(state, containerId);
  const load = treatable(state, containerId);
  const solids = solidsOf(state, containerId, stages, water);
  return {
    stages,
    time: workedOut({
      sentence: 'Waits of all stages',
      unit: 'h',
      formula: plus(...stages.map(({ time }) => time)),
    }),
    water,
    ...(solids ? { solids } : {}),
    openIn: load ? [...new Set([...load.freeAcid.openIn, ...openMetals(load)])] : [],
    overfull: room !== undefined && water.high.gt(room.low),
  };
}

/** Of the last stage's sludge, in liquor, base and the water of the slurries. */
function solidsOf(
  state: State,
  containerId: string,
  stages: readonly StageTold[],
  water: Figure<'L'>,
): Figure<'%'> | undefined {
  const load = treatable(state, containerId);
  const last = stages.at(-1);
  const dry = last && comesOf(state, containerId, last.base, last.pH)?.sludge?.dry;
  if (!load || !dry) return undefined;
  return workedOut({
    sentence: 'Solids in the pot, by mass',
    unit: '%',
    formula: over(
      dry,
      plus(
        times(load.volume, densityOf(load)),
        ...stages.map(({ needed }) => needed),
        times(water, waterDensity),
      ),
    ),
  });
}
