/** Pages that need the whole record: of a long one only what is recent or still matters is at hand. */
import type { ComponentType } from 'preact';
import { useState } from 'preact/hooks';
import { entriesIn } from '../ledger/opening';
import { Button } from '../ui/button';
import { Part } from '../ui/page';
import { countText } from './amounts';
import { Frame } from './frame';
import { useShell } from './shell';
import { failureWords, wholeWords as w, words } from './words';

type At = { readonly at: Readonly<Record<string, string>> };

function ReadWhole() {
  const { state, readWhole } = useShell();
  const [reading, setReading] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const count = countText(entriesIn(state.value));
  async function read(): Promise<void> {
    setReading(true);
    // The page says so before it stands still.
    await new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn)));
    const done = await readWhole();
    setReading(false);
    setFault(done.ok ? null : failureWords(done.failure));
  }
  return (
    <Frame
      title={w.title}
      second={w.second(count)}
      ways={[{ label: words.back, onTap: () => window.history.back() }]}
      actions={
        <Button look="primary" disabled={reading} second={w.readSecond} onTap={() => void read()}>
          {w.read}
        </Button>
      }
    >
      <Part>
        <p role="status">{reading ? w.reading(count) : w.why}</p>
        {fault !== null && <p role="alert">{fault}</p>}
      </Part>
    </Frame>
  );
}

/** The screen, once the whole record is at hand. */
export const withWhole = (Screen: ComponentType<At>): ComponentType<At> =>
  function WithWhole({ at }: At) {
    const { state } = useShell();
    return state.value.earlier === null ? <Screen at={at} /> : <ReadWhole />;
  };

/** The screen of an entry, once the entry is at hand. */
export const withEntry = (Screen: ComponentType<At>): ComponentType<At> =>
  function WithEntry({ at }: At) {
    const { log, earlier } = useShell().state.value;
    const isAtHand = earlier === null || log.some(({ id }) => id === at.entry);
    return isAtHand ? <Screen at={at} /> : <ReadWhole />;
  };
