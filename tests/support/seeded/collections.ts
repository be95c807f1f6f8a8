/** The collector comes: papers, signatures, a load that leaves, now and then one that comes back, and the proof weeks later. */
import type { BodyOf } from '../../../src/ledger/entries/body';
import type { Signature } from '../../../src/ledger/entries/signatures';
import type { World } from './batches';
import { type Book, day, hour, minute, type Story } from './book';
import { answersLater, goThrough } from './lists';
import { amount, type Can } from './shelf';

/** Nobody's hand. */
function signed(book: Book, name: string): Signature {
  const points = Array.from({ length: 70 }, (_, i) => [
    Math.round(50 + 7 * i + 20 * Math.sin(i)),
    Math.round(120 + book.between(30, 70) * Math.cos(i / 2)),
  ]);
  return { name, signedAt: book.iso, width: 600, height: 240, strokes: [points.flat()] };
}

const collector = { name: 'Fenwater Collection', licence: 'FC-0000 (invented)', contact: '01632 960 077' };

function makesPaper(book: Book, cans: readonly Can[]): string {
  const paperId = book.newId();
  const contentHash = `${paperId}${paperId}`.replaceAll('-', '').slice(0, 64);
  const containerIds = cans.map(({ id }) => id);
  const file = { fileName: `set-${book.today}.pdf`, format: 'pdf', paper: 'disposal' } as const;
  book.write({ kind: 'paper-made', v: 1, paperId, containerIds, contentHash, ...file });
  return paperId;
}

/** One is brought back the next day, and goes with the next load. */
function* comesBack({ book, shelf }: World, handOverId: string, can: Can): Story {
  const told = { handOverId, containerIds: [can.id], why: 'cap wept on the lorry', ...book.pictures() };
  book.write({ kind: 'load-rejected', v: 1, ...told });
  can.state = 'closed';
  shelf.cans.push(can);
  yield* [];
}

function* proves(book: Book, handOverId: string, gone: readonly Can[]): Story {
  const datedOn = book.today;
  const paper = { saidBy: collector.name, document: `P-${datedOn}`, treatedHow: 'R4 (invented)', datedOn };
  const half = book.often(0.2) ? Math.ceil(gone.length / 2) : gone.length;
  for (const part of [gone.slice(0, half), gone.slice(half)]) {
    if (part.length === 0) continue;
    const containerIds = part.map(({ id }) => id);
    book.write({ kind: 'proof-filed', v: 1, handOverId, containerIds, ...paper, ...book.pictures() });
    yield book.now + book.between(3, 12) * day;
  }
}

function* reports({ book }: World, containerId: string): Story {
  const mg = (value: string) => ({ value, unit: 'mg/L' }) as const;
  const results: BodyOf<'lab-reported'>['results'] = (['Ag', 'Pb', 'Ba', 'Ni', 'Cu', 'Zn'] as const).map(
    (element) => ({ element, in: 'filtered', level: mg(book.digits(0.5, 900)) }),
  );
  const report = { laboratory: 'Weir Laboratory (invented)', document: 'report', sampledOn: book.today };
  book.write({ kind: 'lab-reported', v: 1, containerId, ...report, results, ...book.pictures(0.5) });
  yield* [];
}

export function* collects(world: World): Story {
  const { book, shelf, place } = world;
  const closed = shelf.cans.filter(({ state }) => state === 'closed');
  // The newest wait for the next time.
  const cans = closed.slice(0, Math.max(8, closed.length - 20));
  const [sampled] = cans;
  if (sampled) book.tell(reports(world, sampled.id));
  for (const { id } of cans)
    if (book.often(0.5)) book.write({ kind: 'container-marked', v: 1, containerId: id, mark: 'leaving' });
  yield book.on(1, 10, book.whole(0, 50));
  const there = cans.filter(({ state, held }) => state === 'closed' && held > 0);
  if (there.length === 0) return;
  const clearance = goThrough(book, 'hand-over', { place });
  const paperId = makesPaper(book, there);
  yield book.now + book.between(20, 60) * minute;
  const handOverId = book.newId();
  book.write({
    kind: 'handed-over',
    v: 1,
    handOverId,
    collector,
    driver: 'Rufus Oakley',
    vehicle: 'FEN 204 (invented)',
    document: `FW-${book.today}`,
    destination: 'Fenwater yard, Karrowby',
    containers: there.map((can) => ({
      containerId: can.id,
      ...(book.often(0.3) ? { agreed: amount(can, can.held) } : {}),
    })),
    paperId,
    signatures: { generator: signed(book, book.who), collector: signed(book, 'Rufus Oakley') },
    ...book.pictures(),
  });
  for (const can of there) shelf.leaves(can);
  answersLater(book, 'hand-over', clearance);
  const [back] = there;
  const isBack = there.length > 1 && book.often(0.08);
  if (isBack && back) book.tell(comesBack(world, handOverId, back), book.now + 20 * hour);
  const gone = isBack ? there.slice(1) : there;
  book.tell(proves(book, handOverId, gone), book.now + book.between(18, 55) * day);
}
