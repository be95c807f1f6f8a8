/** The month's waste and what stands on site, against the limits that the workshop's authority has said. */
import { exact, type Figure, given } from '../quantities/figure';
import { inUnit } from '../quantities/quantity';
import type { Written } from '../quantities/written';
import { monthOf } from '../rules/clocks/calendar-day';
import { monthReference, onSiteReference } from '../rules/quantities/generator-limits';
import { type GeneratorMonth, generatorMonth } from '../rules/quantities/generator-month';
import { type HeldAgainst, heldAgainst } from '../rules/quantities/held-against';
import type { RuleName } from './entries/local-rules';
import { arisings, onSite } from './generation';
import { lawsOf } from './laws';
import type { State } from './state';

type MassRule = Extract<RuleName, 'month-limit' | 'on-site-limit'>;

const sentences: Readonly<Record<MassRule, string>> = {
  'month-limit': 'Most waste in a month by the local rules',
  'on-site-limit': 'Most waste on site by the local rules',
};

function statedLimit(state: State, rule: MassRule): Figure<'kg'> | null {
  const stated = state.rules.get(rule)?.body.stated;
  if (stated?.rule !== rule) return null;
  const written = stated.value as Written<'kg'>;
  return given({
    origin: `local-rule/${rule}`,
    sentence: sentences[rule],
    value: inUnit(written, 'kg'),
    unit: 'kg',
    how: 'stated',
    spread: exact,
  });
}

/** Limits of the smallest category are shown beside: the careful reference. Only where federal law of the USA is looked at. */
const showsReference = (state: State): boolean => lawsOf(state).includes('us-federal');

export type MonthNow = { readonly month: GeneratorMonth; readonly against: HeldAgainst };

/** @param at a moment of the month */
export function monthNow(state: State, at: string, zone: string): MonthNow {
  const month = generatorMonth(arisings(state), monthOf(at, zone), zone);
  const reference = showsReference(state) ? monthReference.VSQG : null;
  const complete = month.unweighed.length === 0;
  return {
    month,
    against: heldAgainst(month.nonAcute, complete, statedLimit(state, 'month-limit'), reference),
  };
}

export type OnSiteNow = { readonly against: HeldAgainst; readonly unweighed: readonly string[] };

export function onSiteNow(state: State): OnSiteNow {
  const { total, unweighed } = onSite(state);
  const reference = showsReference(state) ? onSiteReference.VSQG : null;
  const limit = statedLimit(state, 'on-site-limit');
  return {
    against: heldAgainst(total, unweighed.length === 0, limit, reference),
    unweighed,
  };
}
