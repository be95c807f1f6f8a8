/** Every entry, newest first; what was corrected or withdrawn stays, with what changed. */
import { useState } from 'preact/hooks';
import type { HistoryLine } from '../../ledger/state';
import { Button } from '../../ui/button';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { Changes } from './changes';
import { entryTitle, entryWords as w, whenAndWho } from './entry-words';
import styles from './record.module.css';

/** As many rows as are read at once; a long record would take seconds to draw. */
const atOnce = 40;

export function Line({ line }: { readonly line: HistoryLine }) {
  const { state, sign } = useShell();
  const title = entryTitle(state.value, line.entry.body, sign.value);
  return (
    <Row
      title={line.standing === 'withdrawn' ? <s class={styles.gone}>{title}</s> : title}
      second={
        <>
          {whenAndWho(state.value, line)}
          <Changes line={line} />
        </>
      }
      href={`#/record/entry/${line.entry.id}`}
    />
  );
}

export function HistoryScreen() {
  const { history } = useShell().state.value;
  const [shown, setShown] = useState(atOnce);
  const newest = history.toReversed();
  const older = newest.length - shown;
  return (
    <Frame place="record" title={w.historyTitle} second={w.historySecond}>
      <Part rule width="edge">
        {newest.length === 0 ? (
          <Row title={w.none} />
        ) : (
          <Rows label={w.historyTitle}>
            {newest.slice(0, shown).map((line) => (
              <Line key={line.entry.id} line={line} />
            ))}
          </Rows>
        )}
      </Part>
      {older > 0 && (
        <Part>
          <Button onTap={() => setShown(shown + atOnce)}>{w.older(Math.min(older, atOnce))}</Button>
        </Part>
      )}
    </Frame>
  );
}
