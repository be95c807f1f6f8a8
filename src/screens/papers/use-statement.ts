/** The statement of the generator in the words that the paper has, gathered container by container with the page drawn between. */
import type { ContainerState } from '../../ledger/state';
import { disposalData } from '../../paperwork/disposal/gather';
import { statementOf } from '../../paperwork/disposal/statement';
import { useShell } from '../shell';
import { useOneByOne } from '../treatment/use-worked-out';
import { useCommon } from './use-making';

/** Undefined until all of them are gathered. */
export function useStatement(containers: readonly ContainerState[]): readonly string[] | undefined {
  const { state } = useShell();
  const common = useCommon();
  const gathered = useOneByOne(
    containers.map(({ body }) => body.containerId),
    (id) => disposalData([id], common()),
    state.value,
  );
  if (containers.length === 0 || gathered.size < containers.length) return undefined;
  const all = [...gathered.values()];
  const told = all.flatMap((data) => data.containers);
  const { says, diluted } = statementOf(
    common(),
    told,
    all.flatMap(({ working }) => working),
    null,
  );
  return [...says, ...diluted.map(({ on, what, codes }) => `${on}: ${what}. ${codes.join(', ')}.`)];
}
