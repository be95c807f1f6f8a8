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
      <p>{w.lost}</p>
      <p>{words.caution}</p>
    </Part>
    <Part rule title={w.notTitle}>
      <ul class={styles.plain}>
        {w.not.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Part>
    <Part rule>
      <details class={styles.fold}>
        <summary>
          <span>{w.sources}</span>
        </summary>
        <ul class={styles.plain}>
          {Object.entries(sources).map(([id, { title, edition }]) => (
            <li key={id}>{`${title} (${edition})`}</li>
          ))}
        </ul>
      </details>
    </Part>
    <Part rule width="edge">
      <Rows>
        <Row title={w.licences} second={w.licencesSecond} href="#/record/about/licences" />
      </Rows>
    </Part>
  </Frame>
);
