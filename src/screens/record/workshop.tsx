/** Describes the workshop again: a later description replaces the earlier one. */
import { Fault, useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { faultless, useTried } from '../tried';
import { words } from '../words';
import { workshopWords as w } from './words';
import { fieldsOf, WorkshopFields, workshopFaults, workshopIntention } from './workshop-fields';
import { WorkshopForm } from './workshop-form';

export function WorkshopScreen() {
  const { state, go } = useShell();
  const { value, change, done } = useForm('workshop', WorkshopFields, () =>
    fieldsOf(state.value.workshop?.body),
  );
  const leave = (): void => {
    done();
    go('record');
  };
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting();
  const faults = workshopFaults(value);
  async function keep(): Promise<void> {
    tryNow();
    if (!faultless(faults) || !(await write(workshopIntention(value)))) return;
    leave();
  }
  return (
    <Frame
      place="record"
      title={w.title}
      second={w.second}
      ways={[
        { label: words.cancel, onTap: leave },
        { label: w.keep, strong: true, disabled: busy, onTap: () => void keep() },
      ]}
    >
      <WorkshopForm value={value} change={change} faults={tried ? faults : {}} />
      <Fault words={fault} />
    </Frame>
  );
}
