/** What of others is in the app, and under which licences it stands there. */
import { licences } from 'virtual:licences';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import styles from './record.module.css';
import { licencesWords as w } from './words';

export const LicencesScreen = () => (
  <Frame place="record" title={w.title} second={w.second(licences.length)}>
    <Part rule>
      <p>{w.own}</p>
    </Part>
    <Part rule>
      {licences.map(({ name, version, licence, text }) => (
        <details class={styles.fold} key={`${name} ${version}`}>
          <summary>
            <span>{`${name} ${version}, ${licence}`}</span>
          </summary>
          <p class={styles.licence}>{text}</p>
        </details>
      ))}
    </Part>
  </Frame>
);
