/** What this book is, what it is not, and where its published values come from. */
import { sources } from '../../reference/tables';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Frame } from '../frame';
import { words } from '../words';
import styles from './record.module.css';
import { aboutWords as w } from './words';

/** Of package.json, put in when the app is built. */
const version = String(import.meta.env.VITE_VERSION);

export const AboutScreen = () => (
  <Frame place="record" title={w.title} second={`${words.appName}, ${w.version.toLowerCase()} ${version}`}>
    <Part rule>
      <p>{w.what}</p>
      <p>{w.where}</p>
      <p>{words.caution}</p>
    </Part>
    <Part rule title={w.notTitle}>
      <ul class={styles.plain}>
        {w.not.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Part>
    <Part rule width="edge" title={w.sources}>
      <Rows>
        {Object.entries(sources).map(([id, { title, edition }]) => (
          <Row key={id} title={<span class={styles.change}>{title}</span>} second={edition} />
        ))}
      </Rows>
    </Part>
  </Frame>
);
