/**
 * What a workshop changes in a list of ours: items of its own, and other ranges. Ours can be neither dropped nor robbed of
 * their stops, and what is made wider says why.
 */
import Decimal from 'decimal.js';
import * as z from 'zod/mini';
import { askedAtMost, itemsFaults, mostAtOnePause } from './checklist-faults';
import { type Item, Limit, LookOf, type ReadingItem, stopsOf, Unit } from './checklist-item';
import { type Checklist, isWalk } from './checklist-schema';
import { Line, Slug } from './cited';

/** Id of a workshop's own item: it never meets one of ours. */
const OwnId = Slug.check(z.regex(/^own-/));

/** What a person said of a change. */
const Note = z.string().check(z.trim(), z.minLength(1), z.maxLength(240));

const own = {
  id: OwnId,
  ask: Line,
  look: z.optional(Line),
  when: z.optional(z.enum(['during', 'after'])),
  /** In the list of the walk, which has no `when`: what it is asked of; absent: of the place as a whole. */
  of: z.optional(LookOf),
  /** A no, a reading out of range or an answer marked `stops` ends the list. */
  stop: z.boolean(),
  /** Why the workshop asks it. */
  reason: Line,
};

export const OwnItem = z.discriminatedUnion('kind', [
  z.strictObject({ ...own, kind: z.literal('confirm'), yes: z.optional(Line.check(z.maxLength(40))) }),
  z.strictObject({
    ...own,
    kind: z.literal('reading'),
    unit: Unit,
    min: z.optional(Limit),
    max: z.optional(Limit),
  }),
  z.strictObject({
    ...own,
    kind: z.literal('choice'),
    choices: z
      .array(z.strictObject({ answer: Line, stops: z.optional(z.literal(true)) }))
      .check(z.minLength(2), z.maxLength(8)),
  }),
]);

/** One change, as it stands in the record. A list is named, and an item, by its id. */
export const OwnChange = z.discriminatedUnion('change', [
  z.strictObject({ change: z.literal('item-added'), list: Slug, item: OwnItem }),
  z.strictObject({
    change: z.literal('item-dropped'),
    list: Slug,
    item: OwnId,
    note: z.optional(Note),
  }),
  /** The range from now on. A limit left out is the one that came with the item; none said: its range as it came. */
  z.strictObject({
    change: z.literal('range'),
    list: Slug,
    item: Slug,
    min: z.optional(Limit),
    max: z.optional(Limit),
    note: z.optional(Note),
  }),
]);

export type OwnItem = z.infer<typeof OwnItem>;
export type OwnChange = z.infer<typeof OwnChange>;
type RangeChange = Extract<OwnChange, { change: 'range' }>;
type Limits = { readonly min?: string | undefined; readonly max?: string | undefined };

export type OwnFault =
  | { readonly code: 'another-list'; readonly list: string }
  | { readonly code: 'no-such-item'; readonly item: string }
  /** Ours stays: a range can be changed, the question cannot be dropped. */
  | { readonly code: 'not-an-own-item'; readonly item: string }
  | { readonly code: 'id-taken'; readonly item: string }
  | { readonly code: 'not-a-reading'; readonly item: string }
  /** What the form of the item breaks, as `checklist-faults.ts` names it: "ask-over-nine-words". */
  | { readonly code: 'item-not-in-order'; readonly faults: readonly string[] }
  /** Nine are asked there already: put it to another pause or list, or drop an own one first. */
  | { readonly code: 'over-nine'; readonly asked: number }
  | { readonly code: 'max-not-above-min' }
  /** Wider than ours, or an own question that stops falls away. */
  | { readonly code: 'note-missing'; readonly because: 'loosened' | 'stop-dropped' };

/** Doors and reasons of an item that a person thought of: general ones. */
const ownDoors: Item['doors'] = [
  { do: 'Put it right. Then answer again.', leads: 'answer-again' },
  { do: 'Cannot be put right now? Put the step off.', leads: 'put-off' },
];
const ownDoorsOnWalk: Item['doors'] = [{ do: 'Put it right. Say what was done.', leads: 'say-done' }];
const ownReasons = ['being put right', 'known, watched', 'not needed this time', 'told the others'];

function itemOf(list: Checklist, { reason, look, when, of = 'place', ...item }: OwnItem): Item {
  const walk = isWalk(list);
  const common = {
    ...(walk ? { of } : {}),
    ...(walk || when === undefined ? {} : { when }),
    look: look ?? 'Look before you answer.',
    why: reason,
    source: 'Added by the workshop; not in the list as it came',
    status: 'common practice',
    own: true,
    ...(item.stop ? {} : { reasons: ownReasons }),
  } as const;
  const asked: Item = item.kind === 'reading' ? { ...item, ...common, last: true } : { ...item, ...common };
  return stopsOf(asked).length === 0 ? asked : { ...asked, doors: walk ? ownDoorsOnWalk : ownDoors };
}

