/** Makes a backup of the open record, or of what is left of one. */
import { format } from 'date-fns';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { MadeBackup } from '../../storage/backup/make-backup';
import { useShell } from '../shell';
import { type HowFar, howFar, notBegun, spansOf } from './how-far';
import type { BackupWork } from './in-worker';
import { refusalOfMaking, workFailureWords } from './words';

/** A backup with the name under which it is saved. */
export type NamedBackup = MadeBackup & { readonly named: File; readonly at: string };

/** Hours and minutes of the place, so that two of one day are told apart and stand in order. */
const fileName = (madeAt: string, locked: boolean): string =>
  `leesbook-backup-${format(new Date(madeAt), 'yyyy-MM-dd-HHmm')}.zip${locked ? '.age' : ''}`;

const named = (backup: MadeBackup, at: string): NamedBackup => {
  const type = backup.locked ? 'application/octet-stream' : 'application/zip';
  return { ...backup, at, named: new File([backup.file], fileName(at, backup.locked), { type }) };
};

/** Leaving the page ends what is being made. */
export function useMakeBackup() {
  const { record, moment, appVersion, backups, marker } = useShell();
  const [made, setMade] = useState<NamedBackup | null>(null);
  const [told, setTold] = useState<HowFar | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const work = useRef<BackupWork | null>(null);
  useEffect(() => () => work.current?.end(), []);

  async function make(passphrase: string | null): Promise<void> {
    if (work.current) return;
    const at = moment();
    setFault(null);
    setTold(notBegun);
    work.current = backups.work();
    const found = marker();
    const without = found.state === 'there' ? found.marker.without : [];
    const wanted = { record, madeAt: at, appVersion, passphrase, without };
    const result = await work.current.make(wanted, (progress) => setTold(howFar(spansOf.make, progress)));
    work.current.end();
    work.current = null;
    setTold(null);
    if (result.ok) setMade(named(result.backup, at));
    else setFault('refusal' in result ? refusalOfMaking(result.refusal) : workFailureWords(result.failure));
  }

  return { make, made, told, fault, leave: () => work.current?.end() };
}
