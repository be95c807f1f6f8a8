/** What a batch was given beside its feed, and what was got back out of it, one weighing or reading an entry. */
import * as z from 'zod/mini';
import { WrittenMass, WrittenVolume, writtenIn } from '../../quantities/written';
import { MassSpread, VolumeSpread } from './findings';
import { Id } from './identity';
import { Note } from './text';

/** `kg/L` is the density of the acid. Water is told apart by whether it made the acid dilute or washed something. */
export const Charge = z.discriminatedUnion('what', [
  z.strictObject({
    what: z.literal('acid'),
    volume: WrittenVolume,
    volumeSpread: z.optional(VolumeSpread),
    strength: writtenIn('%', 'mol/L', 'kg/L'),
  }),
  z.strictObject({
    what: z.enum(['dilution-water', 'wash-water']),
    volume: WrittenVolume,
    volumeSpread: z.optional(VolumeSpread),
  }),
  /** Sheet or wire, weighed as it goes into the cementation. */
  z.strictObject({ what: z.literal('copper'), mass: WrittenMass, massSpread: z.optional(MassSpread) }),
]);

/** All weighed dry: the metals, what is left of the copper, and the ceramic that did not dissolve. */
export const Recovery = z.strictObject({
  what: z.enum(['silver', 'palladium', 'copper', 'residue']),
  mass: WrittenMass,
  massSpread: z.optional(MassSpread),
});

export const BatchCharged = z.strictObject({
  kind: z.literal('batch-charged'),
  v: z.literal(1),
  batchId: Id,
  charge: Charge,
  note: z.optional(Note),
});

export const BatchRecovered = z.strictObject({
  kind: z.literal('batch-recovered'),
  v: z.literal(1),
  batchId: Id,
  recovery: Recovery,
  note: z.optional(Note),
});

export type Charge = z.infer<typeof Charge>;
export type Recovery = z.infer<typeof Recovery>;
export type BatchCharged = z.infer<typeof BatchCharged>;
export type BatchRecovered = z.infer<typeof BatchRecovered>;
