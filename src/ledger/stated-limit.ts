/** A limit of the local rules as a figure: somebody's word, with no range. */
import { exact, type Figure, given } from '../quantities/figure';
import { inUnit } from '../quantities/quantity';
import type { LocalRule, RuleName } from './entries/local-rules';
import type { State } from './state';

type LimitRule = Extract<RuleName, 'month-limit' | 'on-site-limit' | 'near-work-limit'>;

const sentences: Readonly<Record<LimitRule, string>> = {
  'month-limit': 'Most waste in a month by the local rules',
  'on-site-limit': 'Most waste on site by the local rules',
  'near-work-limit': 'Most beside the work by the local rules',
};

const isLimit = (stated: LocalRule): stated is Extract<LocalRule, { rule: LimitRule }> =>
  stated.rule in sentences;

/** Digits of one that was written in gallons or pounds. */
const mostDecimals = 3;

/** Null while it is not entered. */
export function statedLimit<U extends 'kg' | 'L'>(state: State, rule: LimitRule, unit: U): Figure<U> | null {
  const stated = state.rules.get(rule)?.body.stated;
  if (!stated || !isLimit(stated)) return null;
  const value = inUnit(stated.value, unit);
  return given({
    origin: `local-rule/${rule}`,
    sentence: sentences[rule],
    value,
    unit,
    how: 'stated',
    spread: exact,
    decimals: Math.min(mostDecimals, value.decimalPlaces()),
  });
}
