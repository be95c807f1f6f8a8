/** A treatment that runs, on Today: what was read last, when to look next, and how long that is. */
import { askedLater } from '../../ledger/asked-later';
import type { Flag } from '../../ledger/flags';
import type { TreatmentState } from '../../ledger/state';
import { minutesTo, nextLook } from '../../ledger/treatment-run';
import { FigureValue } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Row } from '../../ui/row';
import { minutesShown, momentText } from '../amounts';
import { useShell } from '../shell';
import { runWords } from '../treatment/run-words';
import { flagWords, todayWords } from './words';

type Props = { readonly flag: Flag; readonly name: string; readonly treatment: TreatmentState };

export function TreatmentRow({ flag, name, treatment }: Props) {
  const { now, state } = useShell();
  const open = askedLater(state.value, treatment.body.clearance)?.open.length ?? 0;
  const { title, second } = flagWords(flag, name);
  const look = nextLook(treatment);
  const waits = look !== null && look.due > now.value;
  const when = look && momentText(look.due, now.value);
  const then = when === null ? '' : waits ? runWords.lookAt(when) : runWords.lookSince(when);
  return (
    <Row
      mark={<Mark kind={look && !waits ? 'overdue' : 'due'} />}
      title={title}
      second={[second, then, open === 0 ? '' : `${todayWords.stillToAnswer(open)}.`]
        .filter(Boolean)
        .join(' ')}
      href={`#/treatment/${treatment.body.treatmentId}`}
      figure={waits ? <FigureValue {...minutesShown(minutesTo(look.due, now.value))} /> : undefined}
    />
  );
}
