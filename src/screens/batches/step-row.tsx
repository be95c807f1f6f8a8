/** One step of a batch: how it was begun and ended, what it still asks, and the list that can be gone through late. */
import { listBehind } from '../../ledger/asked-later';
import type { StepState } from '../../ledger/state';
import { startList } from '../../ledger/step-offers';
import { Button, Buttons } from '../../ui/button';
import { Mark } from '../../ui/marks';
import { Row } from '../../ui/row';
import { dayText, momentText } from '../amounts';
import { AskedRows, useNotAsked } from '../checklist/asked-rows';
import { partOf } from '../checklist/list-for';
import { clocksWords } from '../clocks/words';
import { dilutionWords } from '../dilution/words';
import { Fault, useWriting } from '../fault';
import { hour } from '../frame';
import { useShell } from '../shell';
import { SilverButton } from '../silver-check/batch-checks';
import { stepWords, batchWords as w } from './words';

type Props = { readonly step: StepState };

/** Steps of the test for silver, and the one it is made after. */
const testedIn: ReadonlySet<string> = new Set(['chloride-test', 'ammonia-test', 'cementation']);

/** How it was cleared; a list that was gone through late is said, and does not make it cleared. */
function useCleared({ step }: Props): string {
  const { state, now } = useShell();
  const { clearance, stationId } = step.body;
  const late = state.value.checklists.get(step.lateLists.at(-1) ?? '');
  if (clearance !== null)
    return startList(state.value, step.body.step)?.station && stationId === undefined
      ? `${w.cleared}, ${w.noPlace}`
      : w.cleared;
  return late ? `${w.notCleared}, ${w.lateList(momentText(late.at, now.value))}` : w.notCleared;
}

/** Where the list is gone through after all; null where it was, or none is for this step. */
function useLateWay({ step }: Props): string | null {
  const { state } = useShell();
  const { stepId, batchId, clearance } = step.body;
  const list = startList(state.value, step.body.step);
  if (clearance !== null || step.lateLists.length > 0 || !list) return null;
  return `#/check/${partOf({ batchId, lateFor: stepId })}/${list.id}`;
}

function Running({ step }: Props) {
  const { write, fault, busy } = useWriting();
  const notAsked = useNotAsked(listBehind(step));
  const { stepId, batchId } = step.body;
  return (
    <Buttons>
      <Fault words={fault} />
      {step.body.step === 'acid-dilution' && (
        <Button href={`#/batches/${batchId}/dilution`}>{dilutionWords.open}</Button>
      )}
      {batchId !== null && testedIn.has(step.body.step) && <SilverButton batchId={batchId} />}
      {batchId !== null && <Button href={`#/batches/${batchId}/look`}>{clocksWords.nextLook}</Button>}
      <Button
        disabled={busy}
        second={notAsked ?? undefined}
        onTap={() => void write({ do: 'end-step', stepId })}
      >
        {w.end}
      </Button>
    </Buttons>
  );
}

export function StepRow({ step }: Props) {
  const { now } = useShell();
  const { clearance } = step.body;
  const cleared = useCleared({ step });
  const late = useLateWay({ step });
  const runs = step.endedAt === null;
  const when = `${dayText(step.at, now.value)} ${hour(step.at)}`;
  const standing =
    step.endedAt === null ? w.running : w.ended(`${dayText(step.endedAt, now.value)} ${hour(step.endedAt)}`);
  return (
    <>
      <Row
        mark={<Mark kind={clearance === null ? 'wrong' : 'clearance'} />}
        title={stepWords[step.body.step] ?? step.body.step}
        second={`${when}, ${cleared}, ${standing}`}
        marked={clearance === null}
        below={
          runs || late !== null ? (
            <Buttons>
              {late !== null && <Button href={late}>{w.goThroughLate}</Button>}
              {runs && <Running step={step} />}
            </Buttons>
          ) : undefined
        }
      />
      <AskedRows entry={listBehind(step)} />
    </>
  );
}
