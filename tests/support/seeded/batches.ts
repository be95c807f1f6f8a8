/** A batch from the scrap to the metal, over six days. */
import type { BodyOf, PlainBody } from '../../../src/ledger/entries/body';
import type { Finding, Metal } from '../../../src/ledger/entries/findings';
import type { StreamKind } from '../../../src/safety/stream-kind';
import { type Book, day, type Story } from './book';
import { answersLater, goThrough } from './lists';
import type { Place } from './office';
import type { Shelf, Sort } from './shelf';

export type World = { readonly book: Book; readonly shelf: Shelf; readonly place: Place };
type Batch = World & { readonly batchId: string };

const litres = (ml: number) => ({ value: (ml / 1000).toFixed(2), unit: 'L' }) as const;
const grams = (value: string) => ({ value, unit: 'g' }) as const;

const measured = (book: Book, metal: Metal, low: number, high: number): Finding => ({
  by: 'photometer',
  metal,
  concentration: { value: book.digits(low, high, 2), unit: 'g/L' },
  reference: 'diluted 1 to 100',
});

const strip = (book: Book, metal: Metal): Finding => ({
  by: 'strip',
  metal,
  concentration: { value: book.oneOf(['100', '250', '500']), unit: 'mg/L' },
});

/**
 * Copper in the liquor after cementation: what its metals took off the sheet (63.55 g for each 2 × 107.87 g of silver and each
 * 106.42 g of palladium; source: standard atomic weights) and a little from the leach; now and then somebody misread it.
 */
function copperLeft(book: Book, silver: string, palladium: string, ml: number): Finding {
  const taken = 0.2946 * Number(silver) + 0.5972 * Number(palladium);
  const value = ((taken * 1000) / ml + 0.4) * (book.often(0.02) ? 1.7 : book.between(0.97, 1.03));
  return measured(book, 'Cu', value, value);
}

type Logged = Omit<BodyOf<'stream-logged'>, 'kind' | 'v' | 'streamId' | 'batchId' | 'stepId' | 'stream'>;

function logs({ book, batchId }: Batch, stepId: string | null, stream: StreamKind, what: Logged): string {
  const streamId = book.newId();
  book.write({ kind: 'stream-logged', v: 1, streamId, batchId, stepId, stream, ...what });
  return streamId;
}

/** Goes through the list of a step and begins it. */
function begins({ book, batchId, place }: Batch, list: string, step: string, cleared = true): string {
  const clearance = cleared ? goThrough(book, list, { batchId, place }) : null;
  const stepId = book.newId();
  const stationId = place.stationId;
  book.write({ kind: 'step-started', v: 1, stepId, batchId, step, clearance, stationId });
  return stepId;
}

const ends = ({ book }: Batch, stepId: string): string => book.write({ kind: 'step-ended', v: 1, stepId });

const charges = ({ book, batchId }: Batch, charge: BodyOf<'batch-charged'>['charge']): string =>
  book.write({ kind: 'batch-charged', v: 1, batchId, charge });

function getsBack(
  { book, batchId }: Batch,
  what: BodyOf<'batch-recovered'>['recovery']['what'],
  mass: string,
) {
  book.write({ kind: 'batch-recovered', v: 1, batchId, recovery: { what, mass: grams(mass) } });
}

function checksAir({ book, batchId, place }: Batch): void {
  const cm = (value: string) => ({ value, unit: 'cm' }) as const;
  const masses = (['Ag', 'Pd', 'Ni', 'Cu'] as const).map((metal) => ({
    metal,
    mass: grams(book.digits(0.3, 4)),
  }));
  const check: PlainBody = {
    kind: 'ventilation-checked',
    v: 1,
    checkId: book.newId(),
    batchId,
    stationId: place.stationId,
    station: { is: 'ducted-hood', width: cm('90'), height: cm('32') },
    charge: {
      step: 'leach',
      metals: { known: 'each', masses },
      acid: { volume: litres(800), strength: { value: '2.0', unit: 'mol/L' } },
      release: { value: '24', unit: 'h' },
      limit: 'niosh-15-min',
    },
    verdict: 'enough',
    portion: grams(book.digits(5, 8, 2)),
  };
  book.write(check);
}

