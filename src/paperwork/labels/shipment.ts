/** What the United States ask for on a container before it is shipped, as far as the record knows it (40 CFR 262.32(b)). */
import { lifeOf } from '../../ledger/container-life';
import { capacityOf } from '../../ledger/fill';
import type { ContainerState, State } from '../../ledger/state';
import { inUnit } from '../../quantities/quantity';
import { marking } from '../../reference/marking-tables';
import { notDetermined } from '../words';
import type { LabelCode, LabelData, LabelShipment } from './label-data';

const largest = inUnit(marking.shipment.largest, 'L');

/** A container that is set aside to leave, sound and known, and no larger than the rule goes. */
const isToBeMarked = (state: State, container: ContainerState): boolean =>
  lifeOf(state, container).is === 'leaving' && capacityOf(container).lte(largest);

/**
 * Nothing where it is not set aside to leave or the law does not ask for it.
 * @param codes all that are known, candidates too: those are nobody's word yet, and stay off
 */
export function shipmentOf(
  state: State,
  container: ContainerState,
  { law, contents }: Pick<LabelData, 'law' | 'contents'>,
  codes: readonly LabelCode[],
): LabelShipment | undefined {
  if (law !== 'us' || contents.are !== 'known' || !isToBeMarked(state, container)) return undefined;
  const confirmed = codes.filter(({ list, standing }) => list === 'rcra' && standing.is === 'confirmed');
  return {
    manifestNumber: 'to be written in',
    wasteNumbers: confirmed.length > 0 ? confirmed : notDetermined,
  };
}
