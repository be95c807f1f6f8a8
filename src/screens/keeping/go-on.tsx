/** Going on without what is lost or damaged, or with a new record: what is given up is read first, and decided after that. */
import { useState } from 'preact/hooks';
import { gapLength } from '../../ledger/chains';
import type { StoreFailure } from '../../storage/failure';
import { entriesTold, missingBefore, type Trouble } from '../../storage/trouble';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { Fault } from '../fault';
import { Frame } from '../frame';
import styles from '../record/record.module.css';
import { useShell } from '../shell';
import { failureWords } from '../words';
import { goOnWords as w } from './words';

/** What is given up, or stands in the figures though it is damaged. @param had entries by the marker; null where it cannot be read */
function givenUp(one: Trouble, had: number | null): readonly string[] {
  switch (one.code) {
    case 'gone':
      return [had === null ? w.recordUnknown : w.record(had), w.recordMeans];
    case 'shorter':
      return [w.lost(one.entries)];
    case 'damaged': {
      const heads = one.wrong.filter(({ what }) => what === 'head').length;
      const gaps = one.wrong.flatMap((wrong) => missingBefore(wrong) ?? []);
      const entries = one.wrong.flatMap((wrong) =>
        wrong.what === 'entry' && missingBefore(wrong) === null ? [wrong.why.code] : [],
      );
      const leftOut = entries.filter((code) => code === 'schema').length;
      const counted = entries.length - leftOut;
      const untold = one.count - one.wrong.length;
      return [
        ...gaps.map((gap) => w.missing(gapLength(gap))),
        ...(counted > 0 ? [w.counted(counted)] : []),
        ...(leftOut > 0 ? [w.leftOut(leftOut)] : []),
        ...(heads > 0 ? [w.head] : []),
        ...(untold > 0 ? [w.untold(untold)] : []),
      ];
    }
    case 'later-version':
      return [];
  }
}

export function GoOnScreen() {
  const { trouble, marker, goOn } = useShell();
  const [isRead, setRead] = useState(false);
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<StoreFailure | null>(null);
  const found = marker();
  const had = found.state === 'there' ? entriesTold(found.marker) : null;
  const lines = trouble.value.flatMap((one) => givenUp(one, had));
  const isGone = trouble.value.some(({ code }) => code === 'gone');
  async function decide(): Promise<void> {
    setBusy(true);
    setFailure(await goOn());
    setBusy(false);
  }
  const back = (
    <Button look="primary" href="#/record/not-whole">
      {w.no}
    </Button>
  );
  if (lines.length === 0) return <Frame place="record" title={w.nothing} actions={back} />;
  return (
    <Frame
      place="record"
      title={isRead ? w.sureTitle : isGone ? w.beginTitle : w.goOnTitle}
      focusKey={`go-on ${isRead}`}
      actions={
        <Buttons>
          {back}
          {isRead ? (
            <Button disabled={busy} onTap={() => void decide()}>
              {isGone ? w.begin : w.goOn}
            </Button>
          ) : (
            <Button onTap={() => setRead(true)}>{w.read}</Button>
          )}
        </Buttons>
      }
    >
      <Fault words={failure && failureWords(failure)} />
      <Part rule title={w.given}>
        <ul class={styles.plain}>
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </Part>
      <Part rule>
        <p>{isRead ? w.sure : w.first}</p>
        <p>{w.stays}</p>
      </Part>
    </Frame>
  );
}
