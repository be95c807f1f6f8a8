/** The working of a figure of a washing, from what stands in its form. */
import { contentsOf } from '../../ledger/contents-followed';
import { useShell } from '../shell';
import { WorkingPage } from '../working';
import { draftName, holding, namedFigures, readWashing, WashingDraft } from './draft';
import { washingWords as w } from './words';

export function WashingWorking({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { draft, state } = useShell();
  const [id, key] = [at.id ?? '', at.key ?? ''];
  const kept = draft.read(draftName(id), WashingDraft);
  const outcome = kept ? readWashing(kept, holding(contentsOf(state.value, id).residues)).outcome : undefined;
  const here = `containers/${id}/washing`;
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
