/** First start, page 1: the place. */

import { Fault, useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { fieldsOf, WorkshopFields, workshopFaults, workshopIntention } from '../record/workshop-fields';
import { WorkshopForm } from '../record/workshop-form';
import { useShell } from '../shell';
import { faultless, useTried } from '../tried';
import { startWords as w } from './words';

export function StartWorkshopScreen() {
  const { state, go } = useShell();
  const { value, change, done } = useForm('workshop', WorkshopFields, () =>
    fieldsOf(state.value.workshop?.body),
  );
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting();
  const faults = workshopFaults(value);
  async function keep(): Promise<void> {
    tryNow();
    if (!faultless(faults) || !(await write(workshopIntention(value)))) return;
    done();
    go('start/people');
  }
  return (
    <Frame
      title={w.workshopTitle}
      second={w.workshopSecond}
      ways={[
        { label: w.back, href: '#/start' },
        { label: w.next, strong: true, disabled: busy, onTap: () => void keep() },
      ]}
    >
      <WorkshopForm value={value} change={change} faults={tried ? faults : {}} />
      <Fault words={fault} />
    </Frame>
  );
}
