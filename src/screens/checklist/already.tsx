/** It was done before the list allowed it: the record takes the truth, and marks it. */
import { useState } from 'preact/hooks';
import { dayField, happenedAt, hourField } from '../../safety/stated-time';
import { Button } from '../../ui/button';
import { Part } from '../../ui/page';
import { useTapGuard } from '../../ui/tap-guard';
import { TextField } from '../../ui/text-field';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words as shared } from '../words';
import { words } from './words';

type Props = {
  /** The list's own words, e.g. "Already filtered? Write it down." */
  readonly title: string;
  readonly fault: string | null;
  readonly onWrite: (happenedAt: string, note: string) => void;
  readonly onBack: () => void;
};

export function Already({ title, fault, onWrite, onBack }: Props) {
  const { moment } = useShell();
  const [day, setDay] = useState(() => dayField(moment()));
  const [hour, setHour] = useState(() => hourField(moment()));
  const [note, setNote] = useState('');
  const [tried, setTried] = useState(false);
  const guard = useTapGuard('already', moment);
  const write = (): void => {
    setTried(true);
    const at = happenedAt(day, hour, moment());
    if (at !== null) onWrite(at, note.trim());
  };
  return (
    <Frame
      title={title}
      second={words.already.second}
      focusKey="already"
      ways={[{ label: words.back, onTap: onBack }]}
      actions={
        <>
          {fault !== null && <p role="alert">{fault}</p>}
          <Button look="primary" onTap={guard(write)}>
            {words.already.write}
          </Button>
        </>
      }
    >
      <Part title={words.already.when}>
        <TextField label={words.already.day} kind="date" value={day} onInput={setDay} />
        <TextField
          label={words.already.hour}
          kind="time"
          value={hour}
          onInput={setHour}
          error={tried && happenedAt(day, hour, moment()) === null ? words.already.whenFault : undefined}
        />
        <TextField
          label={words.already.note}
          second={shared.optional}
          kind="lines"
          value={note}
          onInput={setNote}
          maxLength={2000}
        />
      </Part>
    </Frame>
  );
}
