/** Goes through a checklist, for a batch or for the whole place. */
import { useState } from 'preact/hooks';
import { isLook, requiredBefore, runningStep } from '../../ledger/step-offers';
import { treatmentStep } from '../../ledger/treatment';
import { workshopLists } from '../../ledger/workshop-lists';
import type { Checklist } from '../../safety/checklist-schema';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { useStayAwake } from '../../ui/stay-awake';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { Already } from './already';
import { LookAgain, Restart } from './came-back';
import styles from './checklist.module.css';
import { returnDraft } from './kept-run';
import { codeOf, homeOf, type ListFor, listFor, partOf } from './list-for';
import { Nowhere } from './nowhere';
import { PersonFirst } from './person-first';
import { Question } from './question';
import { Stopped } from './stopped';
import { type RunOnScreen, useRun } from './use-run';
import { performedFault, taskLine, words } from './words';

const containerFirst = { href: '#/treatment/begin', words: words.step.toContainers };

type Going = { readonly list: Checklist; readonly what: ListFor };

type FirstProps = Going & { readonly required: Checklist; readonly onAlready: () => void };

/** What was asked for first: its way leads there, and back here by itself. */
function First({ list, required, what, onAlready }: FirstProps) {
  const { draft, go } = useShell();
  const onTap = (): void => {
    draft.keep(returnDraft(required.id), {
      path: `check/${partOf(what)}/${list.id}`,
      title: list.title,
    });
    go(`check/-/${required.id}`);
  };
  return (
    <Frame
      title={words.required.title}
      second={words.required.second(required.title)}
      focusKey="required"
      ways={[{ label: words.required.notNow, href: `#/${homeOf(what)}` }]}
      actions={
        <Buttons>
          <Button look="primary" voice="serif" second={words.required.after} onTap={onTap}>
            {required.title}
          </Button>
          <Button onTap={onAlready}>{list.already}</Button>
        </Buttons>
      }
    >
      <Part>
        <p class={styles.look}>{required.purpose}</p>
      </Part>
    </Frame>
  );
}

/** Every question has its answer; shown when the clearance could not be written at once. */
const AllAsked = ({ on, home }: { readonly on: RunOnScreen; readonly home: string }) => (
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

/** Ways through a stop that end the run; the stop is written down with either. */
function useEnding(on: RunOnScreen, { list, what }: Going) {
  const { batchId } = what;
  const { perform, go, state, draft } = useShell();
  async function putOff(): Promise<void> {
    if ((await on.finish()) === null) return;
    on.drop();
    go(homeOf(what), 'replace');
  }
  async function already(happenedAt: string, note: string): Promise<void> {
    // Without an answer the list was not begun: only the step is written down.
    const begun = on.run.answered.length + on.run.overcome.length > 0;
    if (begun && (await on.finish()) === null) return;
    const goesOn = isLook(list) && runningStep(state.value, batchId, list.step) !== null;
    const done = goesOn
      ? null
      : await perform(
          {
            do: 'log-step-happened',
            batchId,
            step: list.step,
            clearance: null,
            ...(note === '' ? {} : { note }),
          },
          happenedAt,
        );
    if (done && !done.ok) return on.say(performedFault(done));
    on.drop();
    go(homeOf(what), 'replace');
  }
  /** What is in a container was treated, not a batch: which, and what went in, is asked on its own page. */
  async function alreadyTreated(): Promise<void> {
    const begun = on.run.answered.length + on.run.overcome.length > 0;
    if (begun && (await on.finish()) === null) return;
    on.drop();
    draft.drop(returnDraft(list.id));
    go(`${homeOf(what)}/already`, 'replace');
  }
  return { putOff, already, alreadyTreated };
}

function Running({ list, what, person }: Going & { readonly person: string }) {
  const { state, now } = useShell();
  const on = useRun(list, what, person);
  const ending = useEnding(on, { list, what });
  const [already, setAlready] = useState(false);
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
  const { context } = on.run;
  if (context.person !== person) {
    const name = state.value.people.get(context.person)?.body.name ?? words.resume.nobody;
    return <Restart reason={words.resume.otherPerson(name)} home={home} onRestart={on.restart} />;
  }
  const [required] = requiredBefore(state.value, list, {
    batchId: what.batchId,
    stationId: on.run.context.place?.id,
    who: person,
    at: now.value,
  });
  // A late list clears nothing, so nothing is wanted before it.
  if (required && on.now.state === 'next' && what.lateFor === undefined)
    return <First list={list} what={what} required={required} onAlready={onAlready} />;
  if (on.arrived.how === 'restart')
    return <Restart reason={words.resume.tooOld(on.arrived.minutes)} home={home} onRestart={on.restart} />;
  if (on.arrived.how === 'look-again')
    return <LookAgain arrived={on.arrived} home={home} onGoOn={on.goOnWith} />;
  if (on.now.state === 'complete') return <AllAsked on={on} home={home} />;
  if (on.now.state === 'next') {
    const { item } = on.now;
    return (
      <Question
        key={`${item.id} ${on.run.openedAt}`}
        on={on}
        next={on.now}
        task={taskLine(list.title, codeOf(state.value, what))}
        home={home}
      />
    );
  }
  return <Stopped on={on} stop={on.now} onPutOff={() => void ending.putOff()} onAlready={onAlready} />;
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
