/** The statement of the generator in the words that the paper has, gathered container by container with the page drawn between. */
import { entriesIn } from '../../ledger/opening';
import type { ContainerState, State } from '../../ledger/state';
import { disposalData } from '../../paperwork/disposal/gather';
import { setWords as w } from '../../paperwork/disposal/set-words';
import { statementOf } from '../../paperwork/disposal/statement';
import { notDetermined } from '../../paperwork/words';
import { useShell } from '../shell';
import { useOneByOne } from '../treatment/use-worked-out';
import { useCommon } from './use-making';

/** What of it needs no gathering. */
export function statementAtOnce(state: State, n: number): readonly string[] {
  const name = state.workshop?.body.name ?? notDetermined;
  return [w.states(name, entriesIn(state)), w.aboutEach(n), w.candidates, w.noCertificate];
}

const nothing = {};

/** Undefined until all of them are gathered, and as long as it is not wanted. */
export function useStatement(
  containers: readonly ContainerState[],
  wanted: boolean,
): readonly string[] | undefined {
  const { state } = useShell();
  const common = useCommon();
  const gathered = useOneByOne(
    wanted ? containers.map(({ body }) => body.containerId) : [],
    (id) => disposalData([id], common()),
    wanted ? state.value : nothing,
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
