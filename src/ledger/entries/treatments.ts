/** A run on a container's contents: what is added, what is read in the pot, how it ended; and the trial on the bench before it. */
import * as z from 'zod/mini';
import { WrittenMass, WrittenPercent, WrittenVolume, writtenIn } from '../../quantities/written';
import { type BaseId, baseIds } from '../../reference/tables';
import { Base } from './bases';
import { Finding } from './findings';
import { Id, TimedId } from './identity';
import { Line, Note } from './text';

/** What is added to a pot: a base of the reference data, or iron to cement copper on. */
export const Agent = z.enum(['iron', ...(baseIds as [BaseId, ...BaseId[]])]);

export const WrittenPh = writtenIn('1');
/** Above freezing: a pot that is frozen is not stirred. */
export const WrittenTemperature = writtenIn('°C');

const Instrument = z.enum(['paper', 'meter']);

const measured: ReadonlySet<Finding['by']> = new Set<Finding['by']>(['assay', 'photometer', 'strip']);

/** What was measured in the pot itself; what can only be said of the liquor that came does not count here. */
const PotFinding = Finding.check(z.refine(({ by }) => measured.has(by), 'not measured in the pot'));

/** One stage of the plan: iron for the copper, limestone to about pH 5, lime to the end. */
export const TreatmentStage = z.strictObject({ agent: Agent, targetPh: z.optional(WrittenPh) });

export const TreatmentBegun = z.strictObject({
  kind: z.literal('treatment-begun'),
  v: z.literal(1),
  treatmentId: Id,
  containerId: Id,
  stages: z.array(TreatmentStage).check(z.minLength(1), z.maxLength(10)),
  /** pH at which it is to end; absent where only copper is cemented. */
  targetPh: z.optional(WrittenPh),
  /** Entry of the cleared checklist; null when it was done without one, which stays visible. */
  clearance: z.nullable(TimedId),
  /** What the record held of the local rule on treatment when this was written. */
  allowed: z.enum(['yes', 'no', 'not-stated']),
  note: z.optional(Note),
});

/** What went in, weighed as sold; water that carried it is not counted. */
export const DoseAdded = z.strictObject({
  kind: z.literal('dose-added'),
  v: z.literal(1),
  treatmentId: Id,
  agent: Agent,
  mass: WrittenMass,
  /** Percent by mass, where it is not what was described of the base. */
  purity: z.optional(WrittenPercent),
  note: z.optional(Note),
});

/** What was seen in the pot; `findings` are of the clear liquid above the solids. */
export const PotRead = z
  .strictObject({
    kind: z.literal('pot-read'),
    v: z.literal(1),
    treatmentId: Id,
    ph: z.optional(z.strictObject({ value: WrittenPh, instrument: Instrument })),
    temperature: z.optional(WrittenTemperature),
    colour: z.optional(Line),
    findings: z.optional(z.array(PotFinding).check(z.maxLength(60))),
    note: z.optional(Note),
  })
  .check(
    z.refine(
      ({ ph, temperature, colour, findings, note }) =>
        [ph, temperature, colour, note].some((said) => said !== undefined) || (findings ?? []).length > 0,
      'nothing read',
    ),
  );

/** A sample titrated with the base that is at hand: what its litres take, whatever is in them. */
export const BenchTested = z.strictObject({
  kind: z.literal('bench-tested'),
  v: z.literal(1),
  containerId: Id,
  sampleVolume: WrittenVolume,
  agent: Base,
  mass: WrittenMass,
  purity: z.optional(WrittenPercent),
  endPh: WrittenPh,
  instrument: Instrument,
  note: z.optional(Note),
});

export const TreatmentEnded = z.strictObject({
  kind: z.literal('treatment-ended'),
  v: z.literal(1),
  treatmentId: Id,
  outcome: z.enum(['reached', 'stopped']),
  reason: z.optional(Note),
});

export type Agent = z.infer<typeof Agent>;
export type TreatmentStage = z.infer<typeof TreatmentStage>;
export type TreatmentBegun = z.infer<typeof TreatmentBegun>;
export type DoseAdded = z.infer<typeof DoseAdded>;
export type PotRead = z.infer<typeof PotRead>;
export type BenchTested = z.infer<typeof BenchTested>;
export type TreatmentEnded = z.infer<typeof TreatmentEnded>;
