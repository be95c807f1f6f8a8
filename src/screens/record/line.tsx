/** One entry as a row: what it says, when and by whom, whether it was written down later, and what became of it. */
import { papersNamed, photosNamed } from '../../ledger/photos-named';
import { type ToldLine, writtenWhen } from '../../ledger/told-lines';
import { Mark } from '../../ui/marks';
import { Row } from '../../ui/row';
import { useShell } from '../shell';
import { useIsAsSealed } from './as-sealed';
import { Changes } from './changes';
import {
  asSealedWords,
  deviceText,
  entryTitle,
  momentText,
  entryWords as w,
  whenAndWho,
} from './entry-words';
import { ownHourDiffers, ownHourText } from './own-hour';
import styles from './record.module.css';

/** What is worth saying of how it was written; nothing where it was written here as it happened. */
function Written({ entry, at }: Pick<ToldLine, 'entry' | 'at'>) {
  const { whole, zone } = useShell();
  const when = writtenWhen(entry);
  const said = [
    ...(when === 'as-it-happened' ? [] : [w.writtenWhen[when](momentText(entry.writtenAt))]),
    ...(ownHourDiffers(at, entry.zone, zone) ? [w.ownHourLine(ownHourText(at, entry.zone))] : []),
    ...(entry.device === whole.device ? [] : [w.onDevice(deviceText(entry.device))]),
    ...[w.photos(photosNamed(entry.body).length), w.files(papersNamed(entry.body).map(({ name }) => name))],
  ];
  return (
    <>
      {said.filter(Boolean).map((text) => (
        <span class={styles.change} key={text}>
          {text}
        </span>
      ))}
    </>
  );
}

export function Line({ line }: { readonly line: ToldLine }) {
  const { state, sign } = useShell();
  const title = entryTitle(state.value, line.entry.body, sign.value);
  const isAsSealed = useIsAsSealed(line.entry);
  return (
    <Row
      mark={isAsSealed ? undefined : <Mark kind="wrong" />}
      marked={!isAsSealed}
      title={line.standing === 'withdrawn' ? <s class={styles.gone}>{title}</s> : title}
      second={
        <>
          {!isAsSealed && <span class={styles.change}>{asSealedWords.line}</span>}
          {whenAndWho(state.value, line)}
          <Written entry={line.entry} at={line.at} />
          <Changes line={line} />
        </>
      }
      href={`#/record/entry/${line.entry.id}`}
    />
  );
}

export const lineRow = (line: ToldLine) => <Line key={line.entry.id} line={line} />;
