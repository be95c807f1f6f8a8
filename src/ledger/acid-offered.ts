/** Acid of a batch as it was written down, to be shown beside a form that asks for it: as it was charged, and as liquor was titrated. */
import type { WrittenStrength } from '../chemistry/acid-strength';
import type { WrittenVolume } from '../chemistry/dilution';
import type { BatchState, State } from './state';

export type AcidOffered = {
  readonly entryId: string;
  readonly at: string;
  readonly volume: WrittenVolume;
  readonly strength: WrittenStrength;
};

/** What went into the leach, in the order in which it did. */
export const acidChargedTo = ({ charged }: BatchState): readonly AcidOffered[] =>
  charged.flatMap(({ entryId, at, body: { charge } }) =>
    charge.what === 'acid' ? [{ entryId, at, volume: charge.volume, strength: charge.strength }] : [],
  );

/** Leach liquor with its free acid, where somebody titrated it. */
export const acidInLiquorOf = (state: State, { streamIds }: BatchState): readonly AcidOffered[] =>
  streamIds.flatMap((id) => {
    const stream = state.streams.get(id);
    const liquid = stream?.body.stream === 'leach-liquor' ? stream.body.liquid : undefined;
    const titrated = liquid?.freeAcid
      .flatMap((known) => (known.by === 'titration' ? [known.result] : []))
      .at(-1);
    return stream && liquid && titrated
      ? [{ entryId: stream.entryId, at: stream.at, volume: liquid.volume, strength: titrated }]
      : [];
  });
