/** The month's waste and what stands on site, against the limits that the workshop's authority has said. */
import { dayAfter } from '../rules/clocks/calendar-day';
import { monthReference, onSiteReference } from '../rules/quantities/generator-limits';
import { type GeneratorMonth, generatorMonth } from '../rules/quantities/generator-month';
import { type HeldAgainst, heldAgainst } from '../rules/quantities/held-against';
import { arisings, type OnSite, onSite } from './generation';
import { lawsOf } from './laws';
import type { State } from './state';
import { statedLimit } from './stated-limit';

/** Limits of the smallest category are shown beside: the careful reference. Only where federal law of the USA is looked at. */
const showsReference = (state: State): boolean => lawsOf(state).includes('us-federal');

export type MonthHeld = { readonly month: GeneratorMonth; readonly against: HeldAgainst };

const months = new WeakMap<State, Map<string, MonthHeld>>();

/** Worked out once for a state. @param month "2028-02", in the zone of the workshop */
export function monthHeld(state: State, month: string, zone: string): MonthHeld {
  const ofState = months.get(state) ?? new Map<string, MonthHeld>();
  months.set(state, ofState);
  const held = ofState.get(`${month} ${zone}`) ?? monthCounted(state, month, zone);
  ofState.set(`${month} ${zone}`, held);
  return held;
}

function monthCounted(state: State, month: string, zone: string): MonthHeld {
  const counted = generatorMonth(arisings(state), month, zone);
  const reference = showsReference(state) ? monthReference.VSQG : null;
  const complete = counted.unweighed.length === 0;
  return {
    month: counted,
    against: heldAgainst(counted.nonAcute, complete, statedLimit(state, 'month-limit', 'kg'), reference),
  };
}

/** Months that a year looks back on, this one with them. */
const monthsShown = 12;

/** A month, "2028-02", and those before it, the latest first. */
export const lastMonths = (state: State, latest: string, zone: string): readonly MonthHeld[] =>
  Array.from({ length: monthsShown }, (_, back) => {
    const day = dayAfter(`${latest}-01`, { count: -back, unit: 'months' });
    return monthHeld(state, day.slice(0, 7), zone);
  });

export type OnSiteNow = OnSite & { readonly against: HeldAgainst };

export function onSiteNow(state: State): OnSiteNow {
  const site = onSite(state);
  const reference = showsReference(state) ? onSiteReference.VSQG : null;
  const limit = statedLimit(state, 'on-site-limit', 'kg');
  return { ...site, against: heldAgainst(site.total, site.unweighed.length === 0, limit, reference) };
}
