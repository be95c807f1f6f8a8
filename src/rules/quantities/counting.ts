/**
 * What of the waste that arose in a month is counted for the month, and by which rule; federal law of the USA. Waste is left
 * out of the count only where all that the rule asks for is known: what is not determined counts.
 */
import type { Figure } from '../../quantities/figure';
import { type CountingRule, generator } from '../../reference/generator-tables';
import type { Citation } from '../candidate';
import { cited } from '../cited';
import { monthOf } from '../clocks/calendar-day';

export type Known = 'yes' | 'no' | 'not determined';

/** How waste came about, or what became of it as it did. */
export type Origin =
  | { readonly kind: 'generated' }
  | {
      readonly kind: 'into-unit';
      readonly unit: 'elementary-neutralisation' | 'wastewater-treatment' | 'totally-enclosed';
      /** As it arose, with no storage or accumulation before. */
      readonly straight: Known;
      /** Hazardous for nothing but its corrosivity; asked only for elementary neutralisation. */
      readonly onlyCorrosive: Known;
    }
  | { readonly kind: 'recycled-on-site'; readonly straight: Known }
  /** Taken out of accumulation on site, or moved within it. */
  | { readonly kind: 'from-accumulation'; readonly countedBefore: Known }
  /** `countedBefore`: the waste that was treated. */
  | { readonly kind: 'residue-of-treatment'; readonly countedBefore: Known }
  | { readonly kind: 'reclaimed-on-site'; readonly countedBefore: Known }
  /** An empty container's rest, used oil, lead-acid batteries, universal waste, scrap metal that is recycled. */
  | { readonly kind: 'own-rules' }
  | { readonly kind: 'episodic-event'; readonly notified: Known }
  | { readonly kind: 'not-hazardous' };

export type Arising = {
  readonly id: string;
  /** UTC. */
  readonly at: string;
  /** As the record calls it. */
  readonly what: string;
  /** Null where nobody weighed it and no density tells: it counts, and the sum is not complete. */
  readonly kg: Figure<'kg'> | null;
  /** `acute-spill`: what is left of cleaning up a spill of acute hazardous waste. */
  readonly acute: 'no' | 'acute' | 'acute-spill';
  readonly origin: Origin;
};

export type Judged = {
  readonly arising: Arising;
  readonly counts: boolean;
  /** The rule by which it counts or does not; where it counts because something is open, the rule that would leave it out. */
  readonly rule: CountingRule;
  readonly citation: Citation;
  /** What would have to be determined for it to be left out. */
  readonly lacks: readonly string[];
};

type Condition = readonly [known: Known, asked: string];

/** Where every condition is met the rule leaves it out; where one is not, it counts as any waste; what is open counts. */
function leftOutIf(rule: CountingRule, ...conditions: Condition[]): Omit<Judged, 'arising' | 'citation'> {
  if (conditions.some(([known]) => known === 'no')) return { counts: true, rule: 'generated', lacks: [] };
  const lacks = conditions.filter(([known]) => known !== 'yes').map(([, asked]) => asked);
  return { counts: lacks.length > 0, rule, lacks };
}

const straightAs = 'whether it goes there as it arises, with no storage before';
const before = 'whether it was counted before';

/** What the rules make of how it came about, in its own month. */
export function byOrigin(origin: Origin): Omit<Judged, 'arising' | 'citation'> {
  switch (origin.kind) {
    case 'generated':
      return { counts: true, rule: 'generated', lacks: [] };
    case 'into-unit': {
      const only: Condition[] =
        origin.unit === 'elementary-neutralisation'
          ? [[origin.onlyCorrosive, 'whether it is hazardous for nothing but its corrosivity']]
          : [];
      return leftOutIf('straight-into-unit', [origin.straight, straightAs], ...only);
    }
    case 'recycled-on-site':
      return leftOutIf('recycled-straight', [origin.straight, straightAs]);
    case 'from-accumulation':
      return leftOutIf('from-accumulation', [origin.countedBefore, before]);
    case 'residue-of-treatment':
      return leftOutIf('residue-of-counted', [
        origin.countedBefore,
        'whether what was treated was counted before',
      ]);
    case 'reclaimed-on-site':
      return leftOutIf('reclaimed-on-site', [origin.countedBefore, before]);
    case 'own-rules':
      return leftOutIf('own-rules');
    case 'episodic-event':
      return leftOutIf('episodic', [origin.notified, 'whether the event was notified']);
    case 'not-hazardous':
      return leftOutIf('not-hazardous');
  }
}

/** @param month "2026-05", in the zone of the workshop */
export function judged(arising: Arising, month: string, zone: string): Judged {
  const found: Omit<Judged, 'arising' | 'citation'> =
    monthOf(arising.at, zone) === month
      ? byOrigin(arising.origin)
      : { counts: false, rule: 'other-month', lacks: [] };
  return { arising, ...found, citation: cited(generator.counting[found.rule]) };
}
