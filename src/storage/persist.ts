/** Asking the browser to keep the record when space runs short, and how much space there is. */

/** `asked-in-vain`: the browser may remove the record when the disk is full; a backup matters the more. */
export type Persistence = 'kept' | 'asked-in-vain' | 'cannot-ask';

const manager = (): StorageManager | undefined =>
  typeof navigator === 'undefined' ? undefined : navigator.storage;

/** Asks once more where it was refused before: browsers grant it to an installed or much used app. */
export async function askToKeep(): Promise<Persistence> {
  const storage = manager();
  if (!storage?.persist) return 'cannot-ask';
  return (await storage.persisted()) || (await storage.persist()) ? 'kept' : 'asked-in-vain';
}

/** Whether it is kept, without asking for it: some browsers put a question to the person. */
export async function howKept(): Promise<Persistence> {
  const storage = manager();
  if (!storage?.persisted) return 'cannot-ask';
  return (await storage.persisted()) ? 'kept' : 'asked-in-vain';
}

/** Bytes used by this app and bytes it may use, both rounded by the browser; null when it does not tell. */
export async function space(): Promise<{ readonly usedBytes: number; readonly quotaBytes: number } | null> {
  const storage = manager();
  if (!storage?.estimate) return null;
  const { usage, quota } = await storage.estimate();
  return usage === undefined || quota === undefined ? null : { usedBytes: usage, quotaBytes: quota };
}
