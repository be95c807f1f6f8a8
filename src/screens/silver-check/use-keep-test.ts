/** Writes a test down: its waste into jars of its own kind, the looks with their outcome, and the end of its steps and clock. */
import { useState } from 'preact/hooks';
import type { Amount } from '../../ledger/entries/containers';
import { minutesAnswer } from '../../ledger/silver-test';
import { runningStep } from '../../ledger/step-offers';
import { minutesTaken, silverVerdict } from '../../safety/silver-check';
import { intoFault } from '../batches/into-container';
import { vesselIntention } from '../containers/vessel-form';
import { useShell } from '../shell';
import { refusalWords } from '../words';
import type { WasteDraft } from './kept-test';
import type { TestOnScreen } from './use-test';
import { kindsMade, liquidOf, readSample, readVolume, type TestWaste } from './waste-draft';

const stepOf: Readonly<Record<TestWaste, string>> = {
  'ammonia-test-waste': 'ammonia-test',
  'chloride-test-waste': 'chloride-test',
};

/** What was said against a container, and what stood in the form then: it goes as soon as that is changed. */
type Said = { readonly words: string; readonly of: unknown };

export function useKeepTest(on: TestOnScreen, batchId: string) {
  const { state, go, moment } = useShell();
  const { form, writing } = on;
  const [said, setSaid] = useState<Said | null>(null);
  const against = said && said.of === form.latest() ? said.words : null;

  /** Read anew each time: what was written a moment ago must not be written twice. */
  const written = (key: string): string | undefined => form.latest().written[key];
  const note = (key: string, id: string): void =>
    form.change({ written: { ...form.latest().written, [key]: id } });

  const toWrite = (): readonly (readonly [TestWaste, WasteDraft, Amount])[] =>
    kindsMade(form.latest()).flatMap((kind) => {
      const draft = form.latest()[kind];
      const volume = readVolume(draft);
      return volume.state === 'written' && written(kind) === undefined
        ? [[kind, draft, volume.written] as const]
        : [];
    });

  function faultOf(): string | null {
    for (const [kind, { into }, amount] of toWrite()) {
      const waste = { stream: kind, liquid: liquidOf(amount as Parameters<typeof liquidOf>[0]) };
      const fault = intoFault(state.value, into, { amount, waste, at: moment() });
      if (fault) return refusalWords(fault);
    }
    return null;
  }

  async function containerFor(kind: TestWaste, { into }: WasteDraft): Promise<string | null | 'failed'> {
    if (into.where === 'later') return null;
    if (into.where !== 'new') return into.where;
    const intention = vesselIntention(into.vessel, moment());
    const body = intention && (await writing.write(intention))?.[0]?.body;
    if (body?.kind !== 'container-opened') return 'failed';
    form.change({ [kind]: { ...form.latest()[kind], into: { ...into, where: body.containerId } } });
    return body.containerId;
  }

  async function keepWaste(kind: TestWaste, draft: WasteDraft, amount: Amount): Promise<boolean> {
    const containerId = await containerFor(kind, draft);
    if (containerId === 'failed') return false;
    const body = (
      await writing.write({
        do: 'log-stream',
        batchId,
        stepId: runningStep(state.value, batchId, stepOf[kind])?.body.stepId ?? null,
        stream: kind,
        liquid: liquidOf(amount as Parameters<typeof liquidOf>[0]),
        ...(containerId === null ? {} : { placements: [{ containerId, amount }] }),
      })
    )?.[0]?.body;
    if (body?.kind !== 'stream-logged') return false;
    note(kind, body.streamId);
    return true;
  }

  async function keepCheck(): Promise<string | null> {
    const before = written('check');
    if (before !== undefined) return before;
    const test = form.latest();
    const sample = readSample(test);
    const body = (
      await writing.write({
        do: 'log-silver-check',
        batchId,
        ...(sample.state === 'written' ? { sample: sample.written } : {}),
        looks: test.looks,
        outcome: silverVerdict(test.looks).outcome,
        streamIds: kindsMade(test).flatMap((kind) => test.written[kind] ?? []),
      })
    )?.[0]?.body;
    if (body?.kind !== 'silver-checked') return null;
    note('check', body.checkId);
    return body.checkId;
  }

  /** The list of the ammonia asks how many minutes it stood: the test knows. */
  async function answerMinutes(): Promise<boolean> {
    const { ammoniaAt } = form.latest();
    const minutes = minutesTaken(form.latest());
    const step = runningStep(state.value, batchId, 'ammonia-test');
    if (minutes === null || ammoniaAt === null || step === null) return true;
    const answer = minutesAnswer(state.value, step, { minutes, from: ammoniaAt, at: moment() });
    return answer === null || (await writing.write(answer)) !== null;
  }

  /** Steps and clock end with the test; where ammonia still stands, its step and clock run on. */
  async function endAll(): Promise<boolean> {
    const { clock, stands } = on;
    if (!stands && clock?.stopped === null)
      if (!(await writing.write({ do: 'stop-clock', clockId: clock.body.clockId, how: 'done' })))
        return false;
    if (!(await answerMinutes())) return false;
    for (const step of stands ? ['chloride-test'] : ['chloride-test', 'ammonia-test']) {
      const running = runningStep(state.value, batchId, step);
      if (running && !(await writing.write({ do: 'end-step', stepId: running.body.stepId }))) return false;
    }
    return true;
  }

  /**
   * @param seen words on which the person says that it is in already; null on the first try
   * @param waste false: the test is written down without its waste
   */
  async function keep(seen: string | null, waste: boolean): Promise<void> {
    const fault = waste ? faultOf() : null;
    setSaid(fault === null ? null : { words: fault, of: form.latest() });
    if (fault !== null && fault !== seen) return;
    if (waste) for (const one of toWrite()) if (!(await keepWaste(...one))) return;
    const checkId = await keepCheck();
    if (checkId === null || !(await endAll())) return;
    form.done();
    go(`batches/${batchId}/silver-check/${checkId}`, 'replace');
  }
  return { keep, against, fault: writing.fault, busy: writing.busy };
}
