/** Codes on batches and containers. */
import { putAwayRows } from '../put-away';
import type { Refusal } from '../refusal';
import type { State } from '../state';

const same = (a: string, b: string): boolean => a.trim().toUpperCase() === b.trim().toUpperCase();

/** Codes that are used, also on what is not at hand. */
export const codesOf = (state: State, is: 'batch' | 'container'): readonly string[] => [
  ...[...(is === 'batch' ? state.batches : state.containers).values()].map(({ body }) => body.code),
  ...putAwayRows(state).flatMap((row) => (row.is === is ? row.code : [])),
];

/** The next code after the highest number used. @example nextCode('B', ['B-17', 'X']) // 'B-18' */
export function nextCode(letter: 'B' | 'C', taken: readonly string[]): string {
  const pattern = new RegExp(`^${letter}-(\\d{1,6})$`, 'i');
  const numbers = taken.map((code) => Number(pattern.exec(code)?.[1] ?? 0));
  return `${letter}-${String(Math.max(0, ...numbers) + 1).padStart(2, '0')}`;
}

/** Refusal of a code that is used; big and small letters are the same on a label. */
export function takenCode(code: string, taken: readonly string[]): Refusal | null {
  const already = taken.find((used) => same(used, code));
  return already === undefined ? null : { code: 'code-taken', details: { taken: already }, field: 'code' };
}
