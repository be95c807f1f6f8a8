/** Lists that are right in any order. */
import type { Check } from './outcome';

/** For a person. */
export const listed = (all: readonly string[]): string =>
  all.length === 0 ? 'none' : [...new Set(all)].sort().join(' ');
const joined = (all: readonly string[]): string => [...new Set(all)].sort().join('|');

export const sameSet = (name: string, expected: readonly string[], computed: readonly string[]): Check => ({
  ok: joined(expected) === joined(computed),
  line: `${name}: expected ${listed(expected)}, computed ${listed(computed)}`,
});
