/**
 * What handing over and a base cost by the prices that the person entered. A price that is not entered is never nothing,
 * and two currencies are not added: then there is no sum, and it is said why.
 */
import { plus, times } from '../quantities/expression';
import { exact, type Figure, given, workedOut } from '../quantities/figure';
import type { Currency, Unit } from '../quantities/unit';
import type { Priced } from './entries/prices';
import type { State } from './state';

/** What is paid for. `of` are the prices of which one is needed; the first that is entered counts. */
export type Bill = {
  readonly line: BillLine;
  readonly sentence: string;
  readonly of: readonly Charge[];
};

export type BillLine = 'liquid' | 'sludge' | 'visit' | 'base';

/** A price, and how much of it: litres, kilograms or grams; none for a visit. */
export type Charge = { readonly price: Priced; readonly amount?: Figure };

export type MoneyLine = {
  readonly line: BillLine;
  /** Absent where no price is entered. */
  readonly cost?: Figure;
  /** Prices of which none is entered. */
  readonly missing: readonly Priced[];
};

export type NoSum =
  | { readonly code: 'no-price'; readonly of: readonly Priced[] }
  | { readonly code: 'currencies'; readonly of: readonly string[] };

export type Money = {
  readonly lines: readonly MoneyLine[];
  readonly sum: { readonly ok: true; readonly cost: Figure } | { readonly ok: false; readonly why: NoSum };
};

/** After what unit a price is asked. */
const per = (price: Priced): '' | '/L' | '/kg' =>
  price === 'collection-visit' ? '' : price === 'collection-per-litre' ? '/L' : '/kg';

const sentences: Partial<Record<Priced, string>> = {
  'collection-per-litre': 'Collection, a litre',
  'collection-per-kilogram': 'Collection, a kilogram',
  'collection-visit': 'Collection, a visit',
};

/** A price as the person entered it; undefined where nobody did. */
export function priceOf(state: State, price: Priced): Figure | undefined {
  const body = state.prices.get(price)?.body;
  if (!body) return undefined;
  const { value, unit } = body.amount;
  return given({
    origin: `price/${price}`,
    sentence: sentences[price] ?? 'A kilogram as sold',
    value,
    unit: `${unit}${per(price)}` as Unit,
    how: 'stated',
    spread: exact,
    decimals: value.split('.')[1]?.length ?? 0,
    ...(body.saidBy === undefined ? {} : { note: body.saidBy }),
  });
}

const currencyOf = ({ unit }: Figure): Currency => (unit.split('/')[0] ?? unit) as Currency;

function lineOf(state: State, { line, sentence, of }: Bill): MoneyLine {
  for (const { price, amount } of of) {
    const each = priceOf(state, price);
    if (!each) continue;
    const cost = amount
      ? workedOut({ sentence, unit: currencyOf(each), formula: times(amount, each) })
      : { ...each, sentence };
    return { line, cost, missing: [] };
  }
  return { line, missing: of.map(({ price }) => price) };
}

/** Each line with what it costs, and all of them together where every one has a price in the same currency. */
export function moneyFor(state: State, bills: readonly Bill[]): Money {
  const lines = bills.map((bill) => lineOf(state, bill));
  const missing = lines.flatMap((line) => line.missing);
  if (missing.length > 0)
    return { lines, sum: { ok: false, why: { code: 'no-price', of: [...new Set(missing)] } } };
  const costs = lines.flatMap(({ cost }) => cost ?? []);
  const currencies = [...new Set(costs.map(currencyOf))];
  const [currency, ...others] = currencies;
  if (currency === undefined || others.length > 0)
    return { lines, sum: { ok: false, why: { code: 'currencies', of: currencies } } };
  const cost = workedOut({ sentence: 'In all', unit: currency, formula: plus(...costs) });
  return { lines, sum: { ok: true, cost } };
}
