/** Why a file is not taken for a backup. Nothing of it was written anywhere. */
import type { Head, Wrong } from '../../ledger/verify';

export type BackupRefusal =
  | { readonly code: 'empty' }
  /** Neither a zip nor an age file. */
  | { readonly code: 'not-a-backup' }
  /** A zip without our manifest, or with another's. */
  | { readonly code: 'another-archive' }
  /** Its end is missing, or its inner order is not that of an archive; `detail` for whoever looks into it. */
  | { readonly code: 'broken-archive'; readonly detail: string }
  /** Some byte is not as it was when the file was made. */
  | { readonly code: 'not-as-made' }
  /** Was unpacked and packed again: what was inside may be whole, but nobody can say so. */
  | { readonly code: 'packed-again' }
  | { readonly code: 'too-large'; readonly what: string; readonly most: number }
  | { readonly code: 'unexpected-file'; readonly name: string }
  | { readonly code: 'missing-file'; readonly name: string }
  | { readonly code: 'manifest-wrong'; readonly detail: string }
  | { readonly code: 'newer-version'; readonly v: number }
  /** Whole, and of a kind that only a later version knows. */
  | { readonly code: 'newer-entries'; readonly line: number }
  | { readonly code: 'part-differs'; readonly name: string }
  | {
      readonly code: 'line-unreadable';
      readonly name: string;
      readonly line: number;
      readonly detail: string;
    }
  | {
      readonly code: 'entry-wrong';
      readonly line: number;
      readonly id: string | null;
      readonly why: Wrong;
    }
  /** Two lines claim the same id, or the same place in a device's chain. */
  | { readonly code: 'twice'; readonly id: string }
  | { readonly code: 'chain-broken'; readonly device: string; readonly counter: number }
  | { readonly code: 'entries-missing'; readonly device: string; readonly from: number; readonly to: number }
  | { readonly code: 'heads-differ'; readonly found: readonly Head[] }
  /** Neither JPEG, PNG, WebP nor PDF, or another of them than is said. */
  | { readonly code: 'file-of-another-kind'; readonly name: string }
  | { readonly code: 'passphrase-needed' }
  /** Or a letter of the lock itself is not as it was: nobody can tell the two apart. */
  | { readonly code: 'passphrase-wrong' }
  /** No passphrase opens it: its lines are not those of a lock, or cut short. */
  | { readonly code: 'lock-damaged' }
  /** Every try would take more memory and time than a phone has. */
  | { readonly code: 'lock-too-strong' }
  /** Locked for a key, not with a passphrase. */
  | { readonly code: 'locked-otherwise' }
  /** Behind the right passphrase, but not as it was made. */
  | { readonly code: 'locked-part-damaged' }
  /** This device has not enough memory for it. */
  | { readonly code: 'no-room' }
  | { readonly code: 'not-handed-over' };

/** Thrown inside this folder only, and caught where the reading begins. */
export class NotTaken extends Error {
  constructor(readonly refusal: BackupRefusal) {
    super(refusal.code);
  }
}

export function refuse(refusal: BackupRefusal): never {
  throw new NotTaken(refusal);
}
