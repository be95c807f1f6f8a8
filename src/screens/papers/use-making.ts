/** Makes a paper and writes it down. */
import { useRef, useState } from 'preact/hooks';
import { useWriting } from '../fault';
import { useShell } from '../shell';
import { type MadePaper, makePaper, type PaperFailure, type Sheet } from './make-paper';
import { paperWords as w } from './words';

const failureText = (failure: PaperFailure): string =>
  failure.code === 'not-loaded' ? w.notLoaded : w.notMade(failure.name);

/** Once however often it is tapped. @param done after it is in the record */
export function useMaking(done: () => void) {
  const { record, state, moment, zone, person, sign } = useShell();
  const { write, fault, setFault } = useWriting();
  const [made, setMade] = useState<MadePaper | null>(null);
  const [busy, setBusy] = useState(false);
  const running = useRef(false);
  async function make(containerIds: readonly string[], sheet: Sheet, working: boolean): Promise<void> {
    if (running.current) return;
    if (containerIds.length === 0) return setFault(w.chooseOne);
    running.current = true;
    setBusy(true);
    setFault(null);
    const result = await makePaper({
      state: state.value,
      containerIds,
      sheet,
      working,
      now: moment(),
      zone,
      person: person.value,
      sign: sign.value,
      demo: record === 'demo',
    });
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
