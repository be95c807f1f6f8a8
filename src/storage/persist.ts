/** Asking the browser to keep the record when space runs short, and how much space there is. */
import { withStorage } from './local';

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

/**
 * Whether asking puts no question to the person. Chromium decides by itself, from how much the app is used; others may ask,
 * so there it is asked upon a tap, beside the reason. Source: web.dev, "Persistent storage" (https://web.dev/articles/persistent-storage),
 * which also says to ask when something worth keeping is kept, not at the start. Status: verified, 2026-11.
 */
export function asksSilently(): boolean {
  const { userAgentData } = (typeof navigator === 'undefined' ? {} : navigator) as {
    readonly userAgentData?: { readonly brands?: readonly { readonly brand: string }[] };
  };
  return userAgentData?.brands?.some(({ brand }) => brand === 'Chromium') ?? false;
}

const askedKey = 'leesbook:asked-to-keep';

/** Somebody tapped on it before: the row on Today has been seen, and the one of the record stays. */
export const wasAsked = (): boolean => withStorage((storage) => storage.getItem(askedKey)) === 'yes';
export const noteAsked = (): void => void withStorage((storage) => storage.setItem(askedKey, 'yes'));

/** Bytes used by this app and bytes it may use, both by the browser's own reckoning, which rounds and pads them. */
export type Space = { readonly usedBytes: number; readonly quotaBytes: number };

/** Null when the browser does not tell. */
export async function space(): Promise<Space | null> {
  const storage = manager();
  if (!storage?.estimate) return null;
  const { usage, quota } = await storage.estimate();
  return usage === undefined || quota === undefined ? null : { usedBytes: usage, quotaBytes: quota };
}

/** How much room is left: `little` still takes entries for years, `hardly-any` may be full with the next photos. */
export type Room = 'enough' | 'little' | 'hardly-any';

/** Some 300 photos (a hundred take 30 MB, `screens/photos/prepare-picture.ts`), and some 30. Status: reasoned. */
const littleBytes = 100e6;
const hardlyAnyBytes = 10e6;

export function roomIn({ usedBytes, quotaBytes }: Space): Room {
  const left = quotaBytes - usedBytes;
  if (left < hardlyAnyBytes) return 'hardly-any';
  return left < littleBytes ? 'little' : 'enough';
}

/** What is left, in whole megabytes, never more than there is: an estimate is told no finer. */
export const megabytesLeft = ({ usedBytes, quotaBytes }: Space): number =>
  Math.max(0, Math.floor((quotaBytes - usedBytes) / 1e6));

/** What is taken, in whole megabytes, never less than it is. */
export const megabytesUsed = ({ usedBytes }: Space): number => Math.ceil(usedBytes / 1e6);
