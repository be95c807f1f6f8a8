/** What is said of a backup before it is brought in: of when and of whom it is, how much, what it lacks. Plain data. */
import { gapLength } from '../../ledger/chains';
import type { Body } from '../../ledger/entries/body';
import type { BackupNoted, Without } from '../marker';
import type { RestorePlan } from './plan-restore';
import type { Backup } from './read-backup';

export type AboutBackup = {
  readonly madeAt: string;
  readonly version: string;
  readonly record: 'real' | 'demo';
  /** As the workshop was described last; null when it never was. */
  readonly workshop: string | null;
  readonly entries: number;
  readonly devices: number;
  /** Written-at of the newest entry; null in an empty one. */
  readonly newest: string | null;
  readonly files: number;
  readonly filesMissing: number;
  /** Could not be read when it was made, and cannot now. */
  readonly damaged: number;
  /** Not there when it was made, as its chains tell; those that were damaged among them. */
  readonly missing: number;
  /** What somebody had decided to go on without, where it was made. */
  readonly without: readonly Without[];
};

const nameIn = (body: Body): string | null =>
  body.kind === 'workshop-described'
    ? body.name
    : body.kind === 'entry-corrected' && body.body.kind === 'workshop-described'
      ? body.body.name
      : null;

export function aboutBackup(backup: Backup): AboutBackup {
  let [workshop, newest]: [string | null, string | null] = [null, null];
  for (const { body, writtenAt } of backup.entries()) {
    workshop = nameIn(body) ?? workshop;
    if (newest === null || writtenAt > newest) newest = writtenAt;
  }
  const { madeAt, madeBy, record } = backup.manifest;
  return {
    madeAt,
    version: madeBy.version,
    record,
    workshop,
    entries: backup.links.length,
    devices: backup.heads.length,
    newest,
    files: backup.files.length,
    filesMissing: backup.filesMissing.length,
    damaged: backup.damaged,
    missing: backup.gaps.reduce((sum, gap) => sum + gapLength(gap), 0),
    without: backup.without,
  };
}

/** Clocks of phones that set themselves differ by less. Status: reasoned. */
const mostApartMs = 60_000;

/** Whether its newest entry is written so much later than now that one of the two clocks must be wrong. */
export const isAhead = ({ newest }: Pick<AboutBackup, 'newest'>, now: string): boolean =>
  newest !== null && Date.parse(newest) - Date.parse(now) > mostApartMs;

/**
 * As the marker notes it once it is brought in; null where something that was here before may lie behind its ends and not be in
 * it: then it does not hold all that it would be taken for.
 */
export function notedOnceIn(
  { manifest, links, heads, gaps, filesMissing }: Backup,
  plan: RestorePlan,
): BackupNoted | null {
  if (links.length === 0) return null;
  if (plan.here > 0 && gaps.length + filesMissing.length > 0) return null;
  return { at: manifest.madeAt, entries: links.length, heads: [...heads] };
}
