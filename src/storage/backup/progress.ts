/** How far a backup or a restore is. */

export type BackupStage =
  | 'locking'
  | 'unlocking'
  | 'reading'
  | 'checking-entries'
  | 'checking-files'
  | 'comparing-entries'
  | 'comparing-files'
  | 'packing-entries'
  | 'packing-files'
  | 'writing-files'
  | 'writing-entries';

/** `done` of `of` bytes or pieces of the stage; `of` is at least 1. */
export type BackupProgress = { readonly stage: BackupStage; readonly done: number; readonly of: number };

export type TellBackup = (progress: BackupProgress) => void;

export const untold: TellBackup = () => undefined;
