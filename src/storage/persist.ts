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

/**
 * How much room is left: `little` still takes entries for years, `hardly-any` may be full with the next photos, `full`: the
 * last try to write found none. `not-told`: the browser says nothing, or a round figure whatever the phone has.
 */
export type Room = 'enough' | 'little' | 'hardly-any' | 'full' | 'not-told';

/** In whole megabytes: an estimate is told no finer. `left` is never more than there is, `used` never less; null where not told. */
export type RoomNow = { readonly room: Room; readonly left: number | null; readonly used: number | null };

/** Some 300 photos (a hundred take 30 MB, `screens/photos/prepare-picture.ts`), and some 30. Status: reasoned. */
const littleBytes = 100e6;
const hardlyAnyBytes = 10e6;

/**
 * Chromium names what is used and whole gibibytes on top of it, so that nobody tells phones apart by their disk: no measure
 * of what is left. Source: seen in Chromium 156, 2026-11, with the true quota a thousandth of it. Status: verified.
 */
const isRoundFigure = ({ usedBytes, quotaBytes }: Space): boolean =>
  quotaBytes > usedBytes && (quotaBytes - usedBytes) % 2 ** 30 === 0;

export function roomIn(known: Space | null, wasFull = false): RoomNow {
  const used = known && Math.ceil(known.usedBytes / 1e6);
  if (wasFull) return { room: 'full', left: null, used };
  if (!known || isRoundFigure(known)) return { room: 'not-told', left: null, used };
  const bytes = Math.max(0, known.quotaBytes - known.usedBytes);
  const room = bytes < hardlyAnyBytes ? 'hardly-any' : bytes < littleBytes ? 'little' : 'enough';
  return { room, left: Math.floor(bytes / 1e6), used };
}

let lastTryFound: 'room' | 'none' = 'room';

/** What the last try to write found: the surest word on it. */
export function noteTry(found: 'room' | 'none'): void {
  lastTryFound = found;
}

export const roomNow = async (): Promise<RoomNow> => roomIn(await space(), lastTryFound === 'none');
