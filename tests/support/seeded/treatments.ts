/** Wash waters in the treatment pot: a bench test, iron or lime in portions, what was read, and where the slurry goes. */
import type { BodyOf } from '../../../src/ledger/entries/body';
import type { Planned } from '../../../src/ledger/list-bounds';
import type { World } from './batches';
import { minute, type Story } from './book';
import { answersLater, goThrough } from './lists';

const grams = (value: string) => ({ value, unit: 'g' }) as const;
const ph = (value: string) => ({ value, unit: '1' }) as const;

/** What every pot is planned to: first the cheap base, which foams, then the one that reaches far. */
const plan = {
  stages: [
    { agent: 'limestone', targetPh: ph('5') },
    { agent: 'hydrated-lime', targetPh: ph('9.0') },
  ],
  targetPh: ph('9.0'),
} satisfies Planned & Partial<BodyOf<'treatment-begun'>>;

/** The slurry goes into drums, and what it is filtered into is logged. */
function* emptiesPot({ book, shelf }: World): Story {
  const pot = shelf.inUse('pot');
  if (book.often(0.3)) {
    const lost = Math.min(pot.held, book.whole(5, 30) * 10);
    const amount = { value: (lost / 1000).toFixed(2), unit: 'L' } as const;
    book.write({ kind: 'water-lost', v: 1, containerId: pot.id, amount });
    pot.held -= lost;
  }
  yield book.now + book.between(2, 9) * minute;
  shelf.move(pot, 'slurry', pot.held, 'transfer');
  shelf.emptied(pot);
}

/** @param nights that it settles */
export function* treats(world: World, nights: number): Story {
  const { book, shelf, place } = world;
  const pot = shelf.inUse('pot');
  if (pot.held > 0) return;
  const from = shelf.cans.filter(({ sort, held }) => sort === 'wash' && held > 0).slice(0, 2);
  for (const can of from) {
    shelf.move(can, 'pot', can.held, 'transfer');
    shelf.emptied(can);
  }
  if (pot.held === 0) return;
  const containerId = pot.id;
  yield book.now + book.between(10, 30) * minute;
  if (book.often(0.7)) {
    const sample = { sampleVolume: { value: '100', unit: 'mL' }, agent: 'hydrated-lime' } as const;
    const seen = { mass: grams(book.digits(0.4, 1.2, 2)), endPh: ph('9.0'), instrument: 'meter' } as const;
    book.write({ kind: 'bench-tested', v: 1, containerId, ...sample, ...seen });
  }
  goThrough(book, 'spill-response-readiness', { place });
  yield book.now + book.between(5, 20) * minute;
  const clearance = goThrough(book, 'neutralise-lime', { containerId, place, planned: plan });
  const treatmentId = book.newId();
  const begun = { treatmentId, containerId, ...plan, clearance, allowed: 'yes' } as const;
  book.write({ kind: 'treatment-begun', v: 1, ...begun });
  const doses = book.whole(4, 8);
  for (let i = 0; i < doses; i += 1) {
    yield book.now + book.between(15, 40) * minute;
    const agent = i < doses / 2 ? 'limestone' : 'hydrated-lime';
    book.write({ kind: 'dose-added', v: 1, treatmentId, agent, mass: grams(book.digits(20, 90, 0)) });
    yield book.now + book.between(8, 20) * minute;
    const read = { value: ph((2 + (7 * (i + 1)) / doses).toFixed(1)), instrument: 'meter' } as const;
    const temperature = { value: book.digits(18, 31), unit: '°C' } as const;
    book.write({ kind: 'pot-read', v: 1, treatmentId, ph: read, temperature, colour: 'pale blue' });
  }
  yield book.on(nights, 8, book.whole(10, 50));
  const copper = { value: book.digits(0.2, 2.4), unit: 'mg/L' } as const;
  const findings = [{ by: 'photometer' as const, metal: 'Cu' as const, concentration: copper }];
  book.write({ kind: 'pot-read', v: 1, treatmentId, findings });
  answersLater(book, 'neutralise-lime', clearance, plan);
  book.write({
    kind: 'treatment-ended',
    v: 1,
    treatmentId,
    outcome: book.often(0.97) ? 'reached' : 'stopped',
  });
  yield book.on(book.whole(1, 3), 10, book.whole(0, 50));
  yield* emptiesPot(world);
}
