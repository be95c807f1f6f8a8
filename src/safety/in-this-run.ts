/** What an item asks in one run: the limits and answers that the app knows from plan, rule and ventilation. */
import Decimal from 'decimal.js';
import type { ChoiceItem, Item, ReadingItem, StationKind } from './checklist-item';
import type { Checklist } from './checklist-schema';
import type { Context, Given } from './run-schema';

type Limits = { readonly min?: string | undefined; readonly max?: string | undefined };

/** Limits that there are: an absent one has no key, so that a run is the same after a reload. */
export const limitsIn = ({ min, max }: Limits) => ({
  ...(min === undefined ? {} : { min }),
  ...(max === undefined ? {} : { max }),
});

const pick = (
  one: string | undefined,
  other: string | undefined,
  which: 'min' | 'max',
): string | undefined => {
  if (one === undefined || other === undefined) return one ?? other;
  return Decimal[which](one, other).eq(one) ? one : other;
};

/**
 * What was worked out comes before the fixed range. A range that the workshop has tightened holds beside it, unless the
 * two leave nothing between them; one that it has loosened widens nothing.
 */
function boundsOf(item: ReadingItem, workedOut: Limits): Limits {
  const first = { min: workedOut.min ?? item.min, max: workedOut.max ?? item.max };
  if (item.range !== 'tightened') return first;
  const both = { min: pick(first.min, item.min, 'max'), max: pick(first.max, item.max, 'min') };
  const empty = both.min !== undefined && both.max !== undefined && !new Decimal(both.min).lt(both.max);
  return empty ? first : both;
}

/** Only the bases of the plan are in order; any other stops, and so does what has no name. */
function choicesUnder(item: ChoiceItem, bases: readonly string[]): ChoiceItem['choices'] {
  return item.choices.map(({ stops: _, ...choice }) =>
    choice.base !== undefined && bases.includes(choice.base) ? choice : { ...choice, stops: true as const },
  );
}

/** An item with the limits and the answers in order that hold in this run. */
export function inThisRun(item: Item, { bounds, planBases }: Context): Item {
  if (item.kind === 'reading') {
    const workedOut = item.bounds && bounds?.[item.bounds];
    return workedOut ? { ...item, ...limitsIn(boundsOf(item, workedOut)) } : item;
  }
  if (item.kind === 'choice' && item.expects !== undefined && planBases)
    return { ...item, choices: choicesUnder(item, planBases.bases) };
  return item;
}

/** A later check of the ventilation takes the place of an earlier one: what that one allowed no longer holds. */
export function withWorkedOut(context: Context, given: Given): Context {
  if (given.kind !== 'worked-out') return context;
  const { 'ventilation-portion': _, ...others } = context.bounds ?? {};
  const bounds = { ...others, ...given.bounds };
  const { bounds: _before, ...rest } = context;
  return Object.keys(bounds).length === 0 ? rest : { ...rest, bounds };
}

/** Whether the workshop's own range is the one that holds, though something was worked out too. */
const isOwnRange = (item: ReadingItem, workedOut: Limits): boolean => {
  const { min, max } = boundsOf(item, workedOut);
  const decides = (limit: string | undefined, own: string | undefined, other: string | undefined) =>
    other !== undefined && limit === own && limit !== other;
  return (
    item.range === 'tightened' &&
    (decides(min, item.min, workedOut.min) || decides(max, item.max, workedOut.max))
  );
};

/** What its limits, or its answers in order, were worked out from; undefined where the workshop's own range is narrower. */
export function workedOutFrom(item: Item, { bounds, planBases }: Context): string | undefined {
  if (item.kind === 'reading') {
    const workedOut = item.bounds && bounds?.[item.bounds];
    return workedOut && !isOwnRange(item, workedOut) ? workedOut.from : undefined;
  }
  return item.kind === 'choice' && item.expects !== undefined ? planBases?.from : undefined;
}

/** The question of where one works, and its answer for a station of this kind. */
export function stationAnswer(list: Checklist, kind: StationKind) {
  for (const item of list.items) {
    const choice = item.kind === 'choice' && item.choices.find(({ station }) => station === kind);
    if (choice) return { item, answer: choice.answer };
  }
  return null;
}
