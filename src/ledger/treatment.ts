/** What is known of a treatment, and of what containers hold that has been through one. */
import { type Quantity, quantity } from '../quantities/quantity';
import { asHeld } from './amounts';
import type { PotRead } from './entries/treatments';
import type { ContentsPart, State, Told, TreatmentState } from './state';

/** The step whose clearance a treatment is begun on; it is of no batch, since a container may hold several. */
export const treatmentStep = 'neutralisation';

export type NotAllowed = 'not-stated' | 'not-allowed';

/** Why the local rules do not let waste be treated here; null when they do. */
export function treatmentRuleFault(state: State): NotAllowed | null {
  const said = state.rules.get('treatment-allowed')?.body.stated.value;
  if (said === 'yes') return null;
  return said === undefined ? 'not-stated' : 'not-allowed';
}

/** As it is kept with the treatment. */
export const allowedNow = (state: State): 'yes' | 'no' | 'not-stated' => {
  const fault = treatmentRuleFault(state);
  return fault === null ? 'yes' : fault === 'not-allowed' ? 'no' : fault;
};

/**
 * Why it was not allowed when it was done; null when it was. A rule that was said in time and entered late counts.
 */
export function notAllowedThen(state: State, { at, body }: TreatmentState): NotAllowed | null {
  if (body.allowed === 'yes') return null;
  const rule = state.rules.get('treatment-allowed')?.body;
  if (rule?.stated.value === 'yes' && rule.saidOn <= at.slice(0, 10)) return null;
  return body.allowed === 'no' ? 'not-allowed' : 'not-stated';
}

/** The treatment that runs in a container, the last begun where several do; null where none does. */
export function runningTreatment(state: State, containerId: string): TreatmentState | null {
  const all = (state.containers.get(containerId)?.treatmentIds ?? []).map((id) => state.treatments.get(id));
  return all.findLast((treatment) => treatment?.ended === null) ?? null;
}

type Reading = Told<PotRead>;
export type PhReading = Reading & { readonly body: { readonly ph: NonNullable<PotRead['ph']> } };

const hasPh = (reading: Reading): reading is PhReading => reading.body.ph !== undefined;

/** The newest pH reading; null when there is none. */
export const lastPh = ({ readings }: TreatmentState): PhReading | null => readings.findLast(hasPh) ?? null;

/**
 * Whether nothing acid is left of what went through it, as far as was read: told to have reached its end, and 7 or more
 * read in the pot since the last dose.
 */
export function isNeutralised(treatment: TreatmentState): boolean {
  const read = lastPh(treatment);
  if (treatment.ended?.body.outcome !== 'reached' || !read) return false;
  const dosed = treatment.doses.at(-1)?.at ?? treatment.at;
  return read.at >= dosed && Number(read.body.ph.value.value) >= 7;
}

export type FellShort = { readonly aim: string; readonly read: string | null };

/** How far below its aim a pH may be read and still be told to have reached it: paper reads no better. */
const nearAim = 0.5;

/**
 * It was told to have reached its end, and the newest pH read lies more than 0.5 below the aim, or none was read; null
 * where it does not, or no pH was aimed at.
 */
export function fellShort(treatment: TreatmentState): FellShort | null {
  const aim = treatment.body.targetPh?.value;
  if (treatment.ended?.body.outcome !== 'reached' || aim === undefined) return null;
  const read = lastPh(treatment)?.body.ph.value.value ?? null;
  return read !== null && Number(read) >= Number(aim) - nearAim ? null : { aim, read };
}

type Agent = TreatmentState['doses'][number]['body']['agent'];

/** Mass of each agent that went in, as sold, in the order in which the first of each did. */
export function dosedIn({ doses }: TreatmentState): ReadonlyMap<Agent, Quantity<'g'>> {
  const sums = new Map<Agent, Quantity<'g'>>();
  for (const { body } of doses) {
    const { mass } = asHeld(body.mass);
    const sum = sums.get(body.agent);
    sums.set(body.agent, sum ? quantity(sum.plus(mass), 'g') : mass);
  }
  return sums;
}

/** Whether a base went in, or may have: it is told to have reached its end and no dose was told. */
export const baseWentIn = ({ doses, treated }: TreatmentState): boolean =>
  treated !== null && (doses.length === 0 || doses.some(({ body }) => body.agent !== 'iron'));

/** The treatments that parts went through, in the order in which they began. */
export function treatmentsOfParts(state: State, parts: readonly ContentsPart[]): readonly TreatmentState[] {
  const ids = new Set(parts.flatMap(({ treatedBy }) => treatedBy));
  return [...state.treatments.values()].filter(({ body }) => ids.has(body.treatmentId));
}

export type ContainerTreatment = {
  /** The one that runs in this container; null where none does. */
  readonly running: TreatmentState | null;
  /** Those that what is in it now went through, in the order in which they began, wherever that was. */
  readonly behind: readonly TreatmentState[];
  /** Something in it has been through none. */
  readonly untreatedToo: boolean;
  /** The newest pH read in the last of those behind; null when nothing was read, or something else came to it. */
  readonly ph: PhReading | null;
};

/** What of a treatment concerns a container now; null when none runs in it and nothing in it has been treated. */
export function treatmentOf(state: State, containerId: string): ContainerTreatment | null {
  const contents = state.containers.get(containerId)?.contents ?? [];
  const running = runningTreatment(state, containerId);
  const behind = treatmentsOfParts(state, contents);
  if (!running && behind.length === 0) return null;
  const last = behind.at(-1);
  const untreatedToo = contents.some(({ treatedBy }) => treatedBy.length === 0);
  const mixed = untreatedToo || new Set(contents.map(({ treatedBy }) => treatedBy.at(-1))).size > 1;
  return { running, behind, untreatedToo, ph: last && !mixed ? lastPh(last) : null };
}

/** Treatments of what a batch gave, in the order in which they began; one with nothing in yet by what its container holds. */
export function treatmentsOfBatch(state: State, batchId: string): readonly TreatmentState[] {
  const streams = new Set<string | null>(state.batches.get(batchId)?.streamIds);
  return [...state.treatments.values()].filter(({ treated, body, ended }) => {
    const standing = ended ? [] : (state.containers.get(body.containerId)?.contents ?? []);
    return (treated ?? standing).some(({ streamId }) => streams.has(streamId));
  });
}
