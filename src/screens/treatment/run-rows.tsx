/** The pot by what was written down: last reading, what is in, how warm it became, and every dose and reading. */
import type { TreatmentState } from '../../ledger/state';
import { dosedIn, lastPh } from '../../ledger/treatment';
import { allowedRise, lastWarmth, minutesSince, stepsOf, warmedOf } from '../../ledger/treatment-run';
import { printed } from '../../quantities/format';
import { FigureValue } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { amountText, momentText } from '../amounts';
import { FigureRow } from '../figure-row';
import { agentName, outcomeText } from '../record/treatment-words';
import { useShell } from '../shell';
import { runChoice } from './run-outlook';
import { gramsText } from './run-plot';
import { readText } from './run-texts';
import { runWords as w } from './run-words';

type Props = { readonly treatment: TreatmentState };

export const useWarmed = ({ treatment }: Props) => {
  const shell = useShell();
  return warmedOf(treatment, allowedRise(runChoice(shell, treatment.body.containerId).rise));
};

/** More warmth than one portion may give: above all else on the page. */
export function TooWarm({ treatment }: Props) {
  const { sign } = useShell();
  const { over, byPortion, allowed } = useWarmed({ treatment });
  if (!over || !byPortion) return null;
  return (
    <Notice mark="wrong" role="status" second={w.tooWarmSecond}>
      {w.tooWarm(printed(byPortion, sign.value).value, printed(allowed, sign.value).value)}
    </Notice>
  );
}

function PutIn({ treatment }: Props) {
  const { sign, now } = useShell();
  const last = treatment.doses.at(-1);
  return (
    <>
      {[...dosedIn(treatment)].map(([agent, grams]) => (
        <Row
          key={agent}
          title={`${w.putIn}: ${agentName(agent).toLowerCase()}`}
          second={
            last?.body.agent === agent ? w.lastDose(w.ago(minutesSince(last.at, now.value))) : undefined
          }
          figure={<FigureValue value={gramsText(grams, sign.value)} unit="g" />}
        />
      ))}
    </>
  );
}

export function InThePot({ treatment }: Props) {
  const { sign, now } = useShell();
  const { byPortion, inAll, allowed } = useWarmed({ treatment });
  const at = `#/treatment/${treatment.body.treatmentId}/working`;
  const [ph, warmth] = [lastPh(treatment), lastWarmth(treatment)];
  const read = [ph, warmth].filter((reading) => reading !== null);
  return (
    <Part rule title={w.inPot} width="edge">
      <Rows>
        {read.length === 0 && <Row title={w.inPotNone} />}
        {ph && (
          <Row
            title="pH"
            second={`${w.instruments[ph.body.ph.instrument]}, ${momentText(ph.at, now.value)}`}
            figure={<FigureValue value={ph.body.ph.value.value.replace('.', sign.value)} />}
            href={`#/record/entry/${ph.entryId}`}
          />
        )}
        {warmth && (
          <Row
            title={w.temperature}
            second={momentText(warmth.at, now.value)}
            figure={<FigureValue value={warmth.body.temperature.value.replace('.', sign.value)} unit="°C" />}
            href={`#/record/entry/${warmth.entryId}`}
          />
        )}
        {byPortion && (
          <FigureRow
            title={w.warmed}
            second={w.ofAllowed(printed(allowed, sign.value).value)}
            figure={byPortion}
            href={`${at}/warmed`}
          />
        )}
        {inAll && <FigureRow title={w.warmedAll} figure={inAll} href={`${at}/warmed-all`} />}
        <PutIn treatment={treatment} />
      </Rows>
    </Part>
  );
}

/** Everything that was written down of it, the newest first. */
export function RunHistory({ treatment }: Props) {
  const { sign, now } = useShell();
  const steps = stepsOf(treatment).toReversed();
  const { ended } = treatment;
  return (
    <Part rule title={w.history} width="edge">
      <Rows>
        {ended && (
          <Row
            title={w.ended}
            second={`${outcomeText[ended.body.outcome]}, ${momentText(ended.at, now.value)}`}
            href={`#/record/entry/${ended.entryId}`}
          />
        )}
        {steps.length === 0 && <Row title={w.historyNone} />}
        {steps.map(({ entryId, at, body }) => (
          <Row
            key={entryId}
            title={
              body.kind === 'dose-added'
                ? w.dose(amountText(body.mass, sign.value), agentName(body.agent).toLowerCase())
                : readText(body, sign.value)
            }
            second={momentText(at, now.value)}
            href={`#/record/entry/${entryId}`}
          />
        ))}
        <Row
          title={w.begun}
          second={momentText(treatment.at, now.value)}
          href={`#/record/entry/${treatment.entryId}`}
        />
        <Row
          title={w.entries}
          second={w.entriesSecond}
          href={`#/treatment/${treatment.body.treatmentId}/history`}
        />
      </Rows>
    </Part>
  );
}
