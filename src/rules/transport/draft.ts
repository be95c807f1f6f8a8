/** An entry that comes into question, with what led to it and how far up it ranks. */
import { type EntryId, type PackingGroup, transport } from '../../reference/transport-tables';
import type { Citation } from '../candidate';
import type { Finding } from './finding';

/**
 * Order of ranking: what decides the class; class 9, which only counts where no other does; rows of the USA; what a test
 * may bring; what came close.
 */
export const ranks = ['decides', 'environment', 'usa', 'may-be', 'close'] as const;
export type Rank = (typeof ranks)[number];

export type Draft = {
  readonly entry: EntryId;
  readonly group: PackingGroup;
  readonly finding: Finding;
  /** Why this entry and no other of its class. */
  readonly because: readonly Citation[];
  readonly rank: Rank;
};

/** A group that the entry has: the one found, else the next graver, else the least grave. */
export function groupOf(entry: EntryId, found: PackingGroup): PackingGroup {
  const { groups } = transport.entries[entry];
  if (groups.includes(found)) return found;
  return groups.findLast((g) => g.length < found.length) ?? groups[0] ?? found;
}

const rankOf = ({ standing, taken }: Finding): Rank => {
  if (taken) return 'decides';
  return standing === 'close' ? 'close' : 'may-be';
};

export const draft = (
  entry: EntryId,
  finding: Finding,
  because: readonly Citation[],
  rank: Rank = rankOf(finding),
  group: PackingGroup = finding.group,
): Draft => ({ entry, finding, because, rank, group: groupOf(entry, group) });
