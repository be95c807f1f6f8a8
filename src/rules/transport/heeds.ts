/** What is to be heeded before anything of this is carried, whatever its class. */
import type { SubstanceId } from '../../reference/substances-tables';
import type { Citation } from '../candidate';
import { type Consignment, partsOf, usualIn } from './consignment';
import { citedRule } from './finding';

export function heedsOf({ mixture, kind }: Consignment): readonly Citation[] {
  const holds = (id: SubstanceId) => mixture.shares.has(id) || mixture.open.includes(id);
  const silverInAmmonia =
    kind === 'ammonia-test-waste' || (holds('NH3aq') && (holds('AgNO3') || holds('AgCl')));
  const parts = partsOf(mixture);
  const nitrate = parts.length === 0 || parts.some(({ id, as }) => as.nitrate || id === 'HNO3');
  return [
    ...(silverInAmmonia ? [citedRule('explosive-silver')] : []),
    ...(usualIn(kind)?.burns && nitrate ? [citedRule('nitrate-on-paper')] : []),
  ];
}
