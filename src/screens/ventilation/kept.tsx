/** A check as it was written down, worked out again from its own place and charge: it can be looked at years later. */

import type { VentilationChecked } from '../../ledger/entries/stations';
import { codeOfBatch } from '../../ledger/put-away';
import type { Told } from '../../ledger/state';
import { dayField } from '../../safety/stated-time';
import { ventilationCheck } from '../../safety/ventilation/check';
import { verdictWords } from '../../safety/ventilation/words';
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { momentText } from '../amounts';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { WorkingPage } from '../working';
import { chargeText } from './charge-text';
import { namedFigures } from './named-figures';
import { Result } from './result';
import { ventilationWords as w } from './words';

/** As the place was then, on the day of the check. */
const resultOf = ({ body, at }: Told<VentilationChecked>) =>
  ventilationCheck({ station: body.station, charge: body.charge, on: dayField(at) });

export function KeptCheckScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, now, sign } = useShell();
  const check = state.value.ventilationChecks.get(at.check ?? '');
  if (!check) return <Frame place="batches" title={w.gone} />;
  const { batchId, stationId, checkId, charge, verdict } = check.body;
  const result = resultOf(check);
  const batch = codeOfBatch(state.value, batchId);
  const where = state.value.stations.get(stationId)?.body.name ?? words.notDetermined;
  const back = batchId === null ? `record/stations/${stationId}` : `batches/${batchId}`;
  return (
    <Frame
      title={w.title}
      second={[
        batch === undefined ? w.forNone : w.forBatch(unbroken(batch)),
        w.worked(momentText(check.at, now.value), where),
      ].join('. ')}
      ways={[{ label: words.back, href: `#/${back}` }]}
    >
      {result.verdict !== verdict && (
        <Notice mark="unknown" second={w.toldThenSecond}>
          {w.toldThen(verdictWords[verdict])}
        </Notice>
      )}
      <Part rule title={w.charge}>
        <p>{chargeText(charge, sign.value)}</p>
      </Part>
      <Result
        result={result}
        batchId={batchId}
        href={(figure) => `#/ventilation-checks/${checkId}/working/${figure}`}
      />
      <Part rule>
        <Buttons>
          <Button href={`#/ventilation/${batchId ?? '-'}/-`}>{w.again}</Button>
          <Button href={`#/record/entry/${check.entryId}`}>{w.entry}</Button>
        </Buttons>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

export function KeptWorking({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const check = state.value.ventilationChecks.get(at.check ?? '');
  const back = `ventilation-checks/${at.check}`;
  return (
    <WorkingPage
      root={check && namedFigures(resultOf(check)).get(at.key ?? '')}
      steps={at.steps ?? ''}
      here={`${back}/working/${at.key}`}
      subject={w.title}
      back={back}
    />
  );
}
