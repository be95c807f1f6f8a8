/** The working of a figure of a check, from what stands in its form. */
import { useShell } from '../shell';
import { WorkingPage } from '../working';
import { namedFigures } from './named-figures';
import { checkFor, keptDraft, placeOf, resultFor } from './result-for';
import { ventilationWords as w } from './words';

export function VentilationWorking({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const shell = useShell();
  const check = checkFor(shell.state.value, at);
  const kept = check && keptDraft(shell, check);
  const result = kept
    ? resultFor(shell, kept, placeOf(shell.state.value, shell.station.value)).result
    : undefined;
  const back = `ventilation/${at.for}/${at.list}`;
  return (
    <WorkingPage
      root={result && namedFigures(result).get(at.key ?? '')}
      steps={at.steps ?? ''}
      here={`${back}/working/${at.key}`}
      subject={w.title}
      back={back}
    />
  );
}
