/** What one question of a checklist may say, and the ways in which its answer stops. Told for people in `checklists/README.md`. */
import * as z from 'zod/mini';
import { cited, Line, Slug } from './cited';
import { Sketch } from './sketches';
import type { WrittenStation } from './ventilation/station-schema';

/** A reading's limit, as digits: compared as written, never as a floating number. */
export const Limit = z.string().check(z.regex(/^-?\d{1,6}(\.\d{1,6})?$/));

const some = z.array(Line).check(z.minLength(1), z.maxLength(6));

/** Words on a button. */
const Tapped = z.string().check(z.trim(), z.minLength(1), z.maxLength(40));

export const Door = z.strictObject({
  /** Which stops it belongs to: an answer, "no", "below" or "above". Absent: every stop of the item. */
  for: z.optional(some),
  do: z.string().check(z.minLength(1), z.maxLength(70)),
  /** `say-done`: on the walk, where what was found stays open until somebody says what was done. */
  leads: z.enum(['answer-again', 'put-off', 'open-card', 'say-done']),
});

/** What the check of the ventilation says of a charge at a station. */
export const VentilationResult = z.enum(['enough', 'split', 'none']);

/** Where one works; only the first two let acid be opened. */
export const StationKind = z.enum([
  'ducted-hood',
  'outdoors',
  'ductless-hood',
  'room',
] satisfies WrittenStation['is'][]);

/** A limit that the app works out for the run; the item's own range, the careful one, holds where it knows nothing. */
export const Bound = z.enum([
  /** pH that the plan of the treatment aims at, for the metals that are in it. */
  'plan-ph',
  /** Largest first portion that the station carries away, in g of metal. */
  'ventilation-portion',
  /** How full the vessel may be before the base, %: half, a third where it foams. */
  'fill-for-base',
  /** Baking soda for the largest volume of acid that is opened. */
  'neutraliser-for-acid',
  /** How full a container may be, percent of its capacity, by the local rule. */
  'fill-limit',
  /** Minutes that its step has run: nothing in it is older. */
  'minutes-run',
  /** Containers on the paper of the collection. */
  'containers-on-paper',
]);

export const Choice = z.strictObject({
  answer: Line,
  stops: z.optional(z.literal(true)),
  asksReason: z.optional(z.literal(true)),
  names: z.optional(z.enum(['person', 'person-and-time'])),
  result: z.optional(VentilationResult),
  station: z.optional(StationKind),
  /** A base of `reference/bases.json`. */
  base: z.optional(Slug),
});

/** On the walk: whether it is asked of each container, or once, of the place as a whole. */
export const LookOf = z.enum(['container', 'place']);

const asked = {
  id: Slug,
  of: z.optional(LookOf),
  ask: Line,
  look: Line,
  sketch: z.optional(Sketch),
  when: z.optional(z.enum(['during', 'after'])),
  onlyIf: z.optional(z.strictObject({ item: Slug, answer: Line })),
  stop: z.boolean(),
  naReasons: z.optional(some),
  reasons: z.optional(some),
  doors: z.optional(z.array(Door).check(z.minLength(1))),
  card: z.optional(Slug),
  why: Line,
  ...cited,
  /** Added by the workshop; never in a file of ours. */
  own: z.optional(z.literal(true)),
};

export const ConfirmItem = z.strictObject({
  ...asked,
  kind: z.literal('confirm'),
  /** The answer in order, in words that say what was seen. Absent, in a person's own item: yes. */
  yes: z.optional(Tapped),
});

export const Unit = z.enum([
  '°C',
  'g',
  'kg',
  'mL',
  'mg/L',
  'pH',
  '%',
  's',
  'min',
  'h',
  'days',
  'containers',
  'm/s',
]);

export const ReadingItem = z.strictObject({
  ...asked,
  kind: z.literal('reading'),
  unit: Unit,
  min: z.optional(Limit),
  max: z.optional(Limit),
  last: z.boolean(),
  bounds: z.optional(Bound),
  /** The workshop's own range, and ours that it stands for. */
  range: z.optional(z.enum(['tightened', 'loosened'])),
  shipped: z.optional(z.strictObject({ min: z.optional(Limit), max: z.optional(Limit) })),
});

export const ChoiceItem = z.strictObject({
  ...asked,
  kind: z.literal('choice'),
  choices: z.array(Choice).check(z.minLength(2), z.maxLength(8)),
  ordered: z.optional(z.literal(true)),
  /** The app gives the answer, from its own working; a person cannot tap it. */
  answeredBy: z.optional(z.literal('ventilation-check')),
  /** Only what the plan says is in order. Where there is no plan, the choices hold as they stand. */
  expects: z.optional(z.literal('plan-base')),
  /** A drill: what one would do, said before it is needed. */
  recall: z.optional(z.literal(true)),
});

export const Item = z.discriminatedUnion('kind', [ConfirmItem, ReadingItem, ChoiceItem]);

export type LookOf = z.infer<typeof LookOf>;
export type Door = z.infer<typeof Door>;
export type Choice = z.infer<typeof Choice>;
export type Item = z.infer<typeof Item>;
export type ReadingItem = z.infer<typeof ReadingItem>;
export type ChoiceItem = z.infer<typeof ChoiceItem>;
export type Bound = z.infer<typeof Bound>;
export type StationKind = z.infer<typeof StationKind>;
export type VentilationResult = z.infer<typeof VentilationResult>;

/** Whether it asks where one works: the app answers it where it knows the station. */
export const asksWhere = (item: Item): item is ChoiceItem =>
  item.kind === 'choice' && item.choices.some(({ station }) => station !== undefined);

/** The ways an item can be answered that stop it, by the word used in a door's `for`. */
export function stopsOf(item: Item): readonly string[] {
  if (!item.stop) return [];
  if (item.kind === 'confirm') return ['no'];
  if (item.kind === 'choice')
    return item.choices.filter((choice) => choice.stops).map(({ answer }) => answer);
  return [...(item.min === undefined ? [] : ['below']), ...(item.max === undefined ? [] : ['above'])];
}

/** What to do now after a stop, the way to make it right first. */
export const doorsFor = (item: Item, stop: string): readonly Door[] =>
  (item.doors ?? []).filter((door) => door.for === undefined || door.for.includes(stop));
