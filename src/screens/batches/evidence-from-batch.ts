/** What the record of a batch holds already of a piece of evidence: nothing is typed twice. */
import type { FeedKnown, Mass } from '../../chemistry/evidence';
import { typicalMetals } from '../../chemistry/typical';
import type { Recovery } from '../../ledger/entries/accounts';
import type { BatchState } from '../../ledger/state';
import type { Metal } from '../../reference/tables';
import type { StreamKind } from '../../safety/stream-kind';
import type { Typed } from '../form';
import type { AcidDraft, FeedTold, MetalDraft } from './evidence-draft';

const liquorOfKind: Readonly<Partial<Record<StreamKind, FeedKnown['liquor']>>> = {
  'leach-liquor': 'leach',
  'barren-liquor': 'barren',
};

/** The feed as it tells of a liquor of this kind; null where it tells nothing. */
export function feedTold(batch: BatchState | undefined, kind: StreamKind): FeedTold | null {
  const liquor = liquorOfKind[kind];
  return batch && liquor ? { capacitors: batch.body.feed.capacitors, liquor } : null;
}

/** The ways of knowing a metal that can be picked, the most usual first. */
export function waysOf(metal: Metal, feed: FeedTold | null): readonly MetalDraft['by'][] {
  const told = feed !== null && typicalMetals(feed).includes(metal);
  return [
    ...(['photometer', 'assay', 'strip'] as const),
    ...(metal === 'Cu' ? (['copper-weighed', 'metals-recovered'] as const) : []),
    'weighing',
    ...(told ? (['feed-minus-residue', 'typical'] as const) : []),
    'assumed',
  ];
}

/** The only one of its kind; where there are several the person says which. */
const only = (masses: readonly Mass[]): Mass | undefined => (masses.length === 1 ? masses[0] : undefined);

const recovered = ({ recovered }: BatchState, what: Recovery['what']): Mass | undefined =>
  only(recovered.flatMap(({ body: { recovery } }) => (recovery.what === what ? [recovery.mass] : [])));

const charged = (batch: BatchState): Mass | undefined =>
  only(batch.charged.flatMap(({ body: { charge } }) => (charge.what === 'copper' ? [charge.mass] : [])));

function recordOf(batch: BatchState, by: MetalDraft['by']): readonly (Mass | undefined)[] {
  switch (by) {
    case 'typical':
      return [batch.body.feed.mass];
    case 'feed-minus-residue':
      return [batch.body.feed.mass, recovered(batch, 'residue')];
    case 'copper-weighed':
      return [charged(batch), recovered(batch, 'copper')];
    case 'metals-recovered':
      return [recovered(batch, 'silver'), recovered(batch, 'palladium')];
    default:
      return [];
  }
}

type Written = { readonly value: string; readonly unit: string };

const filled = (field: Typed, written: Written | undefined): Typed =>
  field.typed === '' && written ? { typed: written.value, unit: written.unit } : field;

/** The draft with what the record holds in its empty lines. */
export function filledFrom(batch: BatchState | undefined, draft: MetalDraft): MetalDraft {
  const [a, b] = batch ? recordOf(batch, draft.by) : [];
  return { ...draft, a: filled(draft.a, a), b: filled(draft.b, b) };
}

/** The same for free acid: the acid charged, where it was charged once. */
export function acidFilledFrom(batch: BatchState | undefined, draft: AcidDraft): AcidDraft {
  const charges = (batch?.charged ?? []).flatMap(({ body: { charge } }) =>
    charge.what === 'acid' ? [charge] : [],
  );
  const [charge] = charges;
  if (draft.by !== 'charged-minus-consumed' || !charge || charges.length > 1) return draft;
  return { ...draft, a: filled(draft.a, charge.volume), b: filled(draft.b, charge.strength) };
}