function* leaches(batch: Batch): Story {
  const { book, place, batchId } = batch;
  goThrough(book, 'spill-response-readiness', { place });
  yield book.now + book.between(4, 15) * 60_000;
  if (book.often(0.4)) checksAir(batch);
  const stepId = begins(batch, 'leach-start', 'leach', book.often(0.99));
  yield book.now + book.between(6, 20) * 60_000;
  charges(batch, { what: 'dilution-water', volume: litres(book.whole(300, 360) * 10) });
  const strength = { value: '68', unit: '%' } as const;
  charges(batch, { what: 'acid', volume: litres(book.whole(28, 40) * 10), strength });
  yield book.now + book.between(2, 4) * 3_600_000;
  if (book.often(0.7)) goThrough(book, 'leach-check', { batchId, place });
  yield book.on(1, 13, book.whole(0, 50));
  ends(batch, stepId);
}

function* filters(batch: Batch): Story {
  const { book, shelf } = batch;
  const stepId = begins(batch, 'filtration', 'filtration');
  yield book.now + book.between(40, 80) * 60_000;
  const liquor = book.whole(320, 370) * 10;
  const streamId = logs(batch, stepId, 'leach-liquor', {
    liquid: {
      volume: litres(liquor),
      findings: [measured(book, 'Cu', 0.3, 0.6), measured(book, 'Ni', 2, 4), measured(book, 'Ag', 9, 16)],
      freeAcid: [{ by: 'titration', result: { value: book.digits(0.8, 1.6, 2), unit: 'mol/L' } }],
    },
    colour: 'green',
  });
  shelf.place(streamId, 'work', liquor);
  const wet = book.whole(700, 1200);
  const moisture = {
    by: 'assumed',
    low: { value: '15', unit: '%' },
    high: { value: '30', unit: '%' },
  } as const;
  const solid = { wetMass: grams(String(wet)), moisture, holds: { liquor: streamId } };
  shelf.place(logs(batch, stepId, 'ceramic-residue', { solid }), 'residue', wet);
  if (book.often(0.35)) {
    const paper = book.whole(60, 160);
    const wetMass = grams(String(paper));
    const held = { wetMass, moisture: { by: 'not-determined' }, holds: { liquor: streamId } } as const;
    shelf.place(logs(batch, stepId, 'spent-filters', { solid: held }), 'filters', paper);
  }
  ends(batch, stepId);
  if (book.often(0.35)) book.tell(testedLater(batch, streamId), book.now + book.between(2, 40) * day);
}

/** A laboratory writes weeks later. */
function* testedLater({ book }: Batch, streamId: string): Story {
  const findings = (['Pb', 'Ba', 'Zn', 'Fe'] as const).map(
    (metal): Finding => ({
      by: 'assay',
      metal,
      concentration: { value: book.digits(1, 90), unit: 'mg/L' },
      on: book.today,
      reference: 'report (invented)',
    }),
  );
  book.write({ kind: 'stream-tested', v: 1, streamId, findings, freeAcid: [] });
  yield* [];
}

function* cements(batch: Batch): Story {
  const { book, shelf, place } = batch;
  goThrough(book, 'spill-response-readiness', { place });
  yield book.now + book.between(4, 12) * 60_000;
  const stepId = begins(batch, 'cementation', 'cementation');
  const work = shelf.inUse('work');
  shelf.move(work, null, 3700, 'treatment');
  if (work.held === 0) shelf.emptied(work);
  charges(batch, { what: 'copper', mass: grams(book.digits(110, 140)) });
  yield book.on(2, 11, book.whole(0, 50));
  const barren = book.whole(300, 350) * 10;
  const [silver, palladium] = [book.digits(34, 46), book.digits(10, 15)];
  const streamId = logs(batch, stepId, 'barren-liquor', {
    liquid: {
      volume: litres(barren),
      findings: [
        copperLeft(book, silver, palladium, barren),
        measured(book, 'Ni', 2, 4),
        { by: 'metals-recovered', metal: 'Cu', silver: grams(silver), palladium: grams(palladium) },
      ],
      freeAcid: [{ by: 'titration', result: { value: book.digits(0.5, 1, 2), unit: 'mol/L' } }],
    },
    colour: 'blue-green',
  });
  shelf.place(streamId, 'barren', barren);
  getsBack(batch, 'copper', book.digits(80, 100));
  ends(batch, stepId);
  if (book.often(0.3)) book.tell(testedLater(batch, streamId), book.now + book.between(2, 40) * day);
}

