/** A clearance: the tag that fills the page, and the act that it clears. It never says that it is safe. */
import { useState } from 'preact/hooks';
import { clearanceFault } from '../../ledger/clearance';
import type { ChecklistFinished } from '../../ledger/entries/checklists';
import type { ChecklistState, State, Told } from '../../ledger/state';
import { isLook } from '../../ledger/step-offers';
import { treatmentStep } from '../../ledger/treatment';
import { workshopLists } from '../../ledger/workshop-lists';
import { quickInARow } from '../../safety/checklist-run';
import { sameDay } from '../../safety/stated-time';
import { safetyWords } from '../../safety/words';
import { Button } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Tag } from '../../ui/tag';
import { useTapGuard } from '../../ui/tap-guard';
import { momentText } from '../amounts';
import { ClearanceClocks } from '../clocks/clearance-clocks';
import { Frame, hour } from '../frame';
import { useShell } from '../shell';
import { refusalWords } from '../words';
import { AnswersGiven } from './answers-given';
import styles from './checklist.module.css';
import { ReturnTo, returnDraft } from './kept-run';
import { codeOf, homeOf, partOf, silverCheckOf } from './list-for';
import { Nowhere } from './nowhere';
import { dayOf, performedFault, words } from './words';
import { WrittenLate } from './written-late';

type Cleared = { readonly told: ChecklistState };

/** What the tag says below the hour. */
function useFacts({ told }: Cleared) {
  const { state, now } = useShell();
  const { batchId, place, second } = told.body;
  const code = codeOf(state.value, told.body);
  const list = workshopLists(state.value).get(told.body.checklist.id);
  const name = state.value.people.get(told.who ?? '')?.body.name ?? words.clearance.someone;
  return [
    ...(code === undefined
      ? []
      : [
          {
            term: batchId === null ? words.clearance.container : words.clearance.batch,
            fact: unbroken(code),
          },
        ]),
    ...(place === undefined && !list?.station
      ? []
      : [{ term: words.clearance.place, fact: place ?? words.clearance.placeUnknown }]),
    { term: name, fact: words.clearance.clearedIt },
    ...(second === undefined
      ? []
      : [
          {
            term: second.name,
            fact:
              second.at === undefined
                ? words.clearance.second
                : words.clearance.checks(momentText(second.at, now.value)),
          },
        ]),
  ];
}

/** Begins the step, or goes on to where the list was asked for. */
function useGoingOn({ told }: Cleared) {
  const { perform, go, draft, station, state } = useShell();
  const [fault, setFault] = useState<string | null>(null);
  const { step, batchId, checklist } = told.body;
  const list = workshopLists(state.value).get(checklist.id);
  const look = list !== undefined && isLook(list);
  const back = draft.read(returnDraft(checklist.id), ReturnTo);
  async function begin(): Promise<void> {
    const done = await perform({
      do: 'start-step',
      step,
      batchId,
      ...(station.value === null ? {} : { stationId: station.value }),
      clearance: told.entryId,
    });
    if (done.ok) go(silverCheckOf(told.body) ?? homeOf(told.body), 'replace');
    else setFault(performedFault(done));
  }
  function leave(): void {
    draft.drop(returnDraft(checklist.id));
    go(back?.path ?? homeOf(told.body), 'replace');
  }
  // What is in a container is treated, not a batch: its own page begins it, and knows which container.
  function beginTreating(): void {
    draft.drop(returnDraft(checklist.id));
    go(back?.path ?? homeOf(told.body), 'replace');
  }
  const goOn = list?.moment === 'running' ? list.begin : words.clearance.goOn;
  const label = back ? words.clearance.toList(back.title) : goOn;
  if (step === treatmentStep)
    return { fault, label: list?.begin ?? words.clearance.goOn, onTap: beginTreating };
  return {
    fault,
    label: look ? label : (list?.begin ?? words.clearance.goOn),
    onTap: look ? leave : () => void begin(),
  };
}

const dayUnlessToday = (iso: string, now: string): string | null => (sameDay(iso, now) ? null : dayOf(iso));

const homeWords = (batchId: string | null): string =>
  batchId === null ? words.clearance.toToday : words.clearance.toBatch;

const begunWords = (body: ChecklistFinished): string =>
  silverCheckOf(body) === null ? words.clearance.toTreatment : words.clearance.toSilverCheck;

/** Where what it cleared is seen, once that has begun. */
function begunBy(state: State, { entryId, body }: Told<ChecklistFinished>): string | null {
  const treatment = [...state.treatments.values()].find((one) => one.body.clearance === entryId);
  if (treatment) return `treatment/${treatment.body.treatmentId}`;
  const step = [...state.steps.values()].some((one) => one.body.clearance === entryId);
  return step ? (silverCheckOf(body) ?? homeOf(body)) : null;
}

