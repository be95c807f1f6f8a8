/** Checking the book: all that lies on the disk, or whether a paper's entry is in it, and what that proves. */
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import { CheckAll } from './check-all';
import { CheckPaper } from './check-paper';
import styles from './record.module.css';
import { verifyWords as w } from './verify-words';

const List = ({ of }: { readonly of: readonly string[] }) => (
  <ul class={styles.plain}>
    {of.map((line) => (
      <li key={line}>{line}</li>
    ))}
  </ul>
);

export function VerifyScreen() {
  return (
    <Frame place="record" title={w.title} second={w.second}>
      <CheckAll />
      <CheckPaper />
      <Part rule title={w.proves}>
        <p>{w.provesSays}</p>
        <List of={w.provesList} />
      </Part>
      <Part rule title={w.provesNot}>
        <List of={w.provesNotList} />
      </Part>
    </Frame>
  );
}
