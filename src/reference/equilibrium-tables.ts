/**
 * Constants of the equilibrium model at 25 °C and zero ionic strength, molal scale. Apart from tables.ts, so that only
 * the treatment pages load them.
 */
import * as z from 'zod/mini';
import { checked } from './checked';
import equilibriumJson from './equilibrium.json';
import { Num, told } from './tables';

const constant = {
  id: z.string(),
  /** As printed on a page; its components and their numbers are read from it. */
  reaction: z.string(),
  logK: Num,
  /** Line of the database file where it was read. */
  line: Num,
  /** Largest less smallest log K over the databases that hold the reaction, aged and fresh solids included. */
  spread: z.optional(Num),
  ...told,
};

const Species = z.strictObject({ ...constant, only: z.optional(z.enum(['davies', 'sit'])) });
/** `high` and `low` are the ends of log K of the fresh and the aged solid, where they are published. */
const Solid = z.strictObject({
  ...constant,
  formula: z.string(),
  high: z.optional(Num),
  low: z.optional(Num),
});

export type EquilibriumSpecies = z.infer<typeof Species>;
export type EquilibriumSolid = z.infer<typeof Solid>;

const Parameter = z.strictObject({ value: Num, unit: z.string(), uncertainty: Num, ...told });

export const equilibrium = checked(
  () =>
    z.strictObject({
      /** What the model is, as the source of whatever is read from it. */
      model: z.strictObject(told),
      debyeHueckel: Parameter,
      ionSize: Parameter,
      davies: z.strictObject({ linear: Num, neutral: Num, water: Num, ...told }),
      gas: z.strictObject(constant),
      species: z.array(Species),
      solids: z.array(Solid),
      interactions: z.strictObject({
        unit: z.literal('kg/mol'),
        ...told,
        values: z.array(z.strictObject({ cation: z.string(), anion: z.string(), epsilon: Num })),
      }),
    }),
  equilibriumJson,
);
