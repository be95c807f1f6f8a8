/** Every entry and photo on the disk checked away from the page, and what came of it in plain words. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Soundness, Unsound } from '../../storage/soundness';
import { Button } from '../../ui/button';
import { Mark } from '../../ui/marks';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { ProgressBar } from '../../ui/progress-bar';
import { Row, Rows } from '../../ui/row';
import { countText } from '../amounts';
import type { RunningCheck, SoundnessChecked } from '../keeping/check-record';
import { useShell } from '../shell';
import { failureWords } from '../words';
import { deviceName, deviceText, hashText } from './entry-words';
import { percentOf } from './how-far';
import { verifyWords as w } from './verify-words';
import { wholeWords } from './words';

function WrongRow({ unsound }: { readonly unsound: Unsound }) {
  const wrong = { mark: <Mark kind="wrong" />, marked: true };
  const { whole } = useShell();
  if (unsound.what === 'photo')
    return <Row {...wrong} title={w.wrongPhoto} href={`#/photos/${unsound.hash}`} />;
  if (unsound.what === 'head') return <Row {...wrong} title={w.headWhy[unsound.why]} />;
  const { id, device, counter, why } = unsound;
  return (
    <Row
      {...wrong}
      title={w.wrongEntry(counter, deviceName(device, whole.device))}
      second={wholeWords.why[why.code]}
      href={id === null ? undefined : `#/record/entry/${id}`}
    />
  );
}

function NotWhole({ sound }: { readonly sound: Soundness }) {
  const { wrong, wrongCount } = sound;
  const untold = wrongCount - wrong.length;
  return (
    <>
      <Row mark={<Mark kind="wrong" />} title={w.notWhole(wrongCount)} marked second={w.notWholeSecond} />
      {wrong.map((unsound) => (
        <WrongRow key={JSON.stringify(unsound)} unsound={unsound} />
      ))}
      {untold > 0 && <Row title={w.moreWrong(untold)} />}
    </>
  );
}

function Heads({ heads }: Pick<Soundness, 'heads'>) {
  const { whole } = useShell();
  return (
    <Part rule title={w.heads} width="edge">
      <Rows>
        {heads.map(({ device, counter, hash }) => (
          <Row
            key={device}
            title={hashText(hash)}
            second={w.head(device === whole.device ? w.thisDevice : deviceText(device), countText(counter))}
          />
        ))}
      </Rows>
      <Part>
        <p>{w.headsSecond}</p>
      </Part>
    </Part>
  );
}

function Found({ sound }: { readonly sound: Soundness }) {
  const { entries, photos, photosElsewhere, wrongCount, heads } = sound;
  const count = countText(entries);
  return (
    <>
      <div role="status">
        <Rows>
          {wrongCount > 0 && <NotWhole sound={sound} />}
          {wrongCount === 0 && entries === 0 && <Row title={w.empty} />}
          {wrongCount === 0 && entries > 0 && <Row title={w.whole(count)} second={w.wholeSecond} />}
          <Row title={photos === 0 ? w.noPhotos : w.photos(countText(photos))} />
          {photosElsewhere > 0 && (
            <Row title={w.photosElsewhere(photosElsewhere)} second={w.photosElsewhereSecond} />
          )}
        </Rows>
      </div>
      {heads.length > 0 && <Heads heads={heads} />}
    </>
  );
}

function wordsOf(failure: Extract<SoundnessChecked, { ok: false }>['failure']): string {
  switch (failure.code) {
    case 'not-loaded':
      return w.notLoaded;
    case 'cancelled':
      return w.stopped;
    default:
      return failureWords(failure);
  }
}

export function CheckAll() {
  const { checkRecord, record } = useShell();
  const [howFar, setHowFar] = useState<{ readonly done: number; readonly of: number } | null>(null);
  const [checked, setChecked] = useState<SoundnessChecked | null>(null);
  const running = useRef<RunningCheck | null>(null);
  useEffect(() => () => running.current?.cancel(), []);
  const begin = async (): Promise<void> => {
    setChecked(null);
    setHowFar({ done: 0, of: 1 });
    running.current = checkRecord(record, setHowFar);
    setChecked(await running.current.checked);
    running.current = null;
    setHowFar(null);
  };
  return (
    <>
      <Part>
        {howFar === null ? (
          <Button look="primary" voice="serif" second={w.checkSecond} onTap={() => void begin()}>
            {w.check}
          </Button>
        ) : (
          <>
            <ProgressBar
              name={w.checking}
              says={w.howFar(countText(howFar.done), countText(howFar.of))}
              percent={percentOf(howFar)}
            />
            <Button onTap={() => running.current?.cancel()}>{w.stop}</Button>
          </>
        )}
        {checked && !checked.ok && (
          <Notice mark="unknown" role="alert">
            {wordsOf(checked.failure)}
          </Notice>
        )}
      </Part>
      {checked?.ok && <Found sound={checked.value} />}
    </>
  );
}
