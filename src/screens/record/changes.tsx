/** What became of an entry: each correction with what it said before and after, each withdrawal, by whom and when. */
import type { Entry } from '../../ledger/entries/entry';
import type { HistoryLine } from '../../ledger/state';
import type { ToldLine } from '../../ledger/told-lines';
import { useShell } from '../shell';
import { momentText, entryWords as w, whenAndWho } from './entry-words';
import { changesBetween } from './leaves';
import { leafText, partText } from './part-words';
import styles from './record.module.css';

type Said = Pick<ToldLine, 'at'> & { readonly body: Entry['body'] };

/** A correction against what counted before it. */
function Correction({ was, is }: { readonly was: Said; readonly is: Said }) {
  const { state, sign } = useShell();
  return (
    <>
      {was.at !== is.at && (
        <span class={styles.change}>{w.wasNow(w.happened, momentText(was.at), momentText(is.at))}</span>
      )}
      {changesBetween(was.body, is.body).map((change) => (
        <span class={styles.change} key={change.path.join('.')}>
          {w.wasNow(
            partText(change.is ? is.body : was.body, change.path),
            leafText(state.value, change.was, sign.value),
            leafText(state.value, change.is, sign.value),
          )}
        </span>
      ))}
    </>
  );
}

/** "Corrected 14 May 2026, 09:20, Maren: misread"; struck through where it was undone itself. */
function Head({ change, word, reason }: { change: HistoryLine; word: string; reason: string }) {
  const { state } = useShell();
  const text = w.changed(word, whenAndWho(state.value, change), reason);
  return change.standing === 'withdrawn' ? <s class={styles.gone}>{text}</s> : text;
}

export function Changes({ line }: { readonly line: ToldLine }) {
  let before: Said = { body: line.entry.body, at: line.entry.happenedAt };
  return (
    <>
      {line.changes.map((change) => {
        const { id, body } = change.entry;
        if (body.kind === 'entry-withdrawn')
          return (
            <span class={styles.change} key={id}>
              <Head change={change} word={w.withdrawn} reason={body.reason} />
            </span>
          );
        if (body.kind !== 'entry-corrected') return null;
        const was = before;
        const is = { body: body.body, at: body.happenedAt ?? was.at };
        if (change.standing !== 'withdrawn') before = is;
        return (
          <span class={styles.change} key={id}>
            <Head change={change} word={w.corrected} reason={body.reason} />
            <Correction was={was} is={is} />
          </span>
        );
      })}
    </>
  );
}
