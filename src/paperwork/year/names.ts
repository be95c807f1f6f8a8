/** What things of the record are called on the paper of a year. */
import { codeOfBatch, codeOfContainer } from '../../ledger/put-away';
import type { State } from '../../ledger/state';
import type { Thing } from '../../ledger/year-shelf';
import type { StreamKind } from '../../safety/stream-kind';
import { dayText } from '../dates';
import { capital, joined, notDetermined, streamWords, unbroken } from '../words';
import type { ThingData } from './year-data';
import { yearPaperWords as w } from './year-words';

export type Names = {
  readonly container: (id: string) => ThingData;
  readonly waste: (id: string) => ThingData;
  readonly batch: (id: string) => ThingData;
  readonly thing: (thing: Thing) => ThingData;
  /** A container or a waste, whichever has this id. */
  readonly either: (id: string) => ThingData;
  readonly day: (at: string) => string;
};

export const kindsText = (kinds: readonly StreamKind[]): string =>
  kinds.length === 0 ? notDetermined : capital(joined(kinds.map((kind) => streamWords[kind])));

export function namesIn(state: State, zone: string): Names {
  const day = (at: string): string => dayText(at, zone);
  const codeOf = (id: string): string => unbroken(codeOfContainer(state, id) ?? notDetermined);
  const container = (id: string): ThingData => ({ what: 'container', id, called: codeOf(id) });
  const batch = (id: string): ThingData => ({
    what: 'batch',
    id,
    called: unbroken(codeOfBatch(state, id) ?? notDetermined),
  });
  const waste = (id: string): ThingData => {
    const stream = state.streams.get(id);
    if (!stream) return { what: 'waste', id, called: notDetermined };
    const { stream: kind, batchId } = stream.body;
    const of = batchId === null ? null : batch(batchId).called;
    return { what: 'waste', id, called: w.wasteOf(streamWords[kind], day(stream.at), of) };
  };
  const treatment = (id: string): ThingData => {
    const told = state.treatments.get(id);
    const called = told ? w.treatmentIn(codeOf(told.body.containerId), day(told.at)) : notDetermined;
    return { what: 'treatment', id, called };
  };
  const load = (id: string): ThingData => {
    const told = state.handOvers.get(id);
    const called = told ? w.loadOf(day(told.at), told.body.collector.name) : notDetermined;
    return { what: 'hand-over', id, called };
  };
  const makers = { container, stream: waste, treatment, 'hand-over': load } as const;
  return {
    container,
    waste,
    batch,
    thing: ({ of, id }) => makers[of](id),
    either: (id) => (state.containers.has(id) ? container(id) : waste(id)),
    day,
  };
}
