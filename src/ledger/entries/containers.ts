/** Vessels that hold waste, and what went in and out of them. */
import * as z from 'zod/mini';
import { WrittenMass, WrittenVolume } from '../../quantities/written';
import { AmountSpread } from './findings';
import { Code, Id } from './identity';
import { Day } from './moments';
import { Line, Note } from './text';

/** A volume or a mass, as it was read. */
export const Amount = z.union([WrittenVolume, WrittenMass]);

export const ContainerOpened = z.strictObject({
  kind: z.literal('container-opened'),
  v: z.literal(1),
  containerId: Id,
  code: Code,
  vessel: z.enum(['jerrican', 'bottle', 'tub', 'drum']),
  capacity: WrittenVolume,
  material: z.enum(['HDPE', 'PP', 'glass', 'other']),
  otherMaterial: z.optional(Line),
  cap: z.enum(['vented', 'tight', 'lid', 'open']),
  place: z.optional(Line),
  /** The tray it stands in. */
  tray: z.optional(Line),
  /** When it was taken into use; storage time is counted from the first waste in, which is worked out. */
  openedOn: Day,
});

export const StreamPlaced = z.strictObject({
  kind: z.literal('stream-placed'),
  v: z.literal(1),
  streamId: Id,
  containerId: Id,
  amount: Amount,
  spread: z.optional(AmountSpread),
});

/** `toContainerId` is null when it left the shelf: a sample, a spill, a treatment pot that is no container. */
export const ContentsMoved = z.strictObject({
  kind: z.literal('contents-moved'),
  v: z.literal(1),
  fromContainerId: Id,
  toContainerId: z.nullable(Id),
  amount: Amount,
  spread: z.optional(AmountSpread),
  purpose: z.enum(['transfer', 'sample', 'spill', 'treatment']),
  note: z.optional(Note),
});

export const ContainerMarked = z.strictObject({
  kind: z.literal('container-marked'),
  v: z.literal(1),
  containerId: Id,
  mark: z.enum(['closed', 'reopened', 'contents-doubtful', 'contents-known']),
  note: z.optional(Note),
});

export type Amount = z.infer<typeof Amount>;
export type ContainerOpened = z.infer<typeof ContainerOpened>;
export type StreamPlaced = z.infer<typeof StreamPlaced>;
export type ContentsMoved = z.infer<typeof ContentsMoved>;
export type ContainerMarked = z.infer<typeof ContainerMarked>;
