/** Backing up: who can open the file, then it is made. Also of what is left of a record that is damaged or cannot be opened. */
import { useState } from 'preact/hooks';
import { Button } from '../../ui/button';
import { Choices } from '../../ui/choices';
import { Part } from '../../ui/page';
import { Fault } from '../fault';
import { Frame } from '../frame';
import { words } from '../words';
import { MadeBackupPage } from './made';
import { NewPassphrase, noPassphrase, type Passphrase, passphraseFault } from './passphrase-fields';
import { LastBackup } from './rows';
import { BackupUnderWay } from './under-way';
import { useMakeBackup } from './use-make';
import { backupWords, makeWords as w } from './words';

type Openness = 'plain' | 'locked';

export function MakeBackup() {
  const { make, made, told, fault, leave } = useMakeBackup();
  const [who, setWho] = useState<Openness | undefined>(undefined);
  const [passphrase, setPassphrase] = useState<Passphrase>(noPassphrase);
  const [tried, setTried] = useState(false);
  if (made) return <MadeBackupPage backup={made} />;
  if (told)
    return (
      <BackupUnderWay
        title={w.making}
        howFar={told}
        leaveSecond={backupWords.leaveMakeSecond}
        leave={leave}
      />
    );
  const begin = (): void => {
    setTried(true);
    if (who === undefined || (who === 'locked' && passphraseFault(passphrase))) return;
    void make(who === 'locked' ? passphrase.first : null);
  };
  return (
    <Frame
      title={w.title}
      second={w.second}
      ways={[{ label: words.back, href: '#/record' }]}
      actions={
        <>
          <Fault words={fault} />
          <Button look="primary" voice="serif" onTap={begin}>
            {w.make}
          </Button>
        </>
      }
    >
      <Part>
        <p>{w.what}</p>
      </Part>
      <LastBackup />
      <Part rule>
        <Choices
          legend={w.who}
          value={who}
          error={tried && who === undefined ? w.choose : undefined}
          choices={[
            { value: 'plain', label: w.plain, second: w.plainSecond },
            { value: 'locked', label: w.locked, second: w.lockedSecond },
          ]}
          onChoose={setWho}
        />
        {who === 'locked' && <NewPassphrase value={passphrase} change={setPassphrase} tried={tried} />}
      </Part>
    </Frame>
  );
}
