/** The working of a number behind a candidate, or of the limit it was held against. */
import { candidateBy } from '../../ledger/candidate-words';
import { candidatesOf } from '../../ledger/container-candidates';
import { codeText } from '../../paperwork/candidate-words';
import { unbroken } from '../../ui/figure-value';
import { useShell } from '../shell';
import { WorkingPage } from '../working';
import { candidatePath } from './addresses';
import { candidateFigures } from './candidate-figures';
import { candidateWords as w } from './words';

export function CandidateWorking({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const { id = '', scheme = '', code = '', key = '', steps = '' } = at;
  const container = state.value.containers.get(id);
  const all = container && candidatesOf(state.value, container);
  const known = all !== undefined && typeof all !== 'string' ? all : undefined;
  const candidate = known && candidateBy(known, scheme, code);
  const back = candidatePath(id, { scheme, code });
  return (
    <WorkingPage
      root={known && candidate && candidateFigures(known, candidate).get(key)}
      steps={steps}
      here={`${back}/working/${key}`}
      subject={w.subject(unbroken(container?.body.code ?? ''), codeText(code))}
      back={back}
    />
  );
}
