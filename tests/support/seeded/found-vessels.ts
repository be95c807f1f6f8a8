/** Vessels that somebody found and nobody knows: held back, asked about, and told what they hold in the end. */
import type { World } from './batches';
import { day, type Story } from './book';

export function* finds({ book, shelf }: World): Story {
  const can = shelf.open('chloride');
  const containerId = can.id;
  can.state = 'closed';
  const note = 'Behind the old sink, no label.';
  book.write({
    kind: 'container-marked',
    v: 1,
    containerId,
    mark: 'contents-doubtful',
    doubt: 'found',
    note,
  });
  const litres = { value: book.digits(0.3, 0.8), unit: 'L' } as const;
  book.write({ kind: 'level-read', v: 1, containerId, level: litres });
  book.write({ kind: 'container-marked', v: 1, containerId, mark: 'held' });
  yield book.now + book.between(5, 30) * day;
  const streamId = book.newId();
  const liquid = { volume: litres, findings: [], freeAcid: [] };
  const logged = { streamId, batchId: null, stepId: null, stream: 'chloride-test-waste', liquid } as const;
  book.write({ kind: 'stream-logged', v: 1, ...logged });
  const counted = 'under-rules-of-its-own';
  book.write({ kind: 'counting-said', v: 1, streamId, counted, saidBy: 'Invented county office' });
  const said = { how: 'tests', saidBy: book.who, ...book.pictures() } as const;
  book.write({ kind: 'contents-determined', v: 1, containerId, streamId, ...said });
  book.write({ kind: 'container-marked', v: 1, containerId, mark: 'let-go' });
  book.write({ kind: 'container-changed', v: 1, containerId, tray: 'chloride tray', place: 'Lean-to' });
  can.held = Number(litres.value) * 1000;
}
