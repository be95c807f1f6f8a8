/** Entries that name one substance: for a waste that is this substance and, beside it, only water and traces (ADR 2.1.3.3). */
import Decimal from 'decimal.js';
import { substances } from '../../reference/substances-tables';
import { type EntryId, transport } from '../../reference/transport-tables';
import { type Consignment, type Part, partsOf, usualIn } from './consignment';

const dangerous = ({ id }: Part): boolean => substances[id].classes.length > 0;

/** The constituent beside which only traces of others are dangerous; null where there is none, or others may be in it. */
export function predominant({ mixture, kind }: Consignment): Part | null {
  if (mixture.open.length > 0 || usualIn(kind)?.laden) return null;
  const [first, ...others] = partsOf(mixture).filter(dangerous);
  if (!first) return null;
  const rest = others.reduce((sum, { share }) => sum.plus(share.high), new Decimal(0));
  const { traces, tracesBeside } = transport.limits;
  const most = Decimal.min(traces.value, first.share.high.times(tracesBeside.value).div(100));
  return rest.lt(most) || rest.isZero() ? first : null;
}

/** Row of UN 2031 for a strength of nitric acid, %, as the names of the rows state it. */
export function nitricEntry({ share: { high } }: Part): EntryId {
  if (high.gt(70)) return 'nitric-over-70';
  if (high.gte(65)) return 'nitric-65-to-70';
  return high.gt(20) ? 'nitric-20-to-65' : 'nitric-to-20';
}

/** Entry of the list for a substance dissolved in water; null where the list has none for this strength (%, by its name). */
export function dissolvedEntry(part: Part): EntryId | null {
  const { high } = part.share;
  switch (part.id) {
    case 'HNO3':
    case 'HNO3-conc':
      return nitricEntry(part);
    case 'HCl':
      return 'hydrochloric';
    case 'NaOH':
      return 'caustic-soda';
    case 'NH3aq':
      return high.gt(10) && high.lte(35) ? 'ammonia' : null;
    default:
      return null;
  }
}

/** Entry of the list for a dry solid. */
export const solidEntry = (part: Part): EntryId | null =>
  part.id === 'NaOH' ? 'caustic-soda-solid' : (part.as.solid ?? null);
