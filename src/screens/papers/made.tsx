/** A paper that was just made: open it, save it, share it, save the data behind it. */
import { Button, Buttons } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Frame } from '../frame';
import { ShareFiles, useAddress } from '../share-file';
import type { MadePaper } from './making';
import styles from './papers.module.css';
import { paperWords as w } from './words';

type MadeProps = {
  readonly paper: MadePaper;
  /** What follows on it. */
  readonly next?: { readonly label: string; readonly second: string; readonly href: string };
  /** What is said of it; of a disposal paper unless said otherwise. */
  readonly says?: {
    readonly title: string;
    readonly confirm: string;
    readonly keep: string;
    readonly open: string;
  };
};

const ofDisposal = { title: w.madeTitle, confirm: w.madeConfirm, keep: w.madeKeep, open: w.open };

function SaveBeside({ file }: { readonly file: File }) {
  const { says, second } = w.besides(file.type);
  return (
    <Button href={useAddress(file)} download={file.name} second={second}>
      {says}
    </Button>
  );
}

export function Made({ paper, next, says = ofDisposal }: MadeProps) {
  const { file, besides, codes, contentHash } = paper;
  const address = useAddress(file);
  return (
    <Frame
      title={says.title}
      second={codes.join(', ')}
      focusKey={contentHash}
      ways={[{ label: w.toPapers, href: '#/papers' }]}
      actions={
        <Buttons>
          <Button look="primary" voice="serif" href={address} download={file.name}>
            {w.save}
          </Button>
          <Buttons side>
            <Button centred href={address} beside>
              {says.open}
            </Button>
            <ShareFiles files={[file, ...besides]} />
          </Buttons>
        </Buttons>
      }
    >
      <Notice mark="candidate">{says.confirm}</Notice>
      <Part>
        <p>{says.keep}</p>
        <p>{w.print}</p>
        {next && (
          <Button href={next.href} second={next.second}>
            {next.label}
          </Button>
        )}
      </Part>
      <Rows>
        <Row title={<span class={styles.hash}>{file.name}</span>} second={w.fileName} />
        <Row title={<span class={styles.hash}>{contentHash}</span>} second={w.contentHash} />
      </Rows>
      {besides.length > 0 && (
        <Part rule>
          {besides.map((one) => (
            <SaveBeside key={one.name} file={one} />
          ))}
        </Part>
      )}
    </Frame>
  );
}
