/** What an entry says, in a few words; papers and registers say it alike. */

import type { Body } from '../../ledger/entries/body';
import type { Found } from '../../ledger/entries/inspections';
import { codeOfBatch, codeOfContainer } from '../../ledger/put-away';
import { formatWritten } from '../../quantities/format';
import { ruleNames } from '../rule-words';
import { notDetermined, unbroken } from '../words';
import { type Asked, amountText } from './asked';
import { agentWords, dataWords as w } from './data-words';
import { kindWords } from './entry-words';
import { streamText } from './origins';

const spaced = (name: string): string => name.replaceAll('-', ' ');

const foundText = (found: readonly Found[]): string[] => found.map(({ ask, answer }) => `${ask} ${answer}`);

/** @param named what it corrects or withdraws, where that is in the record */
export function entrySays(asked: Pick<Asked, 'state' | 'sign'>, body: Body, named?: Body): string {
  const { state, sign } = asked;
  const code = (id: string | null) =>
    id === null ? w.outOfShelf : unbroken(codeOfContainer(state, id) ?? notDetermined);
  const batch = (id: string | null): string[] => {
    const told = codeOfBatch(state, id);
    return told === undefined ? [] : [unbroken(told)];
  };
  const person = (id: string): string => state.people.get(id)?.body.name ?? notDetermined;
  const station = (id: string): string => state.stations.get(id)?.body.name ?? notDetermined;
  switch (body.kind) {
    case 'stream-placed':
      return `${streamText(state, body.streamId)} → ${code(body.containerId)}, ${amountText(body.amount, sign)}`;
    case 'contents-moved':
      return `${code(body.fromContainerId)} → ${code(body.toContainerId)}, ${amountText(body.amount, sign)}`;
    case 'stream-logged':
    case 'stream-tested':
      return streamText(state, body.streamId);
    case 'counting-said':
      return `${streamText(state, body.streamId)}: ${spaced(body.counted)}, ${w.says(body.saidBy)}`;
    case 'container-opened':
    case 'batch-opened':
      return unbroken(body.code);
    case 'container-changed':
      return code(body.containerId);
    case 'container-marked':
      return [`${code(body.containerId)}: ${spaced(body.mark)}`, body.to, body.document]
        .filter((part) => part !== undefined)
        .join(', ');
    case 'level-read':
      return `${code(body.containerId)}: ${amountText(body.level, sign)}`;
    case 'water-lost':
      return `${code(body.containerId)}: ${amountText(body.amount, sign)}`;
    case 'contents-determined':
      return `${code(body.containerId)}: ${streamText(state, body.streamId)}, ${w.says(body.saidBy)}`;
    case 'candidate-answered':
      return `${code(body.containerId)}: ${body.code} ${body.answer}, ${w.says(body.saidBy)}`;
    case 'lab-reported':
      return [`${code(body.containerId)}: ${body.laboratory}`, body.document]
        .filter((part) => part !== undefined)
        .join(', ');
    case 'treatment-begun':
      return code(body.containerId);
    case 'dose-added':
      return `${agentWords(body.agent)}, ${amountText(body.mass, sign)}`;
    case 'pot-read':
      return body.ph ? `pH ${formatWritten(body.ph.value, sign)}` : kindWords[body.kind];
    case 'bench-tested':
      return `${code(body.containerId)}: ${agentWords(body.agent)}, ${amountText(body.mass, sign)} in ${amountText(body.sampleVolume, sign)}`;
    case 'treatment-ended':
      return w.outcome[body.outcome];
    case 'step-started':
    case 'step-ended': {
      const step = state.steps.get(body.stepId)?.body;
      return [spaced(step?.step ?? notDetermined), ...batch(step?.batchId ?? null)].join(', ');
    }
    case 'batch-charged':
      return [spaced(body.charge.what), ...batch(body.batchId)].join(', ');
    case 'batch-recovered':
      return [spaced(body.recovery.what), ...batch(body.batchId)].join(', ');
    case 'checklist-finished':
      return `${body.checklist.title}: ${body.outcome}`;
    case 'checklist-answered-later':
      return `${body.answer.ask} ${body.answer.answer}`;
    case 'list-changed':
      return spaced(body.change.list);
    case 'silver-checked':
      return [spaced(body.outcome), ...batch(body.batchId)].join(', ');
    case 'ventilation-checked':
      return [station(body.stationId), w.ventilation[body.verdict], ...batch(body.batchId)].join(', ');
    case 'clock-started':
      return [spaced(body.of), ...batch(body.batchId)].join(', ');
    case 'clock-stopped':
      return `${spaced(state.clocks.get(body.clockId)?.body.of ?? notDetermined)}: ${spaced(body.how)}`;
    case 'station-described':
      return body.name;
    case 'station-given-up':
      return station(body.stationId);
    case 'workshop-described':
    case 'person-added':
      return body.name;
    case 'person-left':
      return person(body.personId);
    case 'local-rule-stated':
      return `${ruleNames[body.stated.rule]}, ${w.says(body.saidBy)}`;
    case 'base-described':
      return spaced(body.base);
    case 'price-stated':
      return spaced(body.what);
    case 'container-inspected':
      return [code(body.containerId), ...foundText(body.found)].join(': ');
    case 'walk-finished':
      return [
        body.list.title,
        w.seen(body.containerIds.map(code)),
        ...body.notSeen.map(({ containerId, why }) => w.notSeen(code(containerId), why)),
        ...foundText(body.found),
      ].join('; ');
    case 'finding-closed':
      return body.done;
    case 'paper-made':
      return body.fileName;
    case 'handed-over':
      return `${body.containers.map(({ containerId }) => code(containerId)).join(', ')} → ${body.collector.name}`;
    case 'load-rejected':
      return `${body.containerIds.map(code).join(', ')}: ${body.why}`;
    case 'proof-filed':
      return [body.containerIds.map(code).join(', '), body.document, body.treatedHow]
        .filter((part) => part !== undefined)
        .join(', ');
    case 'entry-corrected':
      return `${w.corrects(kindWords[body.body.kind])}: ${body.reason}`;
    case 'entry-withdrawn':
      return `${named ? w.withdraws(kindWords[named.kind]) : kindWords[body.kind]}: ${body.reason}`;
    default:
      return body satisfies never;
  }
}
