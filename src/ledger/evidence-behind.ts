/** Which evidence of the record the range of a figure goes back to, so that a page and a paper call it the same. */
import type { Figure } from '../quantities/figure';
import type { Metal } from '../reference/tables';
import type { LiquidPart, StreamLogged } from './entries/streams';
import type { PotRead } from './entries/treatments';
import type { State, Told } from './state';

/** `by`: the way of knowing; `on`: the day that the evidence itself names; `at`: when it was seen. */
export type EvidenceBehind = {
  readonly by: string;
  readonly on?: string | undefined;
  readonly at: string;
};

const potReadings = ({ treatments }: State): ReadonlyMap<string, Told<PotRead>> =>
  new Map([...treatments.values()].flatMap(({ readings }) => readings.map((read) => [read.entryId, read])));

const evidenceIn = (body: StreamLogged | PotRead): Partial<Pick<LiquidPart, 'findings' | 'freeAcid'>> =>
  body.kind === 'stream-logged' ? (body.liquid ?? {}) : { findings: body.findings ?? [] };

/** Once for each number that was written down: a titration by its volumes comes three times. */
export function evidenceBehind(
  state: State,
  figure: Figure,
  what: Metal | 'acid',
): readonly EvidenceBehind[] {
  const pots = potReadings(state);
  return [...figure.slopes.keys()].flatMap((origin): readonly EvidenceBehind[] => {
    const [, , id = '', about, index = ''] = /^(stream|entry)\/([^/]+)\/(\w+)\/(\d+)/.exec(origin) ?? [];
    const told = state.streams.get(id) ?? pots.get(id);
    if (about !== what || !told) return [];
    const { findings = [], freeAcid = [] } = evidenceIn(told.body);
    const evidence = what === 'acid' ? freeAcid[Number(index)] : findings[Number(index)];
    if (!evidence) return [];
    return [{ by: evidence.by, on: 'on' in evidence ? evidence.on : undefined, at: told.at }];
  });
}
