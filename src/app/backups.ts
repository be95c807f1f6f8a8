/** What screens are given for backing up and restoring the record of a book, also of one that does not open. */
import { backupInWorker } from '../screens/backup/in-worker';
import type { Shell } from '../screens/shell';
import { noteAlsoWithout, noteBackup, noteBroughtIn } from '../storage/marker';
import type { Book } from './open-book';

export const backupsOf = (book: Book): Shell['backups'] => ({
  work: backupInWorker,
  note: (backup) => noteBackup(book.name, backup),
  noteBroughtIn: (backup) => noteBroughtIn(book.name, backup),
  noteWithout: (without) => noteAlsoWithout(book.name, without),
  since: book.sinceBackup,
  openAgain: (to) => {
    // From its beginning: what was brought in can lie before what this page knows.
    window.history.replaceState(null, '', `#/${to}`);
    window.location.reload();
  },
});
