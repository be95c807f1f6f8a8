/** The working of a figure of the two ways, from what stands in their form. */
import { liquidContainers } from '../../ledger/liquid-containers';
import { namedFigures, twoWays } from '../../ledger/two-ways';
import { useShell } from '../shell';
import { WorkingPage } from '../working';
import { draftName, readTwoWays, TwoWaysDraft, useFirst } from './draft';
import { twoWaysWords as w } from './words';

export function TwoWaysWorking({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { draft, state } = useShell();
  const first = useFirst(at.id);
  const key = at.key ?? '';
  const { asked } = readTwoWays(draft.read(draftName(at.id), TwoWaysDraft) ?? first());
  const ids = at.id === undefined ? liquidContainers(state.value) : [at.id];
  const here =
    at.id === undefined ? 'containers/as-it-is-or-treated' : `containers/${at.id}/as-it-is-or-treated`;
  return (
    <WorkingPage
      root={asked && namedFigures(twoWays(state.value, ids, asked)).get(key)}
      steps={at.steps ?? ''}
      here={`${here}/${key}`}
      subject={w.title}
      back={here}
    />
  );
}
