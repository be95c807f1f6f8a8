/** Treatments that what the batch gave went through, or is in now: in a container, maybe with that of others. */
import { codeOfContainer } from '../../ledger/put-away';
import type { BatchState, State, TreatmentState } from '../../ledger/state';
import { treatmentsOfBatch } from '../../ledger/treatment';
import { nextLook } from '../../ledger/treatment-run';
import { unbroken } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { momentText } from '../amounts';
import { outcomeText } from '../record/treatment-words';
import { useShell } from '../shell';
import { watchText } from '../treatment/run-texts';
import { runWords } from '../treatment/run-words';

type Props = { readonly state: State; readonly batch: BatchState };

function TreatmentRow({ treatment, code }: { readonly treatment: TreatmentState; readonly code: string }) {
  const { now, sign } = useShell();
  const { ended, body } = treatment;
  const look = nextLook(treatment);
  const due = look && look.due <= now.value ? 'overdue' : 'due';
  return (
    <Row
      {...(ended ? { start: 'text' as const } : { mark: <Mark kind={due} /> })}
      title={runWords.ofContainer(code)}
      second={
        ended
          ? `${outcomeText[ended.body.outcome]}, ${momentText(ended.at, now.value)}`
          : watchText(treatment, now.value, sign.value)
      }
      href={`#/treatment/${body.treatmentId}`}
    />
  );
}

export function BatchTreatments({ state, batch }: Props) {
  const all = treatmentsOfBatch(state, batch.body.batchId);
  if (all.length === 0) return null;
  return (
    <Part rule title={runWords.container} width="edge">
      <Rows>
        {all.map((treatment) => (
          <TreatmentRow
            key={treatment.body.treatmentId}
            treatment={treatment}
            code={unbroken(codeOfContainer(state, treatment.body.containerId) ?? '')}
          />
        ))}
      </Rows>
    </Part>
  );
}
