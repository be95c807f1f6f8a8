/** What was worked out of a charge and a place. */
import { inUnit } from '../quantities/quantity';
import type { VentilationChecked } from './entries/stations';
import type { State, Told } from './state';

/**
 * The newest check of a step of a batch at a station that still speaks of it: none from before `since`, nor from before the
 * place was last described, nor one of another step. Null where there is none.
 */
export function ventilationFound(
  state: State,
  of: {
    readonly batchId: string | null;
    readonly stationId: string | undefined;
    readonly step: string;
    readonly since: string;
  },
): Told<VentilationChecked> | null {
  const described = state.stations.get(of.stationId ?? '')?.at;
  if (described === undefined) return null;
  const found = [...state.ventilationChecks.values()].findLast(
    ({ body, at }) =>
      body.batchId === of.batchId &&
      body.stationId === of.stationId &&
      body.charge.step === of.step &&
      at >= of.since &&
      at >= described,
  );
  return found ?? null;
}

/** The most that goes into one lot there, g; undefined where no lot was told. */
export const gramsInLot = ({ portion }: VentilationChecked): string | undefined =>
  portion && inUnit(portion, 'g').toFixed();

/** The newest check of a batch, wherever it was; null where there is none. */
export const lastVentilation = (state: State, batchId: string): Told<VentilationChecked> | null =>
  [...state.ventilationChecks.values()].findLast(({ body }) => body.batchId === batchId) ?? null;

/** The newest check of a step, of the same batch or of none; null where there is none. */
export const lastVentilationOf = (
  state: State,
  batchId: string | null,
  step: string,
): Told<VentilationChecked> | null =>
  [...state.ventilationChecks.values()].findLast(
    ({ body }) => body.batchId === batchId && body.charge.step === step,
  ) ?? null;

/** What was worked out for a place, the newest first. */
export const checksAt = (state: State, stationId: string): readonly Told<VentilationChecked>[] =>
  [...state.ventilationChecks.values()].filter(({ body }) => body.stationId === stationId).reverse();
