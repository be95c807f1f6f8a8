/** It was done before the list allowed it: the record takes the truth, and marks it. */
import { useState } from 'preact/hooks';
import { asField, happenedAt } from '../../safety/stated-time';
import { Button } from '../../ui/button';
import { Part } from '../../ui/page';
import { useTapGuard } from '../../ui/tap-guard';
import { TextField } from '../../ui/text-field';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words as shared } from '../words';
import { words } from './words';

type Props = {
  readonly fault: string | null;
  readonly onWrite: (happenedAt: string, note: string) => void;
  readonly onBack: () => void;
};

export function Already({ fault, onWrite, onBack }: Props) {
  const { moment } = useShell();
  const [when, setWhen] = useState(() => asField(moment()));
  const [note, setNote] = useState('');
  const [tried, setTried] = useState(false);
  const guard = useTapGuard('already', moment);
  const write = (): void => {
    setTried(true);
    const at = happenedAt(when, moment());
    if (at !== null) onWrite(at, note.trim());
  };
  return (
    <Frame
      title={words.already.title}
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
      <Part>
        <TextField
          label={words.already.when}
          kind="datetime-local"
          value={when}
          onInput={setWhen}
          error={tried && happenedAt(when, moment()) === null ? words.already.whenFault : undefined}
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
