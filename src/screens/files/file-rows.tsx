/** Papers that an entry names, each to be opened. A link that saves it under its name: it never opens as a page of the app. */
import type { FiledPaper } from '../../ledger/entries/files';
import { Button, Buttons } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { type Sight, useSights } from '../photos/use-sights';
import { useShell } from '../shell';
import { sizeText, fileWords as w } from './words';

const troubles = { missing: w.missing, damaged: w.damaged, 'not-read': w.notRead } as const;

function FileRow({ file, sight }: { readonly file: FiledPaper; readonly sight: Sight | undefined }) {
  const { sign } = useShell();
  const { name, bytes } = file;
  if (sight && sight.state !== 'there')
    return (
      <Notice mark={sight.state === 'damaged' ? 'wrong' : 'unknown'} second={troubles[sight.state]}>
        {name}
      </Notice>
    );
  return (
    <Button
      href={sight?.url}
      download={name}
      disabled={!sight}
      second={sight ? sizeText(bytes, sign.value) : w.opening}
    >
      {w.save(name)}
    </Button>
  );
}

export function FileRows({ files }: { readonly files: readonly FiledPaper[] }) {
  const sights = useSights(files.map(({ hash }) => hash));
  return files.length === 0 ? null : (
    <Buttons>
      {files.map((file) => (
        <FileRow key={file.hash} file={file} sight={sights.get(file.hash)} />
      ))}
    </Buttons>
  );
}
