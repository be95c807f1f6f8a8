/** The place and its people. */
import * as z from 'zod/mini';
import { Id } from './identity';
import { Address, Line, Note } from './text';

/** The whole description; a later one replaces an earlier one. */
export const WorkshopDescribed = z.strictObject({
  kind: z.literal('workshop-described'),
  v: z.literal(1),
  name: Line,
  address: Address,
  mapReference: z.optional(Line),
  generatorNumber: z.optional(Line),
  emergencyNumber: Line,
  /** Where to phone from when the phone has no signal here. */
  noSignal: z.optional(Note),
  authority: z.optional(z.strictObject({ name: Line, contact: Address })),
  collector: z.optional(z.strictObject({ name: Line, contact: Address, licence: z.optional(Line) })),
  hazardousWasteCounter: z.optional(Address),
});

/** The same `personId` again replaces name and phone, and brings back a person who had left. */
export const PersonAdded = z.strictObject({
  kind: z.literal('person-added'),
  v: z.literal(1),
  personId: Id,
  name: Line,
  phone: z.optional(Line),
});

export const PersonLeft = z.strictObject({ kind: z.literal('person-left'), v: z.literal(1), personId: Id });

export type WorkshopDescribed = z.infer<typeof WorkshopDescribed>;
export type PersonAdded = z.infer<typeof PersonAdded>;
export type PersonLeft = z.infer<typeof PersonLeft>;
