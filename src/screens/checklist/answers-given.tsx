/** What was answered, as it was asked. */
import type { ChecklistFinished } from '../../ledger/entries/checklists';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { saidWords, words } from './words';

type Props = { readonly finished: ChecklistFinished; readonly onBack: () => void };

export function AnswersGiven({ finished, onBack }: Props) {
  const { sign } = useShell();
  return (
    <Frame
      title={words.clearance.answersTitle}
      second={finished.checklist.title}
      focusKey="answers"
      ways={[{ label: words.clearance.hideAnswers, onTap: onBack }]}
    >
      <Part width="edge">
        <Rows label={words.answers}>
          {finished.answers.map((one) => (
            <Row
              key={`${one.item} ${one.at}`}
              title={saidWords(one, sign.value)}
              second={one.ask}
              figure={
                one.stopped ? words.clearance.stoppedAnswer : one.quick ? words.clearance.quick : undefined
              }
            />
          ))}
        </Rows>
      </Part>
    </Frame>
  );
}
