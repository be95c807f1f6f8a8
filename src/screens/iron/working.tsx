/** The working of a figure of copper onto iron, from what stands in its form. */
import { useShell } from '../shell';
import { WorkingPage } from '../working';
import { draftName, emptyIron, IronDraft, namedFigures, readIron } from './draft';
import { ironWords as w } from './words';

export function IronWorking({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { draft, state } = useShell();
  const [id, key] = [at.id ?? '', at.key ?? ''];
  const { result } = readIron(state.value, id, draft.read(draftName(id), IronDraft) ?? emptyIron());
  const here = `containers/${id}/iron`;
  return (
    <WorkingPage
      root={result?.ok ? namedFigures(result.value).get(key) : undefined}
      steps={at.steps ?? ''}
      here={`${here}/${key}`}
      subject={w.title}
      back={here}
    />
  );
}
