/** Who takes containers away, as far as it was ever written down: picked, with what is known of each. */
import type { State } from '../../ledger/state';

export type Collector = {
  readonly name: string;
  readonly licence: string;
  readonly contact: string;
  readonly destination: string;
};

/** The workshop's own first, then the others, those of the newest hand-over first; each once by its name. */
export function knownCollectors(state: State): readonly Collector[] {
  const { collector, hazardousWasteCounter } = state.workshop?.body ?? {};
  // The counter is written with its address: its first line is its name.
  const counter = hazardousWasteCounter?.split('\n')[0]?.trim();
  const loads = [...state.handOvers.values()].toReversed().map(({ body }) => body);
  const all = [
    ...(collector ? [{ ...collector }] : []),
    ...loads.map(({ collector: took }) => took),
    ...(counter ? [{ name: counter, contact: hazardousWasteCounter }] : []),
  ];
  const names = [...new Set(all.map(({ name }) => name))];
  return names.map((name): Collector => {
    const told = all.filter((one) => one.name === name);
    const first = <K extends string>(key: K): string =>
      told
        .flatMap((one) => (one as Readonly<Partial<Record<K, string>>>)[key] ?? [])
        .find((text) => text !== '') ?? '';
    const load = loads.find(({ collector: took }) => took.name === name);
    return {
      name,
      licence: first('licence'),
      contact: first('contact'),
      destination: load?.destination ?? '',
    };
  });
}

/**
 * What a form holds once another collector is picked: what was filled in for the one before goes with it, what somebody
 * wrote stays.
 */
export function withCollector<T extends Collector>(
  draft: T,
  name: string,
  known: readonly Collector[],
): Partial<T> {
  const before = known.find((one) => one.name === draft.name);
  const now = known.find((one) => one.name === name);
  const next = (key: 'licence' | 'contact' | 'destination'): string => {
    const own = draft[key].trim() !== '' && draft[key] !== before?.[key];
    return own ? draft[key] : (now?.[key] ?? '');
  };
  return {
    name,
    licence: next('licence'),
    contact: next('contact'),
    destination: next('destination'),
  } as Partial<T>;
}
