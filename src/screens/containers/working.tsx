/** The working of a container's figure. */

import { containerFigures, namedFigures } from '../../ledger/container-figures';
import { codeOfContainer } from '../../ledger/put-away';
import { bases } from '../../reference/tables';
import { unbroken } from '../../ui/figure-value';
import { useShell } from '../shell';
import { WorkingPage } from '../working';
import { containerWords as w } from './words';

export function ContainerWorking({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const [id, key] = [at.id ?? '', at.key ?? ''];
  const code = codeOfContainer(state.value, id) ?? '';
  const base = Object.keys(bases).find((b) => key === b || key.startsWith(`${b}-`));
  return (
    <WorkingPage
      root={namedFigures(containerFigures(state.value, id)).get(key)}
      steps={at.steps ?? ''}
      here={`containers/${id}/working/${key}`}
      subject={w.container(unbroken(code))}
      back={base === undefined ? `containers/${id}` : `containers/${id}/base/${base}`}
    />
  );
}