const isBelow = (limit: string, other: string): boolean => new Decimal(limit).lt(other);

/** Whether a range lets in what another does not: a limit that is gone, a lower minimum, a higher maximum. */
function isWider(range: Limits, than: Limits): boolean {
  const lower = than.min !== undefined && (range.min === undefined || isBelow(range.min, than.min));
  const higher = than.max !== undefined && (range.max === undefined || isBelow(than.max, range.max));
  return lower || higher;
}

/** Limits that there are: an absent one has no key. */
const limits = ({ min, max }: Limits) => ({
  ...(min === undefined ? {} : { min }),
  ...(max === undefined ? {} : { max }),
});

/** The range of an item as it came with the app. */
const shippedRange = (item: ReadingItem): Limits => item.shipped ?? limits(item);

/** What a change of the range makes of it. */
function rangeAfter(item: ReadingItem, { min, max }: Limits): Limits {
  const came = shippedRange(item);
  return limits({ min: min ?? came.min, max: max ?? came.max });
}

function withRange(item: ReadingItem, change: Limits): ReadingItem {
  const { min: _, max: __, range: ___, shipped: ____, ...rest } = item;
  const shipped = shippedRange(item);
  const range = rangeAfter(item, change);
  const wider = isWider(range, shipped);
  const marked = item.own !== true && (wider || isWider(shipped, range));
  return {
    ...rest,
    ...range,
    ...(marked ? { range: wider ? ('loosened' as const) : ('tightened' as const), shipped } : {}),
  };
}

const find = (list: Checklist, id: string): Item | undefined => list.items.find((item) => item.id === id);

function rangeFault(item: Item, change: RangeChange): OwnFault | null {
  if (item.kind !== 'reading') return { code: 'not-a-reading', item: item.id };
  const range = rangeAfter(item, change);
  const { min, max } = range;
  if (min !== undefined && max !== undefined && !isBelow(min, max)) return { code: 'max-not-above-min' };
  if (item.own !== true && change.note === undefined && isWider(range, shippedRange(item)))
    return { code: 'note-missing', because: 'loosened' };
  return null;
}

function addedFault(list: Checklist, added: OwnItem): OwnFault | null {
  if (find(list, added.id)) return { code: 'id-taken', item: added.id };
  const item = itemOf(list, added);
  const asked = askedAtMost(list.items, item.when);
  if (asked >= mostAtOnePause) return { code: 'over-nine', asked };
  const faults = itemsFaults([...list.items, item]).map(({ code }) => code);
  return faults.length === 0 ? null : { code: 'item-not-in-order', faults };
}

/**
 * Why a change cannot be made; null when it can.
 * @param list as the changes before this one left it
 */
export function faultOf(list: Checklist, change: OwnChange): OwnFault | null {
  if (change.list !== list.id) return { code: 'another-list', list: change.list };
  if (change.change === 'item-added') return addedFault(list, change.item);
  const item = find(list, change.item);
  if (!item) return { code: 'no-such-item', item: change.item };
  if (change.change === 'range') return rangeFault(item, change);
  if (item.own !== true) return { code: 'not-an-own-item', item: item.id };
  return item.stop && change.note === undefined ? { code: 'note-missing', because: 'stop-dropped' } : null;
}

function made(list: Checklist, change: OwnChange): Checklist {
  if (change.change === 'item-added') return { ...list, items: [...list.items, itemOf(list, change.item)] };
  if (change.change === 'item-dropped')
    return { ...list, items: list.items.filter(({ id }) => id !== change.item) };
  const items = list.items.map((item) =>
    item.id === change.item && item.kind === 'reading' ? withRange(item, change) : item,
  );
  return { ...list, items };
}

export type ChangedList = {
  readonly list: Checklist;
  /** Changes that apply no longer, such as a range of an item that a newer list does not have, and why. */
  readonly lapsed: readonly { readonly change: OwnChange; readonly fault: OwnFault }[];
};

/**
 * A list as a workshop asks it: ours with its own changes, in the order in which they were made; those of other lists
 * are passed over. A change that no longer applies is left out and told.
 */
export function changedList(shipped: Checklist, changes: readonly OwnChange[]): ChangedList {
  return changes
    .filter(({ list }) => list === shipped.id)
    .reduce<ChangedList>(
      ({ list, lapsed }, change) => {
        const fault = faultOf(list, change);
        return fault === null
          ? { list: made(list, change), lapsed }
          : { list, lapsed: [...lapsed, { change, fault }] };
      },
      { list: shipped, lapsed: [] },
    );
}
