/** The working of a figure of a run. */
import { codeOfContainer } from '../../ledger/put-away';
import type { TreatmentState } from '../../ledger/state';
import { allowedRise, stageOf } from '../../ledger/treatment-run';
import { unbroken } from '../../ui/figure-value';
import { Nowhere } from '../checklist/nowhere';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { WorkingPage } from '../working';
import { namedFigures } from './run-figures';
import { runChoice, useOutlook } from './run-outlook';
import { runTitle } from './run-texts';
import { runWords as w } from './run-words';

type At = Readonly<Record<string, string>>;

function Working({ treatment, at }: { readonly treatment: TreatmentState; readonly at: At }) {
  const shell = useShell();
  const found = useOutlook(treatment);
  const { treatmentId, containerId } = treatment.body;
  const code = unbroken(codeOfContainer(shell.state.value, containerId) ?? '');
  const back = `treatment/${treatmentId}`;
  const subject = runTitle(code, stageOf(treatment), shell.sign.value);
  if (!found) return <Frame title={subject} ways={[{ label: w.back, href: `#/${back}` }]} />;
  const figures = namedFigures(
    treatment,
    found.ok ? found.value : undefined,
    allowedRise(runChoice(shell, containerId).rise),
  );
  return (
    <WorkingPage
      root={figures.get(at.key ?? '')}
      steps={at.steps ?? ''}
      here={`${back}/working/${at.key}`}
      subject={subject}
      back={back}
    />
  );
}

export function RunWorking({ at }: { readonly at: At }) {
  const { state } = useShell();
  const treatment = state.value.treatments.get(at.treatment ?? '');
  return treatment ? <Working treatment={treatment} at={at} /> : <Nowhere>{w.gone}</Nowhere>;
}
