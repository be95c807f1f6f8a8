/** Evidence: how a dissolved amount is known, one shape for each way of knowing. */
import * as z from 'zod/mini';
import {
  WrittenMass,
  WrittenMolarity,
  WrittenPerLitre,
  WrittenVolume,
  writtenIn,
} from '../../quantities/written';
import { Day } from './moments';
import { Line } from './text';

/**
 * How far off it may be: `k2` is an expanded uncertainty with coverage factor 2 (GUM), `limits` the ends that are
 * thought possible. In the unit of the value, another of its kind, or percent of it.
 */
const spreadIn = <const U extends string>(...units: [U, ...U[]]) =>
  z.strictObject({ plusMinus: writtenIn<U | '%'>('%', ...units), as: z.enum(['k2', 'limits']) });

const ConcentrationSpread = spreadIn('g/L', 'mg/L');
const MolaritySpread = spreadIn('mol/L');
export const MassSpread = spreadIn('g', 'kg', 'mg', 'lb');
export const VolumeSpread = spreadIn('L', 'mL', 'US gal');
export const PercentSpread = spreadIn('%');
export const AmountSpread = spreadIn('L', 'mL', 'US gal', 'g', 'kg', 'mg', 'lb');

export const Metal = z.enum(['Cu', 'Ni', 'Ag', 'Pd', 'Zn', 'Fe', 'Sn', 'Ba', 'Pb', 'Al']);

/** Concentration, or mass in all. */
const ConcentrationOrMass = writtenIn('g/L', 'mg/L', 'g', 'kg', 'mg', 'lb');

const measuredFields = {
  metal: Metal,
  concentration: WrittenPerLitre,
  spread: z.optional(ConcentrationSpread),
  on: z.optional(Day),
  reference: z.optional(Line),
};
const measured = <const B extends string>(by: B) => z.strictObject({ ...measuredFields, by: z.literal(by) });

/** The feed, and whether the liquor is that of the leach or what cementation left of it. */
const feedKnown = {
  metal: Metal,
  capacitors: z.enum(['precious-metal-electrode', 'base-metal-electrode', 'mixed', 'unknown']),
  liquor: z.enum(['leach', 'barren']),
  feed: WrittenMass,
};

/** One metal in a liquid, known in one way. Several findings of one metal stand side by side. */
export const Finding = z.discriminatedUnion('by', [
  measured('assay'),
  measured('photometer'),
  z.strictObject({
    ...measuredFields,
    by: z.literal('strip'),
    /** The colour fields beside the one that was read. */
    steps: z.optional(
      z.strictObject({ below: z.optional(WrittenPerLitre), above: z.optional(WrittenPerLitre) }),
    ),
  }),
  /** Mass of the metal in all. */
  z.strictObject({
    by: z.literal('weighing'),
    metal: Metal,
    mass: WrittenMass,
    spread: z.optional(MassSpread),
  }),
  /** Copper weighed into and out of the cementation: what is gone is in the liquid. */
  z.strictObject({
    by: z.literal('copper-weighed'),
    metal: z.literal('Cu'),
    before: WrittenMass,
    after: WrittenMass,
  }),
  /** Silver and palladium weighed after cementation: each put its own amount of copper into the liquid. */
  z.strictObject({
    by: z.literal('metals-recovered'),
    metal: z.literal('Cu'),
    silver: WrittenMass,
    palladium: WrittenMass,
  }),
  z.strictObject({
    by: z.literal('assumed'),
    metal: Metal,
    low: ConcentrationOrMass,
    high: ConcentrationOrMass,
    reference: z.optional(Line),
  }),
  /** By what such a feed usually gives. */
  z.strictObject({ ...feedKnown, by: z.literal('typical') }),
  /** What is gone from the feed, shared out as such a feed usually is. */
  z.strictObject({ ...feedKnown, by: z.literal('feed-minus-residue'), residue: WrittenMass }),
  z.strictObject({ by: z.literal('not-determined'), metal: Metal }),
]);

/** Free acid in a liquid, known in one way. */
export const AcidFinding = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('titration'), result: WrittenMolarity, spread: z.optional(MolaritySpread) }),
  z.strictObject({
    by: z.literal('titration-volumes'),
    sample: WrittenVolume,
    titrant: WrittenVolume,
    titrantStrength: WrittenMolarity,
  }),
  z.strictObject({ by: z.literal('ph'), ph: writtenIn('1'), instrument: z.enum(['paper', 'meter']) }),
  /** Acid that was charged; what the metals consumed is worked out. `kg/L` is the density of the acid. */
  z.strictObject({
    by: z.literal('charged-minus-consumed'),
    volume: WrittenVolume,
    strength: writtenIn('%', 'mol/L', 'kg/L'),
  }),
  z.strictObject({ by: z.literal('assumed'), low: WrittenMolarity, high: WrittenMolarity }),
  z.strictObject({ by: z.literal('not-determined') }),
]);

export type Metal = z.infer<typeof Metal>;
export type Finding = z.infer<typeof Finding>;
export type AcidFinding = z.infer<typeof AcidFinding>;
