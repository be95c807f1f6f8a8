/** What became of the last attempt to write something down, where the person looks: at the button. */
import { useRef, useState } from 'preact/hooks';
import type { Entry } from '../ledger/entries/entry';
import type { Intention } from '../ledger/intention';
import { Notice } from '../ui/notice';
import { type Performed, useShell } from './shell';
import { failureWords, refusalWords } from './words';

export const performedWords = (performed: Performed): string | null => {
  if (performed.ok) return null;
  return 'refusal' in performed ? refusalWords(performed.refusal) : failureWords(performed.failure);
};

export const Fault = ({ words }: { readonly words: string | null }) =>
  words === null ? null : (
    <Notice mark="wrong" role="alert">
      {words}
    </Notice>
  );

/**
 * Writes things down one after the other, once however often the button is tapped.
 * @returns `write` gives the entries written, or null with `fault` telling why not
 */
export function useWriting() {
  const { perform } = useShell();
  const [fault, setFault] = useState<string | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  // A second tap in the same tick still runs the handlers of the first: only a reference shows it what has begun.
  const begun = useRef(false);
  async function performOnce(intention: Intention, happenedAt?: string): Promise<Performed> {
    begun.current = true;
    setBusy(true);
    try {
      return await perform(intention, happenedAt);
    } finally {
      begun.current = false;
      setBusy(false);
    }
  }
  async function write(intention: Intention, happenedAt?: string): Promise<readonly Entry[] | null> {
    if (begun.current) return null;
    const performed = await performOnce(intention, happenedAt);
    setFault(performedWords(performed));
    setRefusal(!performed.ok && 'refusal' in performed ? performed.refusal.code : null);
    return performed.ok ? performed.written : null;
  }
  return { write, fault, setFault, refusal, busy };
}
