/** Places in the workshop where steps are done, and what their air was found to bear. */
import * as z from 'zod/mini';
import { WrittenMass } from '../../quantities/written';
import { WrittenCharge, WrittenStation } from '../../safety/ventilation/station-schema';
import { Id } from './identity';
import { Line, Note } from './text';

/** The same `stationId` again replaces the whole description, and takes the place into use again. */
export const StationDescribed = z.strictObject({
  kind: z.literal('station-described'),
  v: z.literal(1),
  stationId: Id,
  name: Line,
  station: WrittenStation,
  note: z.optional(Note),
});

export const StationGivenUp = z.strictObject({
  kind: z.literal('station-given-up'),
  v: z.literal(1),
  stationId: Id,
});

/** What a charge would make there, as it was asked; `verdict` and `portion` as they were told then. */
export const VentilationChecked = z.strictObject({
  kind: z.literal('ventilation-checked'),
  v: z.literal(1),
  checkId: Id,
  batchId: z.nullable(Id),
  stationId: Id,
  /** The place as it was described then. */
  station: WrittenStation,
  charge: WrittenCharge,
  verdict: z.enum(['enough', 'split', 'none']),
  /** The most that the place takes in one lot. */
  portion: z.optional(WrittenMass),
});

export type StationDescribed = z.infer<typeof StationDescribed>;
export type StationGivenUp = z.infer<typeof StationGivenUp>;
export type VentilationChecked = z.infer<typeof VentilationChecked>;
