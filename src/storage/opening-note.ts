/** Which opening of a long record was made last, noted apart from its database. */
import type { RecordName } from './database';
import { withStorage } from './local';

const noteKey = (name: RecordName): string => `leesbook:opening:${name}`;

/** Notes apart from the database which opening was made last: one that was changed there, its hash too, is not gone on from. */
export const noteOpening = (name: RecordName, hash: string): void =>
  void withStorage((storage) => {
    // One that stayed for want of room would have the new one thrown away.
    storage.removeItem(noteKey(name));
    storage.setItem(noteKey(name), hash);
  });

/** Where none is noted, since there is no room or it is a worker, its own hash must do. */
export function isNoted(name: RecordName, hash: string): boolean {
  const noted = withStorage((storage) => storage.getItem(noteKey(name)));
  return typeof noted === 'string' ? noted === hash : true;
}

export const forgetOpeningNote = (name: RecordName): void =>
  void withStorage((storage) => storage.removeItem(noteKey(name)));
