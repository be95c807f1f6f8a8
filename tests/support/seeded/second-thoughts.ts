/** Mistakes that somebody sees later: digits put right, entries withdrawn, and a few of those undone again. */
import type { PlainBody } from '../../../src/ledger/entries/body';
import { type Book, day, hour, minute, type Story } from './book';

/** How often each is wrong. What is moved and placed stays, so that no vessel gives what it does not hold. */
const wrongs: Partial<Readonly<Record<PlainBody['kind'], number>>> = {
  'level-read': 0.1,
  'batch-charged': 0.05,
  'batch-recovered': 0.05,
  'container-opened': 0.03,
  'container-inspected': 0.004,
  'stream-logged': 0.03,
  'lab-reported': 0.1,
  'pot-read': 0.03,
};

const otherDigits = (book: Book, value: string): string => {
  const decimals = value.split('.')[1]?.length ?? 0;
  return (Number(value) * book.between(0.95, 1.05)).toFixed(decimals);
};

/** As it should have been; null where it is withdrawn instead. */
function putRight(book: Book, body: PlainBody): PlainBody | null {
  switch (body.kind) {
    case 'level-read':
      return book.often(0.4) ? null : { ...body, note: 'Read at the wrong mark.' };
    case 'batch-recovered': {
      const { mass } = body.recovery;
      const right = { ...mass, value: otherDigits(book, mass.value) };
      return book.often(0.1) ? null : { ...body, recovery: { ...body.recovery, mass: right } };
    }
    case 'batch-charged': {
      const { charge } = body;
      if (charge.what === 'copper') return { ...body, note: 'Scale read again.' };
      const volume = { ...charge.volume, value: otherDigits(book, charge.volume.value) };
      return { ...body, charge: { ...charge, volume } };
    }
    case 'container-opened':
      return { ...body, place: 'Lean-to, upper shelf' };
    case 'stream-logged':
      return { ...body, note: 'Colour seen again in daylight.', colour: 'green' };
    case 'container-inspected':
      // What was found on it was put right: that stays.
      return book.often(0.5) && body.found.length === 0 ? null : body;
    case 'pot-read':
      return { ...body, note: 'Meter was warm.' };
    default:
      return book.often(0.5) ? null : body;
  }
}

function* mends(book: Book, id: string, body: PlainBody): Story {
  const right = putRight(book, body);
  const correction = right
    ? book.write({ kind: 'entry-corrected', v: 1, corrects: id, body: right, reason: 'misread' })
    : book.write({ kind: 'entry-withdrawn', v: 1, withdraws: id, reason: 'did not happen' });
  if (!book.often(0.05)) return;
  yield book.now + book.between(0.1, 3) * day;
  book.write({ kind: 'entry-withdrawn', v: 1, withdraws: correction, reason: 'it was right as it was' });
}

/** Now and then somebody sees later that it was wrong: within the hour mostly, else within weeks. */
export function thinkAgain(book: Book, id: string, body: PlainBody): void {
  if (!book.often(wrongs[body.kind] ?? 0)) return;
  const after = book.often(0.6) ? book.between(2, 50) * minute : book.between(0.2, 700) * hour;
  book.tell(mends(book, id, body), book.now + after);
}
