/** What a correction changed, part by part. */
import type { Body } from '../../ledger/entries/body';

const isAmount = (value: object): value is { readonly value: string; readonly unit: string } =>
  'value' in value && 'unit' in value && Object.keys(value).length === 2;

/** Every statement of a body by the way to it; an amount is one statement. */
function statements(value: unknown, path: string, into: Map<string, string>): Map<string, string> {
  if (typeof value !== 'object' || value === null) into.set(path, String(value));
  else if (isAmount(value))
    into.set(path, value.unit === '1' ? value.value : `${value.value}\u2009${value.unit}`);
  else
    for (const [key, part] of Object.entries(value))
      statements(part, path === '' ? key : `${path}.${key}`, into);
  return into;
}

/** Identifiers and hashes tell a reader nothing but that they are others. */
const isName = (text: string): boolean => /^[0-9a-f]{8}-[0-9a-f-]{27}$|^[0-9a-f]{64}$/.test(text);

export type Difference = { readonly of: string; readonly was: string | null; readonly is: string | null };

const legible = (text: string | undefined): string | null =>
  text === undefined ? null : isName(text) ? `${text.slice(0, 8)}…` : text;

/** @returns what stands in one and not in the other, or otherwise, in the order of the first */
export function differences(was: Body, is: Body): Difference[] {
  const [before, after] = [statements(was, '', new Map()), statements(is, '', new Map())];
  return [...new Set([...before.keys(), ...after.keys()])]
    .filter((of) => before.get(of) !== after.get(of))
    .map((of) => ({ of, was: legible(before.get(of)), is: legible(after.get(of)) }));
}
