/** What is said of parts of the account: names of things, and what is at least. */
import { codeOfBatch, codeOfContainer } from '../../ledger/put-away';
import type { State } from '../../ledger/state';
import type { Weighed, WentPart } from '../../ledger/year-masses';
import type { Thing } from '../../ledger/year-shelf';
import { unbroken } from '../../ui/figure-value';
import { streamTitle } from '../amounts';
import { thingInside, thingName, words } from '../words';
import { yearWords as w } from './words';

export const codeOf = (state: State, containerId: string): string =>
  unbroken(codeOfContainer(state, containerId) ?? '?');

export const batchCode = (state: State, batchId: string): string =>
  unbroken(codeOfBatch(state, batchId) ?? '?');

export const atLeast = ({ unweighed }: Weighed): string =>
  unweighed.length === 0 ? '' : w.atLeast(unweighed.length);

export const sentences = (...all: readonly string[]): string | undefined =>
  all.filter(Boolean).join('. ') || undefined;

/** "Barren liquor, wash water: C-01". */
export function partSays(state: State, { kinds, containerId }: WentPart): string {
  const [first, ...more] = kinds;
  const names = first ? [thingName(first), ...more.map(thingInside)].join(', ') : words.notDetermined;
  return w.loadsContain(names, codeOf(state, containerId));
}

export type NamedThing = { readonly name: string; readonly href: string };

/** What a thing of the record is called, and where it stands. */
export function thingAt(state: State, { of, id }: Thing): NamedThing {
  switch (of) {
    case 'stream':
      return { name: streamTitle(state, id), href: `#/streams/${id}` };
    case 'container':
      return { name: codeOf(state, id), href: `#/containers/${id}` };
    case 'treatment': {
      const container = state.treatments.get(id)?.body.containerId ?? '';
      return { name: codeOf(state, container), href: `#/treatment/${id}` };
    }
    case 'hand-over':
      return { name: state.handOvers.get(id)?.body.collector.name ?? '?', href: `#/hand-overs/${id}` };
  }
}
