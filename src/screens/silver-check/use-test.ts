/** A test on the screen: every look goes into the draft at once; the clock starts with the ammonia and stops with the acid. */
import { useEffect } from 'preact/hooks';
import { ammoniaClock, destroyWithin } from '../../ledger/silver-test';
import {
  ammoniaAge,
  ammoniaStands,
  canTakeBack,
  destroyBy,
  isDestroyed,
  lookTakenBack,
  nextInTest,
  withLook,
} from '../../safety/silver-check';
import { tick } from '../../ui/stay-awake';
import { useWriting } from '../fault';
import { useForm } from '../form';
import { useShell } from '../shell';
import { KeptTest, noTest, testDraft } from './kept-test';

export type TestOnScreen = ReturnType<typeof useTest>;

export function useTest(batchId: string) {
  const { state, now, moment, go } = useShell();
  const form = useForm(testDraft(batchId), KeptTest, noTest);
  const writing = useWriting();
  const test = form.value;
  const { ammoniaAt, dueAt } = test;
  const minutes = destroyWithin(state.value);
  const clock = ammoniaClock(state.value, batchId, dueAt);
  const stands = ammoniaStands(test);
  const age =
    ammoniaAt === null || dueAt === null || !stands ? 'in-time' : ammoniaAge(ammoniaAt, dueAt, now.value);

  const startClock = (from: string, due: string) =>
    writing.write({ do: 'start-clock', of: 'ammonia-silver', due, batchId }, from);

  // The phone gave out between the tap and the record: the clock is written down as late as it is.
  useEffect(() => {
    if (stands && ammoniaAt !== null && dueAt !== null && clock === null) void startClock(ammoniaAt, dueAt);
  }, []);

  function see(look: string, seen: string): void {
    tick();
    const next = withLook(test, { look, seen, at: moment() });
    form.change({ looks: [...next.looks] });
    if (isDestroyed(next) && clock?.stopped === null)
      void writing.write({ do: 'stop-clock', clockId: clock.body.clockId, how: 'done' });
  }

  function ammoniaIn(): void {
    tick();
    const at = moment();
    const due = destroyBy(at, minutes);
    form.change({ ammoniaAt: at, dueAt: due });
    void startClock(at, due);
  }

  /** With the look that showed the ammonia destroyed its clock had stopped: it is begun again, due as before. */
  function takeBack(): void {
    const next = lookTakenBack(test);
    form.change({ looks: [...next.looks] });
    if (ammoniaAt !== null && dueAt !== null && !stands && ammoniaStands(next))
      void startClock(ammoniaAt, dueAt);
  }

  return {
    form,
    test,
    writing,
    minutes,
    clock,
    stands,
    age,
    next: test.broken ? ({ do: 'end' } as const) : nextInTest(test),
    goesOn: test.broken && nextInTest(test).do !== 'end',
    see,
    ammoniaIn,
    canTakeBack: canTakeBack(test),
    takeBack,
    /** The acid goes in at once; said when it was this late. */
    acidNow: () => form.change({ hurried: true, urged: age }),
    /** What nobody looked at is no test: nothing of it is kept. */
    breakOff: () => {
      if (test.looks.length > 0) return form.change({ broken: true });
      form.done();
      go(`batches/${batchId}`, 'replace');
    },
    goOn: () => form.change({ broken: false }),
    stripAgain: () =>
      form.change({
        broken: false,
        hurried: true,
        atWaste: false,
        looks: test.looks.filter(({ look }) => look !== 'strip' && look !== 'acid'),
      }),
  };
}
