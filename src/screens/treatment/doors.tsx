/** Where to go on from the page of a treatment. */
import { containerFigures } from '../../ledger/container-figures';
import type { State } from '../../ledger/state';
import { treatmentRuleFault } from '../../ledger/treatment';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { ironWords } from '../iron/words';
import { twoWaysWords } from '../two-ways/words';
import { washingWords } from '../washing/words';
import { treatmentWords as w } from './words';

type Props = {
  readonly state: State;
  readonly containerId: string;
  /** What it takes is worked out, so that it can be begun by a plan. */
  readonly planned: boolean;
};

export function Doors({ state, containerId, planned }: Props) {
  const { contents } = containerFigures(state, containerId);
  const of = (way: string): string => `#/containers/${containerId}/${way}`;
  return (
    <Part rule title={w.next} width="edge">
      <Rows>
        {contents.liquid?.metals.get('Cu')?.figure && (
          <Row title={ironWords.open} second={ironWords.openSecond} href={of('iron')} />
        )}
        {contents.residues.some(({ held }) => held) && (
          <Row title={washingWords.open} second={washingWords.openSecond} href={of('washing')} />
        )}
        {contents.liquid && <Row title={w.bench} second={w.benchSecond} href={of('bench-test')} />}
        {contents.liquid && (
          <Row title={twoWaysWords.open} second={twoWaysWords.openSecond} href={of('as-it-is-or-treated')} />
        )}
        {planned && treatmentRuleFault(state) === null && (
          <Row title={w.begin} second={w.beginSecond} href={`#/treatment/begin/${containerId}`} />
        )}
      </Rows>
    </Part>
  );
}
