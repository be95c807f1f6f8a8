/** A list that was gone through when its step had begun: it stands beside the step, and clears nothing. */
import type { ChecklistState } from '../../ledger/state';
import { Button } from '../../ui/button';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { momentText } from '../amounts';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { homeOf } from './list-for';
import { words } from './words';

type Props = { readonly told: ChecklistState; readonly onAnswers: () => void };

export function WrittenLate({ told, onAnswers }: Props) {
  const { state, now } = useShell();
  const { checklist, late, outcome, finishedAt } = told.body;
  const began = state.value.steps.get(late?.stepId ?? '')?.at;
  const w = words.late;
  return (
    <Frame
      title={w.title}
      second={checklist.title}
      focusKey="late"
      ways={[{ label: words.clearance.showAnswers, onTap: onAnswers }]}
      actions={
        <Button look="primary" href={`#/${homeOf(told.body)}`}>
          {words.clearance.toBatch}
        </Button>
      }
    >
      <Part>
        {outcome === 'stopped' && <p>{w.stopped}</p>}
        <p>{w.second}</p>
      </Part>
      <Part width="edge">
        <Rows>
          {began !== undefined && <Row title={w.began} figure={momentText(began, now.value)} />}
          <Row title={w.gone} figure={momentText(finishedAt, now.value)} />
        </Rows>
      </Part>
    </Frame>
  );
}
