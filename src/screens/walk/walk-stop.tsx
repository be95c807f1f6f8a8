/** The red page of the walk: back off, the card, the way to make it right; then on. It stands also when nothing could be written. */
import { useState } from 'preact/hooks';
import { type Door, doorsFor } from '../../safety/checklist-item';
import { stopOf } from '../../safety/judge-answer';
import { safetyWords } from '../../safety/words';
import { TaskBar } from '../../ui/bar';
import { Button } from '../../ui/button';
import { StopPage } from '../../ui/stop-page';
import { useTapGuard } from '../../ui/tap-guard';
import { Why } from '../checklist/why';
import { words as listWords, stopTitle, stopWhy } from '../checklist/words';
import { DonePage } from '../findings/done';
import { useTopLine } from '../frame';
import { useShell } from '../shell';
import type { Stop } from './draft';
import type { WalkOnScreen } from './use-walk';
import { walkWords as w } from './words';

type Props = { readonly on: WalkOnScreen; readonly stop: Stop };

export function WalkStop({ on, stop }: Props) {
  const { moment, sign } = useShell();
  const top = useTopLine();
  const [aside, setAside] = useState<'why' | 'done' | null>(null);
  const { answered, written, findingId } = stop;
  const guard = useTapGuard(`${findingId} ${aside} ${written}`, moment);
  const item = on.list.items.find(({ id }) => id === answered.item);
  const { wrong } = on.draft;
  if (!item) return null;
  if (aside === 'why') return <Why item={item} onBack={() => setAside(null)} />;
  if (aside === 'done')
    return (
      <DonePage
        findingId={findingId}
        second={stopTitle(item, answered, sign.value)}
        onBack={() => setAside(null)}
        write={(done, photos) => on.sayDone(stop, done, photos)}
      />
    );
  const leads = ({ leads: to }: Door) =>
    to === 'open-card'
      ? { href: `#/sos/${item.card}` }
      : { onTap: guard(() => setAside('done')), disabled: !written };
  return (
    <StopPage
      top={top}
      word={safetyWords.stop}
      title={stopTitle(item, answered, sign.value)}
      why={stopWhy(item, answered, sign.value)}
      focusKey={`stop ${findingId}`}
      doorsTitle={listWords.later.doNow}
      doors={
        <>
          {on.fault !== null && <p role="alert">{on.fault}</p>}
          {doorsFor(item, stopOf(answered)).map((door, at) => (
            <Button key={door.do} look={at === 0 ? 'primary' : 'door'} {...leads(door)}>
              {door.do}
            </Button>
          ))}
          {written ? (
            <Button onTap={guard(on.goOn)} second={w.stop.goOnSecond}>
              {w.stop.goOn}
            </Button>
          ) : (
            wrong && (
              <Button disabled={on.busy} onTap={guard(() => void on.writeStop(wrong, stop))}>
                {w.stop.write}
              </Button>
            )
          )}
        </>
      }
      bar={
        <TaskBar>
          {[
            { label: listWords.whyAndSource, onTap: () => setAside('why') },
            ...(on.undo ? [{ label: on.undo.said, onTap: on.undo.take }] : []),
          ]}
        </TaskBar>
      }
    />
  );
}
