/** A ventilation station, and a charge to be worked at it, as a person writes them. What they say is judged in `check.ts`. */
import * as z from 'zod/mini';
import {
  WrittenAirflow,
  WrittenLength,
  WrittenMass,
  WrittenPercent,
  WrittenRoom,
  WrittenSpeed,
  WrittenTime,
  WrittenVolume,
  writtenIn,
} from '../../quantities/written';
import { limitIds } from '../../reference/exposure-limits-tables';
import { type Metal, metalSymbols } from '../../reference/tables';
import { Line } from '../cited';

/** A day in the calendar of the place, e.g. "2026-11-24". */
const Day = z.iso.date();

const DuctedHood = z.strictObject({
  is: z.literal('ducted-hood'),
  /** The opening with the sash at its mark. */
  width: WrittenLength,
  height: WrittenLength,
  /** Mean speed of the air through that opening; absent where nobody has measured it. */
  face: z.optional(z.strictObject({ speed: WrittenSpeed, measuredOn: Day })),
  /** Last change to hood, fan, filter, duct or make-up air. */
  changedOn: z.optional(Day),
  /** Face speeds at which a test of containment found that this hood holds. */
  certificate: z.optional(z.strictObject({ low: WrittenSpeed, high: WrittenSpeed, datedOn: Day })),
  /** Of the room that it stands in: what fills with gas when the fan fails. */
  room: z.optional(WrittenRoom),
});

const Room = z.strictObject({
  is: z.literal('room'),
  volume: WrittenRoom,
  /** Absent where nothing moves the air, or nobody knows how much. */
  airflow: z.optional(WrittenAirflow),
});

/** The place where a step is done, without its name. */
export const WrittenStation = z.discriminatedUnion('is', [
  DuctedHood,
  Room,
  z.strictObject({ is: z.literal('outdoors') }),
  z.strictObject({ is: z.literal('ductless-hood') }),
]);

const OneMetal = z.enum(metalSymbols as [Metal, ...Metal[]]);

/** What acid can dissolve: each metal, or all of it together where nobody knows what it is. */
const Metals = z.discriminatedUnion('known', [
  z.strictObject({
    known: z.literal('each'),
    masses: z
      .array(z.strictObject({ metal: OneMetal, mass: WrittenMass }))
      .check(z.minLength(1), z.maxLength(20)),
  }),
  z.strictObject({ known: z.literal('total'), mass: WrittenMass }),
]);

/** How the gas comes: this share of all of it within so long from the beginning. */
const Peak = z.strictObject({ share: WrittenPercent, within: WrittenTime });

/** A limit by its name, or one that somebody stated. */
const Limit = z.union([z.enum(limitIds), z.strictObject({ at: writtenIn('ppm'), whose: Line })]);

const gassing = {
  acid: z.strictObject({ volume: WrittenVolume, strength: writtenIn('%', 'mol/L', 'kg/L') }),
  /** From the first gas to the last, of one lot. */
  release: WrittenTime,
  /** Absent: half of it in the first quarter of an hour. */
  peak: z.optional(Peak),
  limit: Limit,
  /** How badly the air of a room mixes: 1 is perfectly, 10 is dead corners. Absent: what is usual. */
  mixing: z.optional(writtenIn('1')),
};

/** What is to be worked in one go, by the step. */
export const WrittenCharge = z.discriminatedUnion('step', [
  z.strictObject({ step: z.literal('leach'), metals: Metals, ...gassing }),
  /** Copper there is more than enough of: the free acid is the end of it. */
  z.strictObject({ step: z.literal('cementation'), ...gassing }),
  /** Nothing dissolves: vapour of the acid, which nobody works out. */
  z.strictObject({ step: z.literal('acid-dilution') }),
  z.strictObject({ step: z.literal('filtration') }),
]);

export type WrittenStation = z.infer<typeof WrittenStation>;
export type WrittenCharge = z.infer<typeof WrittenCharge>;
/** A charge that makes nitrous gas. */
export type GassingCharge = Extract<WrittenCharge, { step: 'leach' | 'cementation' }>;
