/** First start, page 2: who works here. The first one holds the phone. */
import * as z from 'zod/mini';
import { Button } from '../../ui/button';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { Fault, useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { PersonFields, personAdded, personFault } from '../record/person-fields';
import styles from '../record/record.module.css';
import { useShell } from '../shell';
import { useTried } from '../tried';
import { startWords as w } from './words';

const PeopleFields = z.object({ people: z.array(PersonFields) });
const nobody: PersonFields = { name: '', phone: '' };

export function StartPeopleScreen() {
  const { go, choosePerson, person } = useShell();
  const { value, change, done } = useForm('first-people', PeopleFields, () => ({ people: [nobody] }));
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting();
  const { people } = value;
  const set = (at: number, part: Partial<PersonFields>) =>
    change({ people: people.map((one, i) => (i === at ? { ...one, ...part } : one)) });

  async function keep(): Promise<void> {
    tryNow();
    if (people.some((one, at) => personFault(one, at === 0))) return;
    let holder = person.value;
    for (const [at, one] of people.entries()) {
      const intention = personAdded(one);
      const written = intention === null ? [] : await write(intention);
      if (!written) return;
      const body = written[0]?.body;
      if (holder === null && body?.kind === 'person-added') {
        holder = body.personId;
        choosePerson(holder);
      }
      // What is written leaves the form, so that a try after a full disk writes nobody twice.
      change({ people: people.slice(at + 1) });
    }
    done();
    go('start/rules');
  }

  return (
    <Frame
      title={w.peopleTitle}
      second={w.peopleSecond}
      ways={[{ label: w.next, strong: true, disabled: busy, onTap: () => void keep() }]}
    >
      {people.map((one, at) => (
        <Part key={at} rule={at > 0}>
          <TextField
            label={w.nameOf(at + 1)}
            value={one.name}
            onInput={(name) => set(at, { name })}
            error={tried ? (personFault(one, at === 0) ?? undefined) : undefined}
            required={at === 0}
            maxLength={120}
            autoComplete={at === 0 ? 'name' : 'off'}
          />
          <TextField
            label={w.phoneOf(at + 1)}
            kind="tel"
            value={one.phone}
            onInput={(phone) => set(at, { phone })}
            hint={w.phoneHint}
            maxLength={120}
            autoComplete={at === 0 ? 'tel' : 'off'}
          />
        </Part>
      ))}
      <Part>
        <Button onTap={() => change({ people: [...people, nobody] })}>{w.another}</Button>
        <p class={styles.quiet}>{w.firstHolds}</p>
        <Fault words={fault} />
      </Part>
    </Frame>
  );
}
