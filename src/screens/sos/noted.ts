/** Times that a person noted on a card, for the doctor: a draft on this phone, no line of the record. */
import { useState } from 'preact/hooks';
import * as z from 'zod/mini';
import { useShell } from '../shell';

const Noted = z.array(z.iso.datetime({ precision: 3 }));

/** Enough to remember; the oldest go. */
const most = 5;

export function useNoted(card: string) {
  const { draft, moment } = useShell();
  const name = `sos/${card}`;
  const [times, setTimes] = useState<readonly string[]>(() => draft.read(name, Noted) ?? []);
  const note = (): void => {
    const next = [...times, moment()].slice(-most);
    draft.keep(name, next);
    setTimes(next);
  };
  const forget = (): void => {
    draft.drop(name);
    setTimes([]);
  };
  return { times, note, forget };
}
