/**
 * The rinse that the card counts. It is an entry of the record; until that is written, or if it cannot be, the phone
 * counts all the same.
 */
import { useState } from 'preact/hooks';
import * as z from 'zod/mini';
import { knowsRinse, lastRinse } from '../../ledger/clocks-running';
import { minutesAfter } from '../../safety/stated-time';
import { shareLeft } from '../../safety/time-left';
import { useSecond } from '../clocks/use-second';
import { useShell } from '../shell';

const Instant = z.iso.datetime({ precision: 3 });
const Begun = z.strictObject({ at: Instant, due: Instant });
type Begun = z.infer<typeof Begun>;

const name = 'sos/rinse';

export type Rinse = Begun & {
  readonly overdue: boolean;
  readonly shareLeft: number;
  /** Null while it is not in the record. */
  readonly clockId: string | null;
};

/** @param minutes how long the card says; undefined on a card with no rinse */
export function useRinse(minutes: number | undefined) {
  const { state, now, moment, perform, draft } = useShell();
  const [kept, setKept] = useState<Begun | null>(() => draft.read(name, Begun));
  const [writing, setWriting] = useState(false);

  const written = lastRinse(state.value, now.value)?.clock ?? null;
  const unwritten = kept !== null && !knowsRinse(state.value, kept.at) ? kept : null;
  const begun = unwritten ?? (written && { at: written.at, due: written.body.due });
  const counts = minutes !== undefined && begun !== null && begun.due > moment();
  const second = useSecond(counts);

  async function write(rinse: Begun): Promise<void> {
    setWriting(true);
    const done = await perform({ do: 'start-clock', of: 'rinse', due: rinse.due, batchId: null }, rinse.at)
      // Whatever befell the record, the card goes on counting and says so.
      .catch(() => null);
    setWriting(false);
    if (done?.ok) forget();
  }
  function start(): void {
    const at = moment();
    const rinse = { at, due: minutesAfter(at, minutes ?? 0) };
    draft.keep(name, rinse);
    setKept(rinse);
    void write(rinse);
  }
  function forget(): void {
    draft.drop(name);
    setKept(null);
  }

  const rinse: Rinse | null =
    minutes === undefined || begun === null
      ? null
      : {
          ...begun,
          overdue: begun.due <= second,
          shareLeft: shareLeft(begun.at, begun.due, second),
          clockId: unwritten ? null : (written?.body.clockId ?? null),
        };
  const again = unwritten && !writing ? () => void write(unwritten) : null;
  return { rinse, second, start, forget, again };
}
