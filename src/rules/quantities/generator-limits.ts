/** The limits of the federal categories of the USA, as figures: to hold a month against, and to show beside a workshop's own. */
import { constant } from '../../chemistry/constants';
import type { Figure } from '../../quantities/figure';
import { generator } from '../../reference/generator-tables';
import type { AmountLimit } from './held-against';

/** Very small, small and large quantity generator, as 40 CFR 260.10 has them. */
export type Category = 'VSQG' | 'SQG' | 'LQG';

const { month, onSite } = generator;

const kg = (id: string, sentence: string, c: typeof month.smallest): Figure<'kg'> =>
  constant(`generator/${id}`, sentence, c, 'kg');

export const monthLimits = {
  smallest: kg('smallest', 'Most in a month of a very small generator', month.smallest),
  large: kg('large', 'From this in a month on, a generator is large', month.large),
  acute: kg('acute', 'Acute waste in a month, above which a generator is large', month.acute),
  acuteSpill: kg(
    'acute-spill',
    'Rest of cleaning up acute waste in a month, above which a generator is large',
    month.acuteSpill,
  ),
};

/** Where a month's waste, not acute, leaves the category; null for a large generator, who has no category above. */
export const monthReference: Readonly<Record<Category, AmountLimit | null>> = {
  VSQG: { limit: monthLimits.smallest, over: 'passed' },
  SQG: { limit: monthLimits.large, over: 'reached' },
  LQG: null,
};

/** Most on site at once; null for a large generator, who has no such limit. */
export const onSiteReference: Readonly<Record<Category, AmountLimit | null>> = {
  VSQG: {
    limit: kg('on-site-vsqg', 'On site, from which the rules of a small generator hold', onSite.VSQG.limit),
    over: onSite.VSQG.over,
  },
  SQG: {
    limit: kg('on-site-sqg', 'Most that a small generator may have on site', onSite.SQG.limit),
    over: onSite.SQG.over,
  },
  LQG: null,
};
