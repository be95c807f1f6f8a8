/**
 * What the record knows of the limits that a list asks for, as digits, and from what. The words are the screens'.
 * Undefined where the record knows nothing: then the list's own careful range holds.
 */
import Decimal from 'decimal.js';
import { molarMass } from '../chemistry/formula';
import { acidCharged } from '../chemistry/free-acid';
import { bases } from '../reference/tables';
import { containerFigures } from './container-figures';
import type { TreatmentStage } from './entries/treatments';
import { fillPercent } from './fill';
import type { State, TreatmentState } from './state';
import { runningStep } from './step-offers';

/** As the person chose it, before it begins; `targetPh` is absent where only copper is cemented. */
export type Planned = {
  readonly stages: readonly TreatmentStage[];
  readonly targetPh?: { readonly value: string } | undefined;
};

/** How far a pH read on paper may lie from the one that is aimed at. Common practice, no source. */
const paperReads = 0.5;

/** Most of the vessel that may be full, %: slurry and stirring need half, foam of a carbonate two thirds. Common practice, no source. */
const fullest = { quiet: '50', foaming: '33' } as const;

/** The bases of a plan, without the iron that cements. */
export const basesOf = ({
  stages,
}: {
  readonly stages: readonly Pick<TreatmentStage, 'agent'>[];
}): readonly string[] => [...new Set(stages.flatMap(({ agent }) => (agent === 'iron' ? [] : [agent])))];

const foams = ({ agent }: TreatmentStage): boolean =>
  agent !== 'iron' && Number(bases[agent].carbonDioxidePerMol) > 0;

/** Most that the vessel may be full before the first base goes in, %, whether foam is why, and how full it is by the record. */
export function fillForBase(state: State, containerId: string, planned: Planned) {
  const container = state.containers.get(containerId);
  const foaming = planned.stages.some(foams);
  return {
    max: foaming ? fullest.foaming : fullest.quiet,
    foaming,
    byRecord: container ? fillPercent(container).toFixed(0) : null,
  };
}

/** The band about the pH of a plan; undefined where it aims at none. */
export function bandOf({ targetPh }: Planned) {
  if (targetPh === undefined) return undefined;
  const aim = new Decimal(targetPh.value);
  return { min: aim.minus(paperReads).toString(), max: aim.plus(paperReads).toString(), aim: targetPh.value };
}

/** The last treatment of a container, or of what a batch gave, that aimed at a pH. */
export const lastPlanned = (treatments: readonly TreatmentState[]): Planned | undefined =>
  treatments.findLast(({ body }) => body.targetPh !== undefined)?.body;

/** Most acid that stands in one vessel or was poured into one batch, mol at the high end, and where; null where none is known. */
function mostAcid(state: State): { readonly moles: Decimal; readonly where: string } | null {
  const inContainers = [...state.containers.values()].flatMap(({ body, contents }) => {
    const acid = contents.length > 0 ? containerFigures(state, body.containerId).acid.figure : undefined;
    return acid ? [{ moles: acid.high, where: body.code }] : [];
  });
  const inBatches = [...state.batches.values()].flatMap(({ body, charged, steps }) => {
    const runs = steps.some((id) => state.steps.get(id)?.endedAt === null);
    if (!runs) return [];
    const poured = charged.flatMap(({ entryId, body: { charge } }) => {
      const acid = charge.what === 'acid' ? acidCharged(charge, `entry/${entryId}`) : undefined;
      return acid ? [acid.moles.high] : [];
    });
    return poured.length === 0 ? [] : [{ moles: Decimal.sum(...poured), where: body.code }];
  });
  return [...inContainers, ...inBatches].reduce<ReturnType<typeof mostAcid>>(
    (most, one) => (most?.moles.gte(one.moles) ? most : one),
    null,
  );
}

/** What a litre of 70 % acid takes, kg of baking soda: the least that is kept, whatever is known. Source: molar masses, 15.7 mol/L. */
const leastKept = new Decimal('1.3');

/** Baking soda for the most acid in one place, kg, rounded up; null where no acid is known, or less than is kept in any case. */
export function neutraliserFor(state: State) {
  const most = mostAcid(state);
  if (!most) return null;
  const kilograms = most.moles.times(molarMass('NaHCO3').value).div(1000);
  if (kilograms.lte(leastKept)) return null;
  return {
    min: kilograms.toDecimalPlaces(1, Decimal.ROUND_UP).toString(),
    moles: most.moles.toSignificantDigits(3).toString(),
    where: most.where,
  };
}

/** Minutes that going through a list may take until its question comes. */
const listTakes = 10;

/**
 * Most minutes that anything in the running step of a batch can be old, and since when it runs; null where none does.
 * @param least the shortest time that is in order: a step that began a moment ago has had no quiet hour
 */
export function oldestIn(state: State, batchId: string | null, step: string, now: string, least: number) {
  const running = runningStep(state, batchId, step);
  if (!running) return null;
  const minutes = Math.floor((Date.parse(now) - Date.parse(running.at)) / 60_000);
  return { max: String(Math.max(minutes + listTakes, least)), since: running.at };
}

/** How many containers the newest paper names; null where none was made, or one of them is empty by now. */
export function containersOnPaper(state: State) {
  const paper = [...state.papers.values()].at(-1)?.body;
  const there = paper?.containerIds.every((id) => (state.containers.get(id)?.contents.length ?? 0) > 0);
  if (!paper || !there || paper.containerIds.length === 0) return null;
  return { count: String(paper.containerIds.length), fileName: paper.fileName };
}
