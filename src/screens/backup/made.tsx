/** A backup that was just made: saving it, and saying so once it surely lies where it is kept. */
import { useState } from 'preact/hooks';
import { Button, Buttons } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Fault } from '../fault';
import { Frame } from '../frame';
import record from '../record/record.module.css';
import { ShareFiles, useAddress } from '../share-file';
import { useShell } from '../shell';
import { canPickPlace, saveToPlace } from './save-file';
import type { NamedBackup } from './use-make';
import { makeWords as w } from './words';

/** `handed`: the phone was asked to save or share it, and nobody knows what came of it. */
type Standing = { readonly is: 'made' | 'handed' | 'said' } | { readonly is: 'saved'; readonly name: string };

/** What is in it, and what is not. */
function Holding({ backup }: { readonly backup: NamedBackup }) {
  const { entries, files, damaged, unreadable, filesMissing, locked, missing, without } = backup;
  const lacks = without || missing > 0 || damaged > 0 || unreadable > 0;
  return (
    <Part>
      <p>{w.holds(entries, files, lacks)}</p>
      {missing > damaged && <Notice mark="unknown">{w.lacks(missing - damaged)}</Notice>}
      {missing === 0 && without && <Notice mark="unknown">{w.without}</Notice>}
      {damaged > 0 && <Notice mark="wrong">{w.damaged(damaged)}</Notice>}
      {unreadable > 0 && <Notice mark="wrong">{w.unreadable(unreadable)}</Notice>}
      {filesMissing > 0 && <Notice mark="unknown">{w.filesMissing(filesMissing)}</Notice>}
      <p>{locked ? w.isLocked : w.isPlain}</p>
    </Part>
  );
}

function Ways({
  address,
  backup,
  kept,
  handed,
}: {
  readonly address: string;
  readonly backup: NamedBackup;
  readonly kept: (name: string) => void;
  readonly handed: () => void;
}) {
  const { named } = backup;
  const [fault, setFault] = useState<string | null>(null);
  async function save(): Promise<void> {
    setFault(null);
    const saved = await saveToPlace(named);
    if (saved.state === 'saved') kept(saved.name);
    else if (saved.state === 'not-saved') setFault(w.notSaved);
  }
  return (
    <Buttons>
      <Fault words={fault} />
      {canPickPlace() ? (
        <Button look="primary" voice="serif" second={w.saveSecond} onTap={() => void save()}>
          {w.save}
        </Button>
      ) : (
        <Button
          look="primary"
          voice="serif"
          second={w.saveSecond}
          href={address}
          download={named.name}
          onTap={handed}
        >
          {w.save}
        </Button>
      )}
      <ShareFiles files={[named]} shared={handed} />
    </Buttons>
  );
}

/** The browser cannot tell: the person looks. */
const Asked = ({ yes, no }: { readonly yes: () => void; readonly no: () => void }) => (
  <Buttons>
    <Button look="primary" onTap={yes}>
      {w.yes}
    </Button>
    <Button onTap={no}>{w.no}</Button>
  </Buttons>
);

const titles = { made: w.madeTitle, handed: w.asked, said: w.madeTitle, saved: w.madeTitle } as const;

export function MadeBackupPage({ backup }: { readonly backup: NamedBackup }) {
  const { backups, go } = useShell();
  // For as long as the page stands: a phone may still be saving when the question is asked.
  const address = useAddress(backup.named);
  const [standing, setStanding] = useState<Standing>({ is: 'made' });
  const [noted, setNoted] = useState(true);
  const note = (next: Standing): void => {
    const { at, entries, heads } = backup;
    setNoted(backups.note({ at, entries, heads: [...heads] }));
    setStanding(next);
  };
  const isKept = standing.is === 'said' || standing.is === 'saved';
  return (
    <Frame
      title={titles[standing.is]}
      second={standing.is === 'handed' ? w.askedSecond : isKept ? undefined : w.madeSecond}
      focusKey={standing.is}
      ways={[{ label: w.toRecord, href: '#/record' }]}
      actions={
        isKept ? (
          <Button look="primary" onTap={() => go('record')}>
            {w.toRecord}
          </Button>
        ) : standing.is === 'handed' ? (
          <Asked yes={() => note({ is: 'said' })} no={() => setStanding({ is: 'made' })} />
        ) : (
          <Ways
            address={address}
            backup={backup}
            kept={(name) => note({ is: 'saved', name })}
            handed={() => setStanding({ is: 'handed' })}
          />
        )
      }
    >
      {standing.is === 'saved' && (
        <Notice mark="confirmed" role="status" second={w.savedSecond}>
          {w.saved(standing.name)}
        </Notice>
      )}
      {isKept && (
        <Part>
          <p>{noted ? w.noted : w.notNoted}</p>
        </Part>
      )}
      <Holding backup={backup} />
      <Rows>
        <Row
          title={<span class={record.hash}>{backup.named.name}</span>}
          second={w.fileName(backup.named.size)}
        />
      </Rows>
    </Frame>
  );
}
