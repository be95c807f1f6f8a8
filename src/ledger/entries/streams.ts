/** A waste that a step gave: what it is, how much, and what is known of what is in it. */
import * as z from 'zod/mini';
import {
  WrittenDensity,
  WrittenMass,
  WrittenPercent,
  WrittenVolume,
  writtenIn,
} from '../../quantities/written';
import { StreamKind } from '../../safety/stream-kind';
import { AcidFinding, Finding, MassSpread, PercentSpread, VolumeSpread } from './findings';
import { Id } from './identity';
import { Line, Note } from './text';

export const LiquidPart = z.strictObject({
  volume: WrittenVolume,
  volumeSpread: z.optional(VolumeSpread),
  /** As measured; absent means it is worked out. */
  density: z.optional(WrittenDensity),
  ph: z.optional(z.strictObject({ value: writtenIn('1'), instrument: z.enum(['paper', 'meter']) })),
  findings: z.array(Finding).check(z.maxLength(60)),
  freeAcid: z.array(AcidFinding).check(z.maxLength(20)),
});

/** Water in a wet solid, as a share of the wet mass. */
export const Moisture = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('dried-sample'), wet: WrittenMass, dry: WrittenMass }),
  z.strictObject({ by: z.literal('stated'), percent: WrittenPercent, spread: z.optional(PercentSpread) }),
  z.strictObject({ by: z.literal('assumed'), low: WrittenPercent, high: WrittenPercent }),
  z.strictObject({ by: z.literal('not-determined') }),
]);

export const SolidPart = z.strictObject({
  wetMass: WrittenMass,
  massSpread: z.optional(MassSpread),
  moisture: Moisture,
  /** The stream whose liquor the wet solid still holds. */
  holds: z.strictObject({ liquor: z.union([z.literal('not-determined'), Id]) }),
});

/** Liquid, solid, or both at once (a slurry with its mud weighed); never neither. */
export const StreamLogged = z
  .strictObject({
    kind: z.literal('stream-logged'),
    v: z.literal(1),
    streamId: Id,
    /** Null when it came of no one batch: soiled gloves, a spill. */
    batchId: z.nullable(Id),
    stepId: z.nullable(Id),
    stream: StreamKind,
    liquid: z.optional(LiquidPart),
    solid: z.optional(SolidPart),
    colour: z.optional(Line),
    /** Layers seen on standing. */
    layers: z.optional(Line),
    note: z.optional(Note),
  })
  .check(
    z.refine((body) => body.liquid !== undefined || body.solid !== undefined, 'neither liquid nor solid'),
  );

/** What was found out of a logged liquid later: it stands beside the evidence that was there. */
export const StreamTested = z
  .strictObject({
    kind: z.literal('stream-tested'),
    v: z.literal(1),
    streamId: Id,
    density: z.optional(WrittenDensity),
    findings: z.array(Finding).check(z.maxLength(60)),
    freeAcid: z.array(AcidFinding).check(z.maxLength(20)),
    note: z.optional(Note),
  })
  .check(
    z.refine(
      ({ density, findings, freeAcid }) =>
        density !== undefined || findings.length > 0 || freeAcid.length > 0,
      'nothing was found',
    ),
  );

/** Why a waste is left out of the quantity of its month, by somebody's word. */
export const CountingSaid = z.strictObject({
  kind: z.literal('counting-said'),
  v: z.literal(1),
  streamId: Id,
  counted: z.enum([
    'counted',
    'straight-into-neutralisation',
    'straight-into-water-treatment',
    'straight-into-enclosed-unit',
    'recycled-at-once',
    'residue-of-counted',
    'reused-on-site',
    'under-rules-of-its-own',
    'not-hazardous',
  ]),
  saidBy: Line,
  note: z.optional(Note),
});

export type LiquidPart = z.infer<typeof LiquidPart>;
export type Moisture = z.infer<typeof Moisture>;
export type SolidPart = z.infer<typeof SolidPart>;
export type StreamLogged = z.infer<typeof StreamLogged>;
export type StreamTested = z.infer<typeof StreamTested>;
export type CountingSaid = z.infer<typeof CountingSaid>;
