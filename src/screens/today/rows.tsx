/** The rows of Today: what is wrong, what runs, what is cleared. What is due by the calendar has its rows in `due/`. */

import { askedLater, listBehind } from '../../ledger/asked-later';
import { clearancesHolding } from '../../ledger/clearance';
import type { StepStarted } from '../../ledger/entries/batches';
import { fillPercent } from '../../ledger/fill';
import type { Flag } from '../../ledger/flags';
import { cardOf } from '../../ledger/flags-of-meetings';
import { codeOfBatch, codeOfContainer } from '../../ledger/put-away';
import type { State, StepState } from '../../ledger/state';
import { startList } from '../../ledger/step-offers';
import { formatNumber } from '../../quantities/format';
import { minutesLeft } from '../../safety/time-left';
import { FigureValue, unbroken } from '../../ui/figure-value';
import { Mark, type MarkKind } from '../../ui/marks';
import { Row } from '../../ui/row';
import { dayText, minutesShown, momentText, streamTitle } from '../amounts';
import { stepWords } from '../batches/words';
import { partOf } from '../checklist/list-for';
import { hour } from '../frame';
import { useShell } from '../shell';
import { TreatmentRow } from './treatment-row';
import { flagWords, todayWords as w } from './words';

export const markOf = (flag: Flag): MarkKind => {
  if (flag.pressing === 'now') return 'wrong';
  if (flag.code === 'treatment-running') return 'due';
  return flag.code === 'contents-doubtful' || flag.pressing === 'know' ? 'unknown' : 'wrong';
};

/** A list that was never gone through is gone through late; null where it was, or there is none. */
function lateHref(state: State, flag: Flag, { stepId, batchId, step }: StepStarted): string | null {
  const list = startList(state, step);
  if (flag.code !== 'step-without-clearance' || flag.lateListAt !== null || !list) return null;
  return `#/check/${partOf({ batchId, lateFor: stepId })}/${list.id}`;
}

/** What a flag is about, by its name, and where it is looked at. */
export function subjectOf(state: State, flag: Flag): { readonly name: string; readonly href: string } {
  const { about, code } = flag;
  if (flag.code === 'finding-open') {
    const code = codeOfContainer(state, about.containerId) ?? '';
    return { name: unbroken(code), href: `#/findings/${flag.findingId}` };
  }
  const card = cardOf(flag);
  const container = about.containerId && state.containers.get(about.containerId)?.body;
  if (container && about.treatmentId && code.startsWith('treatment-'))
    return { name: unbroken(container.code), href: `#/treatment/${about.treatmentId}` };
  if (container && about.handOverId)
    return { name: unbroken(container.code), href: `#/hand-overs/${about.handOverId}` };
  if (container && card)
    return { name: unbroken(container.code), href: `#/sos/${card}/then/${container.containerId}` };
  if (container) return { name: unbroken(container.code), href: `#/containers/${container.containerId}` };
  const stream = about.streamId && state.streams.get(about.streamId);
  if (stream) {
    const { batchId, streamId } = stream.body;
    if (code === 'evidence-disagrees' || code === 'more-acid-taken-than-charged')
      return { name: streamTitle(state, streamId), href: `#/streams/${streamId}` };
    return {
      name: streamTitle(state, streamId),
      href: batchId ? `#/batches/${batchId}` : `#/record/entry/${stream.entryId}`,
    };
  }
  const step = about.stepId && state.steps.get(about.stepId)?.body;
  if (step) {
    const { batchId } = step;
    // Its batch may be put away by now.
    const batch = codeOfBatch(state, batchId);
    const page = state.batches.has(batchId ?? '') ? `#/batches/${batchId}` : `#/batches/${batchId}/history`;
    const name = stepWords[step.step] ?? step.step;
    const href = lateHref(state, flag, step) ?? (batch === undefined ? '#/batches' : page);
    return { name: batch === undefined ? name : `${name}, ${unbroken(batch)},`, href };
  }
  if (about.entryId) return { name: '', href: `#/record/entry/${about.entryId}` };
  return { name: '', href: code === 'workshop-not-described' ? '#/record/workshop' : '#/record/rules' };
}

export function FlagRow({ state, flag }: { readonly state: State; readonly flag: Flag }) {
  const { sign } = useShell();
  const { name, href } = subjectOf(state, flag);
  const { title, second } = flagWords(flag, name, sign.value);
  const treatment = state.treatments.get(flag.about.treatmentId ?? '');
  if (flag.code === 'treatment-running' && treatment)
    return <TreatmentRow flag={flag} name={name} treatment={treatment} />;
  const container = flag.about.containerId ? state.containers.get(flag.about.containerId) : undefined;
  const share =
    container && (flag.code === 'over-fill-limit' || flag.code === 'over-capacity')
      ? formatNumber(fillPercent(container), 0, sign.value)
      : undefined;
  return (
    <Row
      mark={<Mark kind={markOf(flag)} />}
      title={title}
      second={second}
      marked={markOf(flag) === 'wrong'}
      href={href}
      figure={share === undefined ? undefined : <FigureValue value={share} unit="%" />}
    />
  );
}

type Running = { readonly state: State; readonly step: StepState; readonly code: string };

/** A step that runs, with how much it still asks. */
function RunningRow({ state, step, code }: Running) {
  const { now } = useShell();
  const { body, at } = step;
  const open = askedLater(state, listBehind(step))?.open.length ?? 0;
  const since = w.running(`${dayText(at, now.value)} ${hour(at)}`);
  return (
    <Row
      start="text"
      title={[stepWords[body.step] ?? body.step, code].filter(Boolean).join(', ')}
      second={open === 0 ? since : `${since}. ${w.stillToAnswer(open)}`}
      href={body.batchId === null ? '#/batches' : `#/batches/${body.batchId}`}
    />
  );
}

/** Clearances that still hold, and steps that run. */
export function RunningRows({ state }: { readonly state: State }) {
  const { now, person } = useShell();
  const cleared = clearancesHolding(state, now.value);
  const running = [...state.steps.values()].filter(({ endedAt }) => endedAt === null);
  const batchCode = (id: string | null) => (id === null ? '' : unbroken(codeOfBatch(state, id) ?? ''));
  return (
    <>
      {running.map((step) => (
        <RunningRow key={step.body.stepId} state={state} step={step} code={batchCode(step.body.batchId)} />
      ))}
      {cleared.map(({ entryId, body, who }) => (
        <Row
          key={entryId}
          mark={<Mark kind="clearance" />}
          title={[body.checklist.title, batchCode(body.batchId)].filter(Boolean).join(', ')}
          second={[
            w.clearedUntil(momentText(body.validUntil ?? now.value, now.value)),
            who === person.value ? '' : w.for(state.people.get(who ?? '')?.body.name),
            body.place,
          ]
            .filter(Boolean)
            .join(', ')}
          href={`#/clearance/${entryId}`}
          figure={<FigureValue {...minutesShown(minutesLeft(body.validUntil ?? now.value, now.value))} />}
        />
      ))}
    </>
  );
}
