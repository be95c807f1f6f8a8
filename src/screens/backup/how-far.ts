/** How far a backup or a restore is, as a page shows it. */
import type { BackupProgress, BackupStage } from '../../storage/backup/progress';
import { backupWords as w } from './words';

export type HowFar = {
  readonly says: string;
  /** Whole, from 0 to 100; never falls. */
  readonly percent: number;
};

type Spans = Partial<Readonly<Record<BackupStage, readonly [from: number, to: number]>>>;

/** Where on the bar a stage begins and ends, %: about as long as each takes for a long record with many photos. */
export const spansOf = {
  make: {
    'packing-entries': [1, 25],
    'packing-files': [25, 50],
    reading: [50, 60],
    'checking-entries': [60, 80],
    'checking-files': [80, 90],
    locking: [90, 100],
  },
  look: {
    unlocking: [1, 20],
    reading: [20, 30],
    'checking-entries': [30, 65],
    'checking-files': [65, 75],
    'comparing-entries': [75, 90],
    'comparing-files': [90, 100],
  },
  bring: { 'writing-files': [1, 50], 'writing-entries': [50, 100] },
} as const satisfies Record<string, Spans>;

/** Before the first word of the worker. */
export const notBegun: HowFar = { says: w.beginning, percent: 0 };

export function howFar(spans: Spans, { stage, done, of }: BackupProgress): HowFar {
  const [from, to] = spans[stage] ?? [0, 0];
  return { says: w.stages[stage], percent: Math.round(from + ((to - from) * done) / Math.max(1, of)) };
}
