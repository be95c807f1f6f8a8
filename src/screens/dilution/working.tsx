/** The working of a figure of a dilution, from what stands in its form. */
import { useShell } from '../shell';
import { WorkingPage } from '../working';
import { DilutionDraft, draftName, namedFigures, readDilution } from './draft';
import { dilutionWords as w } from './words';

export function DilutionWorking({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { draft } = useShell();
  const [batchId, key] = [at.batch ?? '', at.key ?? ''];
  const kept = draft.read(draftName(batchId), DilutionDraft);
  const outcome = kept ? readDilution(kept).outcome : undefined;
  const here = `batches/${batchId}/dilution`;
  return (
    <WorkingPage
      root={outcome && namedFigures(outcome).get(key)}
      steps={at.steps ?? ''}
      here={`${here}/${key}`}
      subject={w.title}
      back={here}
    />
  );
}
