/** The walk along the containers, one after the other, then the looks of the place. What was seen is written down already. */
import { useState } from 'preact/hooks';
import { changedForPerson } from '../../ledger/last-gone-through';
import { isToSee, walkOrder } from '../../ledger/walks';
import { Button } from '../../ui/button';
import { useStayAwake } from '../../ui/stay-awake';
import { AskedItem } from '../checklist/asked-item';
import { HasChanged } from '../checklist/has-changed';
import { PersonFirst } from '../checklist/person-first';
import { Fault } from '../fault';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { ContainerPage, WalkPegs } from './container-page';
import { useWalk, type WalkOnScreen } from './use-walk';
import { WalkStop } from './walk-stop';
import { walkWords as w } from './words';
import { WrongPage } from './wrong-page';

type Props = { readonly on: WalkOnScreen };

/** A look of the place as a whole. */
function PlaceLook({ on, item }: Props & { readonly item: NonNullable<WalkOnScreen['openLook']> }) {
  return (
    <AskedItem
      key={`${item.id} ${on.draft.openedAt}`}
      item={item}
      list={on.list.id}
      seed={on.draft.walkId}
      openedAt={on.draft.openedAt}
      above={<WalkPegs on={on} />}
      ways={[
        { label: w.pause, href: '#/today' },
        ...(on.undo ? [{ label: on.undo.said, onTap: on.undo.take }] : []),
      ]}
      give={(given, said) => on.answerPlace(item, given, said)}
      fault={on.fault}
    />
  );
}

/** Everything is looked at, and yet the walk is not written: the store failed. */
const AllSeen = ({ on }: Props) => (
  <Frame
    title={w.all.title}
    second={w.all.second}
    focusKey="all seen"
    ways={[{ label: w.pause, href: '#/today' }]}
    actions={
      <>
        <Fault words={on.fault} />
        <Button look="primary" disabled={on.busy} onTap={() => void on.finish()}>
          {w.all.write}
        </Button>
      </>
    }
  />
);

function Walking({ only }: { readonly only?: string | undefined }) {
  const on = useWalk(only);
  useStayAwake();
  const { state, person } = useShell();
  const [read, setRead] = useState(false);
  const { stop, wrong, place, notSeen } = on.draft;
  const isBegun = on.passed + place.length + notSeen.length > 0;
  const changes =
    read || isBegun || only !== undefined ? [] : changedForPerson(state.value, on.list, person.value ?? '');
  if (stop) return <WalkStop on={on} stop={stop} key={stop.findingId} />;
  if (wrong) return <WrongPage on={on} wrong={wrong} />;
  if (changes.length > 0)
    return <HasChanged title={on.list.title} changes={changes} home="today" onRead={() => setRead(true)} />;
  if (on.container) return <ContainerPage on={on} container={on.container} key={on.container.entryId} />;
  if (only !== undefined) return <OneSeen />;
  if (on.openLook) return <PlaceLook on={on} item={on.openLook} />;
  return <AllSeen on={on} />;
}

const OneSeen = () => (
  <Frame
    title={w.oneSeen}
    place="today"
    actions={
      <Button look="primary" href="#/today">
        {w.toToday}
      </Button>
    }
  />
);

const NothingToSee = () => (
  <Frame
    title={w.none}
    second={w.noneSecond}
    place="today"
    actions={
      <Button look="primary" href="#/today">
        {w.toToday}
      </Button>
    }
  />
);

export function WalkScreen() {
  const { state } = useShell();
  if (walkOrder(state.value).length === 0) return <NothingToSee />;
  return (
    <PersonFirst>
      <Walking />
    </PersonFirst>
  );
}

/** One container that the last walk could not see. */
export function LookScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const container = state.value.containers.get(at.container ?? '');
  if (!container || !isToSee(container)) return <NothingToSee />;
  return (
    <PersonFirst>
      <Walking only={container.body.containerId} />
    </PersonFirst>
  );
}
