/**
 * The published data, each held to its schema.
 * Values stay decimal strings. Each names its source (sources.json) and whether it was seen there.
 */
import * as z from 'zod/mini';
import acidDilutionJson from './acid-dilution.json';
import atomicWeightsJson from './atomic-weights.json';
import basesJson from './bases.json';
import cementationJson from './cementation.json';
import { checked } from './checked';
import dissolutionJson from './dissolution.json';
import enthalpiesJson from './enthalpies.json';
import evidenceJson from './evidence.json';
import feedJson from './feed.json';
import liquorJson from './liquor.json';
import metalsJson from './metals.json';
import nitricAcidJson from './nitric-acid.json';
import sourcesJson from './sources.json';

export const Num = z.string().check(z.regex(/^-?\d+(\.\d+)?$/));
const Status = z.enum(['verified', 'memory', 'computed', 'common practice']);
export const SourceId = z.enum(
  Object.keys(sourcesJson) as [keyof typeof sourcesJson, ...(keyof typeof sourcesJson)[]],
);
export const told = { source: SourceId, status: Status, note: z.optional(z.string()) };

/** A value with its uncertainty (about 19 times in 20). */
export const Constant = z.strictObject({ value: Num, unit: z.string(), uncertainty: Num, ...told });
/** A value with the ends between which it lies about 19 times in 20. */
export const Ranged = z.strictObject({ value: Num, low: Num, high: Num, unit: z.string(), ...told });
const Composed = z.enum(['Cu', 'Ni', 'Zn', 'Fe', 'Ag', 'Pd', 'Pb', 'Sn', 'Ba', 'Al']);

export type Constant = z.infer<typeof Constant>;
export type Ranged = z.infer<typeof Ranged>;
export type SourceId = z.infer<typeof SourceId>;
export type Metal = z.infer<typeof Composed>;

const Source = z.strictObject({ title: z.string(), edition: z.string() });
export const sources = checked(() => z.record(SourceId, Source), sourcesJson);

export const atomicWeights = checked(() => z.record(z.string(), Constant), atomicWeightsJson);

export const nitricAcid = checked(
  () =>
    z.strictObject({
      temperature: z.string(),
      source: SourceId,
      uncertainty: Num,
      unit: z.literal('kg/L'),
      note: z.string(),
      rows: z.array(z.strictObject({ percent: Num, density: Num, status: Status })),
    }),
  nitricAcidJson,
);

export const acidDilution = checked(
  () =>
    z.strictObject({
      /** Heat that acid in so many moles of water gives as no end of water is added, kJ for one mole of acid. */
      heat: z.strictObject({
        source: SourceId,
        unit: z.literal('kJ/mol'),
        temperature: z.string(),
        uncertainty: Num,
        note: z.string(),
        rows: z.array(z.strictObject({ water: Num, heat: Num, status: Status })),
      }),
      heatCapacity: z.strictObject({
        source: SourceId,
        unit: z.literal('cal/(g·°C)'),
        temperature: z.string(),
        /** In % of the value. */
        uncertainty: Num,
        rows: z.array(z.strictObject({ percent: Num, capacity: Num, status: Status })),
      }),
      calorie: Constant,
      /** How warm a mixture may become. */
      warmest: Constant,
    }),
  acidDilutionJson,
);

const MetalData = z.strictObject({
  name: z.string(),
  chargeInNitrate: Num,
  hydroxideTaken: Num,
  solid: z.nullable(z.string()),
  ...told,
});
export const metals = checked(() => z.record(Composed, MetalData), metalsJson);
export const metalSymbols = Object.keys(metalsJson) as Metal[];

const Base = z.strictObject({
  name: z.string(),
  formula: z.string(),
  hydroxidePerMol: Num,
  purity: Ranged,
  excess: Ranged,
  carbonDioxidePerMol: Num,
  /** Part of it stays as grit. */
  grit: z.boolean(),
  /** Metals that it brings down though hydroxide does not: hydroxides it spends on each, and the solid. */
  alsoTakes: z.optional(
    z.strictObject({
      metals: z.partialRecord(Composed, z.strictObject({ hydroxide: Num, solid: z.string() })),
      ...told,
    }),
  ),
  /** Metals that it does not bring down, and who says so. */
  leaves: z.optional(z.strictObject({ metals: z.array(Composed), ...told })),
});
export type BaseId = keyof typeof basesJson;
export const baseIds = Object.keys(basesJson) as BaseId[];
export const bases = checked(() => z.record(z.enum(baseIds as [BaseId, ...BaseId[]]), Base), basesJson);

export const enthalpies = checked(() => z.record(z.string(), Constant), enthalpiesJson);

const Routes = z.strictObject({ dilute: z.string(), strong: z.string() });
export const dissolution = checked(
  () => z.strictObject({ ...told, note: z.string(), reactions: z.partialRecord(Composed, Routes) }),
  dissolutionJson,
);

export const cementation = checked(
  () => z.strictObject({ ...told, reactions: z.strictObject({ Ag: z.string(), Pd: z.string() }) }),
  cementationJson,
);

const EvidenceData = z.strictObject({
  name: z.string(),
  kind: z.enum(['percent', 'factor', 'plus-minus']),
  value: Num,
  ...told,
});
export type EvidenceId = keyof typeof evidenceJson;
export const evidence = checked(
  () => z.record(z.enum(Object.keys(evidenceJson) as [EvidenceId, ...EvidenceId[]]), EvidenceData),
  evidenceJson,
);

export const liquor = checked(
  () =>
    z.strictObject({
      heatCapacity: Ranged,
      waterDensity: Constant,
      partialVolumes: z.strictObject({
        unit: z.literal('cm³/mol'),
        ...told,
        /** Of nitrate, and of the metals of which it is known. */
        values: z.intersection(z.strictObject({ NO3: Num }), z.partialRecord(Composed, Num)),
      }),
      densityFit: z.strictObject({ acid: Num, salt: Num, uncertainty: Num, unit: z.literal('%'), ...told }),
      gasVolume: Constant,
      cakeSolids: Ranged,
      grit: Ranged,
      baseDemand: Ranged,
      /** How far the equilibrium model may be off the base to a pH, which solids form apart. */
      modelDose: Ranged,
      strongAcidFrom: Ranged,
      /** Of a drained wet solid, by kind of waste; a kind that is not named holds nobody knows how much. */
      moisture: z.record(z.string(), Ranged),
      /** Of a liquor of which nobody determined what is dissolved in it, by kind of waste. */
      usualDensity: z.record(z.string(), Ranged),
    }),
  liquorJson,
);

/** Share of the mass of a kind of feed that is a metal which dissolves; a metal that is not named there is not told. */
export const feedShares = checked(
  () =>
    z.record(
      z.enum(['precious-metal-electrode', 'base-metal-electrode', 'mixed']),
      z.partialRecord(Composed, Ranged),
    ),
  feedJson,
);
