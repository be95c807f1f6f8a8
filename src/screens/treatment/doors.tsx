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
  /** Begins it by what is chosen; absent where nothing can be chosen. */
  readonly begin?: () => void;
};

export function Doors({ state, containerId, begin }: Props) {
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
        {begin && treatmentRuleFault(state) === null && (
          <Row title={w.begin} second={w.beginSecond} onTap={begin} />
        )}
      </Rows>
    </Part>
  );
}
