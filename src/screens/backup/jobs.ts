/** Making a backup, looking into one and bringing it in: what the page orders, what it hears, and all of it done where it is called. */

import type { Head } from '../../ledger/verify';
import { type AboutBackup, aboutBackup, notedOnceIn } from '../../storage/backup/about-backup';
import { type BackupWanted, type MadeBackup, makeBackup } from '../../storage/backup/make-backup';
import { type Planned, planRestore, type RestorePlan } from '../../storage/backup/plan-restore';
import type { TellBackup } from '../../storage/backup/progress';
import { type Backup, readBackup } from '../../storage/backup/read-backup';
import type { BackupRefusal } from '../../storage/backup/refusal';
import { type Restored, type RestoreWanted, restore } from '../../storage/backup/restore';
import type { RecordName } from '../../storage/database';
import type { StoreFailure } from '../../storage/failure';
import type { BackupNoted } from '../../storage/marker';

/** `not-loaded`: the code of the worker is not on the phone yet; `broken`: it ended in the middle. */
export type WorkFailure =
  | StoreFailure
  | { readonly code: 'not-loaded' }
  | { readonly code: 'cancelled' }
  | { readonly code: 'broken'; readonly name: string };

export type Made =
  | { readonly ok: true; readonly backup: MadeBackup }
  | { readonly ok: false; readonly refusal: BackupRefusal }
  | { readonly ok: false; readonly failure: WorkFailure };

export type FoundBackup = {
  readonly about: AboutBackup;
  readonly plan: RestorePlan;
  /** The ends of the chains once it is brought in. */
  readonly heads: readonly Head[];
  /** To be noted as the last backup once it is brought in; null where it holds too little for that. */
  readonly noted: BackupNoted | null;
};

export type Looked =
  | { readonly ok: true; readonly found: FoundBackup }
  | { readonly ok: false; readonly refusal: BackupRefusal }
  | { readonly ok: false; readonly failure: WorkFailure };

export type Brought =
  | Restored
  | { readonly ok: false; readonly failure: WorkFailure | { readonly code: 'nothing-looked-at' } };

export type Order =
  | { readonly do: 'make'; readonly wanted: BackupWanted }
  | {
      readonly do: 'look';
      readonly record: RecordName;
      readonly file: Blob;
      readonly passphrase: string | undefined;
    }
  | { readonly do: 'bring'; readonly wanted: RestoreWanted };

export type Says =
  | { readonly progress: Parameters<TellBackup>[0] }
  | { readonly made: Made }
  | { readonly looked: Looked }
  | { readonly brought: Brought };

/** Remembers the file that was looked at last, so that exactly that one is brought in. */
export function backupJobs() {
  let held: { readonly backup: Backup; readonly planned: Planned } | null = null;

  async function look(
    { record, file, passphrase }: Extract<Order, { do: 'look' }>,
    tell: TellBackup,
  ): Promise<Looked> {
    held = null;
    const read = await readBackup(file, passphrase, tell);
    if (!read.ok) return read;
    const { backup } = read;
    const planned = await planRestore(record, backup, tell);
    if (!planned.ok) return planned;
    held = { backup, planned: planned.value };
    const { plan, heads } = planned.value;
    return { ok: true, found: { about: aboutBackup(backup), plan, heads, noted: notedOnceIn(backup, plan) } };
  }

  async function bring({ wanted }: Extract<Order, { do: 'bring' }>, tell: TellBackup): Promise<Brought> {
    if (!held) return { ok: false, failure: { code: 'nothing-looked-at' } };
    const { backup, planned } = held;
    return restore(backup, planned, wanted, tell);
  }

  return async (order: Order, tell: TellBackup): Promise<Exclude<Says, { progress: unknown }>> => {
    switch (order.do) {
      case 'make':
        return { made: await makeBackup(order.wanted, tell) };
      case 'look':
        return { looked: await look(order, tell) };
      case 'bring':
        return { brought: await bring(order, tell) };
    }
  };
}
