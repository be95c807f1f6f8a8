/** What all of it comes to: pictograms, signal word, codes, and how much of it nobody has confirmed. */
import { waiting } from '../../ledger/candidate-words';
import type { ContainerCandidates } from '../../ledger/container-candidates';
import type { ContainerState } from '../../ledger/state';
import { labelHazardsOf } from '../../paperwork/labels/known-of';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { HazardPictogram } from '../labels/hazard-pictogram';
import styles from './candidates.module.css';
import { codesLine, warningLine } from './codes-line';
import { candidateWords as w } from './words';

type Props = { readonly container: ContainerState; readonly all: ContainerCandidates };

function Confirmed({ container, all }: Props) {
  const { firing, waiting: without } = waiting(container, all);
  if (firing === 0) return <Notice mark="unknown">{w.nothingFires}</Notice>;
  return without === 0 ? (
    <Notice mark="confirmed">{w.allSaid}</Notice>
  ) : (
    <Notice mark="candidate">{w.nobody(without, firing)}</Notice>
  );
}

export function Summary(props: Props) {
  const { container, all } = props;
  const hazards = labelHazardsOf(container, all);
  const [warning, codes] = [warningLine(container, all), codesLine(container, all)];
  return (
    <Part>
      {hazards && hazards.pictograms.length > 0 && (
        <div class={styles.pictograms}>
          {hazards.pictograms.map((id) => (
            <HazardPictogram key={id} id={id} sizePx={76} />
          ))}
        </div>
      )}
      <p class={styles.signal}>{hazards ? w.signal(hazards.signal) : w.signalOpen}</p>
      {warning !== '' && <p>{warning}.</p>}
      {codes !== '' && <p>{codes}</p>}
      <Confirmed {...props} />
    </Part>
  );
}
