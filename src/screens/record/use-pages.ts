/** The history as it is read from the disk: the newest first, so many at a time, from the end or from a day back. */
import { endOfDay, isValid, parseISO } from 'date-fns';
import { useEffect, useState } from 'preact/hooks';
import { type ToldLine, toldLines } from '../../ledger/told-lines';
import type { StoreFailure, StoreResult } from '../../storage/failure';
import type { PageOfEntries, Place } from '../../storage/pages-of-entries';
import { useShell } from '../shell';

/** As many rows as are read at once; a long record would take seconds to draw. */
const atOnce = 60;

/** Behind every entry that was written on the day; null where it is no day: from the end of the record. */
function placeAfter(day: string): Place | null {
  const date = parseISO(day);
  if (day === '' || !isValid(date)) return null;
  // The text sorts behind every device.
  return [endOfDay(date).toISOString(), '\uffff', 0];
}

type Read = {
  readonly lines: readonly ToldLine[];
  readonly next: Place | null;
  readonly unreadable: number;
};

const nothing: Read = { lines: [], next: null, unreadable: 0 };

const added = (before: Read, { entries, changes, corrupted, next }: PageOfEntries): Read => ({
  lines: [...before.lines, ...toldLines(entries, changes)],
  next,
  unreadable: before.unreadable + corrupted.length,
});

/** `null` while the first page is read; `more` where there are older ones. */
export type Pages =
  | { readonly state: 'reading' }
  | { readonly state: 'failed'; readonly failure: StoreFailure }
  | ({ readonly state: 'read'; readonly more: (() => void) | null } & Omit<Read, 'next'>);

/** @param day "2026-05-14", or '' for the end of the record */
export function usePages(day: string): Pages {
  const { state, whole, here } = useShell();
  const [kept] = useState(here);
  const [read, setRead] = useState(() => (kept.read('read') ?? null) as Read | null);
  const [failure, setFailure] = useState<StoreFailure | null>(null);
  const newest = state.value.log.at(-1)?.id;
  const take = (before: Read, page: StoreResult<PageOfEntries>): void => {
    if (!page.ok) {
      setFailure(page.failure);
      return;
    }
    const now = added(before, page.value);
    kept.keep('read', now);
    setRead(now);
  };
  // Anew with each new entry, as many as are shown.
  useEffect(() => {
    let wanted = true;
    const many = Math.max(atOnce, read?.lines.length ?? 0);
    void whole.page(placeAfter(day), many).then((page) => {
      if (wanted) take(nothing, page);
    });
    return () => {
      wanted = false;
    };
  }, [whole, newest, day]);
  if (failure) return { state: 'failed', failure };
  if (!read) return { state: 'reading' };
  const { lines, next, unreadable } = read;
  const more = () => void whole.page(next, atOnce).then((page) => take(read, page));
  return { state: 'read', lines, unreadable, more: next && more };
}
