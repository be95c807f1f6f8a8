/** The containers and batches that an entry is about. */

import type { Body, PlainBody } from '../../ledger/entries/body';
import { codeOfBatch, codeOfContainer } from '../../ledger/put-away';
import { type Reference, referencesOf } from '../../ledger/references';
import type { State } from '../../ledger/state';
import { unbroken } from '../words';
import type { RegisterLine } from './register-data';

type Thing = RegisterLine['about'][number];

const container = (state: State, id: string | null | undefined): Thing[] => {
  const code = codeOfContainer(state, id);
  return code === undefined ? [] : [{ what: 'container', id: id ?? '', code: unbroken(code) }];
};

const batch = (state: State, id: string | null | undefined): Thing[] => {
  const code = codeOfBatch(state, id);
  return code === undefined ? [] : [{ what: 'batch', id: id ?? '', code: unbroken(code) }];
};

function named(state: State, { to, id }: Reference): Thing[] {
  switch (to) {
    case 'container':
      return container(state, id);
    case 'batch':
      return batch(state, id);
    case 'step':
      return batch(state, state.steps.get(id)?.body.batchId);
    case 'stream':
      return batch(state, state.streams.get(id)?.body.batchId);
    case 'treatment':
      return container(state, state.treatments.get(id)?.body.containerId);
    case 'finding':
      return container(state, state.findings.get(id)?.containerId);
    case 'clock':
      return batch(state, state.clocks.get(id)?.body.batchId);
    case 'checklist':
      return batch(state, state.checklists.get(id)?.body.batchId);
    case 'hand-over':
    case 'person':
    case 'station':
    case 'list':
    case 'paper':
    case 'entry':
      return [];
    default:
      return to satisfies never;
  }
}

/** What the entry itself opened. */
const opened = (state: State, body: PlainBody): Thing[] =>
  body.kind === 'container-opened'
    ? container(state, body.containerId)
    : body.kind === 'batch-opened'
      ? batch(state, body.batchId)
      : [];

/** @param target what it corrects or withdraws; each once, in the order in which the entry names them */
export function aboutOf(state: State, body: Body, target?: Body): Thing[] {
  const plain = body.kind === 'entry-corrected' ? body.body : body.kind === 'entry-withdrawn' ? target : body;
  if (plain === undefined || plain.kind === 'entry-corrected' || plain.kind === 'entry-withdrawn') return [];
  const things = [
    ...opened(state, plain),
    ...referencesOf(plain).flatMap((reference) => named(state, reference)),
  ];
  return [...new Map(things.map((thing) => [thing.id, thing])).values()];
}
