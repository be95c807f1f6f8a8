import type { RecordName } from './database';

/** Under which name a record lies in IndexedDB. */
export const databaseName = (name: RecordName): string => `leesbook-${name}`;
