/** What became of an entry: each correction with what it changed, each withdrawal with its reason. */
import type { Entry } from '../../ledger/entries/entry';
import type { HistoryLine } from '../../ledger/state';
import { useShell } from '../shell';
import { entryWords as w } from './entry-words';
import { changesBetween } from './leaves';
import { leafText, partText } from './part-words';
import styles from './record.module.css';

/** A correction against the body that counted before it. */
function Correction({ was, is }: { readonly was: Entry['body']; readonly is: Entry['body'] }) {
  const { state, sign } = useShell();
  return (
    <>
      {changesBetween(was, is).map((change) => (
        <span class={styles.change} key={change.path.join('.')}>
          {w.wasNow(
            partText(change.is ? is : was, change.path),
            leafText(state.value, change.was, sign.value),
            leafText(state.value, change.is, sign.value),
          )}
        </span>
      ))}
    </>
  );
}

export function Changes({ line }: { readonly line: HistoryLine }) {
  const { log } = useShell().state.value;
  const changes = line.changedBy.flatMap((id) => log.find((entry) => entry.id === id) ?? []);
  let before: Entry['body'] = line.entry.body;
  return (
    <>
      {changes.map(({ id, body }) => {
        if (body.kind === 'entry-withdrawn')
          return (
            <span class={styles.change} key={id}>
              {`${w.withdrawn}: ${body.reason}`}
            </span>
          );
        if (body.kind !== 'entry-corrected') return null;
        const was = before;
        before = body.body;
        return (
          <span class={styles.change} key={id}>
            {`${w.corrected}: ${body.reason}`}
            <Correction was={was} is={body.body} />
          </span>
        );
      })}
    </>
  );
}
