/** The working of the volume that sample and drops come to. */
import { useShell } from '../shell';
import { WorkingPage } from '../working';
import { KeptTest, testDraft } from './kept-test';
import { workedVolume } from './waste-draft';
import { silverWords as w } from './words';

export function SilverWorking({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { draft } = useShell();
  const batchId = at.batch ?? '';
  const test = draft.read(testDraft(batchId), KeptTest);
  const here = `batches/${batchId}/silver-check`;
  return (
    <WorkingPage
      root={test ? workedVolume(test) : undefined}
      steps={at.steps ?? ''}
      here={`${here}/working/${at.key}`}
      subject={w.title}
      back={here}
    />
  );
}
