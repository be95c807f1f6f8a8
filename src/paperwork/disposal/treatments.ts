/** What was done to a container's contents, in sentences: what was added, what was read, how it ended. */
import { codeOfContainer } from '../../ledger/put-away';
import type { ContainerState, TreatmentState } from '../../ledger/state';
import { dosedIn, fellShort, lastPh, type PhReading, treatmentOf } from '../../ledger/treatment';
import { formatWritten } from '../../quantities/format';
import { momentText } from '../dates';
import { capital, notDetermined, unbroken } from '../words';
import { type Asked, massText } from './asked';
import { agentWords, instrumentWords, dataWords as w } from './data-words';

/** "9.2 by paper, 12 May 2026, 16:40" */
const phText = ({ sign, zone }: Asked, { at, body }: PhReading): string =>
  w.phOf(formatWritten(body.ph.value, sign), instrumentWords[body.ph.instrument], momentText(at, zone));

function dosesText({ sign }: Asked, treatment: TreatmentState): string {
  const sums = [...dosedIn(treatment)];
  if (sums.length === 0) return w.nothingAdded;
  return sums
    .map(([agent, mass]) => {
      const times = treatment.doses.filter(({ body }) => body.agent === agent).length;
      return w.dosed(agentWords(agent), massText(mass, sign), times);
    })
    .join(', ');
}

function endText({ sign, zone }: Asked, treatment: TreatmentState): string {
  const { body, ended } = treatment;
  const to = body.targetPh ? w.targetPh(formatWritten(body.targetPh, sign)) : w.targetNone;
  if (!ended) return w.stillRunning(to);
  const reason = ended.body.reason === undefined ? '' : ` (${ended.body.reason})`;
  return `${w.endedOn(to, w.outcome[ended.body.outcome], momentText(ended.at, zone))}${reason}${fellShort(treatment) ? `: ${w.fellShort}` : ''}`;
}

function treatmentText(asked: Asked, treatment: TreatmentState): string {
  const { state, zone } = asked;
  const code = codeOfContainer(state, treatment.body.containerId);
  const read = lastPh(treatment);
  const parts = [
    w.treatedIn(code === undefined ? notDetermined : unbroken(code), momentText(treatment.at, zone)),
    dosesText(asked, treatment),
    read ? w.lastPh(phText(asked, read)) : w.noPh,
    endText(asked, treatment),
  ];
  return `${capital(parts.join('; '))}.`;
}

/** One sentence a treatment, and what follows for what is dissolved; empty where there was none. */
export function treatmentsTold(asked: Asked, { body }: ContainerState): string[] {
  const found = treatmentOf(asked.state, body.containerId);
  if (!found) return [];
  const { behind, running, untreatedToo } = found;
  const all = running && !behind.includes(running) ? [...behind, running] : behind;
  return [
    ...all.map((treatment) => treatmentText(asked, treatment)),
    ...(behind.length > 0 ? [w.dissolvedNow] : []),
    ...(behind.length > 0 && untreatedToo ? [w.untreatedToo] : []),
  ];
}

/** The pH of treated contents: the last one read in the pot, where nothing else came to it. */
export const treatedPh = (asked: Asked, containerId: string): string => {
  const read = treatmentOf(asked.state, containerId)?.ph;
  return read ? phText(asked, read) : notDetermined;
};

/** The colour last seen in the pot. */
export function treatedColour({ state, zone }: Asked, containerId: string): string {
  const seen = treatmentOf(state, containerId)
    ?.behind.at(-1)
    ?.readings.findLast(({ body }) => body.colour !== undefined);
  return seen?.body.colour === undefined
    ? notDetermined
    : w.evidenceOn(seen.body.colour, momentText(seen.at, zone));
}
