/** What an answer still lacks: its reason, who is named in it, when they call. One thing a page. */
import { useState } from 'preact/hooks';
import { nextAt } from '../../safety/stated-time';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { TextField } from '../../ui/text-field';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words as shared } from '../words';
import { AnswerButtons } from './answers';
import styles from './checklist.module.css';
import { words } from './words';

type Way = { readonly onBack: () => void; readonly guard: Guard };
export type Guard = <A extends readonly unknown[]>(tap: (...given: A) => void) => (...given: A) => void;

/** A short text for what is not among the answers offered. */
function OtherWords({ label, onKeep }: { readonly label: string; readonly onKeep: (text: string) => void }) {
  const [text, setText] = useState('');
  const [tried, setTried] = useState(false);
  const missing = tried && text.trim() === '';
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        setTried(true);
        if (text.trim() !== '') onKeep(text.trim());
      }}
    >
      <TextField
        label={label}
        value={text}
        onInput={setText}
        maxLength={120}
        error={missing ? shared.text.missing : undefined}
      />
      {text !== '' && <Button type="submit">{words.keep}</Button>}
    </form>
  );
}

export const Reason = (
  props: Way & {
    readonly title: string;
    readonly said: string;
    readonly wanted?: string | undefined;
    readonly reasons: readonly string[];
    readonly onReason: (reason: string) => void;
  },
) => (
  <Frame
    title={props.title}
    voice="question"
    focusKey={`reason ${props.said}`}
    ways={[{ label: words.back, onTap: props.onBack }]}
    actions={<AnswerButtons answers={props.reasons} onAnswer={props.guard(props.onReason)} />}
  >
    <Part>
      <p class={styles.look}>{props.said}</p>
      {props.wanted !== undefined && <p class={styles.look}>{props.wanted}</p>}
      <OtherWords label={words.reason.other} onKeep={props.onReason} />
    </Part>
  </Frame>
);

/** People of the workshop who are not holding the phone, or a name. */
export function Who(props: Way & { readonly answer: string; readonly onName: (name: string) => void }) {
  const { state, person } = useShell();
  const others = [...state.value.people.values()].filter(
    ({ body, leftAt }) => leftAt === null && body.personId !== person.value,
  );
  return (
    <Frame
      title={words.who.title}
      voice="question"
      focusKey="who"
      ways={[{ label: words.back, onTap: props.onBack }]}
      actions={
        others.length === 0 ? undefined : (
          <Buttons>
            {others.map(({ body }) => (
              <Button key={body.personId} onTap={props.guard(() => props.onName(body.name))}>
                {body.name}
              </Button>
            ))}
          </Buttons>
        )
      }
    >
      <Part>
        <p class={styles.look}>{props.answer}</p>
        <OtherWords label={words.who.other} onKeep={props.onName} />
      </Part>
    </Frame>
  );
}

/** The next time the clock shows that hour. */
export function When(
  props: Way & {
    readonly name: string;
    /** Why it is asked, where that is not plain. */
    readonly second?: string;
    readonly onTime: (at: string) => void;
  },
) {
  const { moment } = useShell();
  const [hour, setHour] = useState('');
  const [tried, setTried] = useState(false);
  const read = (): string | null => nextAt(hour, moment());
  return (
    <Frame
      title={words.who.when(props.name)}
      second={props.second}
      voice="question"
      focusKey="when"
      ways={[{ label: words.back, onTap: props.onBack }]}
      actions={
        <Button
          look="primary"
          onTap={props.guard(() => {
            const at = read();
            setTried(true);
            if (at !== null) props.onTime(at);
          })}
        >
          {words.keep}
        </Button>
      }
    >
      <Part>
        <TextField
          label={words.who.hour}
          kind="time"
          value={hour}
          onInput={setHour}
          error={tried && read() === null ? words.who.hourMissing : undefined}
        />
      </Part>
    </Frame>
  );
}
