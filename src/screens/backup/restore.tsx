/** Restoring and joining: a file is chosen, all of it is checked, what it would do is shown, and only then is it done. */
import { useState } from 'preact/hooks';
import { Button } from '../../ui/button';
import { Tick } from '../../ui/choices';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { PickFile } from '../../ui/pick-file';
import { TextField } from '../../ui/text-field';
import { Fault } from '../fault';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { FoundBackupPage } from './found';
import { BackupUnderWay } from './under-way';
import { type Restoring, useRestore } from './use-restore';
import { backupWords, restoreWords as w } from './words';

/** Any file: phones grey out what they do not know, and few know what ends in .age. */
const anything = '';

type Choose = { readonly fault: string | null; readonly look: (file: File) => void };

const ChooseBackup = ({ fault, look }: Choose) => (
  <Frame
    title={w.title}
    second={w.second}
    focusKey="choose"
    ways={[{ label: words.back, href: '#/record' }]}
    actions={
      <PickFile
        words={fault === null ? w.choose : w.another}
        accept={anything}
        describedBy={undefined}
        onFiles={([file]) => file && look(file)}
      />
    }
  >
    {fault !== null && (
      <Notice mark="wrong" role="alert" second={w.refused}>
        {fault}
      </Notice>
    )}
    <Part>
      <p>{w.what}</p>
      <p>{w.joins}</p>
    </Part>
  </Frame>
);

type Unlock = {
  readonly name: string;
  readonly fault: string | null;
  readonly unlock: (passphrase: string) => void;
  readonly leave: () => void;
};

function Locked({ name, fault, unlock, leave }: Unlock) {
  const [passphrase, setPassphrase] = useState('');
  const [shown, setShown] = useState(false);
  return (
    <Frame
      title={w.lockedTitle}
      second={name}
      focusKey="locked"
      ways={[{ label: words.back, onTap: leave }]}
      actions={
        <>
          <Fault words={fault} />
          <Button look="primary" disabled={passphrase === ''} onTap={() => unlock(passphrase)}>
            {w.unlock}
          </Button>
        </>
      }
    >
      <Part>
        <p>{w.lockedWhat}</p>
        <TextField
          label={w.passphrase}
          kind={shown ? 'text' : 'password'}
          autoComplete="current-password"
          value={passphrase}
          onInput={setPassphrase}
        />
        <Tick label={w.show} checked={shown} onChange={setShown} />
      </Part>
    </Frame>
  );
}

type DoneProps = Omit<Extract<Restoring, { at: 'done' }>, 'at'>;

function Done({ came, mended, without, short, isAsked }: DoneProps) {
  const { backups } = useShell();
  return (
    <Frame
      title={w.doneTitle}
      focusKey="done"
      ways={[]}
      actions={
        <Button
          look="primary"
          voice="serif"
          onTap={() => backups.openAgain(short > 0 ? 'record/not-whole' : isAsked ? 'record/holder' : '')}
        >
          {short > 0 ? w.openShort : w.open}
        </Button>
      }
    >
      <Part>
        <div role="status">
          {[w.came(came.entries, came.files), w.wereMended(mended.entries, mended.files)].map(
            (words) => words && <p key={words}>{words}</p>,
          )}
        </div>
        {without.length > 0 && <p>{w.doneWithout}</p>}
        {short > 0 && <p>{w.doneShort(short)}</p>}
      </Part>
    </Frame>
  );
}

export function RestoreScreen() {
  const { restoring, look, bring, leave } = useRestore();
  switch (restoring.at) {
    case 'choose':
      return <ChooseBackup fault={restoring.fault} look={(file) => void look(file)} />;
    case 'locked':
      return (
        <Locked
          name={restoring.file.name}
          fault={restoring.fault}
          unlock={(passphrase) => void look(restoring.file, passphrase)}
          leave={leave}
        />
      );
    case 'work':
      return (
        <BackupUnderWay
          title={restoring.title}
          howFar={restoring.howFar}
          leaveSecond={restoring.canLeave ? backupWords.leaveRestoreSecond : w.notUndone}
          leave={restoring.canLeave ? leave : null}
        />
      );
    case 'found':
      return (
        <FoundBackupPage
          found={restoring.found}
          fault={restoring.fault}
          bring={() => void bring(restoring.found)}
          leave={leave}
        />
      );
    case 'done':
      return <Done {...restoring} />;
  }
}
