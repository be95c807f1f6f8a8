/** Readings and stages as one line of text; no model stands behind it, so that any page may show it. */
import type { PotRead } from '../../ledger/entries/treatments';
import type { State, TreatmentState } from '../../ledger/state';
import { notAllowedThen } from '../../ledger/treatment';
import { nextLook, type RunningStage } from '../../ledger/treatment-run';
import { type DecimalSign, formatWritten } from '../../quantities/format';
import { momentText } from '../amounts';
import { agentName } from '../record/treatment-words';
import { runWords as w } from './run-words';

const thin = '\u202f';

/** "pH 4.8, 41 °C, grey, Cu 25 mg/L" */
export function readText(body: PotRead, sign: DecimalSign): string {
  const { ph, temperature, colour, findings = [], note } = body;
  const metals = findings.flatMap((finding) =>
    'concentration' in finding
      ? [`${finding.metal} ${formatWritten(finding.concentration, sign)}${thin}${finding.concentration.unit}`]
      : [],
  );
  const said = [
    ...(ph ? [`pH ${formatWritten(ph.value, sign)}`] : []),
    ...(temperature ? [`${formatWritten(temperature, sign)}${thin}°C`] : []),
    ...(colour === undefined ? [] : [colour]),
    ...metals,
  ];
  return said.length > 0 ? said.join(', ') : (note ?? '');
}

/** "C-07 to pH 5" */
export const runTitle = (code: string, { targetPh }: RunningStage, sign: DecimalSign): string =>
  w.title(code, targetPh?.replace('.', sign) ?? null);

/** "With limestone, stage 1 of 2" */
export const stageText = ({ body }: TreatmentState, { agent, index }: RunningStage): string =>
  w.stageOf(agentName(agent).toLowerCase(), index + 1, body.stages.length);

/** What was read last and when to look next, as Today and the container say it. */
export function watchText(treatment: TreatmentState, now: string, sign: DecimalSign): string {
  const last = treatment.readings.at(-1);
  const look = nextLook(treatment);
  const read = last ? w.lastRead(readText(last.body, sign), momentText(last.at, now)) : w.noRead;
  if (!look) return read;
  const when = momentText(look.due, now);
  return w.runningSecond(read, look.due > now ? w.lookAt(when) : w.lookSince(when));
}

/** How it was begun, where that stays visible. */
export const begunFaults = (state: State, treatment: TreatmentState) => ({
  notAllowed: notAllowedThen(state, treatment) !== null,
  noClearance: treatment.body.clearance === null,
});
