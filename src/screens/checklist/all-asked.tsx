/** Every question has its answer, and yet the clearance is not written: the store failed, or an hour has passed. */
import { hourPassed, namedFor } from '../../safety/named-time';
import { Button } from '../../ui/button';
import { useTapGuard } from '../../ui/tap-guard';
import { Frame, hour } from '../frame';
import { useShell } from '../shell';
import { When } from './further-pages';
import type { RunOnScreen } from './use-run';
import { words } from './words';

const ToWrite = ({ on, home }: { readonly on: RunOnScreen; readonly home: string }) => (
  <Frame
    title={words.complete.title}
    second={words.complete.second}
    focusKey="complete"
    ways={[
      { label: words.pause, href: `#/${home}` },
      { label: words.backOne, onTap: on.takeBack },
    ]}
    actions={
      <>
        {on.fault !== null && <p role="alert">{on.fault}</p>}
        <Button look="primary" onTap={() => void on.clear()}>
          {words.complete.write}
        </Button>
      </>
    }
  />
);

/** Whoever checks from afar was to ring at an hour that has passed meanwhile: another hour is asked for. */
export function AllAsked({ on, home }: { readonly on: RunOnScreen; readonly home: string }) {
  const { moment } = useShell();
  const guard = useTapGuard('all asked', moment);
  const passed = hourPassed(on.run, moment());
  if (!passed) return <ToWrite on={on} home={home} />;
  const { name, at } = passed.who;
  const again = (to: string): void => {
    const run = namedFor(on.run, passed.item, to);
    on.goOnWith(run);
    void on.clear(run);
  };
  return (
    <When
      guard={guard}
      name={name}
      second={words.passed(name, hour(at))}
      onBack={on.takeBack}
      onTime={again}
    />
  );
}
