/**
 * An invented busy workshop, the same for one seed: every entry in order and sealed, some twenty-seven a day, so that
 * 100,000 of them are ten years. Bodies are made without `decide`, and the state that they add up to has no trouble.
 */
import type { Entry } from '../../src/ledger/entries/entry';
import { type World, workBatch } from './seeded/batches';
import { Book, day, type Story } from './seeded/book';
import { collects } from './seeded/collections';
import { finds } from './seeded/found-vessels';
import { keepsOffice, opensBags } from './seeded/office';
import { Shelf } from './seeded/shelf';
import { treats } from './seeded/treatments';
import { walks } from './seeded/walks';

export { photo } from './seeded/photo';

/** Five days a week; a batch is begun on every other of them. */
function* works(world: World, entries: number): Story {
  const { book } = world;
  let number = 0;
  for (let n = 0; ; n += 1) {
    if (n % 7 === 0) book.tell(walks(world), book.on(0, 15, book.whole(0, 40)));
    if (n % 7 < 5 && book.often(0.48)) {
      number += 1;
      book.tell(workBatch(world, number), book.on(0, 8, book.whole(40, 59)));
    }
    // One more at the end, which settles for so long that it runs then.
    const isNearEnd = entries - book.written < 150;
    if (n % 18 === 9 || isNearEnd)
      book.tell(treats(world, isNearEnd ? 9 : 1), book.on(0, 9, book.whole(0, 59)));
    if (n % 36 === 33) book.tell(collects(world), book.on(0, 16, book.whole(0, 30)));
    if (n % 120 === 20) book.tell(finds(world), book.on(0, 11, book.whole(0, 59)));
    yield book.on(1, 7);
  }
}

function begun(start: number, entries: number, seed: number, sealing: boolean): Book {
  const book = new Book(start + 7 * 3_600_000, seed, sealing);
  const place = { stationId: book.newId(), name: 'Shed hood' };
  const world = { book, shelf: new Shelf(book), place };
  book.tell(keepsOffice(book, place));
  book.tell(opensBags(book), book.now + 4 * 3_600_000);
  book.tell(works(world, entries), book.on(1, 7));
  return book;
}

/** Days that so many entries take: the same story, counted without being written. */
function daysFor(entries: number, seed: number): number {
  const book = begun(0, entries, seed, false);
  while (book.written < entries) book.goOn();
  return Math.floor(book.now / day);
}

export type Asked = {
  readonly entries: number;
  readonly seed?: number;
  /** The day of the last entry, as "2026-11-30". */
  readonly until?: string;
};

export function* seededWorkshop({
  entries,
  seed = 20261130,
  until = '2026-11-30',
}: Asked): Generator<Entry, void, void> {
  const last = Date.parse(`${until}T00:00:00.000Z`);
  const book = begun(last - daysFor(entries, seed) * day, entries, seed, true);
  for (let given = 0; given < entries; )
    for (const entry of book.goOn() ?? []) {
      if (given === entries) return;
      given += 1;
      yield entry;
    }
}
