/** What entries of a treatment, of a trial before it and of a price say. */
import type { BodyOf } from '../../ledger/entries/body';
import type { Priced } from '../../ledger/entries/prices';
import type { Agent } from '../../ledger/entries/treatments';
import type { State } from '../../ledger/state';
import type { FellShort } from '../../ledger/treatment';
import { type DecimalSign, formatWritten } from '../../quantities/format';
import { bases } from '../../reference/tables';
import { amount, containerCode, joined } from './entry-words';

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** "Hydrated lime" */
export const agentName = (agent: Agent): string => (agent === 'iron' ? 'Iron' : bases[agent].name);

const collections: Readonly<Record<string, string>> = {
  'collection-per-litre': 'collection, a litre',
  'collection-per-kilogram': 'collection, a kilogram',
  'collection-visit': 'collection, a visit',
};

/** "hydrated lime, a kilogram" */
export const pricedText = (what: Priced): string =>
  collections[what] ?? `${lower(agentName(what as Agent))}, a kilogram`;

export const allowedText: Readonly<Record<BodyOf<'treatment-begun'>['allowed'], string>> = {
  yes: 'allowed by the local rules',
  no: 'not allowed by the local rules',
  'not-stated': 'local rules not entered',
};

export const outcomeText: Readonly<Record<BodyOf<'treatment-ended'>['outcome'], string>> = {
  reached: 'end reached',
  stopped: 'stopped before the end',
};

/** "ended at pH 2.0, aim 10.2: not neutralised by what was read" */
export const fellShortText = ({ aim, read }: FellShort, sign: DecimalSign): string => {
  const text = (value: string): string => formatWritten({ value, unit: '1' }, sign);
  return read === null
    ? `ended, aim pH ${text(aim)}: no pH was read`
    : `ended at pH ${text(read)}, aim ${text(aim)}: not neutralised by what was read`;
};

export const agentText = (agent: string): string =>
  agent === 'iron' || agent in bases ? agentName(agent as Agent) : agent;

/** The container that a treatment is or was in. */
export function treatedCode(state: State, treatmentId: string): string {
  const treatment = state.treatments.get(treatmentId)?.body;
  return treatment ? containerCode(state, treatment.containerId) : '?';
}

export const treatmentText = (state: State, treatmentId: string): string =>
  `treatment of ${treatedCode(state, treatmentId)}`;

const phText = ({ value, unit }: { readonly value: string; readonly unit: '1' }, sign: DecimalSign): string =>
  `pH ${amount({ value, unit }, sign).replace(/\u20091$/, '')}`;

type TreatmentBody = BodyOf<
  'treatment-begun' | 'dose-added' | 'pot-read' | 'bench-tested' | 'treatment-ended' | 'price-stated'
>;

export function treatmentTitle(state: State, body: TreatmentBody, sign: DecimalSign): string {
  switch (body.kind) {
    case 'treatment-begun':
      return joined(
        `Treatment of ${containerCode(state, body.containerId)}: begun`,
        body.targetPh ? `to ${phText(body.targetPh, sign)}` : '',
      );
    case 'dose-added':
      return `${amount(body.mass, sign)} ${lower(agentName(body.agent))} into ${treatedCode(state, body.treatmentId)}`;
    case 'pot-read':
      return `${treatedCode(state, body.treatmentId)} read: ${
        joined(
          body.ph ? phText(body.ph.value, sign) : '',
          body.temperature ? amount(body.temperature, sign) : '',
          body.colour ?? '',
        ) || 'see the entry'
      }`;
    case 'bench-tested':
      return `Bench test, ${containerCode(state, body.containerId)}: ${amount(body.mass, sign)} ${lower(agentName(body.agent))} in ${amount(body.sampleVolume, sign)}, ${phText(body.endPh, sign)}`;
    case 'treatment-ended':
      return `Treatment of ${treatedCode(state, body.treatmentId)}: ${outcomeText[body.outcome]}`;
    case 'price-stated':
      return `Price: ${pricedText(body.what)}, ${amount(body.amount, sign)}`;
  }
}
