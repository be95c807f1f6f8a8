/** The record is gone, cut short or damaged: what is known of it, what is wrong, what can be done. */
import { gapLength } from '../../ledger/chains';
import { entriesTold, missingBefore, type Trouble } from '../../storage/trouble';
import { Button, Buttons } from '../../ui/button';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { momentText } from '../amounts';
import { Frame } from '../frame';
import { deviceName, lower } from '../record/entry-words';
import { verifyWords } from '../record/verify-words';
import { useShell } from '../shell';
import { GoneOnWithout, useGoneOnWithout } from './gone-on-without';
import { notWholeWords as w } from './words';

const has = (trouble: readonly Trouble[], code: Trouble['code']): boolean =>
  trouble.some((one) => one.code === code);

/** Nothing but entries of a newer version: they are whole. */
const onlyLater = (trouble: readonly Trouble[]): boolean =>
  trouble.length > 0 && trouble.every(({ code }) => code === 'later-version');

function titleOf(trouble: readonly Trouble[], isWithout: boolean): string {
  if (trouble.length === 0) return isWithout ? w.withoutHeading : w.wholeTitle;
  if (has(trouble, 'gone')) return w.goneTitle;
  return onlyLater(trouble) ? w.laterTitle : w.title;
}

/** Of many damaged entries so many are named. */
const mostNamed = 8;

type Damaged = Extract<Trouble, { code: 'damaged' }>['wrong'][number];

function DamagedRow({ found }: { readonly found: Damaged }) {
  const { whole } = useShell();
  const wrong = <Mark kind="wrong" />;
  if (found.what === 'head') return <Row mark={wrong} title={w.head} second={w.headSecond[found.why]} />;
  const href = found.id === null ? undefined : `#/record/entry/${found.id}`;
  const entry = verifyWords.wrongEntry(found.counter, deviceName(found.device, whole.device));
  const gap = missingBefore(found);
  return gap ? (
    <Row mark={wrong} title={w.missing(gapLength(gap), lower(entry))} second={w.missingSecond} href={href} />
  ) : (
    <Row mark={wrong} title={w.damaged(entry)} second={w.why[found.why.code]} href={href} />
  );
}

function TroubleRows({ one }: { readonly one: Trouble }) {
  const wrong = <Mark kind="wrong" />;
  switch (one.code) {
    case 'gone':
      return <Row mark={wrong} title={w.gone} second={w.goneSecond} />;
    case 'shorter':
      return one.entries === 0 ? (
        <Row mark={wrong} title={w.another} second={w.anotherSecond} />
      ) : (
        <Row mark={wrong} title={w.shorter(one.entries)} second={w.shorterSecond} />
      );
    case 'later-version':
      return <Row mark={<Mark kind="unknown" />} title={w.later(one.entries)} second={w.laterSecond} />;
    case 'damaged':
      return (
        <>
          {one.wrong.slice(0, mostNamed).map((found) => (
            <DamagedRow key={JSON.stringify(found)} found={found} />
          ))}
          {one.count > mostNamed && <Row start="text" title={w.more(one.count - mostNamed)} />}
        </>
      );
  }
}

/** What the marker tells, which lies apart from the record. */
function MarkerRows() {
  const { marker, now } = useShell();
  const found = marker();
  if (found.state !== 'there')
    return found.state === 'unreadable' ? (
      <Row start="text" title={w.markerUnreadable} second={w.markerUnreadableSecond} />
    ) : null;
  const { writtenAt, lastBackup } = found.marker;
  const entries = entriesTold(found.marker);
  const since = lastBackup === null ? 0 : entries - lastBackup.entries;
  return (
    <>
      <Row
        start="text"
        title={w.markerHad(entries, writtenAt && momentText(writtenAt, now.value))}
        second={w.markerSecond}
      />
      {lastBackup === null ? (
        <Row start="text" title={w.noBackup} second={w.noBackupSecond} />
      ) : (
        <Row
          start="text"
          title={w.backup(momentText(lastBackup.at, now.value), lastBackup.entries)}
          second={since > 0 ? w.backupSince(since) : w.backupAll}
        />
      )}
    </>
  );
}

function Ways({ trouble }: { readonly trouble: readonly Trouble[] }) {
  const isGone = has(trouble, 'gone');
  return (
    <Buttons>
      <Button look="primary" href="#/record/restore" second={w.restoreSecond}>
        {w.restore}
      </Button>
      {!isGone && (
        <Button href="#/record/backup" second={w.takeOutSecond}>
          {w.takeOut}
        </Button>
      )}
      <Button href="#/record/not-whole/go-on" second={isGone ? w.beginSecond : w.goOnSecond}>
        {isGone ? w.begin : w.goOn}
      </Button>
    </Buttons>
  );
}

/** What was given up may still turn up. */
const WayBack = () => (
  <Button href="#/record/restore" second={w.withoutRestoreSecond}>
    {w.restore}
  </Button>
);

export function NotWholeScreen() {
  const { trouble } = useShell();
  const isWithout = useGoneOnWithout().length > 0;
  const found = trouble.value;
  const isWrong = found.length > 0;
  const title = titleOf(found, isWithout);
  return (
    <Frame
      place="record"
      title={title}
      second={isWrong || isWithout ? undefined : w.wholeSecond}
      focusKey={`not-whole ${title}`}
      actions={isWrong ? !onlyLater(found) && <Ways trouble={found} /> : isWithout ? <WayBack /> : undefined}
    >
      {isWrong && (
        <Part rule width="edge" title={w.wrongTitle}>
          <Rows>
            {found.map((one, at) => (
              <TroubleRows key={`${one.code} ${at}`} one={one} />
            ))}
          </Rows>
        </Part>
      )}
      {isWrong && !onlyLater(found) && (
        <Part rule width="edge" title={w.markerTitle}>
          <Rows>
            <MarkerRows />
          </Rows>
        </Part>
      )}
      {isWrong && (
        <Part rule>
          <p>{w.kept}</p>
        </Part>
      )}
      <GoneOnWithout />
    </Frame>
  );
}
