/** One person: added, changed, left or back again. */
import type { Intention } from '../../ledger/intention';
import { Button } from '../../ui/button';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { Fault, useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { given, useTried } from '../tried';
import { words } from '../words';
import { PersonFields, personFault } from './person-fields';
import { peopleWords as w } from './words';

export function PersonScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, person, choosePerson, go } = useShell();
  const personId = at.person === 'new' ? null : (at.person ?? '');
  const known = personId === null ? undefined : state.value.people.get(personId);
  const { value, change, done } = useForm(`person:${at.person}`, PersonFields, () => ({
    name: known?.body.name ?? '',
    phone: known?.body.phone ?? '',
  }));
  const leave = (): void => {
    done();
    go('record/people');
  };
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting();
  const missing = personFault(value, true);

  async function writes(intention: Intention): Promise<void> {
    const written = await write(intention);
    if (!written) return;
    const body = written[0]?.body;
    if (person.value === null && body?.kind === 'person-added') choosePerson(body.personId);
    leave();
  }

  function keep(): void {
    tryNow();
    if (missing !== null) return;
    const said = { name: value.name, ...given('phone', value.phone) };
    void writes(
      personId === null ? { do: 'add-person', ...said } : { do: 'change-person', personId, ...said },
    );
  }

  if (personId !== null && !known) return <Frame place="record" title={w.gone} />;
  return (
    <Frame
      place="record"
      title={known?.body.name ?? w.newTitle}
      ways={[
        { label: words.cancel, onTap: leave },
        {
          label: known && known.leftAt !== null ? w.back : w.keep,
          strong: true,
          disabled: busy,
          onTap: keep,
        },
      ]}
    >
      <Part>
        <TextField
          label={w.name}
          value={value.name}
          onInput={(name) => change({ name })}
          error={tried ? (missing ?? undefined) : undefined}
          required
          maxLength={120}
        />
        <TextField
          label={w.phone}
          kind="tel"
          value={value.phone}
          onInput={(phone) => change({ phone })}
          hint={words.optional}
          maxLength={120}
        />
        <Fault words={fault} />
      </Part>
      {known && known.leftAt === null && (
        <Part>
          <Button
            second={w.leavesSecond}
            disabled={busy}
            onTap={() => void writes({ do: 'person-leaves', personId: known.body.personId })}
          >
            {w.leaves}
          </Button>
        </Part>
      )}
    </Frame>
  );
}
