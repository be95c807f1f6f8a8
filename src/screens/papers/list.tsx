/** The papers that were made, newest first. */
import type { PaperMade } from '../../ledger/entries/papers';
import type { State, Told } from '../../ledger/state';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { dayText } from '../amounts';
import { Frame, hour } from '../frame';
import { labelPageWords } from '../labels/words';
import { useShell } from '../shell';
import { paperWords as w } from './words';

const codesOf = (state: State, { body }: Told<PaperMade>): string =>
  body.containerIds.map((id) => unbroken(state.containers.get(id)?.body.code ?? '?')).join(', ');

export function PaperList() {
  const { state, now } = useShell();
  const papers = [...state.value.papers.values()].toReversed();
  return (
    <Frame
      place="papers"
      title={w.title}
      actions={
        <>
          <Button look="primary" voice="serif" href="#/papers/new" second={w.makeSecond}>
            {w.make}
          </Button>
          <Button href="#/papers/labels" second={labelPageWords.openSeveralSecond}>
            {labelPageWords.openSeveral}
          </Button>
        </>
      }
    >
      {papers.length === 0 ? (
        <Part>
          <p>{w.none}</p>
        </Part>
      ) : (
        <>
          <Rows label={w.title}>
            {papers.map((paper) => (
              <Row
                key={paper.entryId}
                title={codesOf(state.value, paper)}
                second={w.madeFor(paper.body.fileName, `${dayText(paper.at, now.value)}, ${hour(paper.at)}`)}
                href={`#/record/entry/${paper.entryId}`}
              />
            ))}
          </Rows>
          <Part rule>
            <p>{w.again}</p>
          </Part>
        </>
      )}
    </Frame>
  );
}
