/** What the list of this treatment still asks, while it runs and after it. */
import { askedLater } from '../../ledger/asked-later';
import type { TreatmentState } from '../../ledger/state';
import { Part } from '../../ui/page';
import { Rows } from '../../ui/row';
import { AskedRows } from '../checklist/asked-rows';
import { useShell } from '../shell';
import { runWords as w } from './run-words';

export function RunAsks({ treatment }: { readonly treatment: TreatmentState }) {
  const { state } = useShell();
  const { clearance } = treatment.body;
  if ((askedLater(state.value, clearance)?.open.length ?? 0) === 0) return null;
  return (
    <Part rule title={w.asks} width="edge">
      <Rows>
        <AskedRows entry={clearance} />
      </Rows>
    </Part>
  );
}
