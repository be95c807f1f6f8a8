/** Makes a paper and writes it down. */
import { useRef, useState } from 'preact/hooks';
import { useWriting } from '../fault';
import { useShell } from '../shell';
import type { Common, Made, MadePaper, PaperFailure } from './making';
import { paperWords as w } from './words';

const failureText = (failure: PaperFailure): string =>
  failure.code === 'not-loaded' ? w.notLoaded : w.notMade(failure.name);

/** What every paper is made of, at the moment of a tap. */
export function useCommon(): () => Common {
  const { record, state, moment, zone, person, sign } = useShell();
  return () => ({
    state: state.value,
    now: moment(),
    zone,
    madeBy: person.value === null ? null : (state.value.people.get(person.value)?.body.name ?? null),
    sign: sign.value,
    demo: record === 'demo',
  });
}

/**
 * Once however often it is tapped.
 * @param setIt makes the file
 * @param done after it is in the record
 */
export function useMaking<W extends { readonly containerIds: readonly string[] }>(
  setIt: (wanted: W, common: Common) => Promise<Made>,
  done: () => void,
) {
  const common = useCommon();
  const { write, fault, setFault } = useWriting();
  const [made, setMade] = useState<MadePaper | null>(null);
  const [busy, setBusy] = useState(false);
  const running = useRef(false);
  async function make(wanted: W): Promise<void> {
    if (running.current) return;
    if (wanted.containerIds.length === 0) return setFault(w.chooseOne);
    running.current = true;
    setBusy(true);
    setFault(null);
    const result = await setIt(wanted, common());
    if (result.ok) {
      const { contentHash, pdf, containerIds: ids } = result.paper;
      const fileName = pdf.name;
      const paper = { containerIds: [...ids], contentHash, fileName, format: 'pdf' as const };
      if (await write({ do: 'record-paper', ...paper })) {
        done();
        setMade(result.paper);
      }
    } else setFault(failureText(result.failure));
    running.current = false;
    setBusy(false);
  }
  return { make, made, fault, busy };
}
