/** What became of the last attempt to write something down, where the person looks: at the button. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Entry } from '../ledger/entries/entry';
import type { Intention } from '../ledger/intention';
import type { Refusal } from '../ledger/refusal';
import { Notice } from '../ui/notice';
import { type Performed, useShell } from './shell';
import { failureWords, refusalWords } from './words';

export const performedWords = (performed: Performed): string | null => {
  if (performed.ok) return null;
  return 'refusal' in performed ? refusalWords(performed.refusal) : failureWords(performed.failure);
};

/** Comes into sight by itself: a Keep that seems to do nothing is tapped again. */
export function Fault({ words }: { readonly words: string | null }) {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (words !== null) place.current?.scrollIntoView({ block: 'center' });
  }, [words]);
  return (
    <div ref={place}>
      {words !== null && (
        <Notice mark="wrong" role="alert">
          {words}
        </Notice>
      )}
    </div>
  );
}

/** A refusal, and what stood in the form when it was given. */
type Refused = { readonly refusal: Refusal; readonly of: unknown };

/**
 * Writes things down one after the other, once however often the button is tapped.
 * @param form a refusal is about what stood in it, and goes as soon as that is changed
 * @returns `write` gives the entries written, or null with `fault` telling why not
 */
export function useWriting(form?: { readonly latest: () => unknown }) {
  const { perform } = useShell();
  const [fault, setFault] = useState<string | null>(null);
  const [refused, setRefused] = useState<Refused | null>(null);
  const [busy, setBusy] = useState(false);
  // A second tap in the same tick still runs the handlers of the first: only a reference shows it what has begun.
  const begun = useRef(false);
  async function performOnce(intention: Intention, happenedAt?: string): Promise<Performed> {
    begun.current = true;
    // Asked for first: that it is under way is drawn while the store makes ready.
    const performing = perform(intention, happenedAt);
    setBusy(true);
    try {
      return await performing;
    } finally {
      begun.current = false;
      setBusy(false);
    }
  }
  async function write(intention: Intention, happenedAt?: string): Promise<readonly Entry[] | null> {
    if (begun.current) return null;
    const of = form?.latest();
    const performed = await performOnce(intention, happenedAt);
    const against = !performed.ok && 'refusal' in performed ? performed.refusal : null;
    setFault(against ? null : performedWords(performed));
    setRefused(against && { refusal: against, of });
    return performed.ok ? performed.written : null;
  }
  const say = (words: string | null): void => {
    setRefused(null);
    setFault(words);
  };
  const refusal = refused && refused.of === form?.latest() ? refused.refusal : null;
  return { write, fault: refusal ? refusalWords(refusal) : fault, setFault: say, refusal, busy };
}
