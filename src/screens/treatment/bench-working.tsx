/** The working of a trial on the bench: of one that was kept, by its entry, or of what stands in the form. */

import { useMemo } from 'preact/hooks';
import { benchOf } from '../../ledger/before-treatment';
import { benchEstimate } from '../../ledger/bench-estimate';
import { codeOfContainer } from '../../ledger/put-away';
import { unbroken } from '../../ui/figure-value';
import { useShell } from '../shell';
import { WorkingPage } from '../working';
import { aimOfPlan, BenchDraft, benchDraftName, emptyBench, readBench } from './bench-draft';
import { runWords as w } from './run-words';

export function BenchWorking({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { draft, state } = useShell();
  const [id, key] = [at.id ?? '', at.key ?? ''];
  const now = state.value;
  const root = useMemo(() => {
    const kept = benchOf(now, id, key);
    if (kept) return kept.estimate.fromTest;
    const { trial } = readBench(draft.read(benchDraftName(id), BenchDraft) ?? emptyBench());
    const found = trial && benchEstimate(now, id, trial, aimOfPlan({ draft }, id) ?? undefined);
    if (key === 'model') return found?.fromModel?.ok ? found.fromModel.needed.mass : undefined;
    return key === 'target' ? found?.toTarget : found?.fromTest;
  }, [now, id, key, draft]);
  return (
    <WorkingPage
      root={root}
      steps={at.steps ?? ''}
      here={`containers/${id}/bench-test/${key}`}
      subject={w.benchTitle(unbroken(codeOfContainer(now, id) ?? ''))}
      back={benchOf(now, id, key) ? `containers/${id}` : `containers/${id}/bench-test`}
    />
  );
}
