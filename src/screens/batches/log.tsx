/** Logging a waste of a batch: the form its kind asks for. */
import type { StreamKind } from '../../safety/stream-kind';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { streamName } from '../words';
import { liquids } from './choose-stream';
import { LogLiquid } from './log-liquid';
import { LogSolid } from './log-solid';
import { batchWords } from './words';

const isKind = (text: string): text is StreamKind => text in streamName;

export function LogStream({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const [batchId, kind] = [at.batch ?? '', at.kind ?? ''];
  if (!state.value.batches.has(batchId) || !isKind(kind))
    return (
      <Frame place="batches" title={batchWords.title}>
        <Part>
          <p>{batchWords.gone}</p>
        </Part>
      </Frame>
    );
  return liquids.includes(kind) ? (
    <LogLiquid batchId={batchId} kind={kind} />
  ) : (
    <LogSolid batchId={batchId} kind={kind} />
  );
}
