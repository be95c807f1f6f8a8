/** Times that a person noted on a card, for the doctor: a draft on this phone, no line of the record. */
import { useState } from 'preact/hooks';
import * as z from 'zod/mini';
import { hour } from '../frame';
import { useShell } from '../shell';

const Noted = z.array(z.iso.datetime({ precision: 3 }));

/** Enough to remember; the oldest go. */
const most = 5;

export function useNoted(card: string) {
  const { draft, moment } = useShell();
  const name = `sos/${card}`;
  const [times, setTimes] = useState<readonly string[]>(() => draft.read(name, Noted) ?? []);
  const note = (): void => {
    const at = moment();
    const last = times.at(-1);
    // A second tap in the same minute says nothing new.
    if (last !== undefined && hour(last) === hour(at)) return;
    const next = [...times, at].slice(-most);
    draft.keep(name, next);
    setTimes(next);
  };
  const forget = (): void => {
    draft.drop(name);
    setTimes([]);
  };
  return { times, note, forget };
}
