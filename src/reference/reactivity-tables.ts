/** What must not meet: the published chart by groups, rules that it does not carry, and what containers stand. Read once. */
import * as z from 'zod/mini';
import { checked } from './checked';
import reactivityJson from './reactivity.json';
import { Num } from './tables';

const Status = z.enum(['verified', 'memory', 'common practice', 'reasoned']);
/** `seen`: what of it was read, and where. */
const cited = { source: z.string().check(z.minLength(1)), status: Status, seen: z.optional(z.string()) };

/** As on the chart: heat, fire, harmless gas, toxic gas, gas that burns, explosion, polymerisation, into solution, unknown. */
export const HazardCode = z.enum(['H', 'F', 'G', 'GT', 'GF', 'E', 'P', 'S', 'U']);
const Codes = z.array(HazardCode).check(z.minLength(1));
const Group = z.int().check(z.positive());
/** Two group numbers, the lower first: "2-10". */
const Cell = z.string().check(z.regex(/^\d+-\d+$/));

/** What of a thing the rules ask for. */
const Trait = z.enum([
  'acid',
  'nitric',
  'strong-acid',
  'other-acid',
  'nitrite',
  'nitrate',
  'chloride',
  'hypochlorite',
  'ammonia',
  'base',
  'caustic',
  'quicklime',
  'carbonate',
  'to-be-limed',
  'silver',
  'silver-nitrate',
  'copper',
  'lead',
  'metal',
  'organic',
  'ethanol',
  'sulfide',
  'cyanide',
  'azide',
  'water',
]);

/** `refuse`: it is not to be done; `mind`: it may be, by who knows what comes of it. */
const Severity = z.enum(['refuse', 'mind']);
const Side = z.strictObject({ name: z.string(), traits: z.array(Trait).check(z.minLength(1)) });

const Rule = z.strictObject({
  id: z.string().check(z.regex(/^[A-Z0-9]+(-[A-Z0-9]+)+$/)),
  a: Side,
  b: Side,
  /** What happens, in few words; `how` says more of it. */
  effect: z.string().check(z.maxLength(100)),
  how: z.optional(z.string()),
  do: z.string(),
  codes: Codes,
  /** Cells of the chart that it speaks for: where it holds, its severity is theirs. */
  cells: z.optional(z.array(Cell)),
  /** Poured together, and added by portions in a treatment that was planned. */
  mixing: Severity,
  treatment: Severity,
  /** The emergency card to open where it has happened. */
  card: z.string(),
  ...cited,
});

const sided = { groups: z.array(Group), traits: z.array(Trait) };
const Waste = z.strictObject({
  ...sided,
  ...cited,
  /** Where it belongs. */
  goes: z.strictObject({ text: z.string(), ...cited }),
});
const Thing = z.strictObject({
  sort: z.enum(['acid', 'base', 'metal', 'reagent', 'burns', 'other']),
  /** Absent for the bases, which are named in bases.json. */
  name: z.optional(z.string()),
  ...sided,
  ...cited,
});

const Material = z.strictObject({
  name: z.string(),
  /** By which it is known in what a person wrote; the first material with one of its words is meant. */
  words: z.array(z.string()),
  ...sided,
  /** Nitric acid, % by mass, cold: `good` for standing in it, `most` with a limited life. */
  nitric: z.union([z.literal('any'), z.literal('never'), z.strictObject({ good: Num, most: Num })]),
  says: z.string(),
  ...cited,
  not: z.optional(
    z.array(z.strictObject({ traits: z.array(Trait), severity: Severity, says: z.string(), ...cited })),
  ),
});

export const reactivity = checked(
  () =>
    z.strictObject({
      about: z.string(),
      codes: z.record(
        HazardCode,
        z.strictObject({ name: z.string(), weight: z.int(), refused: z.boolean() }),
      ),
      groups: z.record(z.string().check(z.regex(/^\d+$/)), z.string()),
      chart: z.strictObject({ ...cited, cells: z.record(Cell, Codes) }),
      /** Blank in the copy that was read, and taken for dangerous. */
      suspected: z.record(Cell, z.strictObject({ codes: Codes, ...cited })),
      /** Groups that must meet nothing at all. */
      withAnything: z.record(z.string(), z.strictObject({ codes: Codes, says: z.string(), ...cited })),
      /** By the name of the kind of waste. */
      wastes: z.record(z.string(), Waste),
      things: z.record(z.string(), Thing),
      rules: z.array(Rule),
      /** What containers are made of. */
      materials: z.record(z.string(), Material),
      materialsNote: z.string(),
    }),
  reactivityJson,
);

export type HazardCode = z.infer<typeof HazardCode>;
export type Trait = z.infer<typeof Trait>;
export type Severity = z.infer<typeof Severity>;
export type Rule = z.infer<typeof Rule>;
export type Material = z.infer<typeof Material>;
