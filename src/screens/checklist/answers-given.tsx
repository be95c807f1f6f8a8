/** What was answered, as it was asked. */
import type { ChecklistAnswer } from '../../ledger/entries/checklists';
import type { ChecklistState } from '../../ledger/state';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { momentText } from '../amounts';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { saidWords, words } from './words';

type Props = { readonly told: ChecklistState; readonly onBack: () => void };

const Given = ({
  answers,
  label,
}: {
  readonly answers: readonly ChecklistAnswer[];
  readonly label: string;
}) => {
  const { sign, now } = useShell();
  const named = ({ who }: ChecklistAnswer) =>
    who === undefined ? '' : [who.name, who.at && momentText(who.at, now.value)].filter(Boolean).join(', ');
  return (
    <Rows label={label}>
      {answers.map((one) => (
        <Row
          key={`${one.item} ${one.at}`}
          title={[saidWords(one, sign.value), named(one)].filter(Boolean).join(': ')}
          second={one.ask}
          figure={one.stopped ? words.clearance.stoppedAnswer : one.quick ? words.clearance.quick : undefined}
        />
      ))}
    </Rows>
  );
};

export const AnswersGiven = ({ told, onBack }: Props) => (
  <Frame
    title={words.clearance.answersTitle}
    second={told.body.checklist.title}
    focusKey="answers"
    ways={[{ label: words.clearance.hideAnswers, onTap: onBack }]}
  >
    <Part width="edge">
      <Given answers={told.body.answers} label={words.answers} />
    </Part>
    {told.later.length > 0 && (
      <Part width="edge" title={words.later.heading}>
        <Given answers={told.later.map(({ body }) => body.answer)} label={words.later.heading} />
      </Part>
    )}
  </Frame>
);
