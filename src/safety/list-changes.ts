/** What of a list is other than when it was last gone through, so that nobody answers from memory. */
import Decimal from 'decimal.js';
import type { Item, ReadingItem } from './checklist-item';
import type { Checklist } from './checklist-schema';

/** A question as the record keeps it. `answer` tells which questions of a condition were due; `min`, `max` as asked. */
export type AskedBefore = {
  readonly item: string;
  readonly ask: string;
  readonly answer?: string | undefined;
  readonly min?: string | undefined;
  readonly max?: string | undefined;
};

export type ListChange = { readonly item: string; readonly ask: string; readonly own: boolean } & (
  | { readonly is: 'new' | 'gone' }
  | { readonly is: 'reworded'; readonly before: string }
  | { readonly is: 'range'; readonly before: Limits; readonly now: Limits }
);

type Limits = { readonly min?: string | undefined; readonly max?: string | undefined };

const isSame = (one: string | undefined, other: string | undefined): boolean =>
  one === undefined || other === undefined ? one === other : new Decimal(one).eq(other);

/** Not where nothing of the range was kept, nor where the app works it out anew each time. */
function rangeChange(item: ReadingItem, { min, max }: AskedBefore) {
  if (item.bounds !== undefined || (min === undefined && max === undefined)) return null;
  if (isSame(min, item.min) && isSame(max, item.max)) return null;
  return { is: 'range', before: { min, max }, now: { min: item.min, max: item.max } } as const;
}

/** Whether it was due when the list was gone through: before the step, and its condition met. */
const wasDue = ({ when, onlyIf }: Item, asked: readonly AskedBefore[]): boolean =>
  when === undefined &&
  (onlyIf === undefined ||
    // A condition that is new itself brings only new questions.
    asked.every(({ item }) => item !== onlyIf.item) ||
    asked.some(({ item, answer }) => item === onlyIf.item && answer === onlyIf.answer));

function changeOf(item: Item, asked: readonly AskedBefore[]): readonly ListChange[] {
  const { id, ask, own = false } = item;
  const named = { item: id, ask, own };
  const before = asked.findLast((one) => one.item === id);
  if (!before) return wasDue(item, asked) ? [{ ...named, is: 'new' }] : [];
  const range = item.kind === 'reading' ? rangeChange(item, before) : null;
  return [
    ...(before.ask === ask ? [] : [{ ...named, is: 'reworded' as const, before: before.ask }]),
    ...(range ? [{ ...named, ...range }] : []),
  ];
}

/**
 * What is new, reworded, gone or has another range since these questions were asked, in the order of the list, gone ones
 * last. Give what a complete run asked. Questions of during and after the step, and those whose condition was not met then, are not called new: nobody
 * knows whether they were there.
 */
export function changesSince(asked: readonly AskedBefore[], list: Checklist): readonly ListChange[] {
  const ids = new Set(list.items.map(({ id }) => id));
  const gone = new Map(asked.filter(({ item }) => !ids.has(item)).map((one) => [one.item, one]));
  return [
    ...list.items.flatMap((item) => changeOf(item, asked)),
    ...[...gone.values()].map(({ item, ask }) => ({
      item,
      ask,
      own: item.startsWith('own-'),
      is: 'gone' as const,
    })),
  ];
}
