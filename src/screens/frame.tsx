/** The frame that every screen has: clock, ribbon of the demo, the waiting version, and the bar. */
import { format } from 'date-fns';
import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import { type BarAction, PlacesBar, TaskBar } from '../ui/bar';
import { Button } from '../ui/button';
import { DemoRibbon } from '../ui/demo-ribbon';
import type { KeptPlace } from '../ui/kept-place';
import { Page, type PageProps } from '../ui/page';
import type { Place } from '../ui/places';
import { OverdueStrip } from './clocks/rows';
import { ElsewhereStrip, NotKeptStrip, NotWholeStrip, OutdatedStrip } from './keeping/strip';
import { WayBack } from './papers/way-back';
import { useShell } from './shell';
import { words } from './words';

/** Hour and minute where the person is. */
export const hour = (iso: string): string => format(new Date(iso), 'HH:mm');

/** Top line of every page. */
export function useTopLine() {
  const { now, online } = useShell();
  return { clock: hour(now.value), network: online.value ? undefined : words.noNetwork };
}

/** Offered on every page, also on those that stand where the record does not open. */
export function NewVersion({ waiting, take }: { readonly waiting: boolean; readonly take: () => void }) {
  if (!waiting) return null;
  return (
    <aside aria-label={words.newVersion}>
      <Button second={words.newVersionSecond} onTap={take}>
        {words.newVersionTake}
      </Button>
    </aside>
  );
}

/** Where the person was on this page when they come back to it by the browser's own back. */
function useKeptPlace() {
  const { here } = useShell();
  return useMemo(() => {
    const step = here();
    return {
      read: () => (step.read('place') ?? null) as KeptPlace | null,
      keep: (place: KeptPlace | null) => step.keep('place', place),
    };
  }, [here]);
}

type FrameProps = Omit<PageProps, 'top' | 'kept' | 'ribbon' | 'bar' | 'focusKey'> & {
  /** The place this page belongs to: its bar shows the five places. */
  readonly place?: Place;
  /** Inside a task the bar holds the task's own ways out instead. */
  readonly ways?: readonly BarAction[];
  /** Changes with the question inside one address, so that focus goes to the new title. */
  readonly focusKey?: string;
  /** On the emergency card itself the bar needs no way to it. */
  readonly sos?: boolean;
  readonly children?: ComponentChildren;
};

export function Frame({ place, ways, focusKey, sos = true, children, ...page }: FrameProps) {
  const { record, path, updateWaiting, takeUpdate } = useShell();
  const kept = useKeptPlace();
  return (
    <Page
      {...page}
      top={useTopLine()}
      kept={kept}
      focusKey={focusKey ?? path.value.join('/')}
      ribbon={
        record === 'demo' ? (
          <DemoRibbon href="#/record/demo" leave={words.demoLeave}>
            {words.demoRibbon}
          </DemoRibbon>
        ) : undefined
      }
      bar={ways ? <TaskBar sos={sos}>{ways}</TaskBar> : <PlacesBar open={place} />}
    >
      <NewVersion waiting={updateWaiting.value} take={takeUpdate} />
      <OverdueStrip leads={ways === undefined} />
      {sos && <OutdatedStrip />}
      {sos && <NotWholeStrip leads={ways === undefined} />}
      {sos && ways && <NotKeptStrip />}
      <ElsewhereStrip />
      <WayBack />
      {children}
    </Page>
  );
}