/** What it was given for: another one ends it. */
const endsWith = ({ batchId, containerId, stationId }: ChecklistFinished): readonly string[] => [
  ...(batchId === null ? [] : [words.clearance.ends.batch]),
  ...(containerId === undefined ? [] : [words.clearance.ends.container]),
  ...(stationId === undefined ? [] : [words.clearance.ends.place]),
  ...(batchId === null ? [] : [words.clearance.ends.acid]),
];

/** The tag of a clearance that holds, or has begun its step. */
function Holds({
  told,
  begun,
  onAnswers,
}: Cleared & { readonly begun: string | null; readonly onAnswers: () => void }) {
  const { now, moment, state } = useShell();
  const { checklist, validUntil, batchId } = told.body;
  const list = workshopLists(state.value).get(checklist.id);
  const going = useGoingOn({ told });
  const facts = useFacts({ told });
  const guard = useTapGuard('clearance', moment);
  const home = homeOf(told.body);
  const until = validUntil ?? told.body.finishedAt;
  return (
    <Frame
      title={list?.mayStart ?? checklist.title}
      placeTitle={(heading) => (
        <Tag
          untilWord={words.clearance.until(dayUnlessToday(until, now.value))}
          until={hour(until)}
          facts={facts}
        >
          {heading}
        </Tag>
      )}
      ways={[
        { label: words.clearance.putOff, href: `#/${home}` },
        { label: words.clearance.showAnswers, onTap: onAnswers },
      ]}
      actions={
        <>
          {going.fault !== null && <p role="alert">{going.fault}</p>}
          {begun !== null ? (
            <Button look="primary" voice="serif" href={`#/${begun}`} second={words.clearance.begun}>
              {begun === home ? homeWords(batchId) : begunWords(told.body)}
            </Button>
          ) : (
            <Button look="primary" voice="serif" onTap={guard(going.onTap)}>
              {going.label}
            </Button>
          )}
        </>
      }
    >
      <Part>
        {list && <p class={styles.look}>{list.hang}</p>}
        {told.body.answers.filter(({ quick }) => quick).length >= quickInARow && (
          <p>{safetyWords.lookThenTap}</p>
        )}
        <p class={styles.ends}>{safetyWords.endsIf(endsWith(told.body))}</p>
      </Part>
      <ClearanceClocks told={told} />
      {list?.items.some(({ when }) => when !== undefined) && (
        <Part title={words.clearance.askedLater}>
          {list.items
            .filter(({ when }) => when !== undefined)
            .map((item) => (
              <p key={item.id}>{item.ask}</p>
            ))}
        </Part>
      )}
    </Frame>
  );
}

/** It ended, stopped, or is somebody else's: the way is through the list again. */
function DoesNotHold({
  told,
  why,
  onAnswers,
}: Cleared & { readonly why: string; readonly onAnswers: () => void }) {
  const { now } = useShell();
  const { checklist, validUntil, outcome } = told.body;
  const ranOut = outcome === 'cleared' && validUntil !== null && validUntil < now.value;
  return (
    <Frame
      title={ranOut ? words.clearance.ranOut : words.clearance.doesNotHold}
      second={
        ranOut
          ? `${words.clearance.since(dayUnlessToday(validUntil, now.value))} ${hour(validUntil)}`
          : checklist.title
      }
      focusKey="does not hold"
      ways={[
        { label: words.clearance.putOff, href: `#/${homeOf(told.body)}` },
        { label: words.clearance.showAnswers, onTap: onAnswers },
      ]}
      actions={
        <Button look="primary" href={`#/check/${partOf(told.body)}/${checklist.id}`}>
          {words.clearance.goThrough}
        </Button>
      }
    >
      <Part>
        <p class={styles.look} role="alert">
          {why}
        </p>
        <p>{checklist.title}</p>
      </Part>
      <ClearanceClocks told={told} />
    </Frame>
  );
}

export function Clearance({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, person, station, now } = useShell();
  const [answers, setAnswers] = useState(false);
  const told = state.value.checklists.get(at.entry ?? '');
  if (!told) return <Nowhere>{words.clearance.lost}</Nowhere>;
  if (answers) return <AnswersGiven told={told} onBack={() => setAnswers(false)} />;
  if (told.body.late) return <WrittenLate told={told} onAnswers={() => setAnswers(true)} />;
  const { step, batchId, containerId } = told.body;
  const begun = begunBy(state.value, told);
  const fault = clearanceFault(state.value, told.entryId, {
    step,
    batchId,
    containerId,
    stationId: station.value,
    who: person.value,
    at: now.value,
  });
  const onAnswers = (): void => setAnswers(true);
  return fault && begun === null ? (
    <DoesNotHold told={told} why={refusalWords(fault)} onAnswers={onAnswers} />
  ) : (
    <Holds told={told} begun={begun} onAnswers={onAnswers} />
  );
}
