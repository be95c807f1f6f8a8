/** What is wrong or under way with treatments. */
import { clearanceFault } from './clearance';
import type { Flag } from './flags';
import { basesOf } from './list-bounds';
import type { ContainerState, State, TreatmentState } from './state';
import {
  baseWentIn,
  fellShort,
  notAllowedThen,
  runningTreatment,
  treatmentOf,
  treatmentStep,
  treatmentsOfParts,
} from './treatment';
import { wasteKinds } from './waste-kinds';

/** Where something stands that this was the last treatment of; once all of it is gone, what went last. */
function holderOf(state: State, treatmentId: string): string | undefined {
  const holders = [...state.containers.values()].filter(({ contents }) =>
    contents.some(({ treatedBy }) => treatedBy.at(-1) === treatmentId),
  );
  const standing = holders.find(({ goneSince }) => goneSince === null);
  const [last] = holders.toSorted((a, b) => ((a.goneSince ?? '') < (b.goneSince ?? '') ? 1 : -1));
  return (standing ?? last)?.body.containerId;
}

/** How a treatment was begun; it stays visible, as with a step. */
export function flagsOfTreatment(state: State, treatment: TreatmentState): Flag[] {
  const { body, at, who, ended, readings } = treatment;
  const { treatmentId, containerId, clearance } = body;
  const about = { containerId, treatmentId };
  const flags: Flag[] = [];
  if (ended === null) {
    const lastReadingAt = readings.at(-1)?.at ?? null;
    flags.push({ pressing: 'soon', about, code: 'treatment-running', since: at, lastReadingAt });
  }
  const short = fellShort(treatment);
  const where = short && holderOf(state, treatmentId);
  if (short && where)
    flags.push({
      pressing: 'soon',
      about: { containerId: where, treatmentId },
      code: 'treatment-fell-short',
      ...short,
    });
  const because = notAllowedThen(state, treatment);
  if (because) flags.push({ pressing: 'soon', about, code: 'treatment-not-allowed', because });
  if (clearance === null) flags.push({ pressing: 'soon', about, code: 'treatment-without-clearance' });
  const fault =
    clearance === null
      ? null
      : clearanceFault(state, clearance, {
          step: treatmentStep,
          batchId: null,
          containerId,
          who,
          at,
          bases: basesOf(body),
        });
  if (fault)
    flags.push({ pressing: 'soon', about, code: 'treatment-clearance-does-not-hold', why: fault.code });
  return flags;
}

/** Ammonia waste that is being treated, or lies with what was: the alkaline side is the explosive side. */
export function flagsOfAmmonia(state: State, { body, contents }: ContainerState): Flag[] {
  const { containerId } = body;
  const { kinds } = wasteKinds(state, containerId);
  if (!kinds.includes('ammonia-test-waste') || !treatmentOf(state, containerId)) return [];
  const baseAdded = treatmentsOfParts(state, contents).some(baseWentIn);
  if (!baseAdded && !runningTreatment(state, containerId)) return [];
  return [{ pressing: 'now', about: { containerId }, code: 'ammonia-in-treatment', baseAdded }];
}
