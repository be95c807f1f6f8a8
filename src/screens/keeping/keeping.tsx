/** What keeps the record, and what a person can do for it: the browser's promise, the home screen, room, a backup. */
import { hasHomeScreen } from '../../storage/installing';
import { Button } from '../../ui/button';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Frame } from '../frame';
import styles from '../record/record.module.css';
import { KeepingRow, MarkerRow, SpaceRow } from './rows';
import { isShort, useInstalling, useRoom } from './use-keeping';
import { keepingWords as w } from './words';

/** How it comes onto the home screen of this phone, or into the dock. */
function HowToInstall() {
  const { installing, install } = useInstalling();
  if (installing === 'installed') return <p>{w.install.installed.second}</p>;
  if (installing === 'offers')
    return (
      <>
        <p>{w.install.offers.second}</p>
        <Button onTap={install}>{w.installNow}</Button>
      </>
    );
  if (installing === 'by-menu') return <p>{w.byMenu}</p>;
  return (
    <>
      <p>{w.clears}</p>
      <ol class={styles.plain}>
        {(hasHomeScreen() ? w.toHomeScreen : w.toDock).map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <p>{w.beginsEmpty}</p>
    </>
  );
}

function RoomWords() {
  const known = useRoom();
  return (
    <Part>
      <p>{w.estimate}</p>
      {known && isShort(known) && (
        <ul class={styles.plain}>
          {w.makeRoom.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
    </Part>
  );
}

export const KeepingScreen = () => (
  <Frame place="record" title={w.title} second={w.second}>
    <Part rule width="edge">
      <Rows>
        <KeepingRow />
        <MarkerRow />
        <Row start="text" title={w.backup} second={w.backupSecond} href="#/record/backup" />
      </Rows>
    </Part>
    <Part rule title={w.installTitle}>
      <HowToInstall />
    </Part>
    <Part rule width="edge" title={w.spaceTitle}>
      <Rows>
        <SpaceRow />
      </Rows>
    </Part>
    <RoomWords />
    <Part rule title={w.noticeTitle}>
      <p>{w.notice}</p>
      <p>{w.noticeNot}</p>
    </Part>
  </Frame>
);
