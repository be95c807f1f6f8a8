/** Goes through a checklist, for a batch, a container or the whole place. */
import { useState } from 'preact/hooks';
import { changedForPerson } from '../../ledger/last-gone-through';
import { requiredBefore } from '../../ledger/step-offers';
import { treatmentStep } from '../../ledger/treatment';
import { workshopLists } from '../../ledger/workshop-lists';
import { isWalk } from '../../safety/checklist-schema';
import { contentHash } from '../../safety/checklists';
import { useStayAwake } from '../../ui/stay-awake';
import { momentText } from '../amounts';
import { useShell } from '../shell';
import { AllAsked } from './all-asked';
import { Already } from './already';
import { LookAgain, Restart } from './came-back';
import { HasChanged } from './has-changed';
import { codeOf, type Going, homeOf, listFor } from './list-for';
import { Nowhere } from './nowhere';
import { PersonFirst } from './person-first';
import { placeWords } from './place-words';
import { Question } from './question';
import { RequiredFirst } from './required-first';
import { Stopped } from './stopped';
import { useEnding } from './use-ending';
import { type RunOnScreen, useRun } from './use-run';
import { taskLine, words } from './words';

/** An address of the time when the walk was a list over all containers at once. */
const toWalk = { href: '#/walk', words: words.step.toWalk };

const containerFirst = { href: '#/treatment/begin', words: words.step.toContainers };

type Props = Going & { readonly person: string };

/** Why the run cannot go on as it was begun: somebody else answered, elsewhere, or another list; null when it can. */
function useOther(on: RunOnScreen, { list, person }: Props) {
  const { state } = useShell();
  const { context } = on.run;
  if (context.person !== person) {
    const name = state.value.people.get(context.person)?.body.name ?? words.resume.nobody;
    return { reason: words.resume.otherPerson(name), onRestart: on.restart };
  }
  if (on.run.list !== list && contentHash(on.run.list) !== contentHash(list))
    return { reason: words.resume.otherList, onRestart: on.restart };
  if (on.isElsewhere && on.begun)
    return {
      reason: placeWords.moved(context.place?.name, on.place?.name),
      onRestart: () => on.moveTo(on.place?.id ?? null),
    };
  return null;
}

/** "Late: the step began at 10:20", for a list of a step that has begun. */
function useLateLine({ what }: Going): string | undefined {
  const { state, now } = useShell();
  const step = state.value.steps.get(what.lateFor ?? '');
  return step && words.late.line(momentText(step.at, now.value));
}

/** The question, the stop or the end where the run stands. */
function Stand(props: Props & { readonly on: RunOnScreen; readonly onAlready: () => void }) {
  const { list, what, on, onAlready } = props;
  const { state } = useShell();
  const ending = useEnding(on, { list, what });
  const late = useLateLine({ list, what });
  const home = homeOf(what);
  if (on.now.state === 'complete') return <AllAsked on={on} home={home} />;
  if (on.now.state === 'stopped')
    return (
      <Stopped
        on={on}
        stop={on.now}
        onPutOff={() => void ending.putOff()}
        onAlready={late === undefined ? onAlready : undefined}
      />
    );
  return (
    <Question
      key={`${on.now.item.id} ${on.run.openedAt}`}
      on={on}
      next={on.now}
      task={taskLine(list.title, codeOf(state.value, what), on.run.context.place?.name)}
      second={late}
      home={home}
    />
  );
}

function Running(props: Props) {
  const { list, what, person } = props;
  const { state, now } = useShell();
  const on = useRun(list, what, person);
  const ending = useEnding(on, props);
  const other = useOther(on, props);
  const [already, setAlready] = useState(false);
  const [read, setRead] = useState(false);
  const onAlready = (): void => {
    if (list.step === treatmentStep) void ending.alreadyTreated();
    else setAlready(true);
  };
  useStayAwake();
  const home = homeOf(what);
  if (already)
    return (
      <Already
        title={list.already}
        fault={on.fault}
        onBack={() => setAlready(false)}
        onWrite={(at, note) => void ending.already(at, note)}
      />
    );
  if (other) return <Restart {...other} home={home} />;
  const asking = {
    batchId: what.batchId,
    stationId: on.run.context.place?.id,
    who: person,
    at: now.value,
  };
  const [required] = requiredBefore(state.value, list, asking);
  // A late list clears nothing, so nothing is wanted before it.
  if (required && on.now.state === 'next' && what.lateFor === undefined)
    return <RequiredFirst list={list} what={what} required={required} onAlready={onAlready} />;
  if (on.arrived.how === 'restart')
    return <Restart reason={words.resume.tooOld(on.arrived.minutes)} home={home} onRestart={on.restart} />;
  if (on.arrived.how === 'look-again')
    return <LookAgain arrived={on.arrived} home={home} onGoOn={on.goOnWith} />;
  const changes = read || on.begun ? [] : changedForPerson(state.value, list, person);
  if (changes.length > 0)
    return <HasChanged title={list.title} changes={changes} home={home} onRead={() => setRead(true)} />;
  return <Stand {...props} on={on} onAlready={onAlready} />;
}

function Start(going: Going) {
  const { person } = useShell();
  const who = person.value;
  // Another person is another run.
  return who === null ? null : <Running {...going} person={who} key={who} />;
}

export function RunList({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const list = workshopLists(state.value).get(at.list ?? '');
  if (!list) return <Nowhere>{words.step.noList}</Nowhere>;
  if (isWalk(list)) return <Nowhere way={toWalk}>{list.title}</Nowhere>;
  const what = listFor(state.value, at.for ?? '');
  if (!what) return <Nowhere>{words.step.noBatch}</Nowhere>;
  if (list.step === treatmentStep && what.containerId === undefined)
    return <Nowhere way={containerFirst}>{words.step.noContainer}</Nowhere>;
  return (
    <PersonFirst>
      <Start list={list} what={what} />
    </PersonFirst>
  );
}
