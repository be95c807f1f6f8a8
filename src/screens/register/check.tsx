/** Whether a file is still as it was made: chosen, looked at on this phone, nothing kept. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { Button } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { PickFile } from '../../ui/pick-file';
import { Frame } from '../frame';
import record from '../record/record.module.css';
import { useShell } from '../shell';
import type { CheckedFile, Checking } from './check-file';
import { registerPageWords as w } from './words';

const accepted = '.json,.pdf,.zip,application/json,application/pdf,application/zip';

function Told({ file }: { readonly file: CheckedFile }) {
  const { name, outcome, title, lines } = file;
  return (
    <Part rule title={<span class={record.hash}>{name}</span>}>
      {outcome === 'whole' ? (
        <p>
          <strong>{w.whole}</strong>
        </p>
      ) : (
        <Notice mark={outcome === 'wrong' ? 'wrong' : 'unknown'}>{w[outcome]}</Notice>
      )}
      <ul class={record.plain}>
        {[...(outcome === 'whole' ? [title] : []), ...lines].map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Part>
  );
}

export function CheckFileScreen() {
  const { checkFile } = useShell();
  const [files, setFiles] = useState<readonly CheckedFile[] | null>(null);
  const [name, setName] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const checking = useRef<Checking | null>(null);
  useEffect(() => () => checking.current?.cancel(), []);
  async function check(file: File | undefined): Promise<void> {
    if (!file || checking.current) return;
    setFiles(null);
    setFault(null);
    setName(file.name);
    try {
      checking.current = checkFile(file);
      const result = await checking.current.checked;
      if (result.ok) setFiles(result.files);
      else if (result.failure !== 'cancelled')
        setFault(result.failure === 'not-loaded' ? w.notLoaded : w.notChecked);
    } catch (cause) {
      console.warn('the file was not checked', cause);
      setFault(w.notChecked);
    }
    checking.current = null;
    setName(null);
  }
  return (
    <Frame
      place="record"
      title={w.checkTitle}
      second={w.checkSecond}
      actions={
        name === null ? (
          <PickFile
            words={files === null ? w.choose : w.another}
            accept={accepted}
            describedBy={undefined}
            onFiles={([file]) => void check(file)}
          />
        ) : (
          <Button onTap={() => checking.current?.cancel()}>{w.cancel}</Button>
        )
      }
    >
      <Part>
        <p>{w.checkWhat}</p>
        <p role="status">{name === null ? '' : w.checking(name)}</p>
        {fault !== null && (
          <Notice mark="unknown" role="alert">
            {fault}
          </Notice>
        )}
      </Part>
      <div role="status">
        {(files ?? []).map((file) => (
          <Told key={file.name} file={file} />
        ))}
      </div>
    </Frame>
  );
}
