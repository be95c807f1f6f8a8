/** Amounts in an entry as they were written, wherever in it they stand. */
import type { Body } from '../../ledger/entries/body';

/** `of` is the way to it in the entry, "liquid.findings.0.concentration"; `what` the same in words, "Cu concentration". */
type WrittenAmount = {
  readonly of: string;
  readonly what: string;
  readonly value: string;
  readonly unit: string;
};

type Amount = { readonly value: string; readonly unit: string };

const isAmount = (value: object): value is Amount =>
  'value' in value && 'unit' in value && typeof value.value === 'string' && typeof value.unit === 'string';

/** Parts of the way that say nothing to a reader. */
const silent = new Set(['liquid', 'solid', 'value', 'findings', 'freeAcid', 'stated', 'containers']);

/** Parts whose own name says too little. */
const called: Readonly<Record<string, string>> = {
  ph: 'pH',
  endPh: 'end pH',
  targetPh: 'target pH',
  result: 'free acid',
};

const words = (key: string): string =>
  silent.has(key) || /^\d+$/.test(key)
    ? ''
    : (called[key] ?? key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`));

/** A finding is named by its metal. */
const metalOf = (value: object): string =>
  'metal' in value && typeof value.metal === 'string' ? value.metal : '';

function within(value: unknown, path: readonly string[], said: readonly string[]): WrittenAmount[] {
  if (typeof value !== 'object' || value === null) return [];
  if (isAmount(value)) {
    const what = said.filter((part) => part !== '').join(' ') || 'amount';
    return [{ of: path.join('.'), what, value: value.value, unit: value.unit }];
  }
  const metal = metalOf(value);
  return Object.entries(value).flatMap(([key, part]) =>
    within(part, [...path, key], [...said, ...(metal === '' ? [] : [metal]), words(key)]),
  );
}

/** Of a correction, those that it puts in their place; a withdrawal has none. */
export const writtenAmounts = (body: Body): WrittenAmount[] =>
  within(body.kind === 'entry-corrected' ? body.body : body, [], []);