/** Looks on a plate; what is left of them goes to where it belongs. */
function* tests(batch: Batch): Story {
  const { book, shelf, batchId } = batch;
  const withAmmonia = book.often(0.3);
  const [list, step] = withAmmonia
    ? (['spot-test-ammonia', 'ammonia-test'] as const)
    : (['spot-test-chloride', 'chloride-test'] as const);
  const stepId = begins(batch, list, step);
  yield book.now + book.between(12, 30) * 60_000;
  const [stream, sort]: readonly [StreamKind, Sort] = withAmmonia
    ? ['ammonia-test-waste', 'ammonia']
    : ['chloride-test-waste', 'chloride'];
  const drops = book.whole(2, 6) * 10;
  const liquid = { volume: litres(drops), findings: [], freeAcid: [{ by: 'not-determined' as const }] };
  const streamId = logs(batch, stepId, stream, { liquid });
  shelf.place(streamId, sort, drops);
  const looks = [
    { look: 'before', seen: 'clear' },
    { look: 'blank', seen: 'clear' },
    { look: 'known', seen: 'curd' },
    { look: 'chloride', seen: 'none' },
  ].map((look, i) => ({ ...look, at: book.after((i - 5) * 60_000) }));
  const streamIds = [streamId];
  const check = { checkId: book.newId(), batchId, looks, outcome: 'not-silver', streamIds } as const;
  book.write({ kind: 'silver-checked', v: 1, ...check });
  ends(batch, stepId);
}

function* washes(batch: Batch): Story {
  const { book, shelf, batchId, place } = batch;
  const clearance = goThrough(book, 'wash-dry-weigh', { batchId, place });
  const stepId = book.newId();
  book.write({ kind: 'step-started', v: 1, stepId, batchId, step: 'washing-drying-weighing', clearance });
  yield book.now + book.between(1, 2) * 3_600_000;
  const water = book.whole(800, 1050) * 10;
  const findings = [strip(book, 'Cu'), strip(book, 'Ni')];
  const ph = { value: '2', unit: '1' } as const;
  const liquid = {
    volume: litres(water),
    findings,
    freeAcid: [{ by: 'ph' as const, ph, instrument: 'paper' as const }],
  };
  const streamId = logs(batch, stepId, 'wash-water', { liquid });
  if (book.often(0.4)) {
    shelf.place(streamId, 'jug', water);
    yield book.now + book.between(20, 90) * 60_000;
    const jug = shelf.inUse('jug');
    shelf.move(jug, 'wash', jug.held, 'transfer');
    shelf.emptied(jug);
  } else shelf.place(streamId, 'wash', water);
  charges(batch, { what: 'wash-water', volume: litres(water) });
  yield book.on(1, 8, book.whole(10, 50));
  getsBack(batch, 'silver', book.digits(34, 46));
  getsBack(batch, 'palladium', book.digits(10, 15));
  answersLater(book, 'wash-dry-weigh', clearance);
  ends(batch, stepId);
}

/** @param number of the batch, from 1 */
export function* workBatch(world: World, number: number): Story {
  const { book } = world;
  const batchId = book.newId();
  const code = `B-${String(number).padStart(2, '0')}`;
  const feed = {
    capacitors: book.oneOf(['precious-metal-electrode', 'precious-metal-electrode', 'mixed'] as const),
    era: book.oneOf(['may-hold-lead', 'lead-free', 'unknown'] as const),
    mass: grams(book.digits(400, 900, 0)),
  } as const;
  book.write({ kind: 'batch-opened', v: 1, batchId, code, feed });
  const batch = { ...world, batchId };
  yield* leaches(batch);
  yield book.now + book.between(5, 15) * 60_000;
  yield* filters(batch);
  yield book.on(1, 9, book.whole(0, 50));
  yield* cements(batch);
  yield book.now + book.between(10, 30) * 60_000;
  yield* tests(batch);
  yield book.on(0, 14, book.whole(0, 59));
  yield* washes(batch);
}
