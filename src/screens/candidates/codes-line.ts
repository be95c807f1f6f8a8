/** What a container comes to in one line: what its pictograms warn of, then its codes. */

import { wordOn } from '../../ledger/candidate-words';
import type { ContainerCandidates } from '../../ledger/container-candidates';
import type { ContainerState } from '../../ledger/state';
import { codeText } from '../../paperwork/candidate-words';
import { heldCodes, labelHazardsOf } from '../../paperwork/labels/known-of';
import { capital } from '../../paperwork/words';
import { candidateWords as w, warnsOf } from './words';

/** The first that is not refused, where none fires: a number may still go on the transport paper. */
function carriedAs(container: ContainerState, all: ContainerCandidates): string | undefined {
  const [held] = heldCodes(container, all, 'transport');
  if (held !== undefined) return codeText(held);
  const judged = all.transport.candidates.find(
    (one) => one.standing === 'judgement' && wordOn(container, one).is !== 'refused',
  );
  return judged && w.judged(codeText(judged.code));
}

/** "D002, D011; HP 4, HP 8; 11 02 07*; UN 3264"; empty where there are none. */
export function codesLine(container: ContainerState, all: ContainerCandidates): string {
  const lists = (['rcra', 'eu-hp', 'waste-list'] as const).map((scheme) =>
    heldCodes(container, all, scheme).map(codeText).join(', '),
  );
  return [...lists, carriedAs(container, all) ?? ''].filter((text) => text !== '').join('; ');
}

/** "Corrosive; toxic to water life"; empty where nothing is known to warn of. */
export function warningLine(container: ContainerState, all: ContainerCandidates): string {
  const pictograms = labelHazardsOf(container, all)?.pictograms ?? [];
  return capital(pictograms.map((id) => warnsOf[id]).join('; '));
}
