/** What is known of containers beyond the record of their contents: hazards, codes, the law's own start. */
import type { State } from '../../ledger/state';
import type { LabelKnown } from '../../paperwork/labels/gather';

/** By container id; a container that is not in it has its hazards not determined. */
export const labelsKnown = (_state: State): ReadonlyMap<string, LabelKnown> => new Map();
