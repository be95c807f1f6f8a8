/** Prices as a form holds them, and what of them is new. */
import * as z from 'zod/mini';
import type { Priced } from '../../ledger/entries/prices';
import type { IntentionOf } from '../../ledger/intention';
import type { State } from '../../ledger/state';
import type { BaseId } from '../../reference/tables';
import { type FieldRead, readTyped, Typed } from '../form';
import { given } from '../tried';

export const PricesDraft = z.object({ prices: z.record(z.string(), Typed), saidBy: z.string() });
export type PricesDraft = z.infer<typeof PricesDraft>;

/** In the order in which they are asked. */
export const pricesFor = (base: BaseId): readonly Priced[] => [
  base,
  'collection-per-litre',
  'collection-per-kilogram',
  'collection-visit',
];

/** The currency of what was entered last, or the first to choose from. */
export function usualCurrency(state: State): string {
  const stated = [...state.prices.values()].sort((a, b) => (a.entryId < b.entryId ? -1 : 1));
  return stated.at(-1)?.body.amount.unit ?? 'EUR';
}

/** Those that are written most; any other is typed by its code. */
const common =
  'EUR USD GBP CHF SEK NOK DKK PLN CZK HUF RON BGN TRY CAD AUD NZD INR CNY JPY BRL MXN ZAR'.split(' ');

/** What the workshop used last stands first, and what stands in the form is there. */
export function currenciesFor(state: State, draft: PricesDraft): readonly string[] {
  const chosen = Object.values(draft.prices).flatMap(({ unit }) => (unit === '' ? [] : [unit]));
  return [...new Set([usualCurrency(state), ...chosen, ...common])];
}

/** A code of three letters as typed, in capitals; null while it is none. */
export function currencyTyped(code: string): string | null {
  const capitals = code.trim().toUpperCase();
  return /^[A-Z]{3}$/.test(capitals) ? capitals : null;
}

/** As stated, or empty. */
export function pricesDraft(state: State, base: BaseId): PricesDraft {
  const field = (price: Priced): Typed => {
    const amount = state.prices.get(price)?.body.amount;
    return { typed: amount?.value ?? '', unit: amount?.unit ?? usualCurrency(state) };
  };
  return { prices: Object.fromEntries(pricesFor(base).map((price) => [price, field(price)])), saidBy: '' };
}

/** One field changed; a currency chosen goes for those that are still empty too. */
export function withPrice(draft: PricesDraft, price: Priced, field: Typed): Partial<PricesDraft> {
  const chosen = field.unit !== draft.prices[price]?.unit;
  const others = Object.entries(draft.prices).map(([one, typed]): [string, Typed] => [
    one,
    chosen && typed.typed.trim() === '' ? { ...typed, unit: field.unit } : typed,
  ]);
  return { prices: { ...Object.fromEntries(others), [price]: field } };
}

export const readPrice = (draft: PricesDraft, price: Priced): FieldRead<string> =>
  readTyped(draft.prices[price] ?? { typed: '', unit: '' });

/** What is to be written: prices that read as a number and are not stated so already. */
export function newPrices(
  state: State,
  base: BaseId,
  draft: PricesDraft,
): readonly IntentionOf<'state-price'>[] {
  return pricesFor(base).flatMap((what) => {
    const read = readPrice(draft, what);
    if (read.state !== 'written') return [];
    const before = state.prices.get(what)?.body.amount;
    const { value, unit } = read.written;
    if (before?.value === value && before.unit === unit) return [];
    return [{ do: 'state-price', what, amount: { value, unit }, ...given('saidBy', draft.saidBy) }];
  });
}
