/** The weekly walk along all that stands, and what it found. */
import type { Found } from '../../../src/ledger/entries/inspections';
import { inspectedIntention } from '../../../src/ledger/seen-on-walk';
import { emptyState } from '../../../src/ledger/state';
import { looksOf, walkList } from '../../../src/ledger/walks';
import { contentHash } from '../../../src/safety/checklists';
import type { World } from './batches';
import { type Book, day, minute, type Story } from './book';

const list = walkList(emptyState);
const looks = looksOf(list, 'container');
const hash = contentHash(list);

function finding(book: Book): Found {
  const look = looks[book.whole(0, looks.length - 1)];
  const { id, ask } = look ?? { id: 'insp-label', ask: 'Label readable, dated' };
  const answer = 'no: being put right';
  return { findingId: book.newId(), look: id, ask, answer, ...book.pictures(0.6) };
}

/** Put right within days; now and then the vessel itself was broken. */
function* closes(book: Book, { findingId }: Found, containerId: string): Story {
  if (book.often(0.04)) {
    book.write({ kind: 'container-marked', v: 1, containerId, mark: 'damaged', ...book.pictures() });
    yield book.now + book.between(0.1, 1) * day;
    book.write({ kind: 'container-marked', v: 1, containerId, mark: 'mended' });
  }
  const done = book.oneOf(['Label written again.', 'Cap changed.', 'Tray wiped dry.', 'Put further apart.']);
  book.write({ kind: 'finding-closed', v: 1, findingId, done, ...book.pictures(0.2) });
}

export function* walks({ book, shelf }: World): Story {
  const walkId = book.newId();
  const startedAt = book.iso;
  const seen: string[] = [];
  const notSeen: { containerId: string; why: string }[] = [];
  for (const can of [...shelf.cans]) {
    if (can.held === 0) continue;
    if (book.often(0.004)) {
      notSeen.push({ containerId: can.id, why: 'behind the drums' });
      continue;
    }
    const began = book.iso;
    yield book.now + book.between(8, 25) * 1000;
    if (can.state === 'gone') continue;
    const found = book.often(0.015) ? [finding(book)] : [];
    const { do: _, ...told } = inspectedIntention(list, {
      walkId,
      containerId: can.id,
      found,
      startedAt: began,
    });
    book.write({ kind: 'container-inspected', v: 1, ...told });
    seen.push(can.id);
    for (const one of found) book.tell(closes(book, one, can.id), book.now + book.between(0.02, 5) * day);
  }
  yield book.now + minute;
  book.write({
    kind: 'walk-finished',
    v: 1,
    walkId,
    list: { id: list.id, version: String(list.version), hash, title: list.title },
    startedAt,
    containerIds: seen,
    notSeen,
    looks: looksOf(list, 'place').map(({ id }) => id),
    readings: [{ look: 'insp-temp', value: book.digits(4, 27, 0), unit: '°C' }],
    found: [],
  });
}
